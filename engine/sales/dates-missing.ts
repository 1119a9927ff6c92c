import { addDays, type BusinessDate, datesFrom, weekdayOf } from "#engine/time.ts";

/** So many times a weekday must have come without a sale before it is taken as the bar's day off. */
const OFF_TIMES_LEAST = 2;

/** Weeks before the last sale that tell a day off. */
const WEEKS_BACK = 4;

/**
 * Business dates after the last one sold on and before `until` that ought to have sales. A weekday that came twice or more in the
 * last four weeks and never sold anything is the bar's day off and misses none. Sold Tuesdays to Saturdays up to Saturday the 21st,
 * until Wednesday the 25th → Tuesday the 24th.
 *
 * @param sold Dates with sales, in their order.
 */
export function datesMissing(sold: readonly BusinessDate[], until: BusinessDate): BusinessDate[] {
  const last = sold.at(-1);
  if (last === undefined) return [];
  const lately = new Set(sold.filter((date) => date > addDays(last, -7 * WEEKS_BACK)));
  const [first = last] = lately;
  const unsold = datesFrom({ from: first, to: last }).filter((date) => !lately.has(date));
  const openOn = new Set([...lately].map(weekdayOf));
  const isOff = (date: BusinessDate): boolean => {
    const times = unsold.filter((one) => weekdayOf(one) === weekdayOf(date)).length;
    return times >= OFF_TIMES_LEAST && !openOn.has(weekdayOf(date));
  };
  return datesFrom({ from: addDays(last, 1), to: addDays(until, -1) }).filter((date) => !isOff(date));
}
