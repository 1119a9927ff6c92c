import { describe, expect, it } from "vitest";
import { factsOf } from "#engine/facts.ts";
import { batchCard } from "#engine/prep/batch-card.ts";
import { piecesFor } from "#engine/prep/fruit-yield.ts";
import { aBatch, daily, planOf, prepBook } from "./hand-prep.ts";

/** Batches of 880 ml that each took so many limes; the sheet says 25 ml a lime. */
function bookAfter(pieces: readonly (number | null)[]) {
  const book = prepBook();
  pieces.forEach((count, index) => {
    const batch = aBatch("Lime juice", `2026-02-${20 + index}T14:00:00Z`, 880);
    book.batches.push(batch);
    if (count === null) return;
    const { at, prep } = batch;
    book.batchInputs.push({ at, prep, batchNo: 1, item: "Lime", amount: count, unit: "each" });
  });
  return book;
}

const limesFor = (pieces: readonly (number | null)[]) =>
  batchCard({ facts: factsOf(bookAfter(pieces)), prep: "Lime juice", date: "2026-03-02", make: 1100 })
    .inputs[0];

describe("fruit as the kitchen's own batches taught it", () => {
  it("is the sheet's until three batches say what they took", () => {
    expect(limesFor([])?.text).toMatch(/^44 pieces/);
    expect(limesFor([40, 40])?.text).toMatch(/^44 pieces/);
    expect(limesFor([40, 40, null])?.text).toMatch(/^44 pieces/);
  });

  it("takes more limes where they gave less, with a narrower spread the more were pressed", () => {
    // 880 ÷ 40 = 22 ml a lime; the sheet's 25 counts as one lime. 1100 ÷ 22 = 50.
    const few = limesFor([40, 40, 40]);
    const many = limesFor([40, 40, 40, 40, 40, 40, 40]);
    expect(few?.text).toMatch(/^50 pieces \(\d+ to \d+\)$/);
    const width = (line: typeof few) => (line?.piecesHigh ?? 0) - (line?.piecesLow ?? 0);
    expect(width(many)).toBeLessThan(width(few));
  });

  it("leaves what the book reckons with as the sheet says", () => {
    expect(limesFor([40, 40, 40])?.amount).toBe(44);
    const plan = planOf(bookAfter([40, 40, 40]), daily({ "Lime juice": 1100 }));
    const juice = plan.batches.find(({ prep }) => prep === "Lime juice");
    expect(juice?.inputs[0]?.amount).toBeCloseTo((juice?.make ?? 0) / 25, 9);
  });

  it("stands on the day's list with its spread, beside the pieces that the sheet asks for", () => {
    const [limes] = planOf(bookAfter([40, 40, 40]), daily({ "Lime juice": 1100 })).cuts;
    const volumeMl = limes?.gives[0]?.amount ?? 0;
    expect(limes?.pieces).toBeCloseTo(volumeMl / 25, 9);
    // 22 ml a lime, but for the one lime's worth of the sheet's 25.
    expect(limes?.likely.pieces).toBeGreaterThan(volumeMl / 22.2);
    expect(limes?.likely.pieces).toBeLessThan(volumeMl / 22 + 1);
    expect(limes?.likely.piecesLow).toBeLessThan(limes?.likely.pieces ?? 0);
    expect(limes?.likely.piecesHigh).toBeGreaterThan(limes?.likely.pieces ?? 0);
  });

  it("gives pieces and their spread, worked by hand", () => {
    // 38 pieces: sd = 6 × √(38 + 38² ÷ 400) = 38.7 ml, two of them 8.1 % of 950. 38 ÷ 1.081 = 35.1, 38 ÷ 0.919 = 41.4.
    const belief = { meanMl: 25, spreadMl: 6, pieces: 400, batches: 8, source: "" };
    expect(piecesFor(belief, 950)).toEqual({ pieces: 38, piecesLow: 36, piecesHigh: 42 });
  });
});
