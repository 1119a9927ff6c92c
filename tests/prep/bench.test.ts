import { describe, expect, it } from "vitest";
import { factsOf } from "#engine/facts.ts";
import { batchCard } from "#engine/prep/batch-card.ts";
import { measureText } from "#engine/prep/card-text.ts";
import { anItem, aPrep, specLines } from "#tests/support/hand-bar.ts";
import { aBatch, prepBook } from "./hand-prep.ts";

const DATE = "2026-03-02";

/** The kitchen with honey, agave and a batched martini beside what it has. */
function benchBook() {
  const book = prepBook();
  book.items.push(
    anItem({ name: "Heather Honey", base: "g" }),
    anItem({ name: "Agave Syrup", base: "g", brix: 75 }),
    anItem({ name: "Dry gin", base: "ml", abv: 40 }),
    anItem({ name: "Dry vermouth", base: "ml", abv: 18 }),
    anItem({ name: "Ginger", base: "g" }),
    ...["Honey syrup", "Agave mix", "Ginger syrup", "Martini"].map((name) =>
      anItem({ name, base: "ml", inHouse: true, brix: name === "Ginger syrup" ? 40 : null }),
    ),
  );
  book.preps.push(
    aPrep("Honey syrup", "2026-01-01", 1500),
    aPrep("Agave mix", "2026-01-01", 1000),
    aPrep("Ginger syrup", "2026-01-01", 1000),
    { ...aPrep("Martini", "2026-01-01", 4500), vesselMax: 3000 },
  );
  book.specs.push(
    ...specLines("Honey syrup", "2026-01-01", ["1000 g Heather Honey", "500 ml Water", "10 g Sugar"]),
    ...specLines("Agave mix", "2026-01-01", ["700 g Agave Syrup", "400 ml Water"]),
    ...specLines("Ginger syrup", "2026-01-01", ["100 g Ginger", "900 ml Water"]),
    ...specLines("Martini", "2026-01-01", ["3000 ml Dry gin", "800 ml Dry vermouth", "800 ml Water"]),
  );
  return book;
}

const cardOf = (prep: string, more = {}) =>
  batchCard({ facts: factsOf(benchBook()), prep, date: DATE, ...more });

describe("a batch that reads off its target", () => {
  it.each([
    // Solids by USDA SR26: honey 82.9 %. Agave states its own.
    ["Honey syrup", "Heather Honey", 82.9],
    ["Agave mix", "Agave Syrup", 75],
    ["Simple syrup", "Sugar", 100],
    // Nothing in it is known to be sweeter than the target: sugar, 99.98 % (USDA SR26).
    ["Ginger syrup", "sugar", 99.98],
  ])("%s is mended with %s, not with just any sugar", (prep, item, solidsPct) => {
    expect(cardOf(prep).corrective).toEqual({ sweetener: { item, solidsPct }, water: "Water" });
  });

  it("is not mended by a refractometer where there is alcohol in it", () => {
    expect(cardOf("Martini").corrective).toBeNull();
  });
});

describe("a batched drink", () => {
  it("says how strong it is, on the card and on the label", () => {
    // Ethanol 1200 + 144 ml over some 4570 ml: gin and water fill less together (OIML R 22). A little over 29 %.
    expect(cardOf("Martini").abv).toBeGreaterThan(29.2);
    expect(cardOf("Martini").abv).toBeLessThan(29.7);
    expect(cardOf("Martini").labels[0]?.lines[3]).toBe("Batch 260302-1, about 29 % vol");
  });

  it("has a label for each vessel, numbered on from what was made that day", () => {
    expect(cardOf("Martini").labels.map(({ batch }) => batch)).toEqual(["260302-1", "260302-2"]);
    const book = benchBook();
    book.batches.push(aBatch("Martini", "2026-03-02T13:00:00Z", 3000));
    const { labels } = batchCard({ facts: factsOf(book), prep: "Martini", date: DATE, make: 3000 });
    expect(labels.map(({ batch }) => batch)).toEqual(["260302-2"]);
  });
});

describe("limes that there are", () => {
  it("make what the kitchen's own limes gave, once three batches taught it", () => {
    const book = prepBook();
    for (const day of ["20", "22", "24"]) {
      const at = `2026-02-${day}T14:00:00Z`;
      book.batches.push(aBatch("Lime juice", at, 880));
      book.batchInputs.push({ at, prep: "Lime juice", batchNo: 1, item: "Lime", amount: 40, unit: "each" });
    }
    const card = (facts: ReturnType<typeof factsOf>) =>
      batchCard({ facts, prep: "Lime juice", date: DATE, scaleTo: { item: "Lime", amount: 30 } }).make;
    expect(card(factsOf(prepBook()))).toBeCloseTo(30 * 25, 9);
    // 880 ÷ 40 = 22 ml a lime, but for the one lime's worth of the sheet's 25.
    expect(card(factsOf(book))).toBeGreaterThan(30 * 22);
    expect(card(factsOf(book))).toBeLessThan(30 * 22.1);
  });
});

describe("a weight as a scale shows it", () => {
  it.each([
    [998.2, 1, "998 g"],
    [998.2, 5, "1000 g"],
    [998.2, 10, "1000 g"],
    [47, 5, "47.0 g (fine scale)"],
    [6.25, 1, "6.3 g (fine scale)"],
    [6.25, 0.1, "6.3 g"],
  ])("%d g in steps of %d g reads %s", (amount, stepG, text) => {
    expect(measureText({ base: "g", amount, weightG: amount }, stepG)).toBe(text);
  });
});
