import fc from "fast-check";
import { describe, expect, it } from "vitest";
import type { Book } from "#engine/book.ts";
import { factsOf } from "#engine/facts.ts";
import { prepBegins } from "#engine/prep/begins.ts";
import { prepStock } from "#engine/prep/fridge.ts";
import { type Layer, sumOf, usableStock } from "#engine/prep/layers.ts";
import type { SaleGroup } from "#engine/sales/tally.ts";
import { onHand } from "#engine/stock/on-hand.ts";
import { addDays } from "#engine/time.ts";
import { aDrink, aSale, specLines } from "#tests/support/hand-bar.ts";
import { aBatch, counted, prepBook } from "./hand-prep.ts";

/** The kitchen with one drink: 30 ml cordial, 20 ml juice. */
function bookWithDrink(): Book {
  const book = prepBook();
  book.drinks.push(aDrink("Gimlet"));
  book.specs.push(...specLines("Gimlet", "2026-01-01", ["30 ml Lime cordial", "20 ml Lime juice"]));
  return book;
}

function stockOf(book: Book, prep: string, at: string, sales: SaleGroup[] = []) {
  const stock = prepStock(factsOf(book), sales, { preps: [prep], at }).get(prep);
  if (stock === undefined) throw new Error(`no stock of ${prep}`);
  return stock;
}

describe("what stands in the fridge, batch by batch", () => {
  it("drinks from the oldest batch first", () => {
    const book = bookWithDrink();
    book.counts.push(counted("Lime cordial", "2026-03-01T10:00:00Z", 200));
    book.batches.push(aBatch("Lime cordial", "2026-03-01T14:00:00Z", 700));
    const sales = [aSale("2026-03-01T20:00:00Z", "Gimlet", 10)];
    const { layers, basis } = stockOf(book, "Lime cordial", "2026-03-02T14:00:00Z", sales);
    expect(basis).toBe("count");
    expect(layers).toMatchObject([{ madeOn: "2026-03-01", orOlder: false, quantity: 600 }]);
  });

  it("lays what was counted to the newest batches, and the rest to what is older than the record", () => {
    const book = bookWithDrink();
    book.batches.push(
      aBatch("Lime cordial", "2026-02-24T14:00:00Z", 500),
      aBatch("Lime cordial", "2026-02-27T14:00:00Z", 500),
    );
    book.counts.push(counted("Lime cordial", "2026-03-01T10:00:00Z", 1200));
    const { layers } = stockOf(book, "Lime cordial", "2026-03-01T14:00:00Z");
    expect(layers).toMatchObject([
      { madeOn: "2026-02-24", orOlder: true, quantity: 200, useBy: "2026-03-02" },
      { madeOn: "2026-02-24", orOlder: false, quantity: 500 },
      { madeOn: "2026-02-27", orOlder: false, quantity: 500, useBy: "2026-03-05" },
    ]);
  });

  it("leaves yesterday's dead juice aside: today's drinks take today's", () => {
    const book = bookWithDrink();
    book.counts.push(counted("Lime juice", "2026-03-01T10:00:00Z", 0));
    book.batches.push(
      aBatch("Lime juice", "2026-03-01T14:00:00Z", 500),
      aBatch("Lime juice", "2026-03-02T14:00:00Z", 500),
    );
    const sales = [aSale("2026-03-01T20:00:00Z", "Gimlet", 20), aSale("2026-03-02T20:00:00Z", "Gimlet", 15)];
    const { layers } = stockOf(book, "Lime juice", "2026-03-03T03:00:00Z", sales);
    // 500 − 400 left of the first day and past its date; 500 − 300 of the second.
    expect(layers.map(({ madeOn, quantity }) => [madeOn, Math.round(quantity)])).toEqual([
      ["2026-03-01", 100],
      ["2026-03-02", 200],
    ]);
  });

  it("takes a logged loss from what is past its date", () => {
    const book = bookWithDrink();
    book.batches.push(
      aBatch("Lime juice", "2026-03-01T14:00:00Z", 500),
      aBatch("Lime juice", "2026-03-02T14:00:00Z", 500),
    );
    book.counts.push(counted("Lime juice", "2026-02-28T10:00:00Z", 0));
    book.losses.push({
      at: "2026-03-02T15:00:00Z",
      kind: "expired",
      what: "Lime juice",
      amount: 500,
      unit: "ml",
      by: "",
      note: "",
    });
    const { layers } = stockOf(book, "Lime juice", "2026-03-02T18:00:00Z");
    expect(layers).toMatchObject([{ madeOn: "2026-03-02", quantity: 500 }]);
  });

  it("never holds less than nothing: a batch after a shortfall is whole", () => {
    const book = bookWithDrink();
    book.counts.push(counted("Lime cordial", "2026-03-01T10:00:00Z", 100));
    book.batches.push(aBatch("Lime cordial", "2026-03-02T14:00:00Z", 700));
    const sales = [aSale("2026-03-01T20:00:00Z", "Gimlet", 10)];
    const { layers } = stockOf(book, "Lime cordial", "2026-03-02T15:00:00Z", sales);
    expect(layers).toMatchObject([{ madeOn: "2026-03-02", quantity: 700 }]);
  });

  it("starts from the batches of the last shelf life where a prep is never counted", () => {
    const book = bookWithDrink();
    book.batches.push(
      aBatch("Lime cordial", "2026-02-10T14:00:00Z", 700),
      aBatch("Lime cordial", "2026-02-28T14:00:00Z", 700),
    );
    const sales = [aSale("2026-03-01T20:00:00Z", "Gimlet", 10)];
    const stock = stockOf(book, "Lime cordial", "2026-03-02T14:00:00Z", sales);
    expect(stock.basis).toBe("batches");
    expect(stock.layers).toMatchObject([{ madeOn: "2026-02-28", quantity: 400 }]);
    expect(stockOf(prepBook(), "Lime cordial", "2026-03-02T14:00:00Z")).toEqual({
      layers: [],
      basis: "none",
    });
  });

  it("sums to the stock on hand of the other reports, as long as nothing is past its date or runs out", () => {
    const moves = fc.array(
      fc.record({
        day: fc.integer({ min: 0, max: 5 }),
        made: fc.integer({ min: 1, max: 900 }),
        drinks: fc.integer({ min: 0, max: 9 }),
      }),
      { maxLength: 6 },
    );
    fc.assert(
      fc.property(fc.integer({ min: 2000, max: 5000 }), moves, (opening, list) => {
        const book = bookWithDrink();
        book.counts.push(counted("Lime cordial", "2026-03-01T10:00:00Z", opening));
        const sales = list.map(({ day, drinks }) =>
          aSale(`${addDays("2026-03-01", day)}T20:00:00Z`, "Gimlet", drinks),
        );
        for (const { day, made } of list) {
          book.batches.push(aBatch("Lime cordial", `${addDays("2026-03-01", day)}T14:00:00Z`, made));
        }
        const at = "2026-03-07T14:00:00Z";
        const known = onHand(factsOf(book), sales, at).get("Lime cordial");
        expect(sumOf(stockOf(book, "Lime cordial", at, sales).layers)).toBeCloseTo(known?.quantity ?? -1, 6);
      }),
      { numRuns: 60 },
    );
  });
});

describe("what the coming days can use of it", () => {
  const layer = (quantity: number, useBy: string | null): Layer => ({
    madeOn: "2026-03-01",
    madeAt: "2026-03-01T14:00:00Z",
    orOlder: false,
    quantity,
    useBy,
  });
  const days = (...amounts: number[]) =>
    amounts.map((amount, day) => ({ date: addDays("2026-03-02", day), amount }));

  it("is only as much as is drunk before it is past its date", () => {
    expect(usableStock([layer(800, "2026-03-02")], days(500, 500))).toBe(500);
    expect(usableStock([layer(800, "2026-03-03")], days(500, 500))).toBe(800);
    expect(usableStock([layer(800, null)], days(0, 0))).toBe(800);
  });

  it("is all of it on the last day, however busy", () => {
    expect(usableStock([layer(800, "2026-03-02")], days(500))).toBe(800);
  });
});

describe("the moment a plan starts from", () => {
  it("is 14:00 at the venue", () => {
    const book = bookWithDrink();
    book.venue.timeZone = "America/New_York";
    expect(prepBegins(factsOf(book), [], "2026-03-02")).toBe("2026-03-02T19:00:00Z");
  });

  it("is the first batch of a day that the book has left behind", () => {
    const book = bookWithDrink();
    book.batches.push(aBatch("Lime juice", "2026-03-02T13:30:00Z", 500));
    const facts = factsOf(book);
    expect(prepBegins(facts, [aSale("2026-03-03T20:00:00Z", "Gimlet")], "2026-03-02")).toBe(
      "2026-03-02T13:30:00Z",
    );
    expect(prepBegins(facts, [aSale("2026-03-02T20:00:00Z", "Gimlet")], "2026-03-02")).toBe(
      "2026-03-02T14:00:00Z",
    );
  });

  it("is the last entry before service on the book's last day, so that nothing is made twice", () => {
    const book = bookWithDrink();
    book.counts.push(counted("Lime juice", "2026-03-02T14:30:00Z", 0));
    book.batches.push(
      aBatch("Lime juice", "2026-03-02T15:30:00Z", 500),
      aBatch("Lime juice", "2026-03-02T22:00:00Z", 300),
    );
    const sales = [aSale("2026-03-02T18:00:00Z", "Gimlet")];
    const at = prepBegins(factsOf(book), sales, "2026-03-02");
    expect(at).toBe("2026-03-02T15:30:01Z");
    expect(sumOf(stockOf(book, "Lime juice", at, sales).layers)).toBe(500);
  });
});
