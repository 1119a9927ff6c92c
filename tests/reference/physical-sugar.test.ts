import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { OutOfRangeError } from "#engine/measure/range.ts";
import {
  brixFromDensity,
  brixFromGPerL,
  brixFromSg,
  saturationBrix,
  sucroseDensity,
  sucroseGPerL,
  waterDensity,
} from "#engine/measure/sucrose.ts";
import {
  crystalCaution,
  SWEETENERS,
  syrupByVolume,
  syrupByWeight,
  syrupCorrection,
  syrupRecipe,
} from "#engine/measure/syrup.ts";
import { POUND_G, US_FLUID_OUNCE_ML } from "#engine/measure/unit-factor.ts";

/** Pounds of a US gallon on a scale in air at 20 °C, as the sugar tables print it. */
function poundsPerGallon(brix: number): number {
  const density = sucroseDensity({ brix });
  const inAir = (density - 0.0012) / (1 - 0.0012 / 8.4);
  return (128 * US_FLUID_OUNCE_ML * inAir) / POUND_G;
}

describe("sugar in water", () => {
  // CRC Handbook of Chemistry and Physics, aqueous sucrose; ICUMSA SPS-4 lies within 0.28 kg/m³ of it up to 70 °Bx.
  it.each([
    [0, 998.2],
    [5, 1017.8],
    [10, 1038.1],
    [15, 1059.2],
    [20, 1081.0],
    [30, 1127.0],
    [40, 1176.5],
    [50, 1229.5],
    [60, 1286.4],
    [70, 1347.2],
  ])("weighs at %d °Bx what the handbook says, %d kg/m³", (brix, density) => {
    expect(Math.abs(1000 * sucroseDensity({ brix }) - density)).toBeLessThan(0.29);
  });

  // The polynomial of Bubník et al., Sugar Technologists Manual (1995), p. 164, evaluated independently.
  it.each([
    [0, 998.2, 0, 999.97, 995.64],
    [5, 1017.81, 50.9, 1020.03, 1015.04],
    [10, 1038.12, 103.8, 1040.81, 1035.14],
    [15, 1059.16, 158.9, 1062.33, 1055.98],
    [20, 1080.98, 216.2, 1084.63, 1077.58],
    [25, 1103.59, 275.9, 1107.72, 1099.98],
    [30, 1127.03, 338.1, 1131.65, 1123.2],
    [35, 1151.33, 403.0, 1156.43, 1147.29],
    [40, 1176.52, 470.6, 1182.1, 1172.26],
    [45, 1202.62, 541.2, 1208.67, 1198.15],
    [50, 1229.65, 614.8, 1236.16, 1224.99],
    [55, 1257.65, 691.7, 1264.58, 1252.79],
    [60, 1286.61, 772.0, 1293.94, 1281.58],
    [65, 1316.56, 855.8, 1324.24, 1311.37],
    [66.67, 1326.77, 884.6, 1334.57, 1321.55],
    [70, 1347.48, 943.2, 1355.46, 1342.16],
    [75, 1379.37, 1034.5, 1387.59, 1373.96],
  ])("is, at %d °Bx, of the density and strength of the polynomial", (brix, at20, gPerL, at4, at30) => {
    expect(1000 * sucroseDensity({ brix })).toBeCloseTo(at20, 1.99);
    expect(sucroseGPerL({ brix })).toBeCloseTo(gPerL, 0.95);
    expect(1000 * sucroseDensity({ brix, temperatureC: 4 })).toBeCloseTo(at4, 1.99);
    expect(1000 * sucroseDensity({ brix, temperatureC: 30 })).toBeCloseTo(at30, 1.99);
  });

  // NBS Circular C440 (1942), as reprinted in Chen, Brix and Pounds Solids Tables (Univ. Florida 1992).
  it.each([
    [0, 8.322],
    [1, 8.354],
    [2, 8.387],
    [3, 8.419],
    [4, 8.452],
    [5, 8.486],
  ])("weighs at %d °Bx %d lb a US gallon in air", (brix, pounds) => {
    expect(Math.abs(poundsPerGallon(brix) - pounds)).toBeLessThan(0.001);
  });

  it("belongs with water of 998.203 kg/m³: the other temperature scale would give 998.313", () => {
    expect(1000 * waterDensity()).toBeCloseTo(998.203, 3);
  });

  // Fitted to NBS Circular C440; published with the cubic.
  it.each([
    [1.04003, 10.0],
    [1.08302, 20.01],
    [1.17885, 40.02],
  ])("shows on a hydrometer as %d at %d °Bx", (sg, brix) => {
    expect(brixFromSg(sg)).toBeCloseTo(brix, 2);
  });

  it("is not read off a hydrometer above 40 °Bx", () => {
    expect(() => brixFromSg(1.2)).toThrow(OutOfRangeError);
  });

  // Bubník & Kadlec in Mathlouthi & Reiser, Sucrose (Blackie 1995), pp. 101–125.
  it.each([
    [0, 64.45],
    [4, 64.8],
    [5, 64.9],
    [10, 65.43],
    [15, 66.04],
    [20, 66.72],
    [25, 67.47],
    [30, 68.29],
    [40, 70.1],
    [50, 72.12],
    [60, 74.26],
    [80, 78.68],
    [100, 82.65],
  ])("is saturated at %d °C at %d °Bx", (temperatureC, brix) => {
    expect(saturationBrix({ temperatureC })).toBeCloseTo(brix, 1.99);
  });

  it("dissolves 200.5 g in 100 g of water at 20 °C", () => {
    const brix = saturationBrix({ temperatureC: 20 });
    expect((100 * brix) / (100 - brix)).toBeCloseTo(200.5, 0);
  });

  it("°Brix to density, and to grams a litre, and back is the same °Brix", () => {
    const solution = fc.record({
      brix: fc.double({ min: 0, max: 85, noNaN: true }),
      temperatureC: fc.double({ min: 0, max: 80, noNaN: true }),
    });
    fc.assert(
      fc.property(solution, ({ brix, temperatureC }) => {
        const densityGPerMl = sucroseDensity({ brix, temperatureC });
        expect(brixFromDensity({ densityGPerMl, temperatureC })).toBeCloseTo(brix, 6);
        const gPerL = sucroseGPerL({ brix, temperatureC });
        expect(brixFromGPerL({ gPerL, temperatureC })).toBeCloseTo(brix, 6);
      }),
    );
  });

  it.each([
    [{ brix: 86 }, /°Brix/],
    [{ brix: -1 }, /°Brix/],
    [{ brix: 50, temperatureC: 81 }, /temperature/],
    [{ brix: 50, temperatureC: -1 }, /temperature/],
  ])("has no density outside of the tables: %o", (solution, message) => {
    expect(() => sucroseDensity(solution)).toThrow(message);
  });
});

describe("a syrup", () => {
  it.each([
    [1, 50.0, 1.2297, 1.626],
    [1.5, 60.0, 1.2866, 1.943],
    [2, 66.67, 1.3268, 2.261],
  ])("of %d : 1 by weight is of %d °Bx", (sugar, brix, density, litres) => {
    const syrup = syrupByWeight({ sweetenerG: 1000 * sugar, waterG: 1000 });
    expect(syrup.brix).toBeCloseTo(brix, 2);
    expect(syrup.densityGPerMl).toBeCloseTo(density, 4);
    expect(syrup.volumeMl / 1000).toBeCloseTo(litres, 2.9);
  });

  it("of a cup to a cup is 45.9 °Bx, not 50: sugar has air between its grains", () => {
    const cupMl = 8 * US_FLUID_OUNCE_ML;
    expect(syrupByVolume({ sweetenerMl: cupMl, waterMl: cupMl }).brix).toBeCloseTo(45.9, 1);
  });

  it("of 50 °Bx that must reach 2 l takes 1230 g of sugar and 1230 g of water", () => {
    const { sweetenerG, waterG } = syrupRecipe({ brix: 50, volumeMl: 2000 });
    expect(sweetenerG).toBeCloseTo(1230, 0);
    expect(waterG).toBeCloseTo(1230, 0);
  });

  it("of 2 : 1 is just inside saturation at 20 °C and crystallises in the fridge", () => {
    const { brix } = syrupByWeight({ sweetenerG: 2000, waterG: 1000 });
    expect(crystalCaution({ brix, keptAtC: 20 })).toBeUndefined();
    expect(crystalCaution({ brix, keptAtC: 4 })).toMatch(
      /66\.7 °Bx is above saturation at 4 °C \(64\.8 °Bx\)/,
    );
  });

  it("that came out too sweet takes water, and one too thin takes sugar, to the gram", () => {
    const sweet = syrupCorrection({ weightG: 2000, measuredBrix: 52, wantedBrix: 50 });
    expect(sweet).toMatchObject({ addSweetenerG: 0 });
    expect(sweet.addWaterG).toBeCloseTo(80, 9);
    const thin = syrupCorrection({ weightG: 2000, measuredBrix: 48, wantedBrix: 50 });
    expect(thin).toMatchObject({ addWaterG: 0 });
    expect(thin.addSweetenerG).toBeCloseTo(80, 9);
    expect(() => syrupCorrection({ weightG: 2000, measuredBrix: 48, wantedBrix: 90 })).toThrow(
      OutOfRangeError,
    );
  });

  it("corrected is of the °Brix wanted, whatever was measured and with any sweetener", () => {
    const batch = fc.record({
      weightG: fc.double({ min: 10, max: 10_000, noNaN: true }),
      measuredBrix: fc.double({ min: 1, max: 84, noNaN: true }),
      wantedBrix: fc.double({ min: 1, max: 65, noNaN: true }),
      sweetener: fc.constantFrom(...Object.values(SWEETENERS)),
    });
    fc.assert(
      fc.property(batch, ({ weightG, measuredBrix, wantedBrix, sweetener }) => {
        const added = syrupCorrection({ weightG, measuredBrix, wantedBrix, sweetener });
        const sugarG = (weightG * measuredBrix + added.addSweetenerG * sweetener.solidsPct) / 100;
        const allG = weightG + added.addSweetenerG + added.addWaterG;
        expect((100 * sugarG) / allG).toBeCloseTo(wantedBrix, 8);
      }),
    );
  });

  it("planned and then weighed out is of the °Brix and volume that were planned", () => {
    const plan = fc.record({
      brix: fc.double({ min: 0, max: 60, noNaN: true }),
      volumeMl: fc.double({ min: 1, max: 20_000, noNaN: true }),
      sweetener: fc.constantFrom(...Object.values(SWEETENERS)),
    });
    fc.assert(
      fc.property(plan, ({ brix, volumeMl, sweetener }) => {
        const made = syrupByWeight({ ...syrupRecipe({ brix, volumeMl, sweetener }), sweetener });
        expect(made.brix).toBeCloseTo(brix, 8);
        expect(made.volumeMl / volumeMl).toBeCloseTo(1, 8);
      }),
    );
  });

  // USDA SR26, WEIGHT.txt and FOOD_DES.txt.
  it.each([
    ["sugar", 0.845],
    ["honey", 1.433],
    ["maple", 1.331],
    ["molasses", 1.424],
    ["agave", 1.4],
  ] as const)("measures out %s at %d g/ml", (name, gPerMl) => {
    expect(SWEETENERS[name].gPerMl).toBeCloseTo(gPerMl, 2.9);
  });

  it("of honey asks for more honey than sugar, by the water that honey holds", () => {
    const { sweetenerG, waterG } = syrupRecipe({ brix: 50, volumeMl: 1000, sweetener: SWEETENERS.honey });
    expect(sweetenerG / (sweetenerG + waterG)).toBeCloseTo(0.5 / 0.829, 6);
    const wanted = { brix: 83, volumeMl: 1000, sweetener: SWEETENERS.honey };
    expect(() => syrupRecipe(wanted)).toThrow(/syrup of honey/);
  });
});
