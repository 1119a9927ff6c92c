import { describe, expect, it } from "vitest";
import { factsOf } from "#engine/facts.ts";
import { batchCard } from "#engine/prep/batch-card.ts";
import { yieldSeen } from "#engine/prep/yield-seen.ts";
import { aBatch, prepBook } from "./hand-prep.ts";

/** The cordial in steps of 950 ml, and what its batches gave. */
function factsWith(made: readonly number[]) {
  const book = prepBook();
  book.preps = book.preps.map((prep) => (prep.prep === "Lime cordial" ? { ...prep, batchStep: 950 } : prep));
  made.forEach((amount, index) => {
    book.batches.push(aBatch("Lime cordial", `2026-02-${10 + index}T14:00:00Z`, amount));
  });
  return factsOf(book);
}

const seenIn = (made: readonly number[]) => yieldSeen(factsWith(made), "Lime cordial", "2026-03-02");

describe("what batches really gave", () => {
  it("is held against the nearest whole number of steps, worked by hand", () => {
    // 1850/1900, 930/950, 1840/1900
    const seen = seenIn([1850, 930, 1840]);
    expect(seen?.batches).toBe(3);
    expect(seen?.ratio).toBeCloseTo((0.973684 + 0.978947 + 0.968421) / 3, 5);
    expect(seen?.isOff).toBe(false);
  });

  it("is off when many batches agree that it is", () => {
    const facts = factsWith(Array.from({ length: 12 }, (_, index) => (index % 2 === 0 ? 860 : 870)));
    expect(yieldSeen(facts, "Lime cordial", "2026-03-02")?.isOff).toBe(true);
    const card = batchCard({ facts, prep: "Lime cordial", date: "2026-03-02", make: 950 });
    expect(card.expectedYield).toBeCloseTo(865, 6);
    expect(card.cautions[0]).toBe(
      "The last 12 batches gave 9 % less than the sheet: allow for it, or mend the yield.",
    );
  });

  it("is not read from too few batches, nor from so many steps that one more or less hides it", () => {
    expect(seenIn([1850, 930])).toBeUndefined();
    expect(seenIn([9000, 9100, 9200])).toBeUndefined();
    expect(yieldSeen(factsWith([]), "Lime juice", "2026-03-02")).toBeUndefined();
  });

  it("is held against what went in, where that is on record, and not at all where the recipe was another", () => {
    const seenWith = (sugarG: number, waterMl: number) => {
      const book = prepBook();
      for (const day of ["20", "22", "24"]) {
        const at = `2026-02-${day}T14:00:00Z`;
        const which = { at, prep: "Simple syrup", batchNo: 1 };
        book.batches.push(aBatch("Simple syrup", at, 2000));
        book.batchInputs.push({ ...which, item: "Sugar", amount: sugarG, unit: "g" });
        book.batchInputs.push({ ...which, item: "Water", amount: waterMl, unit: "ml" });
      }
      return yieldSeen(factsOf(book), "Simple syrup", "2026-03-02");
    };
    // 1250 g and 1250 ml should give 1.25 × 1626 = 2032.5 ml.
    expect(seenWith(1250, 1250)?.ratio).toBeCloseTo(2000 / 2032.5, 9);
    expect(seenWith(1250, 1000)).toBeUndefined();
  });

  it("leaves the card as the sheet says where nothing is known", () => {
    const card = batchCard({ facts: factsWith([]), prep: "Lime cordial", date: "2026-03-02", make: 950 });
    expect(card).toMatchObject({ yieldSeen: null, expectedYield: 950 });
  });
});
