import { type SimulatedBar, simulateBar } from "./bar.ts";
import { always, type Catalogue, type SimItem, type SimPack } from "./catalogue.ts";
import type { Fault } from "./faults.ts";

const SUPPLIER = "Quayside Wholesale";

function pack(name: string, amount: number, unit: SimPack["unit"], price: number): SimPack {
  return {
    pack: name,
    amount,
    unit,
    perCase: 1,
    supplier: SUPPLIER,
    code: "",
    price,
    pricePer: "container",
    split: true,
  };
}

function bottle(name: string, price: number, facts: Partial<SimItem> = {}): SimItem {
  return {
    name,
    category: "spirit",
    base: "ml",
    abv: 41,
    packs: [pack("750 ml", 750, "ml", price)],
    areas: ["Bar", "Store"],
    fullInFirst: 1,
    method: "tenths",
    ...facts,
  };
}

function made(name: string, facts: Partial<SimItem> = {}): SimItem {
  return {
    name,
    category: "syrup",
    base: "ml",
    packs: [],
    areas: ["Fridge"],
    method: "measured",
    inHouse: true,
    ...facts,
  };
}

const ITEMS: SimItem[] = [
  bottle("Dry gin", 18),
  bottle("White rum", 15),
  bottle("Bourbon", 22),
  bottle("Vodka", 14, { pour: "free" }),
  bottle("Bitter aperitif", 21, { category: "liqueur", abv: 24 }),
  bottle("Sweet vermouth", 12, { category: "vermouth", abv: 16 }),
  bottle("Aromatic bitters", 10, {
    category: "bitters",
    packs: [pack("200 ml", 200, "ml", 10)],
    pour: "measured",
  }),
  bottle("Soda water", 1.5, { category: "mixer", packs: [pack("1 L", 1000, "ml", 1.5)] }),
  {
    name: "Lager",
    category: "beer",
    base: "each",
    packs: [{ ...pack("bottle", 1, "each", 30), perCase: 24, pricePer: "case", split: false }],
    areas: ["Store"],
    method: "pieces",
    pour: "measured",
  },
  {
    name: "Lime",
    category: "produce",
    base: "each",
    packs: [pack("piece", 1, "each", 0.3)],
    areas: ["Fridge"],
    method: "pieces",
    safetyDays: 4,
  },
  {
    name: "Orange",
    category: "produce",
    base: "each",
    packs: [pack("piece", 1, "each", 0.6)],
    areas: ["Fridge"],
    method: "pieces",
    safetyDays: 4,
  },
  {
    name: "Sugar",
    category: "dry goods",
    base: "g",
    packs: [pack("1 kg bag", 1, "kg", 2)],
    areas: ["Store"],
    method: "tenths",
  },
  { name: "Water", category: "water", base: "ml", packs: [], areas: [], method: "measured" },
  made("Lime juice", { category: "juice", shelfLifeDays: 1 }),
  made("Sugar syrup", { brix: 50 }),
  made("Orange twist", { category: "garnish", base: "each", areas: [], stocked: false, method: "pieces" }),
  made("Lime wheel", { category: "garnish", base: "each", areas: [], stocked: false, method: "pieces" }),
];

const UP = { glass: "coupe", glassMl: 160, ice: "none", technique: "shaken" } as const;
const ROCKS = { glass: "rocks", glassMl: 300, ice: "large", technique: "stirred" } as const;
const TALL = { glass: "highball", glassMl: 330, ice: "cubed", technique: "built" } as const;

/** Eight drinks, seventeen items, one supplier: small enough to run hundreds of times. */
export const SMALL_BAR: Catalogue = {
  venue: "The Short Plank",
  areas: ["Bar", "Fridge", "Store"],
  items: ITEMS,
  cuts: [
    { source: "Lime", gives: "Lime juice", perPiece: 28, unit: "ml", parts: ["flesh"] },
    { source: "Lime", gives: "Lime wheel", perPiece: 7, unit: "each", parts: ["skin", "flesh"] },
    { source: "Orange", gives: "Orange twist", perPiece: 8, unit: "each", parts: ["skin"] },
  ],
  preps: [
    {
      name: "Lime juice",
      yieldMl: 1000,
      stepMl: 100,
      vesselMaxMl: 3000,
      activeMinutes: 20,
      standingHours: 0,
      shelfLifeDays: 1,
      coverDays: 1,
      method: "Press, strain, date.",
      versions: [],
      inSheet: true,
    },
    {
      name: "Sugar syrup",
      yieldMl: 1626,
      stepMl: 813,
      vesselMaxMl: 4878,
      activeMinutes: 10,
      standingHours: 1,
      shelfLifeDays: 21,
      coverDays: 4,
      method: "Stir warm until clear.",
      versions: always("1 kg Sugar; 1 l Water"),
      inSheet: true,
    },
  ],
  drinks: [
    {
      name: "Daiquiri",
      price: 12,
      ...UP,
      weight: 5,
      versions: always("2 oz White rum; 1 oz Lime juice; 0.75 oz Sugar syrup; 1 each Lime wheel"),
    },
    {
      name: "Gimlet",
      price: 12,
      ...UP,
      weight: 4,
      versions: always("2 oz Dry gin; 0.75 oz Lime juice; 0.75 oz Sugar syrup"),
    },
    {
      name: "Negroni",
      price: 13,
      ...ROCKS,
      weight: 5,
      versions: always("1 oz Dry gin; 1 oz Bitter aperitif; 1 oz Sweet vermouth; 1 each Orange twist"),
    },
    {
      name: "Boulevardier",
      price: 13,
      ...ROCKS,
      weight: 3,
      versions: always("1.25 oz Bourbon; 1 oz Bitter aperitif; 1 oz Sweet vermouth; 1 each Orange twist"),
    },
    {
      name: "Old fashioned",
      price: 13,
      ...ROCKS,
      weight: 5,
      versions: always("2 oz Bourbon; 1 barspoon Sugar syrup; 2 dash Aromatic bitters; 1 each Orange twist"),
    },
    {
      name: "Americano",
      price: 11,
      ...TALL,
      weight: 3,
      versions: always("1.5 oz Bitter aperitif; 1.5 oz Sweet vermouth; top Soda water"),
    },
    {
      name: "Vodka soda",
      price: 10,
      ...TALL,
      weight: 5,
      versions: always("2 oz Vodka; top Soda water; 1 each Lime wheel"),
      asks: [{ modifier: "Double", chance: 0.1 }],
    },
    {
      name: "Gin rickey",
      price: 11,
      ...TALL,
      weight: 3,
      versions: always("2 oz Dry gin; 0.5 oz Lime juice; top Soda water"),
    },
  ],
  pours: [
    { ring: "Lager", item: "Lager", price: 6, weight: 6 },
    { ring: "Bourbon shot", item: "Bourbon", amount: 1.5, unit: "oz", price: 8, weight: 2 },
  ],
  modifiers: [{ modifier: "Double", effect: "times", item: "Vodka", factor: 2 }],
  suppliers: [
    {
      supplier: SUPPLIER,
      email: "orders@quayside.example",
      minimumValue: 40,
      invoicePrefix: "QW",
      days: [
        { orderDay: 0, orderBy: "14:00", deliveryDay: 1, deliveryAt: "10:00" },
        { orderDay: 3, orderBy: "14:00", deliveryDay: 4, deliveryAt: "10:00" },
      ],
    },
  ],
  events: [],
  plans: [],
  closures: [],
  drinksPerDay: 80,
  transfers: [],
  losses: {
    spillsPerWeek: 1,
    compsPerWeek: 2,
    tastingsPerWeek: 0,
    breakagesPerQuarter: 0,
    produceWaste: ["Lime"],
  },
};

/** Four weeks, or as many as asked for, of the Short Plank. */
export function smallBar({
  seed,
  weeks = 4,
  faults = [],
}: {
  seed: number;
  weeks?: number;
  faults?: readonly Fault[];
}): SimulatedBar {
  return simulateBar({ seed, weeks, faults, catalogue: SMALL_BAR });
}
