import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { readBook } from "#db/book/read-book.ts";
import { writeBook } from "#db/book/write-book.ts";
import { loadBook, replaceBook } from "#db/book-repository.ts";
import { closeDatabase, IN_MEMORY, openDatabase } from "#db/open.ts";
import type { Book } from "#engine/book.ts";
import { factsOf } from "#engine/facts.ts";
import type { SaleGroup } from "#engine/sales/tally.ts";
import { useReport } from "#engine/sales/use-report.ts";
import { bookArbitrary } from "#tests/support/book-arbitrary.ts";

describe("a book", () => {
  it("is the same after it was written as sheets and read again", () => {
    fc.assert(
      fc.property(bookArbitrary, (book) => {
        expect(readBook(writeBook(book)).book).toEqual(book);
      }),
      { numRuns: 150 },
    );
  });

  it("is the same after it went through the database", async () => {
    const db = openDatabase(IN_MEMORY);
    await fc.assert(
      fc.asyncProperty(bookArbitrary, async (book) => {
        await replaceBook(db, book, [], { now: "2026-03-02T10:00:00Z", by: "Ana" });
        expect(await loadBook(db)).toEqual(book);
      }),
      { numRuns: 60 },
    );
    closeDatabase(db);
  });

  it("that could be read leaves nothing for the reports to stumble over", () => {
    fc.assert(
      fc.property(
        bookArbitrary,
        fc.constantFrom("2024-06-01", "2026-03-02", "2028-12-31"),
        (book, businessDate) => {
          const read = readBook(writeBook(book)).book;
          const facts = factsOf(read);
          for (const raw of [false, true]) {
            const report = useReport(facts, everySale(read, businessDate), {
              from: "2024-01-01",
              to: "2029-01-01",
              raw,
            });
            for (const { expected, sd } of report.items) {
              expect(Number.isFinite(expected)).toBe(true);
              expect(Number.isFinite(sd)).toBe(true);
            }
          }
        },
      ),
      { numRuns: 60 },
    );
  });
});

/** One sale of everything a till could ring, with each modifier and without. */
function everySale({ drinks, items, ringNames, modifiers }: Book, businessDate: string): SaleGroup[] {
  const names = [...drinks, ...items]
    .map(({ name }) => name)
    .concat(ringNames.map(({ ringName }) => ringName));
  return names.flatMap((ringName) =>
    ["", ...modifiers.map(({ modifier }) => modifier)].map((cell) => ({
      businessDate,
      at: null,
      timed: true,
      ringName,
      modifiers: cell,
      quantity: 1,
      netMinor: 0,
    })),
  );
}
