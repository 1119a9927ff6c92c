import { WEEKDAYS, type Weekday } from "#engine/time.ts";
import { locale } from "../texts/language.ts";

const weekdays = new Intl.DateTimeFormat(locale, { weekday: "long", timeZone: "UTC" });

/** A day of the week as people write it: "Mon" → "Monday". */
export function weekdayName(day: Weekday): string {
  // The first of January 2024 was a Monday.
  const date = new Date(Date.UTC(2024, 0, 1 + WEEKDAYS.indexOf(day)));
  return weekdays.format(date);
}
