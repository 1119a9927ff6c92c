import { inShownUnit, type Measuring, shownDigits, shownUnit } from "#engine/measure/shown-amount.ts";
import type { BaseUnit } from "#engine/measure/units.ts";
import type { Venue } from "#engine/venue.ts";
import { locale } from "./texts/language.ts";

// Words and numbers as people read them. Everything here is pure; the venue says units, money and zone.

/** To make a formatter takes a hundred times as long as to use it, and a table uses thousands: each is made once. */
function madeOnce<Options, Made>(make: (options: Options) => Made): (options: Options) => Made {
  const made = new Map<string, Made>();
  return (options) => {
    const key = JSON.stringify(options);
    const known = made.get(key) ?? make(options);
    made.set(key, known);
    return known;
  };
}

/** The formatter of numbers with given options. */
export const numbers = madeOnce(
  (options: Intl.NumberFormatOptions) => new Intl.NumberFormat(locale, options),
);
const dates = madeOnce((options: Intl.DateTimeFormatOptions) => new Intl.DateTimeFormat(locale, options));

export { inShownUnit, type Measuring, shownUnit };

/** A plain number. formatNumber(1234.5, 1) → "1,234.5". A true minus sign is used. */
export function formatNumber(value: number, digits = 0): string {
  const text = numbers({
    minimumFractionDigits: digits,
    maximumFractionDigits: digits,
  }).format(value);
  // Rounding to nothing leaves "-0".
  return (/^-[0.,]*$/.test(text) ? text.slice(1) : text).replace("-", "−");
}

/** A number with all its digits and nothing between them, as it was typed: 1200.5 → "1200.5". */
export function formatPlain(value: number): string {
  return numbers({ useGrouping: false, maximumFractionDigits: 20 }).format(value);
}

/** The number alone, in the shown unit: for a table with the unit in its head. */
export function formatAmountBare(amount: number, base: BaseUnit, venue: Measuring): string {
  const shown = inShownUnit(amount, base, venue);
  return formatNumber(shown, shownDigits(shownUnit(base, venue), shown));
}

/** A number with its unit, which no end of a line parts. */
export function withUnit(number: string, unit: string): string {
  return `${number}\u00a0${unit}`;
}

/** An amount with its unit. 2100 ml where oz is shown → "71.0 oz"; pieces read "12". */
export function formatAmount(amount: number, base: BaseUnit, venue: Measuring): string {
  const number = formatAmountBare(amount, base, venue);
  return base === "each" ? number : withUnit(number, shownUnit(base, venue));
}

const DAY: Intl.DateTimeFormatOptions = { weekday: "short", day: "numeric", month: "short" };
const CLOCK: Intl.DateTimeFormatOptions = { hour: "2-digit", minute: "2-digit", hourCycle: "h23" };

/** A date, whose day and month no end of a line parts. */
function written(at: string, options: Intl.DateTimeFormatOptions): string {
  return dates(options)
    .format(new Date(at))
    .replace(/([^,]) /g, "$1\u00a0");
}

/** A moment on the venue's clock: "Mon 23 Nov, 10:30". */
export function formatMoment(at: string, { timeZone }: Pick<Venue, "timeZone">): string {
  return written(at, { ...DAY, ...CLOCK, timeZone });
}

/** The day of a moment on the venue's clock: "Mon 23 Nov". */
export function formatDay(at: string, { timeZone }: Pick<Venue, "timeZone">): string {
  return written(at, { ...DAY, timeZone });
}

/** A local time as reports write it. "2026-11-23 10:30" → "Mon 23 Nov, 10:30". */
export function formatLocal(local: string): string {
  return formatMoment(`${local.replace(" ", "T")}:00Z`, { timeZone: "UTC" });
}

/** A moment as a report gives it: an instant, or the venue's local time. Both read "Mon 23 Nov, 10:30". */
export function formatWhen(at: string, venue: Pick<Venue, "timeZone">): string {
  return at.endsWith("Z") ? formatMoment(at, venue) : formatLocal(at);
}

/** A business date, which has no clock: "Mon 23 Nov". */
export function formatDate(date: string): string {
  return formatDay(`${date}T00:00:00Z`, { timeZone: "UTC" });
}

/** A list in words. ["a", "b", "c"] → "a, b and c". */
export function listWords(words: readonly string[]): string {
  return new Intl.ListFormat(locale, { type: "conjunction" }).format(words);
}
