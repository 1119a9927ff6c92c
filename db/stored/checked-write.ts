import { WrongCell } from "#db/book/cell.ts";
import { problemsIn } from "#db/book/check-facts.ts";
import type { Sheet } from "#db/book/sheet.ts";
import { type FactOf, SHEETS, type SheetKey } from "#db/book/sheets/all.ts";
import { InvalidError, NotFoundError } from "#db/errors.ts";
import type { Db } from "#db/open.ts";
import { loadVenue, readStoredBook, readWithoutEntries } from "#db/stored/book.ts";
import { loadRegisters, type Registers } from "#db/stored/register.ts";
import { inTransaction } from "#db/stored/transaction.ts";
import type { Book } from "#engine/book.ts";
import { currencyDigits } from "#engine/currency.ts";
import type { Venue } from "#engine/venue.ts";

/**
 * One business act on the book: written in one transaction, and only if the book still holds together afterwards, so that
 * it can always be exported and read again. Throws InvalidError with what would be wrong.
 */
export function writeChecked<T>(db: Db, act: (registers: Registers, venue: Venue) => T): T {
  return inTransaction(db, () => {
    const venue = loadVenue(db);
    if (venue === undefined) throw noVenue();
    const result = act(loadRegisters(db), venue);
    refuseProblems(readStoredBook(db));
    return result;
  });
}

/** The entries that one act adds, by their list in the book. */
export type NewEntries = Partial<Pick<Book, "counts" | "deliveries" | "batches" | "losses" | "transfers">>;

/**
 * As `writeChecked`, for an act that adds entries and changes nothing else: of the entries only the new ones are checked, as
 * the old ones were when they were entered. `act` gives its result and the entries it added.
 */
export function writeCheckedEntries<T>(
  db: Db,
  act: (registers: Registers, venue: Venue) => { result: T; added: NewEntries },
): T {
  return inTransaction(db, () => {
    const registers = loadRegisters(db);
    const book = readWithoutEntries(db, registers);
    if (book === undefined) throw noVenue();
    const { result, added } = act(registers, book.venue);
    refuseProblems({ ...book, ...added });
    return result;
  });
}

function noVenue(): NotFoundError {
  return new NotFoundError("The database holds no venue yet; load a book first.");
}

/** Throws InvalidError with what is wrong with a book; to be called before a transaction ends. */
export function refuseProblems(book: Book | undefined): void {
  const problems = book === undefined ? [] : problemsIn(book);
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
