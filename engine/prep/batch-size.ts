/** How much to make, and in how many batches. */
export type BatchSize = { make: number; batches: number };

/** Smaller shortfalls than this share of a step are the dust of floating point, not a reason to cook. */
const DUST = 1e-9;

/**
 * A shortfall rounded up to whole batch steps and split by what the vessel holds; all in one unit.
 *
 * A batch is the most whole steps that fit the vessel; a step larger than the vessel counts as one batch each.
 * Short 900, step 500 → make 1000 in 1; short 900, step 500, vessel 600 → make 1000 in 2 (500 each).
 */
export function batchSize({
  short,
  batchStep,
  vesselMax,
}: {
  short: number;
  batchStep: number | null;
  vesselMax: number | null;
}): BatchSize {
  if (!(short > DUST * (batchStep ?? 1))) return { make: 0, batches: 0 };
  const make = batchStep === null ? short : Math.ceil(short / batchStep - DUST) * batchStep;
  return { make, batches: Math.max(1, Math.ceil(make / largestBatch({ batchStep, vesselMax }) - DUST)) };
}

/** The most one batch can be: whole steps within the vessel; unlimited without a vessel. */
export function largestBatch({
  batchStep,
  vesselMax,
}: {
  batchStep: number | null;
  vesselMax: number | null;
}): number {
  if (vesselMax === null) return Number.POSITIVE_INFINITY;
  if (batchStep === null) return vesselMax;
  return Math.max(1, Math.floor(vesselMax / batchStep + DUST)) * batchStep;
}

/**
 * What goes into each vessel: as many full ones as there are, then the rest.
 *
 * 1500 in steps of 500 with a vessel of 1200 → [1000, 500]. Nothing to make → [].
 */
export function vesselLoads(
  make: number,
  sizes: { batchStep: number | null; vesselMax: number | null },
): number[] {
  if (make <= 0) return [];
  const full = Math.min(make, largestBatch(sizes));
  const count = Math.ceil(make / full - DUST);
  return Array.from({ length: count }, (_, load) => (load < count - 1 ? full : make - full * (count - 1)));
}
