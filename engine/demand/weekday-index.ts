import { median } from "#engine/demand/median.ts";
import { indexOn, type OpenDays, weekdayNumber } from "#engine/demand/open-days.ts";
import { daysBetween, WEEKDAYS } from "#engine/time.ts";

/** Weekday pattern: eight weeks are half forgotten. */
const WEEKDAY_HALF_LIFE_DAYS = 56;

/** A day further off than this many robust deviations is taken as if it were just so far off. */
const OUTLIER_DEVIATIONS = 3;

/**
 * How busy each weekday is, Monday first; 1 = an average open day. Drawn to 1 by as much as single days scatter.
 */
export function weekdayIndices({ dates, serves }: OpenDays): number[] {
  const last = dates.at(-1);
  if (last === undefined) return WEEKDAYS.map(() => 1);
  const sums = WEEKDAYS.map(() => ({ weight: 0, value: 0, square: 0, days: 0 }));
  dates.forEach((date, day) => {
    const weight = 0.5 ** (daysBetween({ from: date, to: last }) / WEEKDAY_HALF_LIFE_DAYS);
    const own = sums[weekdayNumber(date)];
    const value = serves[day] ?? 0;
    if (own === undefined) return;
    own.weight += weight;
    own.value += weight * value;
    own.square += weight * value * value;
    own.days += 1;
  });
  return shrunk(sums);
}

function shrunk(sums: readonly { weight: number; value: number; square: number; days: number }[]): number[] {
  const seen = sums.filter(({ days }) => days > 0);
  // Every weekday counts alike, so that a missing Saturday does not make the others look busier.
  const average = mean(seen.map(({ value, weight }) => value / weight));
  if (!(average > 0)) return sums.map(() => 1);
  const ratios = seen.map(({ value, weight }) => value / weight / average);
  const repeated = seen.filter(({ days }) => days > 1);
  const within = mean(
    repeated.map(({ value, square, weight, days }) =>
      Math.max(0, ((square / weight - (value / weight) ** 2) / average ** 2) * (days / (days - 1))),
    ),
  );
  const ownNoise = mean(seen.map(({ days }) => within / days));
  const between = Math.max(1e-4, mean(ratios.map((ratio) => (ratio - 1) ** 2)) - ownNoise);
  const pull = repeated.length === 0 ? 1 : Math.min(20, within / between);
  return sums.map(({ value, weight, days }) =>
    days === 0 ? 1 : ((days * value) / weight / average + pull) / (days + pull),
  );
}

/** The days with any that is oddly far from its weekday's usual drawn in. */
export function withinReason({ dates, serves }: OpenDays, weekdayIndex: readonly number[]): OpenDays {
  const ratios = dates.map((date, day) => (serves[day] ?? 0) / indexOn(weekdayIndex, date));
  // The usual is that of the four weeks around the day: a bar that grows is not odd.
  const logs = ratios.map((ratio, day) => {
    const around = median(ratios.slice(Math.max(0, day - 14), day + 15));
    return ratio > 0 && around > 0 ? Math.log(ratio / around) : 0;
  });
  const spread = Math.max(0.1, 1.4826 * median(logs.map(Math.abs)));
  const most = OUTLIER_DEVIATIONS * spread;
  const held = Float64Array.from(serves, (value, day) => {
    const off = logs[day] ?? 0;
    return Math.abs(off) <= most ? value : value * Math.exp(Math.sign(off) * most - off);
  });
  return { dates, serves: held };
}

function mean(values: readonly number[]): number {
  return values.length === 0 ? 0 : values.reduce((sum, value) => sum + value, 0) / values.length;
}
