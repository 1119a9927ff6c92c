import type { SaleGroup } from "#engine/sales/tally.ts";
import { addDays, type BusinessDate, datesFrom, WEEKDAYS, weekdayOf } from "#engine/time.ts";

/** So many sold on a business day, as the tally of a till without times. */
export function soldOn(
  businessDate: BusinessDate,
  ringName: string,
  quantity: number,
  modifiers = "",
): SaleGroup {
  return { businessDate, at: null, timed: true, ringName, modifiers, quantity, netMinor: 1000 * quantity };
}

/** Weeks that are all alike: what is sold from Monday to Sunday; 0 sells nothing. */
export function alikeWeeks({
  monday,
  weeks,
  ringName,
  week,
}: {
  monday: BusinessDate;
  weeks: number;
  ringName: string;
  week: readonly number[];
}): SaleGroup[] {
  return datesFrom({ from: monday, to: addDays(monday, 7 * weeks - 1) }).flatMap((date) => {
    const quantity = week[WEEKDAYS.indexOf(weekdayOf(date))] ?? 0;
    return quantity === 0 ? [] : [soldOn(date, ringName, quantity)];
  });
}
