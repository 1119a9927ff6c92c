import { WrongCell } from "#db/book/cell.ts";
import { type NewEntries, problemsIn, problemsWith } from "#db/book/check-facts.ts";
import type { Noted } from "#db/book/problem.ts";
import type { Sheet } from "#db/book/sheet.ts";
import { type FactOf, SHEETS, type SheetKey } from "#db/book/sheets/all.ts";
import { InvalidError, NotFoundError } from "#db/errors.ts";
import type { ActName, Subject } from "#db/history/acts.ts";
import { snapshotOf } from "#db/history/change.ts";
import { tellBookChange } from "#db/history/tell-book-change.ts";
import { type EntryChange, tellEntries } from "#db/history/tell-entries.ts";
import type { Db } from "#db/open.ts";
import { readStoredBook } from "#db/stored/book.ts";
import { keptCatalogue } from "#db/stored/kept-catalogue.ts";
import { loadRegisters, type Registers } from "#db/stored/register.ts";
import { type Doing, inTransaction } from "#db/stored/transaction.ts";
import type { Book } from "#engine/book.ts";
import { currencyDigits } from "#engine/currency.ts";
import type { Venue } from "#engine/venue.ts";

/** What an act on the book is called, what it is about (by the names as they stand before it), and why it was done. */
export type About = { act: ActName; subjects: readonly [Subject, ...Subject[]]; reason?: string };

/** An act about one thing. */
export function about(act: ActName, kind: Subject["kind"], name: string): About {
  return { act, subjects: [{ kind, name }] };
}

/**
 * One business act on the book: written in one transaction, and only if the book still holds together afterwards, so that
 * it can always be exported and read again; what it changed goes into the history. Throws InvalidError with what would be
 * wrong.
 */
export function writeChecked<T>(
  db: Db,
  about: About | ((registers: Registers) => About),
  act: (registers: Registers, venue: Venue) => T,
): T {
  return inTransaction(db, () => {
    const before = snapshotOf(db);
    const venue = before.book?.venue;
    if (venue === undefined) throw noVenue();
    const registers = loadRegisters(db);
    const told = typeof about === "function" ? about(registers) : about;
    const result = act(registers, venue);
    refuseProblems(readStoredBook(db));
    return { result, told: tellBookChange(db, told, { before, after: snapshotOf(db) }) };
  });
}

/**
 * As `writeChecked`, for an act that adds entries and changes nothing else: of the entries only the new ones are checked, as
 * the old ones were when they were entered. `act` gives its result, the facts it added and every entry for the history.
 */
export function writeCheckedEntries<T>(
  db: Db,
  doing: Doing & { reason?: string },
  act: (registers: Registers, venue: Venue) => { result: T; added: NewEntries; entries: EntryChange[] },
): T {
  return inTransaction(db, () => {
    const kept = keptCatalogue(db);
    if (kept === undefined) throw noVenue();
    const { registers, venue, checked } = kept;
    const { result, added, entries } = act(registers, venue);
    refuseNoted(problemsWith(checked, added));
    return { result, told: tellEntries(entries, { ...doing, venue }) };
  });
}

function noVenue(): NotFoundError {
  return new NotFoundError("The database holds no venue yet; load a book first.");
}

/** Throws InvalidError with what is wrong with a book; to be called before a transaction ends. */
export function refuseProblems(book: Book | undefined): void {
  if (book !== undefined) refuseNoted(problemsIn(book));
}

function refuseNoted(problems: readonly Noted[]): void {
  if (problems.length === 0) return;
  const lines = problems.map(({ place: { file, column }, message }) => {
    const where = file.replace(/\.\w+$/, "");
    return column === undefined ? `${where}: ${message}` : `${where}, ${column}: ${message}`;
  });
  throw new InvalidError([...new Set(lines)].slice(0, 20).join("\n"));
}

/**
 * A fact as its sheet would hold it: names and short texts without outer spaces. Throws InvalidError for what no cell of the
 * sheet can hold (a number out of bounds, a list's mark inside one of its words).
 */
export function asSheetHolds<Key extends SheetKey>(key: Key, fact: FactOf<Key>, venue: Venue): FactOf<Key> {
  const { columns } = SHEETS[key] as unknown as Sheet<Record<string, unknown>>;
  const context = {
    decimalComma: false,
    timeZone: venue.timeZone,
    moneyDigits: currencyDigits(venue.currency),
  };
  const held = Object.entries(fact as Record<string, unknown>).map(([field, value]) => {
    const column = columns[field];
    if (column === undefined) throw new InvalidError(`${field} is not known; leave it out.`);
    const { heading, cell } = column;
    try {
      const text = cell.write(value, context);
      if (text.trim() === "") {
        if (cell.empty === undefined) throw new WrongCell("it is empty; fill it in");
        return [field, cell.empty.value];
      }
      const read = cell.read(text, context);
      // A list of names is put apart by who knows the names.
      if (!Array.isArray(value) || cell.refers !== undefined)
        return [field, Array.isArray(value) ? value : read];
      if (!Array.isArray(read) || read.length !== value.length) {
        throw new WrongCell("one of its words is empty or holds the mark that parts them");
      }
      return [field, read];
    } catch (error) {
      if (error instanceof WrongCell) throw new InvalidError(`${heading}: ${error.message}`);
      throw error;
    }
  });
  return Object.fromEntries(held) as FactOf<Key>;
}
