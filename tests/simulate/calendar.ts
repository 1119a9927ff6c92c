const DAY_MS = 86_400_000;
const datesAfter = new Map<string, Map<number, string>>();

/** A calendar date so many days after another. dateAfter("2026-10-31", 1) → "2026-11-01". */
export function dateAfter(first: string, days: number): string {
  const known = datesAfter.get(first) ?? new Map<number, string>();
  datesAfter.set(first, known);
  const date =
    known.get(days) ?? new Date(Date.parse(`${first}T00:00:00Z`) + days * DAY_MS).toISOString().slice(0, 10);
  known.set(days, date);
  return date;
}

/**
 * Local date and time of a minute counted from midnight of a business date.
 *
 * A bar's clock only: 25 h is 01:00 of the next calendar date, whatever daylight saving does that night.
 */
export function localTime(businessDate: string, minutes: number): { date: string; time: string } {
  const date = dateAfter(businessDate, Math.floor(minutes / 1440));
  const inDay = ((minutes % 1440) + 1440) % 1440;
  const two = (value: number) => String(value).padStart(2, "0");
  return { date, time: `${two(Math.floor(inDay / 60))}:${two(inDay % 60)}` };
}

export function stamp(businessDate: string, minutes: number): string {
  const { date, time } = localTime(businessDate, minutes);
  return `${date} ${time}`;
}

/** Minutes after midnight of a clock time. "22:30" → 1350. */
export function minutesOf(clock: string): number {
  const [hours = 0, minutes = 0] = clock.split(":").map(Number);
  return hours * 60 + minutes;
}

export const WEEKDAY_NAMES = ["Mon", "Tue", "Wed", "Thu", "Fri", "Sat", "Sun"] as const;

/** 0 is Monday: day 0 of every simulation is one. */
export function weekdayOf(day: number): number {
  return ((day % 7) + 7) % 7;
}
