import { headOf } from "#db/history/chain.ts";
import type { Db } from "#db/open.ts";

/** Clocks of one machine are put right by seconds all the time. */
const TOLERATED_MS = 5 * 60_000;

/**
 * A warning when this machine's clock lies before the last act in the database: it was set back, or is wrong. Acts keep their
 * order, which is by number; but times of counts and deliveries entered now would lie before what they follow. Undefined when
 * all is well.
 */
export function clockWarning(db: Db, now: Date): string | undefined {
  const { at } = headOf(db);
  if (at === null || Date.parse(at) - now.getTime() <= TOLERATED_MS) return undefined;
  return (
    `This machine's clock says ${now.toISOString().slice(0, 16)}Z, but the last act in ${db.sqlite.name} was at ${at.slice(0, 16)}Z. ` +
    "Nothing is lost and all acts keep their order; set the clock right before anything more is entered."
  );
}
