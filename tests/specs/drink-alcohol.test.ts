import { expect, it } from "vitest";
import { catalogueOf } from "#engine/catalogue.ts";
import { blend } from "#engine/measure/blend.ts";
import { alcoholInDrink } from "#engine/specs/drink-alcohol.ts";
import { drinkStrength } from "#engine/specs/drink-strength.ts";
import type { Drink, SpecLine } from "#engine/specs/spec.ts";
import { anEmptyBook, anItem } from "#tests/support/hand-bar.ts";

const aLine = (makes: string, line: number, amount: number, item: string): SpecLine => ({
  makes,
  from: "2026-01-01",
  line,
  amount,
  unit: "ml",
  item,
  orItems: [],
  note: "",
});

const stirred: Drink = {
  name: "Manhattan",
  priceMinor: null,
  glass: "",
  glassMl: null,
  ice: null,
  technique: "stirred",
  garnishNote: "",
  method: "",
  allergens: [],
  onMenuFrom: null,
  onMenuUntil: null,
};

const book = {
  ...anEmptyBook(),
  drinks: [stirred],
  items: [
    anItem({ name: "Rye", base: "ml", category: "spirit", abv: 40 }),
    anItem({ name: "Vermouth", base: "ml", category: "vermouth", abv: 18 }),
    anItem({ name: "Bitters", base: "ml", category: "bitters" }),
    anItem({ name: "Batched Manhattan", base: "ml", inHouse: true }),
    anItem({ name: "Soda", base: "ml", category: "mixer" }),
  ],
  specs: [
    aLine("Manhattan", 1, 60, "Rye"),
    aLine("Manhattan", 2, 30, "Vermouth"),
    aLine("Manhattan", 3, 2, "Bitters"),
    aLine("Manhattan Highball", 1, 90, "Batched Manhattan"),
    aLine("Manhattan Highball", 2, 60, "Soda"),
    aLine("Batched Manhattan", 1, 600, "Rye"),
    aLine("Batched Manhattan", 2, 300, "Vermouth"),
  ],
  preps: [
    {
      prep: "Batched Manhattan",
      from: "2026-01-01",
      yield: 900,
      unit: "ml" as const,
      batchStep: null,
      vesselMax: null,
      activeMinutes: null,
      standingHours: null,
      shelfLifeDays: null,
      method: "",
    },
  ],
};
const catalogue = catalogueOf(book);

it("the alcohol of a drink is that of its parts, and what has no strength in the book is named", () => {
  const found = alcoholInDrink(catalogue, "Manhattan", "2026-03-01");
  // 60 ml × 40 % + 30 ml × 18 % = 29.4 ml; × 0.7892 g/ml (OIML R 22) = 23.2 g; ÷ 17.74 ml (NIAAA); ÷ 10 ml (UK).
  expect(found?.ethanolMl).toBeCloseTo(29.4, 9);
  expect(found?.ethanolG).toBeCloseTo(23.2, 1);
  expect(found?.usDrinks).toBeCloseTo(1.66, 2);
  expect(found?.ukUnits).toBeCloseTo(2.94, 9);
  expect(found?.unknown).toEqual(["Bitters"]);
});

it("a batch has the alcohol of what went into it", () => {
  expect(alcoholInDrink(catalogue, "Manhattan Highball", "2026-03-01")?.ethanolMl).toBeCloseTo(29.4, 9);
});

it("before its first version a drink has none to speak of", () => {
  expect(alcoholInDrink(catalogue, "Manhattan", "2025-01-01")).toBeUndefined();
});

it("a stirred drink is as strong as its parts, shrunken a little, and then as the published fit has it", () => {
  const found = drinkStrength(catalogue, "Manhattan", "2026-03-01");
  const parts = [
    { volumeMl: 60, abvPct: 40 },
    { volumeMl: 30, abvPct: 18 },
    { volumeMl: 2, abvPct: 0 },
  ];
  expect(found?.volumeMl).toBeCloseTo(blend(parts).volumeMl, 9);
  expect(found?.volumeMl).toBeLessThan(92);
  const abv = 29.4 / (found?.volumeMl ?? 0);
  expect(found?.abvPct).toBeCloseTo(100 * abv, 6);
  // Arnold, Liquid Intelligence (2014), stirred: −1.21 a² + 1.246 a + 0.145.
  const dilution = -1.21 * abv ** 2 + 1.246 * abv + 0.145;
  expect(found?.iced?.abvPct).toBeCloseTo((100 * abv) / (1 + dilution), 6);
  expect(found?.iced?.volumeMl).toBeCloseTo((found?.volumeMl ?? 0) * (1 + dilution), 6);
  // Water weighs about as many grams as the ml by which it dilutes, and a little more for what the mixture shrinks.
  expect((found?.iced?.waterGPerL ?? 0) / (1000 * dilution)).toBeCloseTo(1, 1.6);
});

it("a drink of a batch is as strong as the batch; without a technique no ice is reckoned", () => {
  const found = drinkStrength(catalogue, "Manhattan Highball", "2026-03-01");
  expect(found?.abvPct).toBeCloseTo(29.4 / 1.5, 0);
  expect(found?.iced).toBeNull();
});
