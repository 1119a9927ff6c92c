import { localToInstant } from "#engine/sales/read/clock.ts";
import type { Venue } from "#engine/venue.ts";
import { todayAt } from "../moment.ts";
import { nowInstant } from "../now.ts";

/** When what is done on a plan's screen was done: now if the plan is of today, else at the moment the plan starts from. */
export function entryMoment({ date, planAt, venue }: { date: string; planAt: string; venue: Venue }): string {
  return date === todayAt(venue) ? nowInstant() : localToInstant(planAt, venue);
}
