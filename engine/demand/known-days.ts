import type { Book } from "#engine/book.ts";
import { groupBy } from "#engine/catalogue.ts";
import type { BusinessDate } from "#engine/time.ts";

/** What the book says of single days: how busy they are known to be, and what is planned on them. */
export type KnownDays = {
  /** Product of the factors of a day's events; 1 on a day like any other. */
  factorOn(date: BusinessDate): number;
  hasEvent(date: BusinessDate): boolean;
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
    plannedOn: (date, drink) => planned.get(planKey(date, drink)) ?? 0,
    planDates,
  };
}

function planKey(date: BusinessDate, drink: string): string {
  return `${date}\u0000${drink}`;
}
