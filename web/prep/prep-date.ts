import { daysBetween } from "./days.ts";

/** Past the book's last entry by this much a plan from today would rest on sales nobody has read in. */
const FRESH_DAYS = 7;

/** The day to plan for: today, unless the book ends long before it; then the day it ends. */
export function dayToPlan({ today, bookDate }: { today: string; bookDate: string }): string {
  const old = daysBetween(bookDate, today);
  return old >= 0 && old <= FRESH_DAYS ? today : bookDate;
}
