import { checkBook, checkCatalogue, checkEntries, contextOf } from "#db/book/check/book.ts";
import type { CheckContext } from "#db/book/check/context.ts";
import { definedNames } from "#db/book/names.ts";
import { Findings, type Noted } from "#db/book/problem.ts";
import { resolveEntryNames, resolveNames } from "#db/book/resolve.ts";
import { BOOK_FILES, ENTRY_SHEETS, type Rows, SHEET_KEYS, type SheetKey } from "#db/book/sheets/all.ts";
import { soldAsText } from "#db/book/write-book.ts";
import type { Book } from "#engine/book.ts";

/**
 * What would be wrong with a book if it were read from its sheets: unknown names, units that lead nowhere, cycles.
 *
 * For facts that come from a screen or a program instead; the rows are those that writing the book would give.
 */
export function problemsIn(book: Book): Noted[] {
  const findings = new Findings();
  const rows = rowsOf(book);
  const names = definedNames(rows, findings);
  resolveNames(rows, names, findings);
  checkBook(rows, names, book.venue, findings);
  return findings.problemsBy(BOOK_FILES);
}

/** A book without its entries, gone through once so that any number of entries can be checked against it. */
export type CheckedCatalogue = { context: CheckContext; problems: readonly Noted[] };

export function checkedCatalogue(book: Book): CheckedCatalogue {
  const findings = new Findings();
  const rows = rowsOf(book);
  const names = definedNames(rows, findings);
  resolveNames(rows, names, findings);
  const context = contextOf(rows, names, book.venue, findings);
  checkCatalogue(context);
  return { context, problems: findings.problemsBy(BOOK_FILES) };
}

/** Facts that happened, by their list in the book. */
export type NewEntries = Partial<Pick<Book, (typeof ENTRY_SHEETS)[number]>>;

/** What `problemsIn` would find in the book of a catalogue and some entries; the catalogue itself stays as it was. */
export function problemsWith({ context, problems }: CheckedCatalogue, entries: NewEntries): Noted[] {
  const findings = new Findings();
  // Shelves matter to notices alone; unknown names must not gather in what is kept.
  const rows = { ...context.rows, areas: [], ...entryRows(entries) };
  const names = { ...context.names, unknown: new Map() };
  resolveEntryNames(rows, names, findings);
  checkEntries({ ...context, rows, names, findings });
  return [...problems, ...findings.problemsBy(BOOK_FILES)];
}

function rowsOf(book: Book): Rows {
  const facts = {
    ...book,
    ringNames: book.ringNames.map((ring) => ({ ...ring, soldAs: soldAsText(ring.soldAs) })),
  };
  return asRows(facts, SHEET_KEYS) as Rows;
}

function entryRows(entries: NewEntries) {
  return asRows(entries, ENTRY_SHEETS) as Pick<Rows, (typeof ENTRY_SHEETS)[number]>;
}

function asRows(facts: Partial<Record<SheetKey, readonly object[]>>, keys: readonly SheetKey[]): unknown {
  return Object.fromEntries(
    keys.map((key) => [
      key,
      (facts[key] ?? []).map((fact, at) => ({ row: at + 2, cells: { ...fact }, isWhole: true })),
    ]),
  );
}
