import type { SimItem, SimPack } from "../catalogue.ts";

const PRODUCE = "Gullhatch Produce";

function produce(
  name: string,
  code: string,
  facts: Omit<Partial<SimItem>, "packs"> & { pack: SimPack },
): SimItem {
  const { pack, ...rest } = facts;
  return {
    name,
    category: "produce",
    base: "each",
    packs: [{ ...pack, code }],
    areas: ["Walk-in"],
    method: "pieces",
    safetyDays: 4,
    ...rest,
  };
}

function box(pack: string, amount: number, unit: SimPack["unit"], price: number): SimPack {
  return {
    pack,
    amount,
    unit,
    perCase: 1,
    supplier: PRODUCE,
    code: "",
    price,
    pricePer: "container",
    split: true,
  };
}

const larder: SimItem[] = [
  produce("Lime", "GH-01", { pack: box("box of 50", 50, "each", 14), pieceG: 67, shelfLifeDays: 14 }),
  produce("Lemon", "GH-02", { pack: box("box of 40", 40, "each", 17), pieceG: 110, shelfLifeDays: 14 }),
  produce("Grapefruit", "GH-03", { pack: box("box of 12", 12, "each", 13), pieceG: 330, shelfLifeDays: 14 }),
  produce("Orange", "GH-04", { pack: box("box of 20", 20, "each", 12), pieceG: 190, shelfLifeDays: 14 }),
  produce("Cucumber", "GH-05", { pack: box("piece", 1, "each", 0.9), shelfLifeDays: 7 }),
  produce("Mint Bunch", "GH-06", { pack: box("bunch", 1, "each", 1.4), shelfLifeDays: 6 }),
  produce("Egg", "GH-07", { pack: box("tray of 30", 30, "each", 7.5), shelfLifeDays: 21, allergens: "egg" }),
  produce("Ginger Root", "GH-08", {
    pack: box("kg", 1, "kg", 6.5),
    base: "g",
    method: "measured",
    shelfLifeDays: 21,
  }),
  produce("Red Chilli", "GH-09", {
    pack: box("250 g tub", 250, "g", 3.2),
    base: "g",
    method: "measured",
    shelfLifeDays: 30,
    safetyDays: 14,
  }),
];

const DRY = { category: "dry goods", areas: ["Dry store"], safetyDays: 8 };
const dry: SimItem[] = [
  produce("White Sugar", "GH-21", {
    ...DRY,
    pack: box("10 kg sack", 10, "kg", 13),
    base: "g",
    method: "tenths",
  }),
  produce("Demerara Sugar", "GH-22", {
    ...DRY,
    pack: box("3 kg bag", 3, "kg", 7.5),
    base: "g",
    method: "tenths",
  }),
  produce("Fine Salt", "GH-23", {
    ...DRY,
    pack: box("500 g tub", 500, "g", 1.5),
    base: "g",
    method: "measured",
  }),
  produce("Citric Acid", "GH-24", {
    ...DRY,
    pack: box("500 g tub", 500, "g", 6),
    base: "g",
    method: "measured",
  }),
  produce("Honey", "GH-25", { ...DRY, pack: box("1 kg jar", 1, "kg", 11), base: "g", method: "tenths" }),
  produce("Almonds", "GH-26", {
    ...DRY,
    pack: box("1 kg bag", 1, "kg", 12.5),
    base: "g",
    method: "measured",
    allergens: "almonds",
  }),
  produce("Paper Straw", "GH-27", { ...DRY, category: "sundry", pack: box("box of 250", 250, "each", 6) }),
  { name: "Water", category: "water", base: "ml", packs: [], areas: [], method: "measured" },
];

/** What a cut gives and nobody counts: it is cut when it is asked for. */
function given(name: string, base: "each" | "ml", allergens?: string): SimItem {
  const item: SimItem = {
    name,
    category: "garnish",
    base,
    packs: [],
    areas: [],
    method: "pieces",
    inHouse: true,
    stocked: false,
  };
  return allergens === undefined ? item : { ...item, allergens };
}

function made(name: string, category: string, facts: Partial<SimItem> = {}): SimItem {
  return {
    name,
    category,
    base: "ml",
    packs: [],
    areas: ["Prep fridge"],
    method: "measured",
    inHouse: true,
    ...facts,
  };
}

const preps: SimItem[] = [
  ...["Lime Wheel", "Lime Wedge", "Lemon Twist", "Grapefruit Peel", "Orange Twist", "Orange Wheel"].map(
    (name) => given(name, "each"),
  ),
  given("Cucumber Slice", "each"),
  given("Mint Sprig", "each"),
  given("Egg White", "ml", "egg"),
  made("Lime Juice", "juice", { shelfLifeDays: 2 }),
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
