import type { Uncertainty } from "#engine/measure/stated-uncertainty.ts";

/**
 * What is assumed until a venue states its own. Each figure is built from a named half-width or spread.
 *
 * - reading: a level in tenths (JCGM 100, 4.3.7 and F.2.2.1) and, common practice, an eye that may be off by as
 *   much again: √2 · 0.1/√12 = 0.041. No peer-reviewed study of eye-judged spirit bottles is known; people who
 *   judged the residue in cups did far worse (a quarter within 10 %), so a venue should state its own.
 * - scaleG: a scale with steps of 2 g, and ± 3 g for drips, a pourer, a label torn off (common practice).
 * - pourJigger, pourFree: 5 % and 12 % per pour (common practice).
 * - yield: the published spread of one lime (44 ± 11 g, USDA SR26) over a batch of a dozen: 0.25/√12 = 0.072.
 * - ml: a jug read to half of its 50 ml steps: 25/√12 = 7.2 ml (common practice).
 * - each: pieces counted to ± 1: 1/√3 = 0.58 (common practice).
 */
export const DEFAULT_UNCERTAINTY: Uncertainty = {
  reading: rootSumOfSquares([resolutionSd(0.1), resolutionSd(0.1)]),
  scaleG: rootSumOfSquares([resolutionSd(2), rectangularSd(3)]),
  pourJigger: 0.05,
  pourFree: 0.12,
  yield: 11 / 44 / Math.sqrt(12),
  ml: resolutionSd(25),
  each: rectangularSd(1),
};

/** Standard deviation of a value known only to lie within ± a half-width (JCGM 100, 4.3.7). ± 1 → 0.577. */
export function rectangularSd(halfWidth: number): number {
  return halfWidth / Math.sqrt(3);
}

/** Standard deviation from reading in steps (JCGM 100, F.2.2.1). Steps of 1 g → 0.2887 g. */
export function resolutionSd(step: number): number {
  return step / Math.sqrt(12);
}

/** Independent standard deviations of one unit added up (JCGM 100, 5.1.2). [3, 4] → 5; [] → 0. */
export function rootSumOfSquares(sds: readonly number[]): number {
  return Math.sqrt(sds.reduce((sum, sd) => sum + sd * sd, 0));
}

/** One input of a computed value: how much the value moves per unit of it, and its standard deviation. */
export type Contribution = { sensitivity: number; sd: number };

/** That two inputs, by their positions in the list, move together. */
export type Correlation = { first: number; second: number; r: number };

/**
 * Standard deviation of a value from those of its inputs, by the usual law (JCGM 100, equation 16):
 * u² = Σ(cᵢuᵢ)² + 2ΣΣ cᵢcⱼuᵢuⱼrᵢⱼ.
 *
 * [{ 1, 0.1 }, { 2, 0.3 }, { 3, 0.2 }, { 0.5, 1.1 }] as { sensitivity, sd } → 1.016.
 */
export function combinedSd(
  contributions: readonly Contribution[],
  correlations: readonly Correlation[] = [],
): number {
  const share = (at: number) => {
    const contribution = contributions[at];
    if (contribution === undefined) throw new RangeError(`A correlation names input ${at}; there is none.`);
    return contribution.sensitivity * contribution.sd;
  };
  const own = contributions.reduce((sum, _, at) => sum + share(at) ** 2, 0);
  const joint = correlations.reduce(
    (sum, { first, second, r }) => sum + 2 * r * share(first) * share(second),
    0,
  );
  return Math.sqrt(Math.max(0, own + joint));
}

/** One measured input of `propagate`. */
export type Input = { value: number; sd: number };

/**
 * A value computed from uncertain inputs, its standard deviation, and each input's own part in it (JCGM 100, 5.1).
 *
 * Sensitivities are taken by central differences over one standard deviation each way (JCGM 100, 5.1.3, note 2).
 * (m − t)/ρ with m 1012 ± 0.289 g, t 520 ± 8 g, ρ 0.9505 ± 0.0008 g/ml → 517.62 ± 8.43 ml.
 */
export function propagate(
  model: (values: number[]) => number,
  inputs: readonly Input[],
  correlations: readonly Correlation[] = [],
): { value: number; sd: number; parts: number[] } {
  const values = inputs.map(({ value }) => value);
  const contributions = inputs.map(({ sd }, at) => {
    if (sd === 0) return { sensitivity: 0, sd };
    const moved = (by: number) => model(values.with(at, (values[at] ?? 0) + by));
    return { sensitivity: (moved(sd) - moved(-sd)) / (2 * sd), sd };
  });
  const parts = contributions.map(({ sensitivity, sd }) => Math.abs(sensitivity * sd));
  return { value: model(values), sd: combinedSd(contributions, correlations), parts };
}
