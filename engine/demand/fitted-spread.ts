import type { Candidate } from "#engine/demand/candidate.ts";
import { type DayParts, LAUNCH_SPREAD } from "#engine/demand/drink-day.ts";
import type { Mix, MixDays } from "#engine/demand/mix.ts";
import type { Fitted, Spread } from "#engine/demand/spread.ts";

/** What each drink sold on its days beside its share of the day by the mix. */
export function fittedDays(drinks: readonly Candidate[], days: MixDays, mix: Mix): Fitted[] {
  const count = days.totals.length;
  const onMenu = new Float64Array(count);
  const weightOn = (k: number, day: number) =>
    (mix.weights[k] ?? 0) * (mix.weekdayFactors[k]?.[days.weekdays[day] ?? 0] ?? 1);
  drinks.forEach(({ start, end }, k) => {
    for (let day = start; day < end; day += 1) onMenu[day] = (onMenu[day] ?? 0) + weightOn(k, day);
  });
  // Half a year shows how a drink scatters.
  const from = Math.max(0, count - 156);
  return drinks.map(({ serves, start, end }, k) => {
    const first = Math.min(end, Math.max(start, from));
    const shares = new Float64Array(Math.max(0, end - first));
    for (let day = first; day < end; day += 1) shares[day - first] = weightOn(k, day) / (onMenu[day] || 1);
    return { serves: serves.subarray(first, end), totals: days.totals.subarray(first, end), shares };
  });
}

/** How far a share may be off that was read from so many serves; a planned one by the spread of such guesses. */
export function shareVariance(
  { serves, start, end, prior }: Candidate,
  { recency }: MixDays,
  spread: Spread,
): number {
  let [sold, squares] = [0, 0];
  for (let day = start; day < end; day += 1) {
    const weight = recency[day] ?? 0;
    sold += weight * (serves[day] ?? 0);
    squares += weight * weight * (serves[day] ?? 0);
  }
  const seen = sold > 0 ? (spread.chance * squares) / (sold * sold) : 1;
  return Math.min(prior === null ? 0.5 : LAUNCH_SPREAD ** 2, seen);
}

/** What single guests' choices make the day's total scatter by is not the busy night's doing. */
export function sharedDayCv2({ drinks, busyness, mix, spread }: DayParts): number {
  const total = mix.weights.reduce((sum, weight, k) => sum + (drinks[k]?.stopped ? 0 : weight), 0);
  if (total <= 0 || busyness.level <= 0) return busyness.dayCv2;
  const chance = spread.chance / busyness.level;
  const own = mix.weights.reduce((sum, weight, k) => sum + (spread.own[k] ?? 0) * (weight / total) ** 2, 0);
  return Math.max(0, busyness.dayCv2 - chance - own);
}
