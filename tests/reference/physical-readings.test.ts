import { describe, expect, it } from "vitest";
import { blend } from "#engine/measure/blend.ts";
import { glassKind, isUkMeasure, nearestUkMeasures } from "#engine/measure/glass-measures.ts";
import { KEGS_ML } from "#engine/measure/standard-sizes.ts";
import { saturationBrix } from "#engine/measure/sucrose.ts";
import {
  acidCorrection,
  brixFromGravity,
  brixOfReading,
  readWithAcid,
} from "#engine/measure/sugar-reading.ts";
import { syrupCorrection } from "#engine/measure/syrup.ts";
import { US_FLUID_OUNCE_ML } from "#engine/measure/unit-factor.ts";
import { boughtG, PRODUCE, usualDensity } from "#engine/measure/usual-figures.ts";

describe("a refractometer in something sour", () => {
  // 21 CFR 146.132(a)(2): 0.012 + 0.193x − 0.0004x².
  it("6 % of acid takes 1.1556 °Bx off the reading", () => {
    expect(acidCorrection(6)).toBeCloseTo(1.1556, 10);
    expect(acidCorrection(0)).toBe(0);
    expect(() => acidCorrection(30)).toThrow(/0 to 25/);
  });

  it("reads a cordial too low as solids and too high as sugar", () => {
    // 48 + 0.012 + 0.772 − 0.0064; less 4 of acid.
    const { solidsPct, sugarPct } = readWithAcid({ brix: 48, acidPct: 4 });
    expect(solidsPct).toBeCloseTo(48.7776, 10);
    expect(sugarPct).toBeCloseTo(44.7776, 10);
  });

  it("is corrected for before water is stirred in", () => {
    // Solids 50.7776 wanted, 52.7776 there: 2000 g × (52.7776 ÷ 50.7776 − 1); without acid it would be 80.
    const batch = { weightG: 2000, measuredBrix: 52, wantedBrix: 50 };
    expect(syrupCorrection({ ...batch, acidPct: 4 }).addWaterG).toBeCloseTo(78.775, 3);
    expect(syrupCorrection(batch).addWaterG).toBeCloseTo(80, 9);
  });
});

// The cubic fitted to NBS Circular C440 up to 40 °Bx; above it ICUMSA SPS-4 against water at 20 °C.
it.each([
  [1, 0],
  [1.04003, 10],
  [1.08302, 20.01],
  [1.17885, 40.02],
  [1229.65 / 998.203, 50],
  [1286.61 / 998.203, 60],
  [1347.48 / 998.203, 70],
])("a hydrometer at %d reads %d °Bx", (sg, brix) => {
  expect(Math.abs(brixFromGravity(sg) - brix)).toBeLessThan(0.02);
  if (sg > 1) expect(brixOfReading(sg)).toBe(brixFromGravity(sg));
  expect(brixOfReading(48.5)).toBe(48.5);
});

// gov.uk, Specified quantities; Weights and Measures (Intoxicating Liquor) Order 1988 (SI 1988/2039).
describe("measures by the glass in the United Kingdom", () => {
  const pint = 568.26125;
  it.each([
    ["spirit", "Dry gin", [25, 35, 50, 70, 75, 105], [30, 45, 60, 40]],
    ["vodka", "House", [25, 35], [20]],
    ["red wine", "House red", [125, 175, 250, 350, 375], [100, 150, 200]],
    ["sherry", "Fino", [50, 70, 100, 140], [60, 75]],
  ])("%s: %s", (category, name, lawful, odd) => {
    const kind = glassKind({ name, category });
    if (kind === undefined) throw new Error("It has no set measures.");
    for (const ml of lawful) expect([ml, isUkMeasure(kind, ml)]).toEqual([ml, true]);
    for (const ml of odd) expect([ml, isUkMeasure(kind, ml)]).toEqual([ml, false]);
  });

  it("a third, a half and two thirds of a pint on draught, and any number of halves", () => {
    const kind = glassKind({ name: "Harbour lager", category: "beer", isDraught: true });
    if (kind === undefined) throw new Error("It has no set measures.");
    for (const share of [1 / 3, 1 / 2, 2 / 3, 1, 1.5, 2]) expect(isUkMeasure(kind, share * pint)).toBe(true);
    for (const share of [1 / 4, 3 / 4, 4 / 3]) expect(isUkMeasure(kind, share * pint)).toBe(false);
  });

  it("the nearest on either side", () => {
    expect(nearestUkMeasures("gin, rum, vodka or whisky", 30)).toEqual([25, 35]);
    expect(nearestUkMeasures("still wine", 150)).toEqual([125, 175]);
    expect(nearestUkMeasures("still wine", 100)).toEqual([125]);
  });

  it.each([
    ["spirit", "Rested tequila"],
    ["sparkling wine", "House sparkling"],
    ["vermouth", "Dry vermouth"],
    ["liqueur", "Rum cream"],
    ["beer", "Bottled lager"],
    ["juice", "Ginger juice"],
  ])("%s such as %s is free", (category, name) => {
    expect(glassKind({ name, category })).toBeUndefined();
  });
});

// 27 CFR 25.156: gallons and glasses of 16 US fl oz in a keg.
it.each([
  ["1/2 barrel", 15.5, 124],
  ["1/4 barrel", 7.75, 62],
  ["1/6 barrel", 5.1667, 41.33],
  ["1/8 barrel", 3.875, 31],
  ["20 l", 5.2834, 42.27],
  ["30 l", 7.9252, 63.4],
  ["50 l", 13.2086, 105.67],
])("a keg of %s is %d US gallons, %d glasses", (keg, gallons, glasses) => {
  const ounces = (KEGS_ML[keg] ?? 0) / US_FLUID_OUNCE_ML;
  expect(Math.abs(ounces / 128 - gallons)).toBeLessThan(6e-5);
  expect(Math.abs(ounces / 16 - glasses)).toBeLessThan(0.006);
});

// 21 CFR 101.9(b)(5)(viii): on a nutrition label an ounce is 30 ml.
it("750 ml are 25 ounces of a nutrition label, and 25.36 true ones", () => {
  expect(750 / 30).toBe(25);
  expect(750 / US_FLUID_OUNCE_ML).toBeCloseTo(25.36, 2);
});

// Older handbook series of the solubility of sucrose (Mohos 2010, table A2.3), where the test beside it leaves off.
it.each([
  [15, 66.53],
  [25, 67.89],
  [40, 70.42],
  [60, 74.18],
])("two tables of solubility agree to half a percent at %d °C", (temperatureC, brix) => {
  expect(Math.abs(saturationBrix({ temperatureC }) - brix)).toBeLessThan(0.55);
});

// USDA SR26, WEIGHT: g per US fl oz over 29.57 ml.
it.each([
  ["Ginger ale", 1.031],
  ["Port", 0.997],
])("%s weighs %d g/ml", (name, gPerMl) => {
  expect(Math.abs((usualDensity(name)?.figure ?? 0) - gPerMl)).toBeLessThan(0.001);
});

// USDA SR26, FOOD_DES: refuse in % of the weight bought, and the edible part of one.
it.each([
  ["cucumber", 301, 3, 310.3],
  ["strawberry", 12, 6, 12.8],
  ["passion fruit", 18, 48, 34.6],
  ["pomegranate", 282, 44, 503.6],
  ["celery", 40, 11, 44.9],
])("a %s of %d g edible, %d %% refuse, weighs %d g as bought", (fruit, edibleG, refusePct, weightG) => {
  expect(PRODUCE[fruit]).toMatchObject({ edibleG, refusePct });
  expect(boughtG({ edibleG, refusePct })).toBeCloseTo(weightG, 1);
});

// OIML R 22 at 20 °C: 948.05, 973.56 (20 %) … by sums of weights; ethanol is 789.24 kg/m³.
it("a blend keeps the weight of its parts, and so less than their volume", () => {
  const parts = [
    { volumeMl: 500, abvPct: 50 },
    { volumeMl: 500, abvPct: 10 },
  ];
  // 500 × 0.93014 + 500 × 0.98471 = 957.425 g with 300 ml of ethanol, 236.77 g: 24.73 % of the weight, 30.14 % vol, 962.1 g/l.
  const { volumeMl, abvPct } = blend(parts);
  expect(Math.abs(abvPct - 30.15)).toBeLessThan(0.03);
  expect(Math.abs(volumeMl - 995.1)).toBeLessThan(0.3);
});
