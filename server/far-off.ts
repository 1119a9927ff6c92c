import type { Db } from "#db/open.ts";
import { businessDateOf } from "#engine/sales/read/clock.ts";
import { addDays, type BusinessDate, type Instant } from "#engine/time.ts";
import { InputError } from "#server/input-error.ts";
import { openWorld, type World } from "#server/world.ts";

/** Two years: longer than any supplier's calendar or any event a bar plans for. */
const FARTHEST_DAYS = 731;

/**
 * Throws InputError for a day so far beyond the last entry of the book that a year was mistyped: every day until then would
 * be reckoned, and none of it would mean anything.
 */
export function refuseFarOff(world: World, date: BusinessDate, what: string): void {
  if (world.lastMoment === null) return;
  const last = businessDateOf(world.lastMoment, world.facts.catalogue.venue);
  if (date <= addDays(last, FARTHEST_DAYS)) return;
  throw new InputError(
    `${what}: ${date} is more than two years after the last entry of the book, ${last}; see whether the year is right.`,
  );
}

const AHEAD_MOST_MS = 366 * 86_400_000;

/**
 * Throws InputError for something said to have happened more than a year after both the clock and the last entry: a slip of
 * the year would move every report there, as they reckon from the last entry.
 */
export async function refuseAhead(db: Db, at: Instant, now: string): Promise<void> {
  const isAhead = (of: string): boolean => Date.parse(at) - Date.parse(of) > AHEAD_MOST_MS;
  if (!isAhead(now)) return;
  const { lastMoment } = await openWorld(db);
  if (lastMoment !== null && !isAhead(lastMoment)) return;
  throw new InputError(
    `at: ${at.slice(0, 10)} lies far in the future; the server's clock says ${now.slice(0, 10)}. See whether the year is right.`,
  );
}
