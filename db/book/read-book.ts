import { checkBook } from "#db/book/check/book.ts";
import { definedNames } from "#db/book/names.ts";
import { BookError, Findings } from "#db/book/problem.ts";
import { quote } from "#db/book/quote.ts";
import { resolveNames } from "#db/book/resolve.ts";
import { type Row, readSheet } from "#db/book/sheet.ts";
import {
  BOOK_FILES,
  REQUIRED_FILES,
  type Rows,
  SHAPES_FILE,
  SHEET_KEYS,
  SHEETS,
  VENUE_FILE,
} from "#db/book/sheets/all.ts";
import { readShapes, readVenue } from "#db/book/venue-file.ts";
import { Book } from "#engine/book.ts";
import { currencyDigits } from "#engine/currency.ts";
import { foldName } from "#engine/name.ts";
import type { Venue } from "#engine/venue.ts";

export type ReadBook = {
  book: Book;
  /** What was passed over or looks odd, one line each. */
  notices: string[];
};

/** Sheets that others refer to: were one of them not read, every reference to it would be listed as wrong. */
const DEFINING: readonly string[] = ["items", "packs", "drinks", "suppliers", "preps", "cuts"];

/**
 * Reads a book from the texts of its files, by name ("items.csv"). Only venue.json, items.csv and packs.csv must be there.
 *
 * Throws BookError with every wrong cell as one line: `deliveries.csv row 14, pack: no pack "700 ml" of "Dry gin"; it has "1 L"`.
 */
export function readBook(files: ReadonlyMap<string, string>): ReadBook {
  const findings = new Findings();
  for (const file of REQUIRED_FILES) {
    if (!files.has(file)) findings.problem({ file }, "the file is missing");
  }
  const venue = readVenueOf(files, findings);
  const salesShapes = readShapes(files.get(SHAPES_FILE) ?? "[]", findings);
  const { rows, unreadable } = readRows(files, venue, findings);
  if (unreadable.some((key) => DEFINING.includes(key))) throw bookError(findings);
  const names = definedNames(rows, findings);
  addSuppliersMentioned(rows, names.supplier, files.has(SHEETS.suppliers.file), findings);
  resolveNames(rows, names, findings);
  const facts = checkBook(rows, names, venue, findings);
  if (findings.hasProblems || venue === undefined) throw bookError(findings);
  const book = Book.parse({ venue, ...facts, salesShapes });
  return { book, notices: findings.noticeLines(BOOK_FILES) };
}

function bookError(findings: Findings): BookError {
  return new BookError(findings.problemLines(BOOK_FILES), findings.problemsNotKept);
}

function readVenueOf(files: ReadonlyMap<string, string>, findings: Findings): Venue | undefined {
  const text = files.get(VENUE_FILE);
  return text === undefined ? undefined : readVenue(text, findings);
}

function readRows(
  files: ReadonlyMap<string, string>,
  venue: Venue | undefined,
  findings: Findings,
): { rows: Rows; unreadable: string[] } {
  // Where the venue is wrong, the sheets are still read, so that all that is wrong is listed at once.
  const context = {
    timeZone: venue?.timeZone ?? "UTC",
    moneyDigits: venue === undefined ? 4 : currencyDigits(venue.currency),
  };
  const unreadable: string[] = [];
  const rows = Object.fromEntries(
    SHEET_KEYS.map((key) => {
      const text = files.get(SHEETS[key].file);
      if (text === undefined) {
        if (REQUIRED_FILES.includes(SHEETS[key].file)) unreadable.push(key);
        return [key, []];
      }
      const read: Row<never>[] | undefined = readSheet(SHEETS[key] as never, text, context, findings);
      if (read === undefined) unreadable.push(key);
      return [key, read ?? []];
    }),
  ) as unknown as Rows;
  return { rows, unreadable };
}

/** A bar that keeps no suppliers.csv still names suppliers on its packs, deliveries and orders. */
function addSuppliersMentioned(
  rows: Rows,
  known: Map<string, string>,
  isKept: boolean,
  findings: Findings,
): void {
  if (isKept && rows.suppliers.length > 0) return;
  const naming = {
    packs: rows.packs,
    deliveries: rows.deliveries,
    orders: rows.orders,
    supplierDays: rows.supplierDays,
    closures: rows.closures,
  };
  for (const [key, list] of Object.entries(naming) as [
    keyof typeof naming,
    Row<{ supplier: string | null }>[],
  ][]) {
    for (const { cells } of list) mention(cells.supplier, SHEETS[key].file);
  }

  function mention(name: string | null | undefined, file: string): void {
    if (name === null || name === undefined) return;
    const folded = foldName(name);
    if (known.has(folded)) return;
    known.set(folded, name);
    const row = rows.suppliers.length + 2;
    const cells = { name, email: "", minimumValueMinor: null, minimumCases: null };
    rows.suppliers.push({ row, cells, isWhole: true });
    findings.notice(
      { file: SHEETS.suppliers.file },
      `${quote(name)} is not listed there; it was taken from ${file}`,
    );
  }
}
