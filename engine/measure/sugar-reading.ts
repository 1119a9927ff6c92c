import { requireWithin } from "#engine/measure/range.ts";
import { brixFromDensity, brixFromSg, waterDensity } from "#engine/measure/sucrose.ts";

/** The most acid the correction below was printed for, in % of the weight (21 CFR 146.132 tabulates no more). */
const ACID_MAX_PCT = 25;

/**
 * What a refractometer set to sugar leaves out for each % of citric acid (of the weight), in °Bx: acid bends light less
 * than sugar does.
 *
 * Source: 21 CFR 146.132(a)(2), "0.012 + 0.193x − 0.0004x²". 6 % of acid → 1.1556.
 */
export function acidCorrection(acidPct: number): number {
  requireWithin(acidPct, { what: "Acid in % of the weight", low: 0, high: ACID_MAX_PCT });
  return acidPct === 0 ? 0 : 0.012 + 0.193 * acidPct - 0.0004 * acidPct ** 2;
}

/**
 * Soluble solids, and the sugar in them, from what a refractometer reads on something sour, both in % of the weight.
 *
 * Solids = reading + `acidCorrection`; sugar = solids − acid. So the meter reads too low as solids, too high as sugar:
 * a lime cordial at 48 °Bx with 4 % of acid → 48.8 % of solids, 44.8 % of sugar.
 */
export function readWithAcid({ brix, acidPct }: { brix: number; acidPct: number }): {
  solidsPct: number;
  sugarPct: number;
} {
  const solidsPct = brix + acidCorrection(acidPct);
  return { solidsPct, sugarPct: Math.max(0, solidsPct - acidPct) };
}

/** Up to this gravity the cubic of `brixFromSg` is valid. */
const SG_OF_CUBIC = 1.179;

/**
 * °Brix from a specific gravity 20/20 °C as a hydrometer shows it, also of syrups too heavy for `brixFromSg`.
 *
 * Above its 40 °Bx by density against water (ICUMSA SPS-4). 1.04003 → 10.00; 1.2319 → 50.0.
 */
export function brixFromGravity(sg: number): number {
  requireWithin(sg, { what: "A specific gravity of a sugar solution", low: 1, high: 1.44 });
  if (sg <= SG_OF_CUBIC) return brixFromSg(sg);
  return brixFromDensity({ densityGPerMl: sg * waterDensity() });
}

/** A reading of a hydrometer has three digits behind "1."; nothing as thin as 1.1 °Bx is made to a target. */
const GRAVITY = { low: 1.001, high: 1.44 };

/** °Brix from what was read off either meter: "48.5" is °Brix, "1.083" a specific gravity. 1.083 → 20.0. */
export function brixOfReading(reading: number): number {
  return reading >= GRAVITY.low && reading <= GRAVITY.high ? brixFromGravity(reading) : reading;
}
