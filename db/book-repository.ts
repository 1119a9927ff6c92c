import { writeBook } from "#db/book/write-book.ts";
import { NotFoundError } from "#db/errors.ts";
import type { Told } from "#db/history/acts.ts";
import { wholeBookTouches } from "#db/history/past.ts";
import type { Db } from "#db/open.ts";
import { ledgerState } from "#db/schema/venue.ts";
import { clearBook, insertBook, readStoredBook } from "#db/stored/book.ts";
import type { DayChange } from "#db/stored/day-changes.ts";
import { countingLinesOfImport } from "#db/stored/lines-of-import.ts";
import { storedTexts } from "#db/stored/sale-blocks.ts";
import { clearSales, insertImport, type SalesFileRead } from "#db/stored/sales.ts";
import { type Doing, inTransaction, momentOf } from "#db/stored/transaction.ts";
import type { Book } from "#engine/book.ts";
import { currencyDigits } from "#engine/currency.ts";
import { writeSales } from "#engine/sales/read/canonical.ts";

/** The book as it now stands: entries that were replaced or taken back are left out. Undefined while there is no venue. */
export async function loadBook(db: Db): Promise<Book | undefined> {
  // One transaction, so that what another program writes meanwhile is seen wholly or not at all.
  return db.sqlite.transaction(() => readStoredBook(db))();
}

/**
 * Puts a book and its sales in place of all that the database holds, its history included, in one transaction: when it
 * throws, nothing has changed. Gives what each sales file did to its days, in the order given. Throws ClosedPastError while
 * weeks are closed.
 */
export async function replaceBook(
  db: Db,
  book: Book,
  sales: readonly SalesFileRead[],
  { now, by }: Doing,
): Promise<DayChange[][]> {
  return inTransaction(db, () => {
    db.orm.update(ledgerState).set({ isReplacing: true }).run();
    clearSales(db);
    clearBook(db);
    insertBook(db, book, { enteredAt: momentOf({ now }), enteredBy: by });
    const changes = sales.map((read) => insertImport(db, read, { now, by }).changes);
    db.orm.update(ledgerState).set({ isReplacing: false }).run();
    return { result: changes, told: tellLoad(book, sales, now) };
  });
}

/** A whole book is one act, told by how much there is of everything; it replaces the closed past too. */
function tellLoad(book: Book, sales: readonly SalesFileRead[], now: string): Told {
  const { venue, ...sheets } = book;
  const sizes = Object.entries(sheets).map(([sheet, facts]) => [sheet, facts.length] as const);
  const after = { ...Object.fromEntries(sizes), salesFiles: sales.length };
  return {
    act: "book loaded",
    subjects: [{ kind: "book", name: venue.name }],
    summary: `${venue.name}: ${book.items.length} items, ${book.drinks.length} drinks, ${book.counts.length} count rows, ${sales.length} sales files`,
    after,
    at: momentOf({ now }),
    touches: wholeBookTouches,
  };
}

export type ExportedBook = {
  book: Book;
  /** The book's files by name. */
  files: Map<string, string>;
  /** One sales file for each import that holds, in our own form. */
  salesFiles: { name: string; text: string }[];
};

/** All that the venue knows, as the files of a book. Throws NotFoundError while there is no venue. */
export async function exportBook(db: Db): Promise<ExportedBook> {
  return db.sqlite.transaction(() => {
    const book = readStoredBook(db);
    if (book === undefined) throw new NotFoundError("The database holds no venue yet; load a book first.");
    return { book, files: writeBook(book), salesFiles: salesFilesOf(db, book) };
  })();
}

function salesFilesOf(db: Db, book: Book): { name: string; text: string }[] {
  const texts = storedTexts(db);
  const digits = currencyDigits(book.venue.currency);
  const imports = db.sqlite
    .prepare("select id, file from sale_imports where undone_at is null order by id")
    .all() as { id: number; file: string }[];
  const taken = new Set<string>();
  const names = imports.map(({ file }) => freeName(file, taken));
  const isMixed = !isInOrder(names) && haveDaysInCommon(db);
  const inOrder = isMixed ? names.map((name, at) => `${String(at + 1).padStart(4, "0")} ${name}`) : names;
  return imports.map(({ id }, at) => ({
    name: inOrder[at] ?? "",
    text: writeSales(countingLinesOfImport(db, id, texts), digits),
  }));
}

/** Whether two imports show a day differently: files are read in the order of their names, and a later one corrects. */
function haveDaysInCommon({ sqlite }: Db): boolean {
  const found = sqlite
    .prepare(
      `select 1 from import_days join sale_imports on sale_imports.id = import_days.import_id
       where undone_at is null group by business_date having count(distinct block_id) > 1 limit 1`,
    )
    .get();
  return found !== undefined;
}

function isInOrder(names: readonly string[]): boolean {
  return names.every((name, at) => at === 0 || (names[at - 1] ?? "") < name);
}

/** A plain file name that no other has: the same file imported twice is "week_2.csv" the second time, which sorts behind "week.csv". */
function freeName(file: string, taken: Set<string>): string {
  const plain = (file.split(/[\\/]/).at(-1) ?? "").replace(/^\.+/, "").replace(/[^\p{L}\p{N} ._()-]/gu, "_");
  const stem = plain.replace(/\.[a-z0-9]{1,5}$/i, "") || "sales";
  let name = `${stem}.csv`;
  for (let time = 2; taken.has(name.toLowerCase()); time += 1) name = `${stem}_${time}.csv`;
  taken.add(name.toLowerCase());
  return name;
}
