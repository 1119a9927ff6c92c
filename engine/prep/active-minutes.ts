import type { PlannedBatch } from "#engine/prep/planned-batch.ts";

/** Hands-on time of a plan, in minutes. */
export type ActiveMinutes = {
  /** Of what must be made today. */
  today: number;
  /** Of what can wait until tomorrow. */
  canWait: number;
  total: number;
  /** Preps whose time no `preps` row states; they are not in the sums. */
  notKnown: string[];
};

/**
 * Hands-on minutes of a day's batches: those of one making times its vessels, since each is filled on its own.
 *
 * Juice 25 min in one vessel, syrup 15 min in two that can wait → today 25, can wait 30, total 55.
 */
export function activeMinutes(
  batches: readonly Pick<PlannedBatch, "prep" | "activeMinutes" | "batches" | "canWait">[],
): ActiveMinutes {
  const sumOf = (chosen: typeof batches) =>
    chosen.reduce((sum, batch) => sum + (batch.activeMinutes ?? 0) * batch.batches, 0);
  const today = sumOf(batches.filter(({ canWait }) => !canWait));
  const canWait = sumOf(batches.filter((batch) => batch.canWait));
  const notKnown = batches.filter((batch) => batch.activeMinutes === null).map(({ prep }) => prep);
  return { today, canWait, total: today + canWait, notKnown };
}
