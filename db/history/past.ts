import { ClosedPastError } from "#db/errors.ts";
import type { Told } from "#db/history/acts.ts";
import type { Db } from "#db/open.ts";
import { statement } from "#db/stored/statement.ts";
import type { VenueClock } from "#engine/sales/read/clock.ts";
import { type ClosedPast, closedProblem, isMomentClosed, type Touch } from "#engine/stock/closed-past.ts";
import type { BusinessDate, Instant } from "#engine/time.ts";

/** The closed past as it stands; undefined while nothing is closed. */
export function closedPast(db: Db): ClosedPast | undefined {
  const row = statement(
    db,
    `select through, counts_json as counts, until from closings where reopened_at is null
       order by through desc, id desc limit 1`,
  ).get() as { through: BusinessDate; counts: string; until: Instant | null } | undefined;
  return row && { ...row, counts: JSON.parse(row.counts) };
}

/** The one place that keeps the closed past as it is. Throws ClosedPastError when an act touches it. */
export function refuseInClosedPast(db: Db, touches: Told["touches"]): void {
  const closed = closedPast(db);
  if (closed === undefined) return;
  const problem = closedProblem(closed, touches(closed));
  if (problem !== undefined) throw new ClosedPastError(problem);
}

/** What of sales days lies in the closed past. */
export function dayTouches(what: string, dates: readonly BusinessDate[]): Told["touches"] {
  return ({ through }) => dates.filter((on) => on <= through).map((on): Touch => ({ what, on }));
}

/** A whole book takes the place of the closed weeks too. */
export const wholeBookTouches: Told["touches"] = () => [
  { what: "a whole book in place of this one", on: null },
];

/** Whether an entry of a moment, and of a count where it has one, lies in the closed past. */
export function isEntryClosed(
  { at, count }: { at: Instant; count?: string },
  closed: ClosedPast,
  clock: VenueClock,
): boolean {
  const isOfHeldCount = count !== undefined && closed.counts.includes(count);
  return isOfHeldCount || isMomentClosed(at, closed, clock);
}
