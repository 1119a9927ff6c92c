import type { Facts } from "#engine/facts.ts";
import { businessDateOf } from "#engine/sales/read/clock.ts";
import { addDays, type BusinessDate, daysBetween } from "#engine/time.ts";

/** How far back a kitchen's habits are read, and how many makings show one. */
const LOOK_BACK_DAYS = 28;
const MAKINGS_MIN = 4;

/**
 * Days from one making of a prep to the next, as the kitchen has kept it over the last four weeks: the median gap.
 *
 * A prep made fewer than four times has no pace yet and is left out. Juice pressed daily → 1.
 */
export function makingPace({ catalogue, book }: Facts, date: BusinessDate): Map<string, number> {
  const madeOn = new Map<string, Set<BusinessDate>>();
  for (const { prep, at } of book.batches) {
    const day = businessDateOf(at, catalogue.venue);
    if (day >= date || day < addDays(date, -LOOK_BACK_DAYS)) continue;
    madeOn.set(prep, (madeOn.get(prep) ?? new Set()).add(day));
  }
  return new Map(
    [...madeOn].flatMap(([prep, days]) => {
      if (days.size < MAKINGS_MIN) return [];
      const sorted = [...days].sort();
      const gaps = sorted.slice(1).map((to, index) => daysBetween({ from: sorted[index] ?? to, to }));
      return [[prep, median(gaps)] as const];
    }),
  );
}

/** Of an even number of gaps the longer one in the middle: better a day too many than to run out. */
function median(values: readonly number[]): number {
  const sorted = [...values].sort((a, b) => a - b);
  return sorted[Math.floor(sorted.length / 2)] ?? 1;
}
