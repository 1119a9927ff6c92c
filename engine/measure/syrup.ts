import { OutOfRangeError, requireWithin } from "#engine/measure/range.ts";
import { saturationBrix, sucroseDensity, waterDensity } from "#engine/measure/sucrose.ts";
import { readWithAcid } from "#engine/measure/sugar-reading.ts";

/** What sweetens a syrup: how much of its weight is sugar, and what a ml of it weighs as it is measured out. */
export type Sweetener = {
  name: string;
  /** Soluble solids, % of the weight. */
  solidsPct: number;
  /** As measured in a cup: heaped grains for sugar, the liquid for honey. */
  gPerMl: number;
};

const US_CUP_ML = 236.5882365;
const TEASPOON_ML = US_CUP_ML / 48;

/** Weights and water from USDA SR26 (WEIGHT, FOOD_DES); solids = 100 − water. Agave by its teaspoon: its cup is wrong. */
export const SWEETENERS = {
  sugar: { name: "granulated sugar", solidsPct: 99.98, gPerMl: 200 / US_CUP_ML },
  honey: { name: "honey", solidsPct: 82.9, gPerMl: 339 / US_CUP_ML },
  agave: { name: "agave syrup", solidsPct: 77.1, gPerMl: 6.9 / TEASPOON_ML },
  maple: { name: "maple syrup", solidsPct: 67.6, gPerMl: 315 / US_CUP_ML },
  molasses: { name: "molasses", solidsPct: 78.1, gPerMl: 337 / US_CUP_ML },
} as const satisfies Record<string, Sweetener>;

/** Sucrose as pure as the tables take it. */
const SUCROSE: Sweetener = { ...SWEETENERS.sugar, solidsPct: 100 };

export type Syrup = { brix: number; densityGPerMl: number; weightG: number; volumeMl: number };

/**
 * What sweetener and water weigh and fill once dissolved, at 20 °C unless stated.
 *
 * Sums of weights, then density by `sucroseDensity` (ICUMSA SPS-4; other sugars are within about 1 % of sucrose).
 * 1000 g sugar + 1000 g water → 50.00 °Bx, 1.2297 g/ml, 1626 ml; 2 : 1 → 66.67 °Bx.
 */
export function syrupByWeight(recipe: {
  sweetenerG: number;
  waterG: number;
  sweetener?: Sweetener;
  temperatureC?: number;
}): Syrup {
  const { sweetenerG, waterG, sweetener = SUCROSE, temperatureC = 20 } = recipe;
  const weightG = sweetenerG + waterG;
  if (!(sweetenerG >= 0 && waterG >= 0 && weightG > 0)) {
    throw new OutOfRangeError(
      "A syrup needs weights of sweetener and water that are not negative, and not both 0.",
    );
  }
  const brix = (sweetenerG * sweetener.solidsPct) / weightG;
  const densityGPerMl = sucroseDensity({ brix, temperatureC });
  return { brix, densityGPerMl, weightG, volumeMl: weightG / densityGPerMl };
}

/**
 * As `syrupByWeight`, from volumes as cups measure them: sugar by its bulk weight, water at 20 °C.
 *
 * 1 cup of sugar (200 g) and 1 cup of water (236 g) → 45.9 °Bx, not 50.
 */
export function syrupByVolume(recipe: {
  sweetenerMl: number;
  waterMl: number;
  sweetener?: Sweetener;
  temperatureC?: number;
}): Syrup {
  const { sweetenerMl, waterMl, sweetener = SUCROSE, temperatureC = 20 } = recipe;
  const sweetenerG = sweetenerMl * sweetener.gPerMl;
  return syrupByWeight({ sweetenerG, waterG: waterMl * waterDensity(), sweetener, temperatureC });
}

/**
 * Weights for a syrup of a wanted °Brix and volume, measured at 20 °C unless stated; ICUMSA SPS-4.
 *
 * 2000 ml at 50 °Bx → 1230 g sugar + 1230 g water. Throws OutOfRangeError when the sweetener itself is weaker.
 */
export function syrupRecipe(wanted: {
  brix: number;
  volumeMl: number;
  sweetener?: Sweetener;
  temperatureC?: number;
}): { sweetenerG: number; waterG: number; weightG: number } {
  const { brix, volumeMl, sweetener = SUCROSE, temperatureC = 20 } = wanted;
  requireWithin(brix, { what: `°Brix of a syrup of ${sweetener.name}`, low: 0, high: sweetener.solidsPct });
  requireWithin(volumeMl, { what: "The volume of a syrup in ml", low: 0, high: Number.MAX_VALUE });
  const weightG = volumeMl * sucroseDensity({ brix, temperatureC });
  const sweetenerG = (weightG * brix) / sweetener.solidsPct;
  return { sweetenerG, waterG: weightG - sweetenerG, weightG };
}

/**
 * What to stir into a batch that measured off target: water if it is too sweet, sweetener if it is too thin.
 *
 * By sums of weights; the volume it then has at 20 °C by ICUMSA SPS-4. 2000 g measured at 52 °Bx, wanted 50 → 80 g
 * water; 2000 g at 48, wanted 50 → 80 g sugar. What is sour reads low on a refractometer: with `acidPct` (% of the weight)
 * both figures are taken as its readings, and reckoned with as solids (`readWithAcid`).
 */
export function syrupCorrection(batch: {
  weightG: number;
  measuredBrix: number;
  wantedBrix: number;
  acidPct?: number;
  sweetener?: Sweetener;
}): { addWaterG: number; addSweetenerG: number; volumeMl: number } {
  const { weightG, sweetener = SUCROSE, acidPct = 0 } = batch;
  requireWithin(batch.measuredBrix, { what: "°Brix measured", low: 0, high: 85 });
  const measuredBrix = readWithAcid({ brix: batch.measuredBrix, acidPct }).solidsPct;
  const wantedBrix = readWithAcid({ brix: batch.wantedBrix, acidPct }).solidsPct;
  const isTooSweet = measuredBrix > wantedBrix;
  const high = isTooSweet ? 85 : Math.min(85, sweetener.solidsPct - 0.01);
  requireWithin(wantedBrix, { what: `°Brix wanted of ${sweetener.name}`, low: isTooSweet ? 0.01 : 0, high });
  const addWaterG = isTooSweet ? weightG * (measuredBrix / wantedBrix - 1) : 0;
  const addSweetenerG = isTooSweet
    ? 0
    : (weightG * (wantedBrix - measuredBrix)) / (sweetener.solidsPct - wantedBrix);
  const volumeMl = (weightG + addWaterG + addSweetenerG) / sucroseDensity({ brix: wantedBrix });
  return { addWaterG, addSweetenerG, volumeMl };
}

/**
 * A warning when a sucrose syrup may crystallise at the temperature it is kept at; undefined when it should not.
 *
 * `saturationBrix` (Bubník & Kadlec 1995). 66.67 °Bx at 4 °C warns (saturated at 64.8); at 20 °C it does not.
 */
export function crystalCaution({ brix, keptAtC }: { brix: number; keptAtC: number }): string | undefined {
  const limit = saturationBrix({ temperatureC: keptAtC });
  if (brix <= limit) return undefined;
  return (
    `${brix.toFixed(1)} °Bx is above saturation at ${keptAtC} °C (${limit.toFixed(1)} °Bx): sugar can crystallise. ` +
    "Keep it warmer or make it thinner."
  );
}
