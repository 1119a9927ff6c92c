import type { Demand } from "#engine/demand/distribution.ts";
import type { Facts } from "#engine/facts.ts";
import { filledLines } from "#engine/orders/filled-lines.ts";
import { OPEN_DAYS_AFTER_EXPECTED } from "#engine/orders/open-orders.ts";
import { instantToLocal } from "#engine/sales/read/clock.ts";
import { daysBetween, type Instant } from "#engine/time.ts";

/** Days that a supplier's deliveries come after their day. */
export type Lateness = { mean: number; variance: number };

export const PUNCTUAL: Lateness = { mean: 0, variance: 0 };

/** A supplier is held to be punctual until so many lines have said something else. */
const BELIEVED_LINES = 10;

/**
 * How late each supplier has been, over its order lines delivered in full by a moment; early counts as in time.
 *
 * Ten lines a day late each, beside ten believed punctual → mean 0.5 days, variance 0.25.
 */
export function latenessBySupplier(facts: Facts, at: Instant): Map<string, Lateness> {
  const sums = new Map<string, { lines: number; days: number; squares: number }>();
  for (const { line, left, filledBy } of filledLines(facts, at)) {
    const last = filledBy.at(-1);
    if (left > 1e-9 || last === undefined) continue;
    const came = instantToLocal(last.delivery.at, facts.catalogue.venue).slice(0, 10);
    const late = daysBetween({ from: line.expected, to: came });
    const days = Math.min(OPEN_DAYS_AFTER_EXPECTED, Math.max(0, late));
    const held = sums.get(line.supplier) ?? { lines: 0, days: 0, squares: 0 };
    held.lines += 1;
    held.days += days;
    held.squares += days * days;
    sums.set(line.supplier, held);
  }
  return new Map(
    [...sums].map(([supplier, { lines, days, squares }]) => {
      const believed = lines + BELIEVED_LINES;
      const mean = days / believed;
      return [supplier, { mean, variance: Math.max(0, squares / believed - mean * mean) }];
    }),
  );
}

/**
 * Demand over a stretch that may last longer: mean + L d, variance + L σ² + d² s², for demand d ± σ a day and
 * lateness L ± s days (the variance of a random sum; Chopra & Meindl, Supply Chain Management, ch. 12).
 *
 * 100 ± 22 a day over 12 ± 3 days → 1200 ± 309.53.
 */
export function withLateness(demand: Demand, perDay: Demand, { mean, variance }: Lateness): Demand {
  return {
    mean: demand.mean + mean * perDay.mean,
    variance: demand.variance + mean * perDay.variance + variance * perDay.mean * perDay.mean,
  };
}
