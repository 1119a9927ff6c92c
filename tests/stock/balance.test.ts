import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { factsOf } from "#engine/facts.ts";
import { balances } from "#engine/stock/balance.ts";
import type { CountRow } from "#engine/stock/movement.ts";
import { onHand } from "#engine/stock/on-hand.ts";
import { aSale, handBook } from "#tests/support/hand-bar.ts";

/** One count row with nothing in it but what is given. */
function aCount(count: string, at: string, item: string, found: Partial<CountRow>): CountRow {
  return {
    count,
    at,
    area: "Bar",
    item,
    pack: null,
    full: null,
    parts: [],
    grossG: [],
    amount: null,
    unit: null,
    by: "",
    ...found,
  };
}

function bookWithGin() {
  const book = handBook();
  book.packs.push({
    item: "Gin",
    pack: "700 ml",
    amount: 700,
    unit: "ml",
    from: null,
    perCase: 6,
    supplier: "Quay",
    code: "",
    gtin: "",
    price: 21,
    pricePer: "container",
    split: true,
    emptyG: 500,
    fullG: null,
    depositMinor: null,
  });
  return book;
}

describe("the balance of a period", () => {
  it("is opening + received + in − out − closing, worked by hand", () => {
    const book = bookWithGin();
    book.counts.push(
      aCount("First", "2026-03-02T10:00:00Z", "Gin", { pack: "700 ml", full: 2, parts: [0.5, 0.1] }),
      aCount("First", "2026-03-02T10:05:00Z", "Gin", { area: "Cellar", pack: "700 ml", full: 6 }),
      // 880 g gross − 500 g empty = 380 g of 40 % spirit, 0.94805 g/ml (OIML R 22) = 400.8 ml
      aCount("Second", "2026-03-09T10:00:00Z", "Gin", { pack: "700 ml", full: 3, grossG: [880] }),
    );
    const delivery = {
      supplier: "Quay",
      invoice: "1",
      item: "Gin",
      pack: "700 ml",
      priceTotalMinor: null,
      depositMinor: null,
      empties: null,
      by: "",
    };
    book.deliveries.push(
      { ...delivery, at: "2026-03-03T09:00:00Z", quantity: 1, of: "case" },
      { ...delivery, at: "2026-03-09T10:00:00Z", quantity: 1, of: "container" }, // at the count's moment: after it
      { ...delivery, at: "2026-03-02T10:03:00Z", quantity: 1, of: "container" }, // before the item's own moment
    );
    book.transfers.push({
      at: "2026-03-04T12:00:00Z",
      direction: "out",
      place: "Sister bar",
      item: "Gin",
      amount: 70,
      unit: "cl",
    });
    const facts = factsOf(book);
    const [opening, closing] = facts.counts;
    if (opening === undefined || closing === undefined) throw new Error("two counts");
    const [gin] = balances(facts.movements, opening, closing);
    expect(gin).toMatchObject({ openingQty: 8.6 * 700, received: 4200, transferredOut: 700, made: 0 });
    expect(gin?.closingQty).toBeCloseTo(2100 + 380 / 0.94805, 1);
    expect(gin?.used).toBeCloseTo(6020 + 4200 - 700 - (gin?.closingQty ?? 0), 9);
  });

  it("leaves out an item that one of its areas was not counted for, and says which", () => {
    const book = bookWithGin();
    book.areas.push({ area: "Bar", item: "Gin", shelf: 1 }, { area: "Cellar", item: "Gin", shelf: 1 });
    book.counts.push(
      aCount("First", "2026-03-02T10:00:00Z", "Gin", { pack: "700 ml", full: 2 }),
      aCount("First", "2026-03-02T10:00:00Z", "Gin", { area: "Cellar", pack: "700 ml", full: 0 }),
      aCount("Second", "2026-03-09T10:00:00Z", "Gin", { pack: "700 ml", full: 3 }),
    );
    const facts = factsOf(book);
    const [opening, closing] = facts.counts;
    if (opening === undefined || closing === undefined) throw new Error("two counts");
    expect(opening.missedAreas.size).toBe(0);
    expect(closing.missedAreas).toEqual(new Map([["Gin", ["Cellar"]]]));
    expect(balances(facts.movements, opening, closing)).toEqual([]);
  });
});

const movement = fc.record({
  day: fc.integer({ min: 1, max: 20 }),
  hour: fc.integer({ min: 0, max: 23 }),
  kind: fc.constantFrom("delivery", "in", "out"),
  amount: fc.integer({ min: 1, max: 40 }),
});
const counted = fc.record({ full: fc.integer({ min: 0, max: 30 }), part: fc.integer({ min: 0, max: 10 }) });

describe("stock", () => {
  it("is conserved: two periods side by side use what the whole one uses", () => {
    fc.assert(
      fc.property(
        fc.array(movement, { maxLength: 25 }),
        fc.tuple(counted, counted, counted),
        (moves, found) => {
          const book = bookWithGin();
          for (const { day, hour, kind, amount } of moves) {
            const at = `2026-03-${String(day).padStart(2, "0")}T${String(hour).padStart(2, "0")}:00:00Z`;
            if (kind === "delivery") {
              book.deliveries.push({
                at,
                supplier: "Quay",
                invoice: "",
                item: "Gin",
                pack: "700 ml",
                quantity: amount,
                of: "container",
                priceTotalMinor: null,
                depositMinor: null,
                empties: null,
                by: "",
              });
            } else {
              book.transfers.push({
                at,
                direction: kind === "in" ? "in" : "out",
                place: "x",
                item: "Gin",
                amount,
                unit: "cl",
              });
            }
          }
          for (const [index, { full, part }] of found.entries()) {
            const at = `2026-03-${["01", "10", "21"][index]}T10:00:00Z`;
            book.counts.push(aCount(`c${index}`, at, "Gin", { pack: "700 ml", full, parts: [part / 10] }));
          }
          const { counts, movements } = factsOf(book);
          const [first, second, third] = counts;
          if (first === undefined || second === undefined || third === undefined)
            throw new Error("three counts");
          const used = (a: typeof first, b: typeof first) => balances(movements, a, b)[0];
          const [early, late, whole] = [used(first, second), used(second, third), used(first, third)];
          expect((early?.used ?? 0) + (late?.used ?? 0)).toBeCloseTo(whole?.used ?? Number.NaN, 9);
          const {
            openingQty = 0,
            received = 0,
            transferredIn = 0,
            transferredOut = 0,
            closingQty = 0,
          } = whole ?? {};
          expect(openingQty + received + transferredIn - transferredOut - closingQty).toBeCloseTo(
            whole?.used ?? Number.NaN,
            9,
          );
        },
      ),
    );
  });
});

describe("on hand", () => {
  it("is the last count, less what was sold, batched and lost since, plus what came", () => {
    const book = bookWithGin();
    book.counts.push(aCount("First", "2026-03-02T10:00:00Z", "Gin", { pack: "700 ml", full: 3 }));
    book.losses.push(
      {
        at: "2026-03-03T23:00:00Z",
        kind: "spill",
        what: "House sour",
        amount: 2,
        unit: "serve",
        by: "",
        note: "",
      },
      {
        at: "2026-03-03T23:00:00Z",
        kind: "breakage",
        what: "Gin",
        amount: 700,
        unit: "ml",
        by: "",
        note: "",
      },
    );
    const facts = factsOf(book);
    const sales = [
      aSale("2026-03-02T09:00:00Z", "House sour", 9),
      aSale("2026-03-02T20:00:00Z", "House sour", 4),
    ];
    const gin = onHand(facts, sales, "2026-03-04T12:00:00Z").get("Gin");
    // 2100 − 4 × 50 − (2 × 50 + 700)
    expect(gin?.quantity).toBeCloseTo(1100, 9);
    expect(onHand(facts, sales, "2026-03-04T12:00:00Z").has("Rum")).toBe(false);
  });
});
