import { describe, expect, it } from "vitest";
import { alcoholOf } from "#engine/measure/alcohol.ts";
import { massFraction } from "#engine/measure/spirit-density.ts";
import {
  KEGS_ML,
  kegCalled,
  LAWFUL_SIZES,
  lawfulSizesMl,
  nearestLawfulSizes,
  US_BEER_BARREL_ML,
} from "#engine/measure/standard-sizes.ts";
import { saturationBrix, sucroseDensity } from "#engine/measure/sucrose.ts";
import { SWEETENERS } from "#engine/measure/syrup.ts";
import { IMPERIAL_FLUID_OUNCE_ML, US_FLUID_OUNCE_ML } from "#engine/measure/unit-factor.ts";
import { boughtG, juiceShare, PRODUCE, usualDensity, usualPieceG } from "#engine/measure/usual-figures.ts";
import { priorYield, YIELD_PRIORS } from "#engine/measure/yield.ts";

describe("bottles that may be sold", () => {
  const sizes = (kind: string, place: string) =>
    LAWFUL_SIZES.find((each) => each.kind === kind && each.place === place)?.sizesMl ?? [];

  // 27 CFR 5.203 (to 9 January 2025, bottles and cans) with T.D. TTB-165; T.D. TTB-200, 90 FR 1868, from 10 January 2025.
  it("US spirits", () => {
    const us = sizes("spirit", "US");
    expect(us).toEqual(
      expect.arrayContaining([50, 100, 200, 375, 700, 720, 750, 900, 1000, 1750, 1800, 355]),
    );
    expect(us).toEqual(
      expect.arrayContaining([187, 250, 331, 350, 475, 500, 570, 710, 945, 1500, 2000, 3000, 3750]),
    );
    expect(us).toHaveLength(25);
  });

  // 27 CFR 4.37 (2008); T.D. TTB-165; T.D. TTB-200.
  it("US wine", () => {
    const us = [...sizes("still wine", "US")].sort((a, b) => a - b);
    expect(us).toEqual([
      50, 100, 180, 187, 200, 250, 300, 330, 355, 360, 375, 473, 500, 550, 568, 600, 620, 700, 720, 750, 1000,
      1500, 1800, 2250, 3000,
    ]);
  });

  // SI 1988/2039, Schedule A1, and gov.uk, Specified quantities (Directive 2007/45/EC).
  it.each([
    ["still wine", [100, 187, 250, 375, 500, 620, 750, 1000, 1500]],
    ["sparkling wine", [125, 200, 375, 750, 1500]],
    ["fortified wine", [100, 200, 375, 500, 750, 1000, 1500]],
    ["spirit", [100, 200, 350, 500, 700, 1000, 1500, 1750, 2000]],
  ])("EU and UK %s", (kind, wanted) => {
    expect(sizes(kind, "EU and UK")).toEqual(wanted);
  });

  it.each([
    ["spirit", 740, [720, 750]],
    ["spirit", 730, [720, 750]],
    ["Sparkling wine", 800, [750, 1000]],
    ["wine", 430, [375, 473]],
    ["vermouth", 70, undefined],
    ["spirit", 750, undefined],
    ["spirit", 25.4 * US_FLUID_OUNCE_ML, undefined],
    // The fifth of a gallon, 757.08 ml, sold until 1980 (27 CFR 5.47).
    ["spirit", 0.2 * 128 * US_FLUID_OUNCE_ML, undefined],
    ["spirit", 4500, undefined],
    ["juice", 740, undefined],
  ])("%s of %d ml is nearest to %o", (category, volumeMl, nearest) => {
    expect(nearestLawfulSizes(category, volumeMl)).toEqual(nearest);
    expect(lawfulSizesMl("spirit")).toContain(700);
  });
});

describe("kegs (27 CFR 25.156, 25.158)", () => {
  it.each([
    ["1/2 barrel", 58.674, 1984, 103.25],
    ["1/4 barrel", 29.337, 992, 51.63],
    ["1/6 barrel", 19.558, 661.33, 34.42],
    ["1/8 barrel", 14.669, 496, 25.81],
    ["20 l", 20, 676.28, 35.2],
    ["30 l", 30, 1014.42, 52.79],
    ["50 l", 50, 1690.7, 87.99],
  ])("a keg of %s holds %d l, %d US fl oz, %d imperial pints", (name, litres, ounces, pints) => {
    const volumeMl = KEGS_ML[name] ?? 0;
    expect(Math.abs(volumeMl / 1000 - litres)).toBeLessThan(0.0006);
    expect(Math.abs(volumeMl / US_FLUID_OUNCE_ML - ounces)).toBeLessThan(0.006);
    expect(Math.abs(volumeMl / IMPERIAL_FLUID_OUNCE_ML / 20 - pints)).toBeLessThan(0.006);
  });

  it.each([
    ["5 gallons", 0.16129],
    ["30 l", 0.25565],
    ["50 l", 0.42608],
  ])("%s are %d of a barrel of 31 gallons", (name, barrels) => {
    expect((KEGS_ML[name] ?? 0) / US_BEER_BARREL_ML).toBeCloseTo(barrels, 5);
  });

  it.each([
    [24, 12 * US_FLUID_OUNCE_ML, 0.07258],
    [12, 750, 0.0767],
    [24, 500, 0.10226],
    [6, 2000, 0.10226],
    [1, 5000, 0.04261],
    [12, 6 * US_FLUID_OUNCE_ML, 0.01815],
  ])("a case of %d × %d ml is %d of a barrel", (count, sizeMl, barrels) => {
    expect((count * sizeMl) / US_BEER_BARREL_ML).toBeCloseTo(barrels, 5);
  });

  it("a sixth of a barrel is not 20 l", () => {
    expect(kegCalled("Sixtel")?.volumeMl).toBeCloseTo(19_558, 0);
    expect(kegCalled("1/2 bbl")?.keg).toBe("1/2 barrel");
    expect(kegCalled("50 l keg")).toBeUndefined();
  });
});

describe("alcohol in a glass", () => {
  // UK: units = ml × % ÷ 1000 (Open University); NIAAA: 0.6 US fl oz, 14 g.
  it.each([
    [25, 40, 1],
    [750, 13, 9.75],
  ])("%d ml of %d %% are %d UK units", (volumeMl, abv, units) => {
    expect(alcoholOf((volumeMl * abv) / 100).ukUnits).toBeCloseTo(units, 10);
  });

  it.each([
    [12 * US_FLUID_OUNCE_ML, 5],
    [5 * US_FLUID_OUNCE_ML, 12],
    [1.5 * US_FLUID_OUNCE_ML, 40],
  ])("%d ml of %d %% are one US standard drink of 14 g", (volumeMl, abv) => {
    const { usDrinks, ethanolG } = alcoholOf((volumeMl * abv) / 100);
    expect(usDrinks).toBeCloseTo(1, 10);
    expect(ethanolG).toBeCloseTo(14, 1);
  });

  it("a UK unit weighs 7.9 g, which print rounds to 8", () => {
    expect(alcoholOf(10).ethanolG).toBeCloseTo(7.892, 3);
  });
});

// USDA SR26; its measures are good to 2 %.
describe("juice and other liquids (USDA SR26, WEIGHT and ABBREV)", () => {
  it.each([
    ["Fresh lime juice", 1.041, 90.79],
    ["Lemon juice", 1.031, 92.31],
    ["Orange juice", 1.048, 88.3],
    ["Pink grapefruit juice", 1.045, 90.0],
    ["Pineapple juice", 1.058, 86.37],
    ["Apple juice", 1.048, 88.24],
    ["Pomegranate juice", 1.062, 85.95],
    ["Passion fruit juice", 1.045, 85.62],
    ["Tomato juice", 1.028, 93.9],
  ])(
    "%s weighs %d g/ml, and by its solids alone the sugar tables say so within 2 %%",
    (name, gPerMl, waterPct) => {
      expect(usualDensity(name)?.figure).toBeCloseTo(gPerMl, 2.9);
      const bySolids = sucroseDensity({ brix: 100 - waterPct });
      expect(Math.abs(bySolids / gPerMl - 1)).toBeLessThan(0.02);
    },
  );

  it.each([
    ["Whole milk", 1.031],
    ["Heavy cream", 1.008],
    ["Condensed milk", 1.292],
    ["Coffee liqueur", 1.177],
    ["Crème de menthe", 1.136],
    ["Tonic water", 1.031],
    ["Cola", 1.038],
    ["Soda water", 1.001],
    ["Harbour lager", 1.004],
    ["House red wine", 0.994],
  ])("%s weighs %d g/ml", (name, gPerMl) => {
    expect(usualDensity(name)?.figure).toBeCloseTo(gPerMl, 2.9);
  });

  it("knows nothing of a spirit or a syrup by its name", () => {
    expect(usualDensity("Dry gin")).toBeUndefined();
    expect(usualDensity("Sugar syrup")).toBeUndefined();
  });

  // Water of an 80 proof spirit: 66.6 % of the weight; R 22 has 66.70.
  it("and R 22 agree on the water in a spirit of 40 %", () => {
    expect(Math.abs(100 * (1 - massFraction({ abvPct: 40 })) - 66.6)).toBeLessThan(0.15);
  });
});

describe("fruit as it is bought (USDA SR26, refuse and portions)", () => {
  it.each([
    ["lime", 79.8],
    ["lemon", 109],
    ["orange", 179],
    ["pineapple", 1775],
  ])("one %s weighs %d g", (fruit, weightG) => {
    expect(Math.abs((usualPieceG(fruit)?.figure ?? 0) - weightG)).toBeLessThan(0.6);
    expect(usualPieceG(`Fresh ${fruit}s`)?.name).toBe(fruit);
  });

  it("an egg of 50 g weighs 57 g in its shell", () => {
    expect(usualPieceG("Egg")?.figure).toBeCloseTo(56.8, 1);
    expect(usualPieceG("Egg white")).toBeUndefined();
  });

  it.each([
    ["lime", 0.55],
    ["lemon", 0.44],
    ["orange", 0.48],
  ])("a %s gives %d of its weight as juice", (fruit, share) => {
    const produce = PRODUCE[fruit];
    if (produce === undefined) throw new Error(fruit);
    expect(juiceShare(produce)).toBeCloseTo(share, 2);
  });

  it("a small lime gives less than the published one, in proportion; a usual one as much", () => {
    const lime = PRODUCE.lime;
    if (lime === undefined) throw new Error("lime");
    expect(priorYield("Limes", null)).toBe(YIELD_PRIORS.lime);
    expect(priorYield("Lime", boughtG(lime))?.meanMl).toBeCloseTo(YIELD_PRIORS.lime.meanMl, 0);
    expect(priorYield("Lime", 60)?.meanMl).toBeCloseTo(31.8, 0);
    expect(priorYield("Yuzu", 60)).toBeUndefined();
  });

  // 7 CFR 51.1000 and 51.1002: Persian limes of U.S. No. 1 hold at least 42 % juice by volume.
  it("gives no less than the lawful least of a lime", () => {
    const lime = PRODUCE.lime;
    if (lime === undefined) throw new Error("lime");
    const limeMl = boughtG(lime) / 1.0;
    expect(YIELD_PRIORS.lime.meanMl / limeMl).toBeGreaterThan(0.42);
  });
});

describe("sweeteners", () => {
  // The older handbook series (Mohos, Confectionery and Chocolate Engineering, 2010, table A2.3).
  it.each([
    [0, 64.18],
    [5, 64.87],
    [10, 65.58],
    [20, 67.09],
    [30, 68.8],
    [50, 72.25],
    [80, 78.36],
    [100, 82.97],
  ])("two tables of solubility agree to half a percent at %d °C", (temperatureC, brix) => {
    expect(Math.abs(saturationBrix({ temperatureC }) - brix)).toBeLessThan(0.55);
  });

  it("agave is taken by its teaspoon (6.9 g): its quarter cup of 55 g would float on water", () => {
    expect(SWEETENERS.agave.gPerMl).toBeCloseTo(1.4, 2);
    expect(55 / (236.588 / 4)).toBeLessThan(1);
  });

  // US grade A and B honey holds at most 18.6 % water.
  it("honey has the water of a lawful grade", () => {
    expect(100 - SWEETENERS.honey.solidsPct).toBeLessThanOrEqual(18.6);
  });
});
