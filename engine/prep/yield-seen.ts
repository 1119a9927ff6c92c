import { baseAmount, type Catalogue } from "#engine/catalogue.ts";
import type { Facts } from "#engine/facts.ts";
import { makingOf } from "#engine/prep/making.ts";
import { businessDateOf } from "#engine/sales/read/clock.ts";
import { inputsByBatch } from "#engine/stock/batch-inputs.ts";
import type { Batch, UsedInput } from "#engine/stock/movement.ts";
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

/** Rounded weights still are the spec's proportions. */
const PROPORTIONS_OFF = 0.02;

/**
 * What the batches of the last quarter gave: against what the inputs on record should have given by the spec, else against
 * the whole number of batch steps nearest to each.
 *
 * Undefined with fewer than three batches that can be told so, or without a step or yield in the sheet. Single batches
 * scatter by the venue's own figure or by what they show, whichever is more.
 * Steps of 950 ml, batches of 1850, 930, 1840 → ratio 0.974, 0.979, 0.968, on the average 0.974.
 */
export function yieldSeen(facts: Facts, prep: string, date: BusinessDate): YieldSeen | undefined {
  const { catalogue, book } = facts;
  const used = inputsByBatch(book);
  const ratios = book.batches.flatMap((batch) => {
    const day = businessDateOf(batch.at, catalogue.venue);
    if (batch.prep !== prep || day >= date || day < addDays(date, -LOOK_BACK_DAYS)) return [];
    const otherwise = used.get(batch);
    const ratio =
      otherwise === undefined
        ? ratioToSteps(catalogue, batch, day)
        : ratioToInputs(catalogue, batch, { day, used: otherwise });
    return ratio ?? [];
  });
  if (ratios.length < BATCHES_MIN) return undefined;
  const ratio = ratios.reduce((sum, value) => sum + value, 0) / ratios.length;
  const scatter = Math.sqrt(
    ratios.reduce((sum, value) => sum + (value - ratio) ** 2, 0) / (ratios.length - 1),
  );
  const sd = Math.max(scatter, catalogue.venue.uncertainty.yield) / Math.sqrt(ratios.length);
  return { batches: ratios.length, ratio, sd, isOff: Math.abs(ratio - 1) > 2 * sd };
}

function ratioToSteps(catalogue: Catalogue, batch: Batch, day: BusinessDate): number | undefined {
  const version = inForce(catalogue.preps.get(batch.prep) ?? [], day);
  if (version === undefined) return undefined;
  const step = version.batchStep ?? version.yield;
  const steps =
    madeOf(catalogue, batch) / baseAmount(catalogue, { item: batch.prep, amount: step, unit: version.unit });
  const whole = Math.round(steps);
  return whole < 1 || whole > STEPS_MAX ? undefined : steps / whole;
}

/** Only where all that the spec names is on record and in the spec's proportions: else it was another recipe. */
function ratioToInputs(
  catalogue: Catalogue,
  batch: Batch,
  { day, used }: { day: BusinessDate; used: readonly UsedInput[] },
): number | undefined {
  const making = makingOf(catalogue, batch.prep, day);
  if (making === undefined || making.cuts.length > 0 || used.length !== making.inputs.length)
    return undefined;
  const sizes = used.flatMap((input) => {
    const perUnit = making.inputs.find(({ item }) => item === input.item)?.perUnit;
    return perUnit === undefined ? [] : [baseAmount(catalogue, input) / perUnit];
  });
  const [least, most] = [Math.min(...sizes), Math.max(...sizes)];
  if (sizes.length !== used.length || !(least > 0) || most / least > 1 + PROPORTIONS_OFF) return undefined;
  return madeOf(catalogue, batch) / ((least + most) / 2);
}

function madeOf(catalogue: Catalogue, { prep, made, unit }: Batch): number {
  return baseAmount(catalogue, { item: prep, amount: made, unit });
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
