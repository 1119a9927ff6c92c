import type { Facts } from "#engine/facts.ts";
import type { Count } from "#engine/stock/counts.ts";
import type { BusinessDate } from "#engine/time.ts";
import { datesBetween } from "#engine/variance/asks.ts";
import { habitWindows } from "#engine/variance/habits.ts";
import { neighboursOf } from "#engine/variance/neighbours.ts";
import { spanOf, windowsBetween } from "#engine/variance/period.ts";

/**
 * The business days whose sales a variance looks at: from the counts before the opening one to those after the closing
 * one, as what those windows left unexplained tells a wrong count from stock that is gone; and, where something is topped
 * up by eye, from the weeks on that its habit is read from.
 */
export function salesNeeded(
  facts: Facts,
  opening: Count,
  closing: Count,
): { from: BusinessDate; to: BusinessDate } {
  const { before, after } = neighboursOf(facts, opening, closing);
  const habits = habitWindows(facts, opening).flat();
  const span = spanOf([...habits, ...before, ...windowsBetween(opening, closing), ...after]);
  const dates = datesBetween(facts, span ?? { from: opening.at, to: closing.at });
  return { from: dates.first, to: dates.last };
}
