import { baseAmount } from "#engine/catalogue.ts";
import type { Facts } from "#engine/facts.ts";
import { businessDateOf } from "#engine/sales/read/clock.ts";
import { addDays, type BusinessDate } from "#engine/time.ts";
import { inForce } from "#engine/versions.ts";

/** What the batches on record gave against the sheet: 1 = as the sheet says. */
export type YieldSeen = {
  batches: number;
  ratio: number;
  /** Standard error of the ratio. */
  sd: number;
  /** Whether the batches differ from the sheet by more than their scatter: two standard errors. */
  isOff: boolean;
};

const LOOK_BACK_DAYS = 91;
const BATCHES_MIN = 3;

/** Of more steps than this nobody can tell a thin batch from one step less. */
const STEPS_MAX = 4;

/**
 * What the batches of the last quarter gave, against the whole number of batch steps nearest to each.
 *
 * Undefined with fewer than three batches that can be told so, or without a step or yield in the sheet. Single batches
 * scatter by the venue's own figure or by what they show, whichever is more.
 * Steps of 950 ml, batches of 1850, 930, 1840 → ratio 0.974, 0.979, 0.968, on the average 0.974.
 */
export function yieldSeen(
  { catalogue, book }: Facts,
  prep: string,
  date: BusinessDate,
): YieldSeen | undefined {
  const ratios = book.batches.flatMap((batch) => {
    const day = businessDateOf(batch.at, catalogue.venue);
    if (batch.prep !== prep || day >= date || day < addDays(date, -LOOK_BACK_DAYS)) return [];
    const version = inForce(catalogue.preps.get(prep) ?? [], day);
    if (version === undefined) return [];
    const step = version.batchStep ?? version.yield;
    const made = baseAmount(catalogue, { item: prep, amount: batch.made, unit: batch.unit });
    const steps = made / baseAmount(catalogue, { item: prep, amount: step, unit: version.unit });
    const whole = Math.round(steps);
    return whole < 1 || whole > STEPS_MAX ? [] : [steps / whole];
  });
  if (ratios.length < BATCHES_MIN) return undefined;
  const ratio = ratios.reduce((sum, value) => sum + value, 0) / ratios.length;
  const scatter = Math.sqrt(
    ratios.reduce((sum, value) => sum + (value - ratio) ** 2, 0) / (ratios.length - 1),
  );
  const sd = Math.max(scatter, catalogue.venue.uncertainty.yield) / Math.sqrt(ratios.length);
  return { batches: ratios.length, ratio, sd, isOff: Math.abs(ratio - 1) > 2 * sd };
}

/** A sentence for the card where the sheet's yield is not what comes out; none where it is. */
export function yieldCautions(seen: YieldSeen | undefined): string[] {
  if (seen === undefined || !seen.isOff) return [];
  const percent = Math.round(Math.abs(seen.ratio - 1) * 100);
  const direction = seen.ratio < 1 ? "less" : "more";
  return [
    `The last ${seen.batches} batches gave ${percent} % ${direction} than the sheet: allow for it, or mend the yield.`,
  ];
}
