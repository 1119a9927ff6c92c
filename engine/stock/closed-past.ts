import { businessDateOf, type VenueClock } from "#engine/sales/read/clock.ts";
import type { BusinessDate, Instant } from "#engine/time.ts";

/** The past that is closed: business dates up to and with one, and the count of the morning after that the week ends on. */
export type ClosedPast = {
  through: BusinessDate;
  /** Counts that hold although they were taken on the day after. */
  counts: readonly string[];
  /** When the last of those counts was taken; null without one. */
  until: Instant | null;
};

/** Something that an act writes or takes away; on null it holds for all days. */
export type Touch = { what: string; on: BusinessDate | null };

/**
 * Whether a moment lies in the closed past: on a closed business date, or before the count that the week ends on was done.
 *
 * Closed through Sunday, counted on Monday at 10:00: a delivery of Monday 09:00 is closed, one of 11:00 is not.
 */
export function isMomentClosed(at: Instant, closed: ClosedPast, clock: VenueClock): boolean {
  return businessDateOf(at, clock) <= closed.through || (closed.until !== null && at <= closed.until);
}

/** Whether what holds from a date on (null = always) also holds on a closed day. */
export function isDateClosed(from: BusinessDate | null, closed: ClosedPast): boolean {
  return from === null || from <= closed.through;
}

const SHOWN = 6;

/**
 * What to tell somebody whose act touches the closed past; undefined when it touches none.
 *
 * "Delivery of Dry gin on 2026-11-12: the week to 2026-11-15 is closed; the owner can reopen it with a reason."
 */
export function closedProblem(closed: ClosedPast, touches: readonly Touch[]): string | undefined {
  if (touches.length === 0) return undefined;
  const days = new Map<string, Set<string>>();
  for (const { what, on } of touches) {
    days.set(what, (days.get(what) ?? new Set()).add(on ?? ""));
  }
  const parts = [...days].map(([what, on]) => {
    const dates = [...on].filter((date) => date !== "").sort();
    return dates.length === 0 ? what : `${what} on ${listed(dates)}`;
  });
  const text = listed(parts, "; ");
  return `${text}: the week to ${closed.through} is closed; nothing was changed. The owner can reopen it with a reason.`;
}

function listed(texts: readonly string[], mark = ", "): string {
  const more = texts.length > SHOWN ? `${mark}and ${texts.length - SHOWN} more` : "";
  return texts.slice(0, SHOWN).join(mark) + more;
}
