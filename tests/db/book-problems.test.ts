import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { BookError } from "#db/book/problem.ts";
import { readBook } from "#db/book/read-book.ts";
import { factsOf } from "#engine/facts.ts";
import { BOOK_PROBLEMS } from "#tests/problems/book-problems.ts";
import { smallBook, smallBookAnd } from "#tests/support/small-book.ts";

/** What reading finds wrong; none when the book is read. */
function problemsIn(files: ReadonlyMap<string, string>): string[] {
  try {
    const { book } = readBook(files);
    // What is read without a problem is fit for the reports.
    factsOf(book);
    return [];
  } catch (error) {
    if (error instanceof BookError) return error.problems;
    throw error;
  }
}

describe("the small bar's book", () => {
  it("is read without a problem or a notice", () => {
    expect(problemsIn(smallBook())).toEqual([]);
    expect(readBook(smallBook()).notices).toEqual([]);
  });

  it.each(BOOK_PROBLEMS)("asks about $wrong", ({ files, problems }) => {
    expect(problemsIn(files)).toEqual(problems);
  });

  it("lists the wrong cells of all sheets at once, in the order of the sheets", () => {
    const files = smallBook({
      "deliveries.csv": `at,supplier,invoice,item,pack,quantity,of
2026-03-05 10:40,Quayside Drinks,Q-118,Dry gin,700 ml,x,case`,
      "drinks.csv": "drink,price\nGimlet,abc\nRum Sour,12\nGin Rickey,10",
    });
    expect(problemsIn(files)).toEqual([
      'drinks.csv row 2, price: "abc" is no number; write it like 0.75, 3/4 or 1 1/2',
      'deliveries.csv row 2, quantity: "x" is no number; write it like 0.75, 3/4 or 1 1/2',
      'deliveries.csv row 2, pack: no pack "700 ml" of "Dry gin"; it has "1 L"',
    ]);
  });

  it("lists the first hundred wrong cells and says how many more there are", () => {
    const rows = Array.from({ length: 250 }, (_, day) => `2026-03-07,Party ${day},lots`);
    const problems = problemsIn(smallBookAnd("events.csv", ...rows));
    expect(problems).toHaveLength(101);
    expect(problems.at(-1)).toBe("… and 150 more");
  });

  it("refuses a sheet of one endless line at once", () => {
    const startedMs = performance.now();
    const problems = problemsIn(smallBook({ "items.csv": "x".repeat(40_000_000) }));
    expect(problems).toEqual([
      "items.csv: line 1 is 40000000 characters long, which no sheet has; check that the file is whole",
    ]);
    expect(performance.now() - startedMs).toBeLessThan(5000);
  });

  it("is either read or asked about, whatever stands in a sheet", () => {
    const files = [...smallBook().keys()];
    const scrap = fc.constantFrom(
      ",",
      "\n",
      '"',
      ";",
      "1",
      "-1",
      "½",
      "1e400",
      "Dry gin",
      "item",
      "all",
      "",
      " ",
      "\u0000",
      "2026-03-02",
      "yes",
      "{",
      "[",
    );
    const mess = fc.array(scrap, { maxLength: 40 }).map((parts) => parts.join(""));
    fc.assert(
      fc.property(fc.constantFrom(...files), mess, fc.boolean(), (file, text, isAdded) => {
        problemsIn(isAdded ? smallBookAnd(file, text) : smallBook({ [file]: text }));
      }),
      { numRuns: 300 },
    );
  });
});
