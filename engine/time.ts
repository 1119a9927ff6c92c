import { z } from "zod";

/** A trading day, "YYYY-MM-DD"; it ends at the venue's closing hour. Dates that do not exist are refused. */
export const BusinessDate = z.iso.date("no such date; write it as 2026-11-23");
export type BusinessDate = z.infer<typeof BusinessDate>;

/** A moment in UTC to the second, "2026-11-02T15:00:00Z"; two moments compare as their texts do. */
export const Instant = z
  .string()
  .regex(/^\d{4}-\d{2}-\d{2}T\d{2}:\d{2}:\d{2}Z$/, "a moment is written 2026-11-02T15:00:00Z")
  .refine((text) => !Number.isNaN(Date.parse(text)), "no such moment");
export type Instant = z.infer<typeof Instant>;

/** A time of day on the venue's clock, "HH:MM". */
export const ClockTime = z.string().regex(/^([01]\d|2[0-3]):[0-5]\d$/, "a time of day is written HH:MM");
export type ClockTime = z.infer<typeof ClockTime>;

export const WEEKDAYS = ["Mon", "Tue", "Wed", "Thu", "Fri", "Sat", "Sun"] as const;
export const Weekday = z.enum(WEEKDAYS);
export type Weekday = z.infer<typeof Weekday>;

const DAY_MS = 86_400_000;

/** The weekday of a business date. "2026-11-23" → "Mon". */
export function weekdayOf(date: BusinessDate): Weekday {
  return WEEKDAYS[(new Date(`${date}T00:00:00Z`).getUTCDay() + 6) % 7] as Weekday;
}

/** The date so many days later (earlier when negative). addDays("2026-02-28", 1) → "2026-03-01". */
export function addDays(date: BusinessDate, days: number): BusinessDate {
  return new Date(Date.parse(`${date}T00:00:00Z`) + days * DAY_MS).toISOString().slice(0, 10);
}

/** Whole days from one date to another; negative when `to` is the earlier. */
export function daysBetween({ from, to }: { from: BusinessDate; to: BusinessDate }): number {
  return Math.round((Date.parse(`${to}T00:00:00Z`) - Date.parse(`${from}T00:00:00Z`)) / DAY_MS);
}

/** Every date from one to another, both included; none when `to` is the earlier. */
export function datesFrom({ from, to }: { from: BusinessDate; to: BusinessDate }): BusinessDate[] {
  return Array.from({ length: Math.max(0, daysBetween({ from, to }) + 1) }, (_, day) => addDays(from, day));
}

/** The moment so many hours later (earlier when negative), by elapsed time. */
export function addHours(at: Instant, hours: number): Instant {
  return toInstant(Date.parse(at) + hours * 3_600_000);
}

/** Hours from a moment to another, by elapsed time; negative when it lies before. */
export function hoursBetween(from: Instant, to: Instant): number {
  return (Date.parse(to) - Date.parse(from)) / 3_600_000;
}

/** The second after a moment: up to there, what happened at the moment itself is in. */
export function justAfter(at: Instant): Instant {
  return toInstant(Date.parse(at) + 1000);
}

/** A moment from milliseconds since 1970, cut to the second. */
export function toInstant(epochMs: number): Instant {
  return `${new Date(epochMs).toISOString().slice(0, 19)}Z`;
}
