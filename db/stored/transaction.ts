import Database from "better-sqlite3";
import { InvalidError } from "#db/errors.ts";
import type { Told } from "#db/history/acts.ts";
import { appendToHistory } from "#db/history/append.ts";
import { refuseInClosedPast } from "#db/history/past.ts";
import type { Db } from "#db/open.ts";
import { storageFaultOf } from "#db/storage-fault.ts";
import { statement } from "#db/stored/statement.ts";
import { type Instant, toInstant } from "#engine/time.ts";

/** What an act gives, and how the history tells it; null only where it turned out that there was nothing to do. */
export type Done<T> = { result: T; told: Told | null };

/**
 * Runs one business act as one transaction: all of it is written, with its row in the history, or, when it throws, none.
 * Throws InvalidError for facts that the tables themselves refuse, ClosedPastError for what lies in the closed past.
 */
export function inTransaction<T>(db: Db, act: () => Done<T>): T {
  const transaction = db.sqlite.transaction(() => {
    const { result, told } = act();
    if (told !== null) {
      refuseInClosedPast(db, told.touches);
      appendToHistory(db, told);
    }
    statement(db, "update ledger_state set changes = changes + 1").run();
    return result;
  });
  try {
    return transaction.immediate();
  } catch (error) {
    throw storageFaultOf(error, db.sqlite.name) ?? asInvalid(error);
  }
}

/** Reads all as it is at one moment, whatever others write meanwhile. */
export function readingAlone<T>(db: Db, read: () => T): T {
  return db.sqlite.transaction(read).deferred();
}

const REFUSALS = ["SQLITE_CONSTRAINT_CHECK", "SQLITE_CONSTRAINT_UNIQUE", "SQLITE_CONSTRAINT_NOTNULL"];

/** The tables' own checks are the last line of defence; what gets there is a fault of the facts all the same. */
function asInvalid(error: unknown): unknown {
  const cause = error instanceof Error && error.cause !== undefined ? error.cause : error;
  if (!(cause instanceof Database.SqliteError) || !REFUSALS.includes(cause.code)) return error;
  return new InvalidError(`This cannot be kept: ${cause.message}.`, { cause });
}

/**
 * A text that changes with every write of any program: what was read under the same token is still true.
 */
export async function changeToken(db: Db): Promise<string> {
  return readToken(db);
}

export function readToken(db: Db): string {
  return String(statement(db, "select changes from ledger_state").pluck().get());
}

/** Who does something, and when by the clock that the caller reads. */
export type Doing = { now: string; by: string };

/** The moment of doing to the second, as it is kept. */
export function momentOf({ now }: Pick<Doing, "now">): Instant {
  const epochMs = Date.parse(now);
  if (Number.isNaN(epochMs)) throw new Error(`"${now}" is no moment.`);
  return toInstant(epochMs);
}
