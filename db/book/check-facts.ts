import { checkBook } from "#db/book/check/book.ts";
import { definedNames } from "#db/book/names.ts";
import { Findings, type Noted } from "#db/book/problem.ts";
import { resolveNames } from "#db/book/resolve.ts";
import { BOOK_FILES, type Rows, SHEET_KEYS } from "#db/book/sheets/all.ts";
import { soldAsText } from "#db/book/write-book.ts";
import type { Book } from "#engine/book.ts";

/**
 * What would be wrong with a book if it were read from its sheets: unknown names, units that lead nowhere, cycles.
 *
 * For facts that come from a screen or a program instead; the rows are those that writing the book would give.
 */
export function problemsIn(book: Book): Noted[] {
  const findings = new Findings();
  const facts = {
    ...book,
    ringNames: book.ringNames.map((ring) => ({ ...ring, soldAs: soldAsText(ring.soldAs) })),
  };
  const rows = Object.fromEntries(
    SHEET_KEYS.map((key) => [
      key,
      facts[key].map((fact, at) => ({ row: at + 2, cells: { ...fact }, isWhole: true })),
    ]),
  ) as unknown as Rows;
  const names = definedNames(rows, findings);
  resolveNames(rows, names, findings);
  checkBook(rows, names, book.venue, findings);
  return findings.problemsBy(BOOK_FILES);
}
