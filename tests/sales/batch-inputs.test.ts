import fc from "fast-check";
import { describe, expect, it } from "vitest";
import type { Book } from "#engine/book.ts";
import { factsOf } from "#engine/facts.ts";
import { useReport } from "#engine/sales/use-report.ts";
import { onHand } from "#engine/stock/on-hand.ts";
import { aDrink, aSale, specLines } from "#tests/support/hand-bar.ts";
import { counted, prepBook } from "../prep/hand-prep.ts";

const AT = "2026-03-02T14:00:00Z";
const DAY = { from: "2026-03-02", to: "2026-03-02" };

type Used = [prep: string, item: string, amount: number, batchNo?: number];

/** 950 ml of lime juice (38 limes by the sheet) and 1626 ml of syrup (1000 g of sugar), made on one day. */
function bookWith(used: readonly Used[]): Book {
  const book = prepBook();
  const made = { at: AT, unit: "ml" as const, by: "", note: "" };
  book.batches.push({ ...made, prep: "Lime juice", made: 950 });
  book.batches.push({ ...made, prep: "Simple syrup", made: 1626 });
  const unitOf = (item: string) => book.items.find(({ name }) => name === item)?.base ?? "ml";
  book.batchInputs = used.map(([prep, item, amount, batchNo = 1]) => ({
    at: AT,
    prep,
    batchNo,
    item,
    amount,
    unit: unitOf(item),
  }));
  return book;
}

function expectedOf(book: Book, { raw = false, twists = 0 } = {}) {
  book.drinks.push(aDrink("Twist"));
  book.specs.push(...specLines("Twist", "2026-01-01", ["1 each Lime peel"]));
  const sales = twists === 0 ? [] : [aSale("2026-03-02T20:00:00Z", "Twist", twists)];
  const { items } = useReport(factsOf(book), sales, { ...DAY, raw });
  return Object.fromEntries(items.map(({ item, expected, sd }) => [item, { expected, sd }]));
}

describe("what a batch really used", () => {
  it("stands in place of what its spec says, item by item, and leaves the rest as it was", () => {
    const use = expectedOf(bookWith([["Simple syrup", "Sugar", 1100]]));
    expect(use.Sugar).toEqual({ expected: 1100, sd: 0 });
    expect(use.Water?.expected).toBeCloseTo(1000, 9);
    expect(use.Lime?.expected).toBeCloseTo(38, 9);
  });

  it("is the fruit really pressed, whose skins the day's twists share still", () => {
    // 42 pressed leave 42 skins: 80 twists at 4 a skin take 20 of them, 200 would take 50.
    const pressed: Used[] = [["Lime juice", "Lime", 42]];
    expect(expectedOf(bookWith([]), { twists: 80 }).Lime?.expected).toBeCloseTo(38, 9);
    expect(expectedOf(bookWith(pressed), { twists: 80 }).Lime?.expected).toBeCloseTo(42, 9);
    expect(expectedOf(bookWith(pressed), { twists: 200 }).Lime?.expected).toBeCloseTo(50, 9);
  });

  it("may be none of an item, or one that no spec line names", () => {
    const use = expectedOf(
      bookWith([
        ["Simple syrup", "Sugar", 0],
        ["Simple syrup", "Lime", 3],
      ]),
    );
    expect(use.Sugar).toBeUndefined();
    expect(use.Lime?.expected).toBeCloseTo(38 + 3, 9);
  });

  it("belongs to one of two batches of the same moment by its number", () => {
    const two = (batchNo: number) => {
      const book = bookWith([["Lime juice", "Lime", 50, batchNo]]);
      book.batches.push({ at: AT, prep: "Lime juice", made: 500, unit: "ml", by: "", note: "" });
      return expectedOf(book).Lime?.expected;
    };
    expect(two(1)).toBeCloseTo(50 + 20, 9);
    expect(two(2)).toBeCloseTo(38 + 50, 9);
  });

  it("is left out of raw use with the batches themselves", () => {
    expect(expectedOf(bookWith([["Simple syrup", "Sugar", 1100]]), { raw: true }).Sugar).toBeUndefined();
  });

  it("corrects the stock of the input at once", () => {
    const sugarLeft = (used: Used[]) => {
      const book = bookWith(used);
      book.counts.push(counted("Sugar", "2026-03-02T09:00:00Z", 5000, "g"));
      return onHand(factsOf(book), [], "2026-03-02T16:00:00Z").get("Sugar")?.quantity;
    };
    expect(sugarLeft([])).toBeCloseTo(4000, 9);
    expect(sugarLeft([["Simple syrup", "Sugar", 1100]])).toBeCloseTo(3900, 9);
  });

  it("changes nothing where it is as the spec says, whatever is made and cut that day", () => {
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 400 }), (twists) => {
        const plain = expectedOf(bookWith([]), { twists });
        const asSpec = expectedOf(
          bookWith([
            ["Lime juice", "Lime", 38],
            ["Simple syrup", "Sugar", 1000],
          ]),
          { twists },
        );
        for (const item of Object.keys(plain)) {
          expect(asSpec[item]?.expected).toBeCloseTo(plain[item]?.expected ?? 0, 9);
        }
      }),
    );
  });
});
