import { describe, expect, it } from "vitest";
import { dilutedAbvPct, iceDilution } from "#engine/measure/dilution.ts";
import { gtin14, gtinCheckDigit } from "#engine/measure/gtin.ts";
import { ETHANOL_G_PER_ML } from "#engine/measure/spirit-density.ts";
import { IMPERIAL_FLUID_OUNCE_ML, US_FLUID_OUNCE_ML, unitFactor } from "#engine/measure/unit-factor.ts";
import { DEFAULT_HOUSE_ML, type Measures, type Unit } from "#engine/measure/units.ts";
import { expectedYield, YIELD_PRIORS } from "#engine/measure/yield.ts";

const us: Measures = { oz: "us", houseMl: DEFAULT_HOUSE_ML };
const imperial: Measures = { oz: "imperial", houseMl: DEFAULT_HOUSE_ML };

describe("units (NIST Handbook 44, Appendix C)", () => {
  it.each<[Unit, number]>([
    ["oz", 29.5735295625],
    ["tsp", 4.92892159375],
    ["tbsp", 14.78676478125],
    ["cup", 236.5882365],
    ["lb", 453.59237],
    ["oz-wt", 28.349523125],
  ])("%s is exactly %d", (unit, size) => {
    expect(unitFactor(unit, us).factor).toBeCloseTo(size, 10);
  });

  it("an imperial ounce is 28.4130625 ml, and a US pint 16 and an imperial one 20 of theirs", () => {
    expect(unitFactor("oz", imperial).factor).toBe(28.4130625);
    expect(16 * US_FLUID_OUNCE_ML).toBeCloseTo(473.176473, 9);
    expect(20 * IMPERIAL_FLUID_OUNCE_ML).toBeCloseTo(568.26125, 9);
    expect(128 * US_FLUID_OUNCE_ML).toBeCloseTo(3785.411784, 9);
    expect(160 * IMPERIAL_FLUID_OUNCE_ML).toBeCloseTo(4546.09, 9);
  });

  // 27 CFR 4.37: label equivalents of metric bottles.
  it.each([
    [750, 25.4, 1],
    [375, 12.7, 1],
    [187, 6.3, 1],
    [1500, 50.7, 1],
    [3000, 101, 0],
    [1750, 59.2, 1],
  ])("a %d ml bottle holds %d US fl oz", (volumeMl, ounces, digits) => {
    expect(volumeMl / US_FLUID_OUNCE_ML).toBeCloseTo(ounces, digits);
  });

  // 27 CFR 25.156: a beer barrel is 31 US gallons.
  it.each([
    [1 / 2, 58.674, 1984],
    [1 / 4, 29.337, 992],
    [1 / 6, 19.558, 661.33],
    [1 / 8, 14.669, 496],
  ])("a keg of %d barrel holds %d l; a sixth is not 20 l", (barrels, litres, ounces) => {
    const volumeMl = barrels * 31 * 128 * US_FLUID_OUNCE_ML;
    expect(Math.abs(volumeMl / 1000 - litres)).toBeLessThan(0.001);
    expect(volumeMl / US_FLUID_OUNCE_ML).toBeCloseTo(ounces, 2);
  });

  it.each([
    [20, 676.28, 35.2],
    [30, 1014.42, 52.79],
    [50, 1690.7, 87.99],
  ])("a %d l keg holds %d US fl oz and %d imperial pints", (litres, ounces, pints) => {
    expect((litres * 1000) / US_FLUID_OUNCE_ML).toBeCloseTo(ounces, 1.9);
    expect((litres * 1000) / IMPERIAL_FLUID_OUNCE_ML / 20).toBeCloseTo(pints, 1.9);
  });

  it("30 ml and a US ounce are 1.44 % apart: 750 ml is 25 pours of the one and 25.36 of the other", () => {
    expect(30 / US_FLUID_OUNCE_ML - 1).toBeCloseTo(0.0144, 4);
    expect(750 / US_FLUID_OUNCE_ML).toBeCloseTo(25.36, 2);
  });

  // NIAAA: a standard drink is 0.6 fl oz, 14 g.
  it("a US standard drink is 0.6 fl oz of ethanol, 14 g", () => {
    expect(0.6 * US_FLUID_OUNCE_ML).toBeCloseTo(17.744, 3);
    expect(0.6 * US_FLUID_OUNCE_ML * ETHANOL_G_PER_ML).toBeCloseTo(14.0, 1);
  });

  it.each([
    [750, 12, 5],
    [200, 40, 4.5],
    [375, 40, 8.5],
    [750, 40, 17],
    [1750, 40, 39],
  ])("%d ml at %d %% hold about %d US standard drinks (NIAAA)", (volumeMl, abv, drinks) => {
    const reckoned = (volumeMl * abv) / 100 / (0.6 * US_FLUID_OUNCE_ML);
    expect(Math.abs(reckoned - drinks)).toBeLessThanOrEqual(0.5);
  });
});

describe("ice (fits of Arnold, Liquid Intelligence, 2014)", () => {
  it.each([
    [10, 0.3615, 7.34, 0.2575, 7.95],
    [15, 0.429, 10.5, 0.3047, 11.5],
    [20, 0.4887, 13.43, 0.3458, 14.86],
    [22, 0.5104, 14.57, 0.3606, 16.17],
    [25, 0.5406, 16.23, 0.3809, 18.1],
    [30, 0.5846, 18.93, 0.4099, 21.28],
    [35, 0.6207, 21.6, 0.4329, 24.43],
  ])("dilutes a drink of %d %% vol as published", (abvPct, shaken, shakenAbv, stirred, stirredAbv) => {
    const byShaking = iceDilution({ technique: "shaken", abvPct });
    const byStirring = iceDilution({ technique: "stirred", abvPct });
    expect(Math.abs(byShaking - shaken)).toBeLessThan(1e-4);
    expect(Math.abs(byStirring - stirred)).toBeLessThan(1e-4);
    expect(dilutedAbvPct({ abvPct, dilution: byShaking })).toBeCloseTo(shakenAbv, 1.9);
    expect(dilutedAbvPct({ abvPct, dilution: byStirring })).toBeCloseTo(stirredAbv, 1.9);
  });

  it("keeps a shaken drink of 22 % within 50 to 60 %: copies with a wrong sign give 66 %", () => {
    const dilution = iceDilution({ technique: "shaken", abvPct: 22 });
    expect(dilution).toBeGreaterThan(0.5);
    expect(dilution).toBeLessThan(0.6);
  });

  it("is not fitted to beer or to neat spirit", () => {
    expect(() => iceDilution({ technique: "shaken", abvPct: 40 })).toThrow(/10 to 35/);
    expect(() => iceDilution({ technique: "stirred", abvPct: 5 })).toThrow(/10 to 35/);
  });
});

describe("GTIN (GS1 General Specifications, worked examples)", () => {
  it.each([
    ["629104150021", 3],
    ["730001100001", 7],
    ["890400021003", 7],
    ["03600024145", 7],
    ["501234567890", 0],
  ])("the check digit of %s is %d", (body, check) => {
    expect(gtinCheckDigit(body)).toBe(check);
  });

  it("is compared as 14 digits, and a digit read wrong is found", () => {
    expect(gtin14("6291041500213")).toBe("06291041500213");
    expect(gtin14("0 36000 24145 7")).toBe("00036000241457");
    expect(gtin14("6291041500214")).toBeUndefined();
  });

  it.each(["36000241457", "6.29E+12", "", "abc", "123456789012345"])(
    "is not what a spreadsheet makes of it: %s",
    (text) => {
      expect(gtin14(text)).toBeUndefined();
    },
  );
});

describe("juice of a fruit (USDA SR26, WEIGHT)", () => {
  // Grams of one fruit's juice over its own grams per fluid ounce.
  it.each([
    ["lime", 44, 30.8],
    ["lemon", 48, 30.5],
    ["orange", 86, 31.0],
    ["grapefruit", 196, 30.9],
  ] as const)("of one %s is %d g", (fruit, grams, gramsPerOunce) => {
    const volumeMl = (grams / gramsPerOunce) * US_FLUID_OUNCE_ML;
    expect(Math.abs(YIELD_PRIORS[fruit].meanMl / volumeMl - 1)).toBeLessThan(0.002);
  });

  it("of a lime varies by a quarter from lime to lime (44 ± 11 g, n 12)", () => {
    const { spreadMl, meanMl } = YIELD_PRIORS.lime;
    expect(spreadMl / meanMl).toBeCloseTo(11 / 44, 9);
    expect(expectedYield(YIELD_PRIORS.lime, 12).sd).toBeGreaterThan(spreadMl * Math.sqrt(12));
  });
});
