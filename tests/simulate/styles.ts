import type { CountMethod, SimSupplier } from "./catalogue.ts";

/** What kind of bar is drawn: how many of what, how it pours, writes and counts. */
export type BarStyle = {
  name: string;
  areas: string[];
  spirits: number;
  liqueurs: number;
  bitters: number;
  mixers: number;
  kegs: number;
  wines: number;
  bottledBeers: number;
  fruits: number;
  syrups: number;
  infusions: number;
  drinks: number;
  /** How readily each kind of drink is drawn. */
  templates: { sour: number; stirred: number; long: number; tiki: number };
  /** Share of sales that is beer, wine and shots. */
  pourShare: number;
  /** How open bottles are counted. */
  bottles: Extract<CountMethod, "tenths" | "scale">;
  /** Share of spirits poured without a measure. */
  freeShare: number;
  bottleMl: number;
  writes: "oz" | "ml" | "cl";
  drinksPerDay: number;
  suppliers: SimSupplier[];
  /** Weekdays of the counts, 0 is Monday; default Mondays. */
  countOn?: number[];
};

const SUPPLIERS: SimSupplier[] = [
  {
    supplier: "Tallow Lane Drinks",
    email: "orders@tallowlane.example",
    minimumValue: 100,
    invoicePrefix: "TL",
    days: [
      { orderDay: 0, orderBy: "15:00", deliveryDay: 2, deliveryAt: "11:00" },
      { orderDay: 3, orderBy: "15:00", deliveryDay: 4, deliveryAt: "12:30" },
    ],
  },
  {
    supplier: "Fennimore Greens",
    email: "orders@fennimore.example",
    invoicePrefix: "FG",
    days: [
      { orderDay: 0, orderBy: "20:00", deliveryDay: 1, deliveryAt: "09:00" },
      { orderDay: 2, orderBy: "20:00", deliveryDay: 3, deliveryAt: "14:00" },
      { orderDay: 4, orderBy: "20:00", deliveryDay: 5, deliveryAt: "09:00" },
    ],
  },
];

/** Kegs, wine and bottles over the counter, and a handful of cocktails. */
export const PUB: BarStyle = {
  name: "The Brick Kiln",
  areas: ["Bar", "Cellar", "Kitchen"],
  spirits: 14,
  liqueurs: 4,
  bitters: 1,
  mixers: 4,
  kegs: 6,
  wines: 7,
  bottledBeers: 8,
  fruits: 2,
  syrups: 2,
  infusions: 0,
  drinks: 9,
  templates: { sour: 2, stirred: 1, long: 5, tiki: 0 },
  pourShare: 0.75,
  bottles: "tenths",
  freeShare: 0.1,
  bottleMl: 700,
  writes: "ml",
  drinksPerDay: 260,
  suppliers: SUPPLIERS,
};

/** Rum upon rum, and forty things made in house. */
export const TIKI: BarStyle = {
  name: "The Paper Lagoon",
  areas: ["Bar", "Store", "Prep fridge"],
  spirits: 22,
  liqueurs: 8,
  bitters: 4,
  mixers: 2,
  kegs: 1,
  wines: 1,
  bottledBeers: 2,
  fruits: 6,
  syrups: 28,
  infusions: 6,
  drinks: 32,
  templates: { sour: 3, stirred: 1, long: 2, tiki: 8 },
  pourShare: 0.12,
  bottles: "tenths",
  freeShare: 0.05,
  bottleMl: 750,
  writes: "oz",
  drinksPerDay: 150,
  suppliers: SUPPLIERS,
};

/** Two dozen bottles, each on the scale. */
export const SCALES: BarStyle = {
  name: "The Plumb Line",
  areas: ["Bar", "Store", "Fridge"],
  spirits: 11,
  liqueurs: 6,
  bitters: 3,
  mixers: 2,
  kegs: 0,
  wines: 2,
  bottledBeers: 1,
  fruits: 3,
  syrups: 3,
  infusions: 1,
  drinks: 12,
  templates: { sour: 4, stirred: 5, long: 2, tiki: 0 },
  pourShare: 0.15,
  bottles: "scale",
  freeShare: 0.15,
  bottleMl: 700,
  writes: "cl",
  drinksPerDay: 70,
  suppliers: SUPPLIERS,
};

/** A hotel that counts its bar and its stores on Mondays and Thursdays. */
export const HOTEL: BarStyle = {
  name: "The Gatehouse Hotel",
  areas: ["Lobby bar", "Stores"],
  spirits: 24,
  liqueurs: 9,
  bitters: 2,
  mixers: 5,
  kegs: 2,
  wines: 9,
  bottledBeers: 5,
  fruits: 4,
  syrups: 4,
  infusions: 1,
  drinks: 26,
  templates: { sour: 3, stirred: 3, long: 4, tiki: 0 },
  pourShare: 0.4,
  bottles: "tenths",
  freeShare: 0.35,
  bottleMl: 1000,
  writes: "ml",
  drinksPerDay: 190,
  suppliers: SUPPLIERS,
  countOn: [0, 3],
};
