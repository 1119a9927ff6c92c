import { describe, expect, it } from "vitest";
import { costReport } from "#engine/costing/report.ts";
import { unitCosts } from "#engine/costing/unit-cost.ts";
import { factsOf } from "#engine/facts.ts";
import type { Pack } from "#engine/stock/item.ts";
import { anEmptyBook, anItem, handBook } from "#tests/support/hand-bar.ts";

function aPack(item: string, amount: number, unit: Pack["unit"], price: number | null): Pack {
  return {
    item,
    pack: "usual",
    amount,
    unit,
    from: null,
    perCase: 1,
    supplier: "Quay",
    code: "",
    gtin: "",
    price,
    pricePer: "container",
    split: true,
    emptyG: null,
    fullG: null,
    depositMinor: null,
  };
}

function pricedBook() {
  const book = handBook();
  book.packs.push(
    aPack("Gin", 700, "ml", 21),
    aPack("Rum", 700, "ml", 28),
    aPack("Sugar", 1, "kg", 1.2),
    aPack("Ginger", 1, "kg", 9),
    aPack("Lime", 1, "each", 0.25),
    aPack("Soda", 1, "l", 0.8),
  );
  return book;
}

describe("cost", () => {
  it("of a drink is the sum over its bill, worked by hand", () => {
    const { drinks } = costReport(factsOf(pricedBook()), "2026-03-03T12:00:00Z");
    // Simple syrup: 0.60 / 800 ml; ginger syrup: (400 × 0.60/800 + 100 g × 0.009) / 450 ml.
    const gingerSyrup = (400 * (0.6 / 800) + 0.9) / 450;
    const sour = 50 * 0.03 + 20 * gingerSyrup + 0.25 * 1.125;
    expect(drinks.find(({ drink }) => drink === "House sour")).toMatchObject({
      price: 12,
      from: "2026-01-01",
    });
    expect(drinks.find(({ drink }) => drink === "House sour")?.cost).toBeCloseTo(sour, 9);
    expect(drinks.find(({ drink }) => drink === "House sour")?.costPct).toBeCloseTo((sour / 12) * 100, 9);
  });

  it("is not known while a price is not, and says which", () => {
    const book = pricedBook();
    book.packs = book.packs.map((pack) => (pack.item === "Gin" ? { ...pack, price: null } : pack));
    const { drinks } = costReport(factsOf(book), "2026-03-03T12:00:00Z");
    expect(drinks.find(({ drink }) => drink === "House sour")).toMatchObject({
      cost: null,
      costPct: null,
      unpriced: ["Gin"],
    });
    expect(drinks.find(({ drink }) => drink === "Shot")?.cost).toBeCloseTo(1.2, 9);
  });

  // Dittmer & Keefe, Principles of Food, Beverage, and Labor Cost Controls: cost of a standard drink =
  // bottle cost ÷ (bottle ÷ portion). Traster, beverage yield: 17.50 for 750 ml at 1 1/4 oz, all poured.
  it("of a pour is the bottle's cost by the portion", () => {
    const book = anEmptyBook();
    book.items.push(anItem({ name: "Bottle", base: "ml" }));
    book.packs.push(aPack("Bottle", 750, "ml", 17.5));
    const perMl = unitCosts(factsOf(book), "2026-03-03T12:00:00Z").get("Bottle") ?? Number.NaN;
    // .9112 per portion at a yield of 94.7 %: .863 with nothing lost.
    expect((perMl * 1.25 * 29.5735295625) / 0.947).toBeCloseTo(0.9112, 3);
  });

  it("is the weighted average of opening stock and the period's deliveries", () => {
    const book = pricedBook();
    const counted = {
      count: "First",
      area: "Bar",
      item: "Gin",
      pack: "usual",
      parts: [],
      grossG: [],
      amount: null,
      unit: null,
      by: "",
    };
    book.counts.push({ ...counted, at: "2026-03-02T10:00:00Z", full: 10 });
    book.deliveries.push({
      at: "2026-03-03T10:00:00Z",
      supplier: "Quay",
      invoice: "7",
      item: "Gin",
      pack: "usual",
      quantity: 5,
      of: "container",
      priceTotalMinor: 12_000,
      depositMinor: null,
      empties: null,
      by: "",
    });
    const costs = unitCosts(factsOf(book), "2026-03-04T10:00:00Z");
    // 7000 ml at 0.03 and 3500 ml for 120.00
    expect(costs.get("Gin")).toBeCloseTo((210 + 120) / 10_500, 12);
    expect(costs.get("Water")).toBe(0);
  });
});
