import type { Db } from "#db/open.ts";
import { type Instant, toInstant } from "#engine/time.ts";

/** Clocks of one machine are put right by seconds all the time. */
const TOLERATED_MS = 5 * 60_000;
/** So far back is looked, so that one act under the wrong clock does not hide it, and acts of a clock once ahead are forgotten. */
const ACTS_LOOKED_AT = 100;

/** What this machine's clock says, and the latest act, which by that clock has not happened yet. */
export type ClockSetBack = { clock: Instant; lastActAt: Instant };

/** Whether this machine's clock lies before one of the last acts in the database: it was set back, or is wrong. */
export function clockSetBack({ sqlite }: Db, now: Date): ClockSetBack | undefined {
  const lastActAt = sqlite
    .prepare("select max(at) from (select at from history order by seq desc limit ?)")
    .pluck()
    .get(ACTS_LOOKED_AT) as Instant | null;
  if (lastActAt === null || Date.parse(lastActAt) - now.getTime() <= TOLERATED_MS) return undefined;
  return { clock: toInstant(now.getTime()), lastActAt };
}

/**
 * The same as a warning: acts keep their order, which is by number; but times of counts and deliveries entered now would lie
 * before what they follow. Undefined when all is well.
 */
export function clockWarning(db: Db, now: Date): string | undefined {
  const late = clockSetBack(db, now);
  if (late === undefined) return undefined;
  return (
    `This machine's clock says ${late.clock.slice(0, 16)}Z, but the last act in ${db.sqlite.name} was at ${late.lastActAt.slice(0, 16)}Z. ` +
    "Nothing is lost and all acts keep their order; set the clock right before anything more is entered."
  );
}
