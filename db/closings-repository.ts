import { and, gt, isNull } from "drizzle-orm";
import { ConflictError, InvalidError, NotFoundError } from "#db/errors.ts";
import { acting } from "#db/history/acting.ts";
import { nothingPast } from "#db/history/acts.ts";
import { closedPast, refuseInClosedPast, wholeBookTouches } from "#db/history/past.ts";
import type { Db } from "#db/open.ts";
import { closings } from "#db/schema/history.ts";
import { loadVenue } from "#db/stored/book.ts";
import { loadCurrent } from "#db/stored/entries.ts";
import { loadRegisters } from "#db/stored/register.ts";
import { type Doing, inTransaction, momentOf } from "#db/stored/transaction.ts";
import { businessDateOf } from "#engine/sales/read/clock.ts";
import type { ClosedPast } from "#engine/stock/closed-past.ts";
import { addDays, BusinessDate, type Instant } from "#engine/time.ts";
import type { Venue } from "#engine/venue.ts";

/** The closed past, and who closed it when. */
export type Closing = ClosedPast & { closedAt: Instant; closedBy: string };

/** The closing that holds; undefined while nothing is closed. */
export async function currentClosing(db: Db): Promise<Closing | undefined> {
  const closed = closedPast(db);
  if (closed === undefined) return undefined;
  const row = db.orm
    .select()
    .from(closings)
    .where(isNull(closings.reopenedAt))
    .all()
    .filter(({ through }) => through === closed.through)
    .at(-1);
  return row && { ...closed, closedAt: row.closedAt, closedBy: row.closedBy };
}

/**
 * Closes the past up to and with a business date: nothing in it can be changed until the owner reopens it. The count of the
 * morning after, which the week ends on, is closed with it.
 *
 * Throws NotFoundError without a venue, InvalidError for a day that is not over, ConflictError when it is closed already.
 */
export async function closePast(
  db: Db,
  through: BusinessDate,
  { now }: Pick<Doing, "now">,
): Promise<Closing> {
  return inTransaction(db, () => {
    const venue = loadVenue(db);
    if (venue === undefined) throw new NotFoundError("The database holds no venue yet; load a book first.");
    if (!BusinessDate.safeParse(through).success)
      throw new InvalidError(`"${through}" is no date; write it as 2026-11-22.`);
    refuseOpenDay(through, now, venue);
    const held = closedPast(db);
    if (held !== undefined && held.through >= through)
      throw new ConflictError(`The past is closed up to ${held.through} already.`);
    const closing = { through, ...countsAfter(db, through, venue) };
    const row = { ...closing, closedAt: momentOf({ now }), closedBy: acting().who };
    db.orm.insert(closings).values(row).run();
    return {
      result: row,
      told: {
        act: "week closed",
        subjects: [{ kind: "week", name: through }],
        summary: closedWords(through, closing.counts),
        before: held ?? null,
        after: closing,
        at: row.closedAt,
        touches: nothingPast,
      },
    };
  });
}

function closedWords(through: BusinessDate, counts: readonly string[]): string {
  if (counts.length === 0) return `The past is closed up to ${through}`;
  return `The past is closed up to ${through}, with the count ${counts.join(" and ")}`;
}

function refuseOpenDay(through: BusinessDate, now: string, venue: Venue): void {
  const today = businessDateOf(momentOf({ now }), venue);
  if (through < today) return;
  throw new InvalidError(
    `${through} is not over yet (the venue's day is ${today}); close it up to ${addDays(today, -1)} at most.`,
  );
}

/** The counts that were taken on the day after, and when the last of them was done. */
function countsAfter(
  db: Db,
  through: BusinessDate,
  venue: Venue,
): Pick<ClosedPast, "counts" | "until"> & { counts: string[] } {
  const rows = loadCurrent(db, loadRegisters(db), "count");
  const days = new Map<string, { first: BusinessDate; last: Instant }>();
  for (const { count, at } of rows) {
    const date = businessDateOf(at, venue);
    const known = days.get(count);
    const first = known === undefined || date < known.first ? date : known.first;
    days.set(count, { first, last: known === undefined || at > known.last ? at : known.last });
  }
  const held = [...days].filter(([, { first }]) => first === addDays(through, 1));
  const until =
    held
      .map(([, { last }]) => last)
      .sort()
      .at(-1) ?? null;
  return { counts: held.map(([count]) => count), until };
}

/** Throws ClosedPastError where a book may not be loaded over this one; to be asked before a copy is made. */
export async function refuseLoadOverClosed(db: Db): Promise<void> {
  refuseInClosedPast(db, wholeBookTouches);
}

const MAY_REOPEN = ["owner", "terminal"];

/**
 * Reopens the week that was closed last, or, with `to`, all days after that one. Only the owner may, and says why.
 * Gives what is still closed. Throws ConflictError, InvalidError.
 */
export async function reopenPast(
  db: Db,
  { reason, to }: { reason: string; to?: BusinessDate | undefined },
  { now }: Pick<Doing, "now">,
): Promise<ClosedPast | undefined> {
  return inTransaction(db, () => {
    const { who, role } = acting();
    if (!MAY_REOPEN.includes(role)) throw new ConflictError("Only the owner may reopen a closed week.");
    if (reason.trim() === "")
      throw new InvalidError("Say why the week is reopened; it stays in the history.");
    const held = closedPast(db);
    if (held === undefined) throw new ConflictError("Nothing is closed, so there is nothing to reopen.");
    if (to !== undefined && to >= held.through)
      throw new InvalidError(
        `The past is closed up to ${held.through}; name an earlier day to reopen what follows it.`,
      );
    const reopened = { reopenedAt: momentOf({ now }), reopenedBy: who, reopenedWhy: reason.trim() };
    const after = to ?? addDays(held.through, -1);
    db.orm
      .update(closings)
      .set(reopened)
      .where(and(isNull(closings.reopenedAt), gt(closings.through, after)))
      .run();
    keepUpTo(db, to, { closedAt: reopened.reopenedAt, closedBy: who });
    const left = closedPast(db);
    const still = left === undefined ? "nothing is closed now" : `closed up to ${left.through} now`;
    return {
      result: left,
      told: {
        act: "week reopened",
        subjects: [{ kind: "week", name: held.through }],
        summary: `The week to ${held.through} is open again; ${still}`,
        before: held,
        after: left ?? null,
        reason: reason.trim(),
        at: reopened.reopenedAt,
        touches: nothingPast,
      },
    };
  });
}

/** Days up to the one named stay closed, although they were closed together with later ones. */
function keepUpTo(
  db: Db,
  to: BusinessDate | undefined,
  stamp: { closedAt: Instant; closedBy: string },
): void {
  if (to === undefined || closedPast(db)?.through === to) return;
  db.orm
    .insert(closings)
    .values({ through: to, counts: [], until: null, ...stamp })
    .run();
}
