import { baseAmount } from "#engine/catalogue.ts";
import type { Facts } from "#engine/facts.ts";
import { businessDateOf } from "#engine/sales/read/clock.ts";
import { addDays, type BusinessDate, daysBetween } from "#engine/time.ts";

/** What the records of the last quarter say of one prep, in base units. */
export type BatchHabits = {
  batches: number;
  /** Of all batches together. */
  made: number;
  /** Thrown out, spilt or wasted. */
  lost: number;
  /** Of what was made, at most all but a trace; null without a batch. */
  lossShare: number | null;
  /** Mean size of a batch; null without one. */
  batchSize: number | null;
  /** What was made and not lost, over the days since the first of the batches. */
  usedPerDay: number | null;
};

const LOOK_BACK_DAYS = 91;
const LOST: readonly string[] = ["expired", "waste", "spill"];
const LOSS_SHARE_MAX = 0.99;

/**
 * How much of a prep is made at a time, lost and used, by the batches and losses of the 91 days before a date.
 *
 * Batches of 1000 and 1000 ml on the 1st and the 8th, 300 ml expired, asked on the 15th → 15 % lost, 1000 ml a batch,
 * 1700 ÷ 14 = 121 ml a day.
 */
export function batchHabits({ catalogue, book }: Facts, prep: string, date: BusinessDate): BatchHabits {
  const dayOf = (at: string) => businessDateOf(at, catalogue.venue);
  const isRecent = (at: string) => dayOf(at) < date && dayOf(at) >= addDays(date, -LOOK_BACK_DAYS);
  const batches = book.batches.filter((batch) => batch.prep === prep && isRecent(batch.at));
  const sizes = batches.map(({ made, unit }) => baseAmount(catalogue, { item: prep, amount: made, unit }));
  const made = sizes.reduce((sum, size) => sum + size, 0);
  const losses = book.losses.filter(
    ({ what, kind, at }) => what === prep && LOST.includes(kind) && isRecent(at),
  );
  const lost = losses.reduce(
    (sum, { amount, unit }) =>
      unit === "serve" ? sum : sum + baseAmount(catalogue, { item: prep, amount, unit }),
    0,
  );
  const first = batches.map(({ at }) => dayOf(at)).sort()[0];
  if (first === undefined || made <= 0) {
    return { batches: 0, made: 0, lost, lossShare: null, batchSize: null, usedPerDay: null };
  }
  const days = Math.max(1, daysBetween({ from: first, to: date }));
  return {
    batches: batches.length,
    made,
    lost,
    lossShare: Math.min(LOSS_SHARE_MAX, lost / made),
    batchSize: made / batches.length,
    usedPerDay: Math.max(0, made - lost) / days,
  };
}
