import { always, type SimCut, type SimItem, type SimPack, type SimPrep } from "../catalogue.ts";

const PRODUCE = "Gullwing Produce";

function produce(name: string, code: string, facts: Omit<Partial<SimItem>, "packs"> & { pack: SimPack }): SimItem {
  const { pack, ...rest } = facts;
  return {
    name,
    category: "produce",
    base: "each",
    packs: [{ ...pack, code }],
    areas: ["Walk-in"],
    method: "pieces",
    safetyDays: 1.5,
    ...rest,
  };
}

function box(pack: string, amount: number, unit: SimPack["unit"], price: number): SimPack {
  return { pack, amount, unit, perCase: 1, supplier: PRODUCE, code: "", price, pricePer: "container", split: true };
}

const larder: SimItem[] = [
  produce("Lime", "GP-01", { pack: box("box of 50", 50, "each", 14), pieceG: 67, shelfLifeDays: 14 }),
  produce("Lemon", "GP-02", { pack: box("box of 40", 40, "each", 17), pieceG: 110, shelfLifeDays: 14 }),
  produce("Grapefruit", "GP-03", { pack: box("box of 12", 12, "each", 13), pieceG: 330, shelfLifeDays: 14 }),
  produce("Orange", "GP-04", { pack: box("box of 20", 20, "each", 12), pieceG: 190, shelfLifeDays: 14 }),
  produce("Cucumber", "GP-05", { pack: box("piece", 1, "each", 0.9), shelfLifeDays: 7 }),
  produce("Mint Bunch", "GP-06", { pack: box("bunch", 1, "each", 1.4), shelfLifeDays: 6 }),
  produce("Egg", "GP-07", { pack: box("tray of 30", 30, "each", 7.5), shelfLifeDays: 21, allergens: "egg" }),
  produce("Ginger Root", "GP-08", {
    pack: box("kg", 1, "kg", 6.5), base: "g", method: "measured", shelfLifeDays: 21,
  }),
  produce("Red Chilli", "GP-09", {
    pack: box("250 g tub", 250, "g", 3.2), base: "g", method: "measured", shelfLifeDays: 30, safetyDays: 12,
  }),
];

const DRY = { category: "dry goods", areas: ["Dry store"], safetyDays: 8 };
const dry: SimItem[] = [
  produce("White Sugar", "GP-21", { ...DRY, pack: box("10 kg sack", 10, "kg", 13), base: "g", method: "tenths" }),
  produce("Demerara Sugar", "GP-22", { ...DRY, pack: box("3 kg bag", 3, "kg", 7.5), base: "g", method: "tenths" }),
  produce("Fine Salt", "GP-23", { ...DRY, pack: box("500 g tub", 500, "g", 1.5), base: "g", method: "measured" }),
  produce("Citric Acid", "GP-24", { ...DRY, pack: box("500 g tub", 500, "g", 6), base: "g", method: "measured" }),
  produce("Honey", "GP-25", { ...DRY, pack: box("1 kg jar", 1, "kg", 11), base: "g", method: "tenths" }),
  produce("Almonds", "GP-26", {
    ...DRY, pack: box("1 kg bag", 1, "kg", 12.5), base: "g", method: "measured", allergens: "almonds",
  }),
  produce("Paper Straw", "GP-27", { ...DRY, category: "sundry", pack: box("box of 250", 250, "each", 6) }),
  { name: "Water", category: "water", base: "ml", packs: [], areas: [], method: "measured" },
];

/** What a cut gives and nobody counts: it is cut when it is asked for. */
function given(name: string, base: "each" | "ml", allergens?: string): SimItem {
  const item: SimItem = { name, category: "garnish", base, packs: [], areas: [], method: "pieces", inHouse: true, stocked: false };
  return allergens === undefined ? item : { ...item, allergens };
}

function made(name: string, category: string, facts: Partial<SimItem> = {}): SimItem {
  return {
    name, category, base: "ml", packs: [], areas: ["Prep fridge"], method: "measured", inHouse: true, ...facts,
  };
}

const preps: SimItem[] = [
  ...["Lime Wheel", "Lime Wedge", "Lemon Twist", "Grapefruit Peel", "Orange Twist", "Orange Wheel"].map((name) => given(name, "each")),
  given("Cucumber Slice", "each"),
  given("Mint Sprig", "each"),
  given("Egg White", "ml", "egg"),
  made("Lime Juice", "juice", { shelfLifeDays: 1 }),
  made("Lemon Juice", "juice", { shelfLifeDays: 2 }),
  made("Grapefruit Juice", "juice", { shelfLifeDays: 2 }),
  made("Orange Juice", "juice", { shelfLifeDays: 2 }),
  made("Simple Syrup", "syrup", { brix: 50 }),
  made("Rich Demerara Syrup", "syrup", { brix: 66.7 }),
  made("Ginger Syrup", "syrup", { brix: 42 }),
  made("Grapefruit Cordial", "cordial"),
  made("House Almond Syrup", "syrup", { allergens: "almonds" }),
  made("Chilli Agave Infusion", "infusion", { abv: 40 }),
  made("Cucumber Gin", "infusion", { abv: 41 }),
  made("Bottled Lantern Martini", "batched drink", { abv: 30 }),
  made("Saline", "solution", { stocked: false, areas: [] }),
  made("Honey Mix", "syrup", { stocked: false, areas: [] }),
];

export const LARDER: SimItem[] = [...larder, ...dry, ...preps];

export const CUTS: SimCut[] = [
  { source: "Lime", gives: "Lime Juice", perPiece: 28, unit: "ml", parts: ["flesh"] },
  { source: "Lime", gives: "Lime Wheel", perPiece: 7, unit: "each", parts: ["skin", "flesh"] },
  { source: "Lime", gives: "Lime Wedge", perPiece: 8, unit: "each", parts: ["skin", "flesh"] },
  { source: "Lemon", gives: "Lemon Juice", perPiece: 1.5, unit: "oz", parts: ["flesh"] },
  { source: "Lemon", gives: "Lemon Twist", perPiece: 8, unit: "each", parts: ["skin"] },
  { source: "Grapefruit", gives: "Grapefruit Juice", perPiece: 170, unit: "ml", parts: ["flesh"] },
  { source: "Grapefruit", gives: "Grapefruit Peel", perPiece: 10, unit: "each", parts: ["skin"] },
  { source: "Orange", gives: "Orange Juice", perPiece: 2.5, unit: "oz", parts: ["flesh"] },
  { source: "Orange", gives: "Orange Twist", perPiece: 9, unit: "each", parts: ["skin"] },
  { source: "Orange", gives: "Orange Wheel", perPiece: 8, unit: "each", parts: ["skin", "flesh"] },
  { source: "Cucumber", gives: "Cucumber Slice", perPiece: 24, unit: "each", parts: ["whole"] },
  { source: "Mint Bunch", gives: "Mint Sprig", perPiece: 14, unit: "each", parts: ["leaf"] },
  { source: "Egg", gives: "Egg White", perPiece: 1, unit: "oz", parts: ["white"] },
  // Autumn limes press drier.
  { source: "Lime", fromDay: 49, gives: "Lime Juice", perPiece: 26, unit: "ml", parts: ["flesh"] },
];

type Making = Omit<SimPrep, "versions" | "inSheet" | "name"> & { spec?: string };

function prep(name: string, { spec, ...rest }: Making): SimPrep {
  return { name, ...rest, versions: spec === undefined ? [] : always(spec), inSheet: true };
}

const PRESS = { stepMl: 100, vesselMaxMl: 4000, activeMinutes: 25, standingHours: 0, coverDays: 1, method: "Press, strain, date." };
const POT = { activeMinutes: 15, standingHours: 1, shelfLifeDays: 21, coverDays: 4 };

/** In the order they are made: what others are built on comes first. */
export const PREPS: SimPrep[] = [
  prep("Lime Juice", { yieldMl: 1000, shelfLifeDays: 1, ...PRESS }),
  prep("Lemon Juice", { yieldMl: 1000, shelfLifeDays: 2, ...PRESS }),
  { ...prep("Grapefruit Juice", { yieldMl: 1000, shelfLifeDays: 2, ...PRESS }), inSheet: false },
  { ...prep("Orange Juice", { yieldMl: 1000, shelfLifeDays: 2, ...PRESS }), inSheet: false },
  prep("Simple Syrup", {
    // 1 : 1 by weight is 50 °Bx; 1 kg water and 1 kg sugar are 1626 ml (from the sucrose density tables).
    spec: "1000 g White Sugar; 1000 ml Water", yieldMl: 1626, stepMl: 813, vesselMaxMl: 9756, ...POT,
    method: "Stir warm until clear. Cool, date, chill.",
  }),
  prep("Rich Demerara Syrup", {
    spec: "2000 g Demerara Sugar; 1 l Water", yieldMl: 2261, stepMl: 1130.5, vesselMaxMl: 4522, ...POT,
    method: "Two to one by weight. Warm, do not boil. Keep at room temperature: it can crystallise when chilled.",
  }),
  prep("Ginger Syrup", {
    spec: "1 l Simple Syrup; 300 g Ginger Root", yieldMl: 1100, stepMl: 550, vesselMaxMl: 3300, ...POT, shelfLifeDays: 10,
    method: "Blend, strain through cloth, date.",
  }),
  prep("Grapefruit Cordial", {
    spec: "6 each Grapefruit Peel; 600 g White Sugar; 30 g Citric Acid; 600 ml Water",
    yieldMl: 1000, stepMl: 500, vesselMaxMl: 3000, ...POT, standingHours: 12, shelfLifeDays: 14,
    method: "Rub the peels with the sugar, stand overnight, add acid and water, strain.",
  }),
  prep("House Almond Syrup", {
    spec: "400 g Almonds; 800 g White Sugar; 800 ml Water", yieldMl: 1200, stepMl: 600, vesselMaxMl: 2400, ...POT,
    standingHours: 8, shelfLifeDays: 10, method: "Soak, blend, press, sweeten. Contains almonds: label it.",
  }),
  prep("Chilli Agave Infusion", {
    spec: "2 l Cinderpalm Blanco Agave; 20 g Red Chilli", yieldMl: 1900, stepMl: 950, vesselMaxMl: 3800, ...POT,
    standingHours: 6, shelfLifeDays: 30, coverDays: 6, method: "Steep six hours, taste, strain.",
  }),
  prep("Cucumber Gin", {
    spec: "1 l Wickerlamp Dry Gin; 1 each Cucumber", yieldMl: 960, stepMl: 960, vesselMaxMl: 2880, ...POT,
    standingHours: 4, shelfLifeDays: 14, coverDays: 5, method: "Peel, slice, steep four hours, strain.",
  }),
  prep("Bottled Lantern Martini", {
    spec: "1500 ml Wickerlamp Dry Gin; 300 ml Dunmarrow Dry Vermouth; 20 dash Tarwick Orange Bitters; 400 ml Water",
    yieldMl: 2200, stepMl: 1100, vesselMaxMl: 4400, ...POT, standingHours: 4, shelfLifeDays: 30, coverDays: 5,
    method: "Stir with the water, bottle, chill hard.",
  }),
  prep("Saline", {
    spec: "20 g Fine Salt; 80 ml Water", yieldMl: 87, stepMl: 87, vesselMaxMl: 870, activeMinutes: 2, standingHours: 0,
    shelfLifeDays: 30, coverDays: 1, method: "Stir until clear.",
  }),
  prep("Honey Mix", {
    spec: "300 g Honey; 100 ml Water", yieldMl: 310, stepMl: 310, vesselMaxMl: 1240, activeMinutes: 5, standingHours: 0,
    shelfLifeDays: 14, coverDays: 1, method: "Warm and stir.",
  }),
];
