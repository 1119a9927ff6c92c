import { indexOn, type OpenDays } from "#engine/demand/open-days.ts";
import { type BusinessDate, daysBetween } from "#engine/time.ts";

export type LevelFit = {
  level: number;
  weekAheadError: number;
  dayCv2: number;
  weightOfDays: number;
  /** Squared relative errors of whole weeks ahead, summed, and how many (overlapping) weeks. */
  weekSquares: number;
  weeks: number;
};

/**
 * What the level is off by: by the scatter of the days it is read from, and by drifting on since. The errors
 * of whole weeks ahead, beyond what seven single days would give, tell the drift.
 */
export function levelVariance(
  { dayCv2, weightOfDays, weekSquares, weeks }: LevelFit,
  openDays: number,
): number {
  const read = dayCv2 / Math.max(1, Math.min(openDays, weightOfDays));
  const apart = weeks / 7;
  const seen = weeks > 0 ? Math.max(0, weekSquares / weeks - dayCv2 / 7) : read;
  return Math.max(read, (apart * seen + 4 * read) / (apart + 4));
}

/**
 * The level as discounted serves over discounted indices, with its errors a day and a week ahead.
 *
 * With indices of 1 and daily dates this is simple exponential smoothing with α = 1 − 0.5^(1 ÷ half-life).
 */
export function smoothLevel(
  { dates, serves }: OpenDays,
  index: readonly number[],
  halfLifeDays: number,
): LevelFit {
  let value = 0;
  let weight = 0;
  let squares = 0;
  let previous: BusinessDate | undefined;
  const levels: number[] = [];
  let [dayErrors, dayCount, weekErrors, weekSquares, weeks] = [0, 0, 0, 0, 0];
  dates.forEach((date, day) => {
    const expected = indexOn(index, date);
    const sold = serves[day] ?? 0;
    const keep =
      previous === undefined ? 1 : 0.5 ** (daysBetween({ from: previous, to: date }) / halfLifeDays);
    const before = levels[day - 1];
    if (before !== undefined && before > 0 && day >= 7) {
      dayErrors += (sold / (before * expected) - 1) ** 2;
      dayCount += 1;
    }
    const weekBefore = levels[day - 7];
    if (weekBefore !== undefined && weekBefore > 0 && day >= 21) {
      weekErrors += Math.abs(sold - weekBefore * expected);
      weekSquares += (ratioOfWeek(dates, serves, index, day) / weekBefore - 1) ** 2;
      weeks += 1;
    }
    value = value * keep + sold;
    weight = weight * keep + expected;
    squares = squares * keep * keep + expected * expected;
    levels.push(weight > 0 ? value / weight : 0);
    previous = date;
  });
  return {
    level: levels.at(-1) ?? 0,
    weekAheadError: weekErrors,
    // With less than two weeks behind it, a day is taken to be off by a third: common practice.
    dayCv2: (dayErrors + 7 * 0.1) / (dayCount + 7),
    weightOfDays: squares > 0 ? (weight * weight) / squares : 1,
    weekSquares,
    weeks,
  };
}

/** The level that the seven open days up to one show by themselves. */
function ratioOfWeek(
  dates: readonly BusinessDate[],
  serves: Float64Array,
  index: readonly number[],
  last: number,
): number {
  let [sold, expected] = [0, 0];
  for (let day = last - 6; day <= last; day += 1) {
    sold += serves[day] ?? 0;
    expected += indexOn(index, dates[day] ?? "");
  }
  return sold / expected;
}
