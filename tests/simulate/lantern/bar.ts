import type { Catalogue, SimModifier, SimSupplier } from "../catalogue.ts";
import { BEER_AND_WINE } from "./beer-and-wine.ts";
import { LARDER } from "./larder.ts";
import { LONG_DRINKS } from "./long-drinks.ts";
import { POURS } from "./pours.ts";
import { CUTS, PREPS } from "./preps.ts";
import { SOURS } from "./sours.ts";
import { AROMATICS, LIQUEURS, SPIRITS } from "./spirits.ts";
import { STIRRED } from "./stirred.ts";

const MODIFIERS: SimModifier[] = [
  { modifier: "No Ice", effect: "none" },
  { modifier: "Birthday", effect: "none" },
  { modifier: "No Straw", effect: "remove", item: "Paper Straw" },
  { modifier: "No Egg", effect: "remove", item: "Egg White" },
  { modifier: "Extra Lime", effect: "add", item: "Lime Wedge", amount: 2, unit: "each" },
  { modifier: "Spicy", effect: "add", item: "Tarwick Chilli Tincture", amount: 3, unit: "dash" },
  {
    modifier: "Sub Smoked Agave",
    effect: "swap",
    item: "Cinderpalm Blanco Agave",
    with: "Cinderpalm Smoked Agave",
    charge: 2,
  },
  { modifier: "Sub Rye", effect: "swap", item: "Thornquay Bourbon", with: "Thornquay Rye" },
  { modifier: "Bought Almond", effect: "swap", item: "House Almond Syrup", with: "Nutfieldry Almond Syrup" },
  { modifier: "Double", effect: "times", item: "Wickerlamp Dry Gin", factor: 2, charge: 5 },
  { modifier: "Double", effect: "times", item: "Quillmere Vodka", factor: 2 },
  { modifier: "Double", effect: "times", item: "Oarlock White Rum", factor: 2 },
];

const SUPPLIERS: SimSupplier[] = [
  {
    supplier: "Longmole Spirits",
    email: "orders@longmole.example",
    minimumValue: 300,
    invoicePrefix: "LM",
    days: [
      { orderDay: 0, orderBy: "15:00", deliveryDay: 2, deliveryAt: "11:00" },
      { orderDay: 3, orderBy: "15:00", deliveryDay: 4, deliveryAt: "12:30" },
    ],
  },
  {
    supplier: "Gullhatch Produce",
    email: "hello@gullhatch.example",
    minimumValue: 60,
    invoicePrefix: "GH",
    days: [
      { orderDay: 6, orderBy: "21:00", deliveryDay: 0, deliveryAt: "12:00" },
      { orderDay: 1, orderBy: "22:00", deliveryDay: 2, deliveryAt: "08:30" },
      { orderDay: 3, orderBy: "22:00", deliveryDay: 4, deliveryAt: "08:30" },
    ],
  },
  {
    supplier: "Kelpmoor Beer & Wine",
    email: "desk@kelpmoor.example",
    minimumCases: 5,
    invoicePrefix: "KM",
    days: [{ orderDay: 1, orderBy: "12:00", deliveryDay: 3, deliveryAt: "13:00" }],
  },
];

/** The Harbour Lantern, an invented bar; its thirteen weeks begin on Monday 2026-08-24. */
export const HARBOUR_LANTERN: Catalogue = {
  venue: "The Harbour Lantern",
  areas: ["Front well", "Back bar", "Prep fridge", "Walk-in", "Cellar", "Dry store"],
  items: [...SPIRITS, ...LIQUEURS, ...AROMATICS, ...BEER_AND_WINE, ...LARDER],
  cuts: CUTS,
  preps: PREPS,
  drinks: [...SOURS, ...LONG_DRINKS, ...STIRRED],
  pours: POURS,
  modifiers: MODIFIERS,
  suppliers: SUPPLIERS,
  events: [
    { day: 47, event: "Street festival", factor: 1.4 },
    { day: 48, event: "Street festival", factor: 1.5 },
    { day: 68, event: "Costume night", factor: 1.3 },
    { day: 94, event: "Thanksgiving", factor: 0.6 },
  ],
  plans: [
    { day: 95, drink: "Solvinella Spritz", serves: 45 },
    { day: 95, drink: "Lantern Martini", serves: 25 },
  ],
  closures: [
    { supplier: "Kelpmoor Beer & Wine", fromDay: 49, toDay: 49 },
    { supplier: "all", fromDay: 14, toDay: 14 },
    { supplier: "all", fromDay: 94, toDay: 94 },
  ],
  drinksPerDay: 160,
  ignored: { ring: "Gift Card", price: 50, perWeek: 2 },
  strayModifier: "Table Favorite",
  transfers: [
    { day: 17, direction: "out", place: "Ropewalk Annex", item: "Wickerlamp Dry Gin", amount: 2, unit: "l" },
    { day: 31, direction: "in", place: "Ropewalk Annex", item: "Wickerlamp Dry Gin", amount: 1, unit: "l" },
    {
      day: 74,
      direction: "out",
      place: "Ropewalk Annex",
      item: "Bellancroft Sparkling Brut",
      amount: 2250,
      unit: "ml",
    },
  ],
  losses: {
    spillsPerWeek: 2.5,
    compsPerWeek: 4,
    tastingsPerWeek: 1.5,
    breakagesPerQuarter: 3,
    produceWaste: ["Lime", "Lemon", "Mint Bunch", "Cucumber"],
  },
};
