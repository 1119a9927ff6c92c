import { isDeepStrictEqual } from "node:util";
import { ConflictError, NotFoundError } from "#db/errors.ts";
import { snapshotOf } from "#db/history/change.ts";
import { tellBookChange } from "#db/history/tell-book-change.ts";
import type { Db } from "#db/open.ts";
import { venues } from "#db/schema/venue.ts";
import { loadVenue, readStoredBook, venueRow } from "#db/stored/book.ts";
import { about, refuseProblems } from "#db/stored/checked-write.ts";
import { inTransaction } from "#db/stored/transaction.ts";
import { Venue, VenueSettings } from "#engine/venue.ts";

/** Sets up the venue, or changes how it is set up. Throws InvalidError when the book no longer holds together. */
export async function saveVenue(db: Db, venue: Venue): Promise<void> {
  const given = Venue.parse(venue);
  inTransaction(db, () => put(db, given));
}

/**
 * Sets the venue up otherwise, as a whole; whether names of staff are kept stays as it is. Throws ConflictError where the
 * venue is no longer as it `was` when it was read, so that nobody undoes unseen what another set; NotFoundError without a
 * venue, InvalidError when the book no longer holds together, ClosedPastError for what a closed week was reckoned with.
 */
export async function changeVenue(
  db: Db,
  { was, now }: { was: VenueSettings; now: VenueSettings },
): Promise<void> {
  inTransaction(db, () => {
    const stored = loadVenue(db);
    if (stored === undefined) throw new NotFoundError("The database holds no venue yet; load a book first.");
    if (!isDeepStrictEqual(settingsOf(stored), was))
      throw new ConflictError(
        "Somebody else changed the settings meanwhile, and nothing was saved. Look at them as they stand now, then save again.",
      );
    const { keepStaff } = stored;
    const next = { ...VenueSettings.parse(now), ...(keepStaff === undefined ? {} : { keepStaff }) };
    return put(db, next);
  });
}

/** Writes the venue and tells what it changed. */
function put(db: Db, venue: Venue) {
  const before = snapshotOf(db);
  const row = venueRow(venue);
  db.orm
    .insert(venues)
    .values({ id: 1, ...row })
    .onConflictDoUpdate({ target: venues.id, set: row })
    .run();
  refuseProblems(readStoredBook(db));
  const told = about("venue changed", "venue", row.name);
  return { result: undefined, told: tellBookChange(db, told, { before, after: snapshotOf(db) }) };
}

function settingsOf({ keepStaff: _, ...settings }: Venue): VenueSettings {
  return settings;
}
