import type { Catalogue } from "#engine/catalogue.ts";
import type { BusinessDate } from "#engine/time.ts";

/** The days of a series on which something could be had: positions from `start` on and before `end`. */
export type MenuDays = { start: number; end: number; stopped: boolean };

/** So unlikely a run of days without a sale means that the drink was not there. */
const NOT_THERE_BEFORE = 1e-3;
const NOT_THERE_SINCE = 1e-4;
const STOPPED_AFTER_DAYS = 14;

/** Whether a drink is on the menu on a date by its own dates; items sold straight always are. */
export function isOnMenu(catalogue: Catalogue, what: string, date: BusinessDate): boolean {
  const drink = catalogue.drinks.get(what);
  if (drink === undefined) return true;
  const { onMenuFrom, onMenuUntil } = drink;
  return (onMenuFrom === null || onMenuFrom <= date) && (onMenuUntil === null || date <= onMenuUntil);
}

/**
 * The days on which a drink could be had: by its menu dates, and where the book gives none, by its sales.
 *
 * A drink that sells five a day was not on the menu in the month before its first sale; one that sells
 * one a month may well have been. In the same way a drink that is no longer sold for two weeks has stopped.
 */
export function menuDays(
  catalogue: Catalogue,
  what: string,
  dates: readonly BusinessDate[],
  serves: Float64Array,
): MenuDays {
  const drink = catalogue.drinks.get(what);
  const stated = {
    start: drink?.onMenuFrom == null ? null : firstFrom(dates, drink.onMenuFrom),
    end: drink?.onMenuUntil == null ? null : firstAfter(dates, drink.onMenuUntil),
  };
  const first = serves.findIndex((sold) => sold > 0);
  if (first < 0) {
    const end = stated.end ?? dates.length;
    // Nothing was sold: a drink without a first day has not been there yet.
    return { start: Math.min(stated.start ?? dates.length, end), end, stopped: false };
  }
  const last = serves.findLastIndex((sold) => sold > 0);
  const sold = serves.reduce((sum, value) => sum + value, 0);
  const absent = (days: number, among: number) => Math.exp((-sold * days) / Math.max(1, among));
  const missing = dates.length - 1 - last;
  const stopped =
    stated.end === null &&
    missing >= STOPPED_AFTER_DAYS &&
    absent(missing, last + 1 - first) < NOT_THERE_SINCE;
  const end = stated.end ?? (stopped ? last + 1 : dates.length);
  const start = stated.start ?? (absent(first, last + 1 - first) < NOT_THERE_BEFORE ? first : 0);
  return { start: Math.min(start, end), end, stopped };
}

function firstFrom(dates: readonly BusinessDate[], from: BusinessDate): number {
  const day = dates.findIndex((date) => date >= from);
  return day < 0 ? dates.length : day;
}

function firstAfter(dates: readonly BusinessDate[], until: BusinessDate): number {
  const day = dates.findIndex((date) => date > until);
  return day < 0 ? dates.length : day;
}
