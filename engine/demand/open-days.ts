import { type BusinessDate, WEEKDAYS, weekdayOf } from "#engine/time.ts";

/** Serves sold on each open day, with the factor of the day's events taken out. */
export type OpenDays = { dates: readonly BusinessDate[]; serves: Float64Array };

/** Monday 0 … Sunday 6. */
export function weekdayNumber(date: BusinessDate): number {
  return WEEKDAYS.indexOf(weekdayOf(date));
}

/** The index of a date's weekday, never quite 0 so that it can be divided by. */
export function indexOn(index: readonly number[], date: BusinessDate): number {
  return Math.max(1e-6, index[weekdayNumber(date)] ?? 1);
}
