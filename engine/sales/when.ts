import { businessDateOf, type VenueClock } from "#engine/sales/read/clock.ts";
import { addHours, type BusinessDate, type Instant } from "#engine/time.ts";

/** When something happened: at a moment, some time in a business day, or on a day whose hours nobody wrote. */
export type When = { businessDate: BusinessDate; at: Instant | null; timed: boolean };

/** A moment that divides what came before from what came after, with the two dates that follow from it. */
export type Divider = {
  at: Instant;
  /** The business day the moment lies in. */
  businessDate: BusinessDate;
  /** The last business day whose untimed sales lie before it: that of 12 hours earlier. */
  untimedUntil: BusinessDate;
};

export function dividerAt(at: Instant, clock: VenueClock): Divider {
  return {
    at,
    businessDate: businessDateOf(at, clock),
    untimedUntil: businessDateOf(addHours(at, -12), clock),
  };
}

/**
 * Whether something lies before a moment. What happens at exactly the moment belongs after it.
 *
 * A whole day of timed sales lies before a moment of a later business day; the day that the moment
 * itself divides has to come line by line.
 */
export function isBefore(when: When, divider: Divider): boolean {
  if (when.at !== null) return when.at < divider.at;
  return when.timed ? when.businessDate < divider.businessDate : when.businessDate <= divider.untimedUntil;
}
