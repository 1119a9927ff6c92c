import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { blend, waterToReach } from "#engine/measure/blend.ts";
import { OutOfRangeError } from "#engine/measure/range.ts";
import {
  abvPctOf,
  densityByMassFraction,
  ETHANOL_G_PER_ML,
  massFraction,
  spiritDensity,
  spiritStrength,
  spiritVolumeAt,
} from "#engine/measure/spirit-density.ts";
import { POUND_G, US_FLUID_OUNCE_ML } from "#engine/measure/unit-factor.ts";

const TEMPERATURES_C = [-18, 0, 4, 10, 15, 20, 25, 30, 40];

// OIML R 22, evaluated independently from its printed coefficients; kg/m³ by % vol, mass %, then by temperature.
const TABLE: readonly (readonly [abv: number, massPct: number, densities: readonly (number | null)[]])[] = [
  [0, 0, [null, 999.84, 999.97, 999.7, 999.1, 998.2, 997.04, 995.65, 992.21]],
  [5, 3.9818, [null, 992.84, 992.93, 992.61, 991.98, 991.06, 989.86, 988.41, 984.82]],
  [10, 8.0149, [null, 987.12, 987.07, 986.56, 985.78, 984.71, 983.37, 981.79, 978.01]],
  [12, 9.641, [null, 985.16, 985.02, 984.39, 983.52, 982.35, 980.93, 979.28, 975.36]],
  [15, 12.0929, [null, 982.53, 982.22, 981.35, 980.3, 978.97, 977.39, 975.59, 971.41]],
  [17, 13.7359, [null, 980.95, 980.5, 979.44, 978.24, 976.79, 975.09, 973.17, 968.77]],
  [20, 16.2135, [null, 978.75, 978.06, 976.68, 975.24, 973.56, 971.65, 969.54, 964.77]],
  [24, 19.5434, [null, 975.96, 974.9, 973.03, 971.22, 969.21, 967.0, 964.6, 959.28]],
  [30, 24.6071, [null, 971.38, 969.75, 967.12, 964.74, 962.21, 959.52, 956.67, 950.53]],
  [35, 28.9072, [974.9, 966.62, 964.56, 961.34, 958.53, 955.59, 952.52, 949.33, 942.6]],
  [37.5, 31.0908, [973.08, 963.79, 961.55, 958.07, 955.06, 951.94, 948.71, 945.37, 938.37]],
  [38, 31.5305, [972.66, 963.18, 960.91, 957.38, 954.33, 951.18, 947.92, 944.55, 937.51]],
  [40, 33.2996, [970.78, 960.63, 958.22, 954.52, 951.33, 948.05, 944.67, 941.19, 933.97]],
  [43, 35.9865, [967.39, 956.39, 953.82, 949.88, 946.51, 943.06, 939.52, 935.9, 928.45]],
  [45, 37.8011, [964.76, 953.3, 950.64, 946.57, 943.09, 939.54, 935.92, 932.22, 924.62]],
  [47, 39.6355, [961.86, 950.01, 947.27, 943.08, 939.52, 935.88, 932.18, 928.4, 920.68]],
  [50, 42.4257, [957.05, 944.73, 941.89, 937.56, 933.89, 930.14, 926.33, 922.47, 914.57]],
  [55, 47.1847, [948.02, 935.12, 932.16, 927.66, 923.84, 919.96, 916.02, 912.03, 903.88]],
  [57, 49.1282, [944.12, 931.03, 928.04, 923.48, 919.62, 915.7, 911.72, 907.68, 899.44]],
  [60, 52.0884, [938.02, 924.68, 921.63, 917.01, 913.09, 909.11, 905.08, 900.98, 892.62]],
  [63, 55.1053, [931.64, 918.07, 914.99, 910.31, 906.34, 902.31, 898.22, 894.07, 885.6]],
  [70, 62.3861, [915.76, 901.75, 898.58, 893.76, 889.69, 885.56, 881.37, 877.13, 868.46]],
  [75.5, 68.3755, [902.22, 887.96, 884.73, 879.82, 875.68, 871.48, 867.22, 862.92, 854.14]],
  [80, 73.48, [890.41, 875.97, 872.69, 867.72, 863.52, 859.27, 854.97, 850.62, 841.76]],
  [90, 85.6646, [861.17, 846.21, 842.85, 837.77, 833.5, 829.18, 824.82, 820.41, 811.41]],
  [95, 92.4076, [843.38, 828.45, 825.08, 819.98, 815.7, 811.38, 807.03, 802.66, 793.81]],
  [96, 93.8384, [839.37, 824.49, 821.12, 816.02, 811.73, 807.42, 803.08, 798.72, 789.93]],
  [100, 100, [821.43, 806.22, 802.84, 797.76, 793.51, 789.24, 784.95, 780.65, 771.93]],
];

describe("OIML R 22", () => {
  it.each(TABLE)("gives the density of %d %% vol at every temperature of the table", (abv, massPct, row) => {
    expect(100 * massFraction({ abvPct: abv })).toBeCloseTo(massPct, 4);
    row.forEach((density, at) => {
      const temperatureC = TEMPERATURES_C[at] ?? 20;
      if (density === null)
        expect(() => spiritDensity({ abvPct: abv, temperatureC })).toThrow(/ice or slush/);
      else expect(1000 * spiritDensity({ abvPct: abv, temperatureC })).toBeCloseTo(density, 1.99);
    });
  });

  // A printed alcohol-dilution table, 20 °C, agreeing to 0.005 kg/m³.
  it.each([
    [91, 825.83],
    [92, 822.39],
    [93, 818.85],
    [94, 815.18],
    [97, 803.27],
    [98, 798.9],
    [99, 794.25],
  ])("gives the printed density of %d %% vol at 20 °C", (abvPct, density) => {
    expect(Math.abs(1000 * spiritDensity({ abvPct }) - density)).toBeLessThan(0.01);
  });

  // Table values of R 22 itself.
  it("gives three values of its own printed tables", () => {
    expect(1000 * densityByMassFraction({ massFraction: 0.31, temperatureC: 13 })).toBeCloseTo(956.42, 1.99);
    expect(1000 * densityByMassFraction({ massFraction: 0.88, temperatureC: -10 })).toBeCloseTo(848.57, 1.99);
    const abvPct = spiritStrength({ densityGPerMl: 0.8484 });
    expect(massFraction({ abvPct })).toBeCloseTo(0.7796, 4);
  });

  it("states 789.24 kg/m³ for ethanol at 20 °C, so that '8 g' of a 10 ml unit is rounded from 7.892 g", () => {
    expect(1000 * ETHANOL_G_PER_ML).toBeCloseTo(789.2391, 4);
    expect(10 * ETHANOL_G_PER_ML).toBeCloseTo(7.892, 3);
  });

  // USDA SR26: water of an 80 proof spirit, 66.6 % of the weight (R 22: 66.70).
  it("leaves two thirds of the weight of a 40 % spirit to water", () => {
    expect(100 * (1 - massFraction({ abvPct: 40 }))).toBeCloseTo(66.6, 0);
  });

  // USDA SR26 has 27.8 g per fl oz for 80 to 100 proof alike: right only near 90 proof.
  it.each([
    [40, 28.04],
    [43, 27.89],
    [45, 27.79],
    [50, 27.51],
  ])("weighs a US fluid ounce of %d %% vol at %d g", (abvPct, weightG) => {
    expect(US_FLUID_OUNCE_ML * spiritDensity({ abvPct })).toBeCloseTo(weightG, 2);
  });
});

describe("a bottle on the scale", () => {
  it.each([
    [750, 40, 711.0],
    [700, 40, 663.6],
    [1000, 40, 948.0],
    [1750, 40, 1659.1],
    [750, 45, 704.7],
  ])("holds, at %d ml of %d %% vol, %d g", (volumeMl, abvPct, netG) => {
    expect(volumeMl * spiritDensity({ abvPct })).toBeCloseTo(netG, 0.99);
  });

  it("is read 5 % low when spirit is taken for water", () => {
    const netG = 750 * spiritDensity({ abvPct: 40 });
    expect(1 - netG / spiritDensity({ abvPct: 0 }) / 750).toBeCloseTo(0.05, 3);
  });

  it.each([
    [4, 692.6],
    [30, 705.1],
    [-18, 683.6],
  ])("of 700 ml at 40 %% vol fills at %d °C only %d ml", (temperatureC, volumeMl) => {
    expect(spiritVolumeAt({ volumeMl: 700, abvPct: 40, temperatureC })).toBeCloseTo(volumeMl, 0.99);
  });
});

describe("poured together", () => {
  it("500 ml of ethanol and 500 ml of water fill 964.6 ml of 51.83 % vol: volumes do not add", () => {
    const mixed = blend([{ volumeMl: 500, abvPct: 100 }, { volumeMl: 500 }]);
    expect(mixed.volumeMl).toBeCloseTo(964.6, 1);
    expect(mixed.abvPct).toBeCloseTo(51.83, 2);
  });

  it("a litre of 60 % brought to 40 % takes 513 g of water and fills 1.5 l", () => {
    const { waterG, volumeMl } = waterToReach({ volumeMl: 1000, abvPct: 60, wantedAbvPct: 40 });
    expect(waterG).toBeCloseTo(513, 0);
    expect(volumeMl).toBeCloseTo(1500, 3);
    expect(() => waterToReach({ volumeMl: 1000, abvPct: 40, wantedAbvPct: 60 })).toThrow(OutOfRangeError);
  });
});

describe("US proof, 27 CFR 30 (weights in air at 60 °F)", () => {
  const SIXTY_F = (60 - 32) / 1.8;
  const GALLON_ML = 128 * US_FLUID_OUNCE_ML;
  const AIR_G_PER_ML = 0.00122;
  const BRASS_G_PER_ML = 8.4;

  /** Strength at 20 °C whose volume share at 60 °F is the given one: US proof refers to 60 °F, % vol to 20 °C. */
  function abvAt20(pctAt60F: number): number {
    let abvPct = pctAt60F;
    for (let step = 0; step < 20; step += 1) {
      const ethanolMl = spiritDensity({ abvPct: 100, temperatureC: SIXTY_F });
      const here =
        (100 * massFraction({ abvPct }) * spiritDensity({ abvPct, temperatureC: SIXTY_F })) / ethanolMl;
      abvPct = Math.max(0, Math.min(100, abvPct + pctAt60F - here));
    }
    return abvPct;
  }

  function gallonsOf({ pounds, proof }: { pounds: number; proof: number }): number {
    const density = spiritDensity({ abvPct: abvAt20(proof / 2), temperatureC: SIXTY_F });
    const trueG = (pounds * POUND_G * (1 - AIR_G_PER_ML / BRASS_G_PER_ML)) / (1 - AIR_G_PER_ML / density);
    return trueG / density / GALLON_ML;
  }

  it.each([
    [81_000, 190, 22_650.8],
    [60_378, 190, 16_884.1],
    [321.5, 86, 35.1],
    [1000, 200, 302.58],
  ])("%d lb at %d proof are %d proof gallons", (pounds, proof, proofGallons) => {
    const reckoned = (gallonsOf({ pounds, proof }) * proof) / 100;
    expect(Math.abs(reckoned / proofGallons - 1)).toBeLessThan(proofGallons < 100 ? 0.0015 : 0.0002);
  });

  it("81,000 lb at 190 proof are 11,921.6 wine gallons", () => {
    expect(gallonsOf({ pounds: 81_000, proof: 190 }) / 11_921.6).toBeCloseTo(1, 3);
  });

  it("1,000 lb at 200 proof take 82.03 lb of water to come to 190 proof (27 CFR 30.64)", () => {
    const waterPounds = 1000 / massFraction({ abvPct: abvAt20(95) }) - 1000;
    expect(Math.abs(waterPounds / 82.03 - 1)).toBeLessThan(0.002);
  });

  it("a pound of water fills 0.120074 wine gallons (27 CFR 30.41)", () => {
    expect(gallonsOf({ pounds: 1, proof: 0 })).toBeCloseTo(0.120074, 5);
  });

  it("ethanol has a specific gravity of 0.7939 at 60/60 °F (27 CFR 5.11)", () => {
    const ethanol = spiritDensity({ abvPct: 100, temperatureC: SIXTY_F });
    const gravity = ethanol / spiritDensity({ abvPct: 0, temperatureC: SIXTY_F });
    expect(Math.abs(gravity - 0.7939)).toBeLessThan(1e-4);
  });

  it("a spirit that shows 193 proof at 75 °F is of 189.5 (27 CFR 30.61)", () => {
    const shown = spiritDensity({ abvPct: abvAt20(96.5), temperatureC: SIXTY_F });
    const abvPct = spiritStrength({ densityGPerMl: shown, temperatureC: (75 - 32) / 1.8 });
    const inGlass = 2 * (abvPct + 96.5 - abvAt20(96.5));
    // A glass hydrometer itself swells, which the density alone does not know.
    expect(Math.abs(inGlass - 189.5)).toBeLessThan(0.3);
  });
});

describe("UK (Sikes) proof, Customs and Excise Act 1952", () => {
  it("weighs 12/13 of its volume of water at 51 °F: 57.15 % vol at 20 °C", () => {
    const temperatureC = (51 - 32) / 1.8;
    const density = (12 / 13) * spiritDensity({ abvPct: 0, temperatureC });
    const abvPct = spiritStrength({ densityGPerMl: density, temperatureC });
    expect(abvPct).toBeCloseTo(57.15, 2);
    expect(100 * massFraction({ abvPct })).toBeCloseTo(49.27, 2);
    // 70° of UK proof is about 40 % vol.
    expect(0.7 * abvPct).toBeCloseTo(40, 1.3);
  });
});

describe("the limits of the formula", () => {
  it.each([
    [{ abvPct: 40, temperatureC: 41 }, /temperature/],
    [{ abvPct: 40, temperatureC: -21 }, /temperature/],
    [{ abvPct: 101 }, /strength/],
    [{ abvPct: -1 }, /strength/],
    [{ abvPct: Number.NaN }, /strength/],
    [{ abvPct: 20, temperatureC: -18 }, /20 % vol is ice or slush/],
    [{ abvPct: 0, temperatureC: -1 }, /ice or slush/],
  ])("are told, not overstepped: %o", (spirit, message) => {
    expect(() => spiritDensity(spirit)).toThrow(OutOfRangeError);
    expect(() => spiritDensity(spirit)).toThrow(message);
  });

  it("a liqueur heavier than water has no strength by weight", () => {
    expect(() => spiritStrength({ densityGPerMl: 1.05 })).toThrow(/Sugar in it/);
  });

  it("strength to density and back is the same strength at any temperature", () => {
    const liquid = fc.record({
      abvPct: fc.double({ min: 30, max: 100, noNaN: true }),
      temperatureC: fc.double({ min: -14, max: 40, noNaN: true }),
    });
    fc.assert(
      fc.property(liquid, (spirit) => {
        const back = spiritStrength({
          densityGPerMl: spiritDensity(spirit),
          temperatureC: spirit.temperatureC,
        });
        expect(back).toBeCloseTo(spirit.abvPct, 6);
      }),
    );
    fc.assert(
      fc.property(fc.double({ min: 0, max: 100, noNaN: true }), (abvPct) => {
        expect(abvPctOf({ massFraction: massFraction({ abvPct }) })).toBeCloseTo(abvPct, 9);
      }),
    );
  });

  it("more ethanol never makes a spirit heavier, and warmth never does above 4 °C", () => {
    const share = fc.double({ min: 0, max: 1, noNaN: true });
    fc.assert(
      fc.property(share, share, fc.double({ min: 4, max: 39, noNaN: true }), (one, other, temperatureC) => {
        const [weak, strong] = one < other ? [one, other] : [other, one];
        const at = (massFraction: number) => densityByMassFraction({ massFraction, temperatureC });
        expect(at(strong)).toBeLessThanOrEqual(at(weak) + 1e-12);
        const warmer = densityByMassFraction({ massFraction: weak, temperatureC: temperatureC + 1 });
        expect(warmer).toBeLessThan(at(weak) + 1e-12);
      }),
    );
  });

  it("blending never makes or loses ethanol or weight", () => {
    const part = fc.record({
      volumeMl: fc.double({ min: 1, max: 1000, noNaN: true }),
      abvPct: fc.double({ min: 0, max: 100, noNaN: true }),
    });
    fc.assert(
      fc.property(fc.array(part, { minLength: 1, maxLength: 5 }), (parts) => {
        const mixed = blend(parts);
        const ethanolMl = parts.reduce((sum, { volumeMl, abvPct }) => sum + (volumeMl * abvPct) / 100, 0);
        expect((mixed.volumeMl * mixed.abvPct) / 100).toBeCloseTo(ethanolMl, 6);
        // Weak mixtures swell, by little over a thousandth at most: see the printed densities below.
        expect(mixed.contractionMl).toBeGreaterThan(-2e-3 * mixed.volumeMl);
        const weightG = parts.reduce((sum, each) => sum + each.volumeMl * spiritDensity(each), 0);
        expect(mixed.weightG).toBeCloseTo(weightG, 6);
      }),
    );
  });

  // Printed at 20 °C (OIML R 22 by an alcohol-dilution table): 998.20, 984.71 and 973.56 kg/m³ at 0, 10 and 20 % vol.
  it("lets water and a weak spirit swell as the printed densities have it", () => {
    const mixed = blend([
      { volumeMl: 500, abvPct: 0 },
      { volumeMl: 500, abvPct: 20 },
    ]);
    const weightG = 499.1 + 486.78;
    expect(mixed.volumeMl).toBeCloseTo(weightG / 0.98471, 0);
    expect(mixed.contractionMl / mixed.volumeMl).toBeCloseTo(-0.0012, 3);
  });
});
