import { describe, expect, it } from "vitest";
import { factsOf } from "#engine/facts.ts";
import { batchHabits } from "#engine/prep/batch-habits.ts";
import { aTestApp } from "#tests/support/test-app.ts";
import { aBatch, prepBook } from "./hand-prep.ts";

function bookOfSyrup() {
  const book = prepBook();
  book.preps = book.preps.map((prep) => ({ ...prep, activeMinutes: 15 }));
  book.batches.push(aBatch("Simple syrup", "2026-02-01T14:00:00Z", 1000));
  book.batches.push(aBatch("Simple syrup", "2026-02-08T14:00:00Z", 1000));
  const loss = { what: "Simple syrup", unit: "ml" as const, by: "", note: "" };
  book.losses.push({ ...loss, at: "2026-02-11T14:00:00Z", kind: "expired", amount: 300 });
  book.losses.push({ ...loss, at: "2026-02-12T15:00:00Z", kind: "staff", amount: 50 });
  return book;
}

describe("a kitchen's habits with one prep", () => {
  it("are its batches, what it throws out and what it uses, worked by hand", () => {
    // 2000 made, 300 thrown out (what staff drank was used): 15 %; 1700 over the 14 days from the 1st.
    const habits = batchHabits(factsOf(bookOfSyrup()), "Simple syrup", "2026-02-15");
    expect(habits).toMatchObject({ batches: 2, made: 2000, lost: 300, lossShare: 0.15, batchSize: 1000 });
    expect(habits.usedPerDay).toBeCloseTo(1700 / 14, 9);
  });

  it("are not known of what was never made", () => {
    const habits = batchHabits(factsOf(prepBook()), "Simple syrup", "2026-02-15");
    expect(habits).toMatchObject({ batches: 0, lossShare: null, batchSize: null, usedPerDay: null });
  });
});

describe("GET /api/reports/make-or-buy", () => {
  it("compares a litre made with a litre bought, and says what is missing", async () => {
    const book = bookOfSyrup();
    book.packs.push({
      item: "Sugar",
      pack: "bag",
      amount: 1000,
      unit: "g",
      from: null,
      perCase: 1,
      supplier: null,
      code: "",
      gtin: "",
      price: 1.626,
      pricePer: "container",
      split: true,
      emptyG: null,
      fullG: null,
      depositMinor: null,
    });
    const app = await aTestApp(book);
    const { body } = await app.get("/api/reports/make-or-buy?prep=simple%20syrup&labour=16&bought=6");
    // 1000 g sugar of 1.626 give 1626 ml: 1.00 a litre. Labour 4.00 over a batch of a litre. 15 % thrown out: 5 ÷ 0.85.
    const near = (value: number) => expect.closeTo(value, 9);
    expect(body).toMatchObject({
      per: "litre",
      made: { inputs: near(1), labour: near(4), total: near(5 / 0.85) },
      bought: { cost: near(6), total: near(6) },
      cheaper: "make",
      shelfLifeDays: 21,
      batchSize: near(1),
      breakEvenBatch: near(4 / (6 * 0.85 - 1)),
    });
    const open = await app.get("/api/reports/make-or-buy?prep=Simple%20syrup");
    expect(open.body).toMatchObject({ bought: null, cheaper: null });
    expect((await app.get("/api/reports/make-or-buy?prep=Nothing")).status).toBe(422);
  });
});
