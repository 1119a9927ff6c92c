import { z } from "zod";
import { weekdayNumber } from "#engine/demand/open-days.ts";
import { addDays, BusinessDate } from "#engine/time.ts";

/** A public holiday where the venue stands. */
export const Holiday = z.strictObject({ date: BusinessDate, name: z.string().min(1) });
export type Holiday = z.infer<typeof Holiday>;

/**
 * What kind of day a holiday makes: the day itself, one that falls on a weekend anyway, or the evening before a
 * day off, which bars feel as much (common practice).
 */
export type HolidayKind = "holiday" | "weekend holiday" | "eve";

/** A day that a holiday touches; an eve carries the name of the holiday it comes before. */
export type HolidayDay = { date: BusinessDate; name: string; kind: HolidayKind };

const FRIDAY = 4;
const SATURDAY = 5;

/**
 * The days that holidays touch, by date. A day that is a holiday and an eve at once is a holiday; the evening before
 * a Saturday or Sunday is no eve, for nobody works the next day in any case.
 */
export function holidayDays(holidays: readonly Holiday[]): Map<BusinessDate, HolidayDay> {
  const days = new Map<BusinessDate, HolidayDay>();
  for (const { date, name } of holidays) {
    const eve = addDays(date, -1);
    const isFreeAnyway = [FRIDAY, SATURDAY].includes(weekdayNumber(eve));
    if (!isFreeAnyway) days.set(eve, { date: eve, name, kind: "eve" });
  }
  for (const { date, name } of holidays) {
    const kind = weekdayNumber(date) >= SATURDAY ? "weekend holiday" : "holiday";
    days.set(date, { date, name, kind });
  }
  return days;
}
