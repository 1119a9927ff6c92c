import type { Book } from "#engine/book.ts";
import { groupBy } from "#engine/catalogue.ts";
import type { HolidayDay } from "#engine/demand/holiday.ts";
import type { HolidayEffect } from "#engine/demand/holiday-effect.ts";
import type { BusinessDate } from "#engine/time.ts";

/** What the book says of single days: how busy they are known to be, and what is planned on them. */
export type KnownDays = {
  /** Product of the factors of a day's events; 1 on a day like any other. */
  factorOn(date: BusinessDate): number;
  hasEvent(date: BusinessDate): boolean;
  /** Whether the venue is expected to be shut, as on this holiday before. */
  isShutOn(date: BusinessDate): boolean;
  /** Relative variance of a day's factor; 0 where the book states it. */
  factorCv2On(date: BusinessDate): number;
  /** Serves of a drink planned on a day beyond the usual. */
  plannedOn(date: BusinessDate, drink: string): number;
  /** The days with a plan, by drink, ascending. */
  planDates: Map<string, BusinessDate[]>;
};

/** Indexes the events and plans of a book. Two events on one day multiply. */
export function knownDays({ events, plans }: Pick<Book, "events" | "plans">): KnownDays {
  const factors = new Map<string, number>();
  for (const { date, factor } of events) factors.set(date, (factors.get(date) ?? 1) * factor);
  const planned = new Map<string, number>();
  for (const { date, drink, serves } of plans) {
    const key = planKey(date, drink);
    planned.set(key, (planned.get(key) ?? 0) + serves);
  }
  const planDates = new Map(
    [...groupBy(plans, ({ drink }) => drink)].map(([drink, own]) => [
      drink,
      [...new Set(own.map(({ date }) => date))].sort(),
    ]),
  );
  return {
    factorOn: (date) => factors.get(date) ?? 1,
    hasEvent: (date) => factors.has(date),
    isShutOn: () => false,
    factorCv2On: () => 0,
    plannedOn: (date, drink) => planned.get(planKey(date, drink)) ?? 0,
    planDates,
  };
}

/** A holiday on a day without an event of its own: events are what the bar itself knows, and win. */
export type TouchedDay = HolidayDay & HolidayEffect;

/** The same with what holidays do to the days that the book names no event on. */
export function withHolidays(
  known: KnownDays,
  holidayOn: (date: BusinessDate) => TouchedDay | null,
): KnownDays {
  const ownOn = (date: BusinessDate) => (known.hasEvent(date) ? null : holidayOn(date));
  return {
    ...known,
    factorOn: (date) => ownOn(date)?.factor ?? known.factorOn(date),
    isShutOn: (date) => ownOn(date)?.isClosed ?? false,
    factorCv2On: (date) => ownOn(date)?.cv2 ?? 0,
  };
}

function planKey(date: BusinessDate, drink: string): string {
  return `${date}\u0000${drink}`;
}
