import { ClockError, localToInstant, type VenueClock } from "#engine/sales/read/clock.ts";
import { BusinessDate, Instant } from "#engine/time.ts";
import { InputError } from "#server/input-error.ts";

/** A date as given to an option or a query. Throws InputError naming it. */
export function readDate(text: string, name: string): BusinessDate {
  const read = BusinessDate.safeParse(text.trim());
  if (!read.success) throw new InputError(`${name}: "${text}" is no date; write it as 2026-11-23.`);
  return read.data;
}

/** A moment as given: the venue's local time "2026-11-23 10:30", or an instant with Z. */
export function readMoment(text: string, clock: VenueClock, name: string): Instant {
  const instant = Instant.safeParse(text.trim());
  if (instant.success) return instant.data;
  try {
    return localToInstant(text.trim(), clock);
  } catch (error) {
    if (!(error instanceof ClockError)) throw error;
    throw new InputError(`${name}: "${text}" is no moment; write the venue's time as "2026-11-23 10:30".`);
  }
}

/** A whole number of at least one. Throws InputError naming the option. */
export function readCount(text: string, name: string): number {
  const value = Number(text);
  if (!Number.isInteger(value) || value < 1 || value > 366) {
    throw new InputError(`${name}: "${text}" is no number of days; write a whole number from 1 to 366.`);
  }
  return value;
}

/** A figure within a range, with a decimal comma or point. Throws InputError naming the option. */
export function readFigure(text: string, name: string, range: { low: number; high: number }): number {
  const value = Number(text.trim().replace(",", "."));
  if (text.trim() === "" || !(value >= range.low && value <= range.high)) {
    throw new InputError(`${name}: "${text}" is no figure from ${range.low} to ${range.high}.`);
  }
  return value;
}

/** Money in major units as minor units. Throws InputError naming the option. */
export function readMoneyMinor(text: string, digits: number, name: string): number {
  const value = Number(text);
  if (text.trim() === "" || !Number.isFinite(value) || value < 0 || value > 1e12) {
    throw new InputError(`${name}: "${text}" is no amount of money; write it as 1200 or 1200.50.`);
  }
  return Math.round(value * 10 ** digits);
}
