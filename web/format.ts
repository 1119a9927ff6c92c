import { currencyDigits } from "#engine/currency.ts";
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

const numbers = madeOnce((options: Intl.NumberFormatOptions) => new Intl.NumberFormat(locale, options));
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

/** Amount with a sign, for what is too much or too little. */
export function formatSigned(amount: number, base: BaseUnit, venue: Measuring): string {
  const text = formatAmount(amount, base, venue);
  return amount > 0 && !/^[0.,]+(\s|$)/.test(text) ? `+${text}` : text;
}

/** Containers of a pack. 1680 ml of 700 → "2.4 × 700 ml"; without a container, the amount. */
export function formatContainers(
  amount: number,
  {
    base,
    containerSize,
    packName,
  }: { base: BaseUnit; containerSize: number | null; packName: string | null },
  venue: Measuring,
): string {
  if (containerSize === null || containerSize <= 0 || packName === null || base === "each") {
    return formatAmount(amount, base, venue);
  }
  return `${withUnit(formatNumber(amount / containerSize, 1), "×")} ${packName}`;
}

/** Money in major units. `whole` leaves the minor unit out where only size matters. */
export function formatMoney(major: number, currency: string, { whole = false } = {}): string {
  const digits = whole ? 0 : currencyDigits(currency);
  const text = numbers({
    style: "currency",
    currency,
    currencyDisplay: "narrowSymbol",
    minimumFractionDigits: digits,
    maximumFractionDigits: digits,
  }).format(major);
  return (/[1-9]/.test(text) ? text : text.replace("-", "")).replace("-", "−");
}

/** Integer minor units as money. 1250 (EUR) → "€12.50". */
export function formatMinor(minor: number, currency: string): string {
  return formatMoney(minor / 10 ** currencyDigits(currency), currency);
}

/** A share as whole percent; what is small but not nothing reads "<1%". */
export function formatShare(share: number): string {
  const percent = numbers({ style: "percent", maximumFractionDigits: 0 });
  if (share > 0 && share < 0.01) return `<${percent.format(0.01)}`;
  if (share < 1 && share > 0.99) return `>${percent.format(0.99)}`;
  return percent.format(share);
}

/** A moment on the venue's clock: "Mon 23 Nov, 10:30". */
export function formatMoment(at: string, venue: Pick<Venue, "timeZone">): string {
  return dates({
    weekday: "short",
    day: "numeric",
    month: "short",
    hour: "2-digit",
    minute: "2-digit",
    hourCycle: "h23",
    timeZone: venue.timeZone,
  }).format(new Date(at));
}

/** The day of a moment on the venue's clock: "Mon 23 Nov". */
export function formatDay(at: string, venue: Pick<Venue, "timeZone">): string {
  return dates({
    weekday: "short",
    day: "numeric",
    month: "short",
    timeZone: venue.timeZone,
  }).format(new Date(at));
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

/** Counted things in words. plural(1, "item") → "1 item"; plural(3, "batch", "batches") → "3 batches". */
export function plural(count: number, one: string, many = `${one}s`): string {
  return `${formatNumber(count)} ${count === 1 ? one : many}`;
}

/** A list in words. ["a", "b", "c"] → "a, b and c". */
export function listWords(words: readonly string[]): string {
  return new Intl.ListFormat(locale, { type: "conjunction" }).format(words);
}
