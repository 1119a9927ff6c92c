import { describe, expect, it } from "vitest";
import type { Book } from "#engine/book.ts";
import { factsOf } from "#engine/facts.ts";
import { batchCard } from "#engine/prep/batch-card.ts";
import { piecesFor } from "#engine/prep/fruit-yield.ts";
import { oddPours } from "#engine/specs/glass-pours.ts";
import { aDrink, anEmptyBook, anItem, aPrep, specLines } from "#tests/support/hand-bar.ts";
import { prepBook } from "./hand-prep.ts";

const DATE = "2026-03-02";

function cordialOf(lines: readonly string[]) {
  const book = prepBook();
  book.items.push(
    anItem({ name: "Citric acid", base: "g" }),
    anItem({ name: "Sour cordial", base: "ml", inHouse: true }),
    anItem({ name: "Cane syrup", base: "ml", brix: 50, densityGPerMl: 1.2297 }),
  );
  book.preps.push(aPrep("Sour cordial", "2026-01-01", 800));
  book.specs.push(...specLines("Sour cordial", "2026-01-01", lines));
  return batchCard({ facts: factsOf(book), prep: "Sour cordial", date: DATE });
}

describe("the card of a sour batch", () => {
  it("names what a refractometer will read, acid in powder among the solids", () => {
    // 520 of 1000 g are solids, 20 of them acid: 52 − (0.012 + 0.386 − 0.0016).
    const card = cordialOf(["500 g Sugar", "20 g Citric acid", "480.86 ml Water"]);
    expect(card.targetBrix).toBeCloseTo(51.6036, 2);
    expect(card.corrective).toMatchObject({ sweetener: { item: "Sugar" }, water: "Water" });
    expect(card.corrective?.acidPct).toBeCloseTo(2, 3);
  });

  it("leaves a syrup without acid as it was", () => {
    const card = cordialOf(["500 g Sugar", "500 g Water"]);
    expect(card.targetBrix).toBeCloseTo(50, 6);
    expect(card.corrective).not.toHaveProperty("acidPct");
  });
});

describe("fruit that shall be enough with a wanted certainty", () => {
  // z(0.9) = 1.2816: 41 × 25 − 1.2816 × 6 × √(41 + 41² ÷ 400) = 973.3 ≥ 950; 40 pieces give 949.0.
  it("takes the more the surer", () => {
    const belief = { meanMl: 25, spreadMl: 6, pieces: 400, batches: 8, source: "" };
    expect(piecesFor(belief, 950, 0.9)).toMatchObject({ pieces: 38, piecesHigh: 41 });
    expect(piecesFor(belief, 950)).toMatchObject({ pieces: 38, piecesHigh: 42 });
    expect(piecesFor(belief, 950, 0.999).piecesHigh).toBeGreaterThan(42);
    expect(piecesFor(belief, 950, 0.5)).toEqual({ pieces: 38, piecesLow: 38, piecesHigh: 38 });
  });

  it("is asked of the card", () => {
    const facts = factsOf(prepBook());
    const most = (certainty?: number) =>
      batchCard({ facts, prep: "Lime juice", date: DATE, make: 1000, ...(certainty ? { certainty } : {}) })
        .inputs[0]?.piecesHigh;
    expect(most(0.8)).toBeLessThan(most() ?? 0);
    expect(most(0.99)).toBeGreaterThanOrEqual(most() ?? 0);
  });
});

describe("pours by the glass that are no lawful measure", () => {
  function poursIn(country: string | undefined, lines: readonly string[]) {
    const empty = anEmptyBook();
    const book: Book = {
      ...empty,
      venue: { ...empty.venue, ...(country === undefined ? {} : { country }) },
      items: [
        anItem({ name: "Dry gin", base: "ml", category: "spirit" }),
        anItem({ name: "Tonic", base: "ml", category: "soft drink" }),
        anItem({ name: "Bitters", base: "ml", category: "bitters" }),
      ],
      drinks: [aDrink("Serve")],
      specs: specLines("Serve", "2026-01-01", lines),
    };
    return oddPours(factsOf(book).catalogue, "Serve", DATE);
  }

  it("are named in the United Kingdom, with the nearest", () => {
    const kind = "gin, rum, vodka or whisky";
    expect(poursIn("GB", ["30 ml Dry gin", "100 ml Tonic"])).toEqual([
      { item: "Dry gin", ml: 30, kind, lawfulMl: [25, 35] },
    ]);
    expect(poursIn("GB", ["50 ml Dry gin", "100 ml Tonic"])).toEqual([]);
  });

  it("are free in a mixture of three liquids, and elsewhere", () => {
    expect(poursIn("GB", ["30 ml Dry gin", "100 ml Tonic", "1 dash Bitters"])).toEqual([]);
    expect(poursIn("PT", ["30 ml Dry gin"])).toEqual([]);
    expect(poursIn(undefined, ["30 ml Dry gin"])).toEqual([]);
  });
});
