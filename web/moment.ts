import { instantToLocal, localToInstant } from "#engine/sales/read/clock.ts";
import type { Venue } from "#engine/venue.ts";
import { nowInstant } from "./now.ts";

type Clock = Pick<Venue, "timeZone" | "dayEnds">;

/** What the venue's calendar shows today. */
export function todayAt(venue: Clock): string {
  return instantToLocal(nowInstant(), venue).slice(0, 10);
}

/** A moment as an input of date and time wants it: "2026-11-25T09:03". */
export function localInputOf(instant: string, venue: Clock): string {
  return instantToLocal(instant, venue).slice(0, 16).replace(" ", "T");
}

/** The moment a person set on an input of date and time; undefined while it is incomplete. */
export function instantOfInput(local: string, venue: Clock): string | undefined {
  return /^\d{4}-\d\d-\d\dT\d\d:\d\d/.test(local) ? localToInstant(local, venue) : undefined;
}
