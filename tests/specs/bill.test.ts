import { describe, expect, it } from "vitest";
import { catalogueOf } from "#engine/catalogue.ts";
import { billOf, billOfBatch, PrepCycleError } from "#engine/specs/bill.ts";
import { modifyLines, serveLines, servePortions } from "#engine/specs/serve.ts";
import { aDrink, anItem, aPrep, handBook, specLines } from "#tests/support/hand-bar.ts";

const date = "2026-03-05";

function billOfDrink(book: ReturnType<typeof handBook>, drink: string, raw = false) {
  const catalogue = catalogueOf(book);
  const lines = serveLines(catalogue, drink, date);
  if (lines === undefined) throw new Error(`${drink} has no version`);
  const portions = servePortions(catalogue, catalogue.drinks.get(drink), modifyLines(lines, []));
  return billOf(catalogue, portions, { date, raw });
}

function amounts(bill: { items: { item: string; amount: number }[] }) {
  return Object.fromEntries(bill.items.map(({ item, amount }) => [item, amount]));
}

describe("the bill of one serve", () => {
  it("keeps a stocked prep, opens one made to order, and asks cuts of their fruit", () => {
    const bill = billOfDrink(handBook(), "Cooler");
    expect(amounts(bill)).toEqual({ Gin: 40, "Ginger syrup": 20, Soda: 100 });
    expect(bill.cuts).toMatchObject([
      { source: "Lime", gives: "Lime juice", amount: 10, shares: 0.4, parts: ["flesh"] },
    ]);
  });

  it("opens every depth when raw: cordial, ginger syrup, simple syrup, sugar", () => {
    const bill = amounts(billOfDrink(handBook(), "Cooler", true));
    expect(bill.Sugar).toBeCloseTo(20 * (400 / 450) * (500 / 800), 12);
    expect(bill.Ginger).toBeCloseTo((20 * 100) / 450, 12);
    expect(bill["Ginger syrup"]).toBeUndefined();
  });

  it("takes the spec in force on the day, and the yield in force on the day, each for itself", () => {
    const book = handBook();
    book.preps.push(aPrep("Cordial", "2026-03-01", 600));
    expect(amounts(billOfDrink(book, "Cooler"))["Ginger syrup"]).toBeCloseTo(10, 12);
  });

  it("sums a line that stands twice, and pieces named directly beside cuts", () => {
    const book = handBook();
    book.specs.push(
      ...specLines("Old hand", "2026-03-01", ["30 ml Rum", "30 ml Rum", "1 each Lime", "1 each Lime wheel"]),
    );
    const bill = billOfDrink(book, "Old hand");
    expect(amounts(bill)).toEqual({ Rum: 60, Lime: 1 });
    expect(bill.cuts).toMatchObject([{ gives: "Lime wheel", shares: 0.125 }]);
  });

  it("names the path when a prep is made of itself", () => {
    const book = handBook();
    book.specs.push(...specLines("Rich syrup", "2026-03-01", ["100 ml Cordial"]));
    book.specs.push(...specLines("Cordial", "2026-03-01", ["100 ml Rich syrup"]));
    expect(() => billOfDrink(book, "Old hand")).toThrow(PrepCycleError);
    expect(() => billOfDrink(book, "Old hand")).toThrow("Rich syrup → Cordial → Rich syrup");
  });

  it("fills the room left in the glass with the top, and says how unsure that is", () => {
    const book = handBook();
    book.drinks.push({ ...aDrink("Long one"), glassMl: 350, ice: "cubed", technique: "built" });
    book.specs.push(...specLines("Long one", "2026-01-01", ["50 ml Gin", "0 top Soda"]));
    const soda = billOfDrink(book, "Long one").items.find(({ item }) => item === "Soda");
    // 0.9 full − 0.4 ice of 350 ml, less 50 ml and a tenth of it in melt.
    expect(soda?.amount).toBeCloseTo(350 * 0.5 - 55, 9);
    expect(soda?.biasSd).toBeGreaterThan(20);
  });

  it("counts weights and pieces in the unit the item is kept in", () => {
    const book = handBook();
    book.items.push(
      anItem({ name: "Honey", base: "g", densityGPerMl: 1.42 }),
      anItem({ name: "Cherry", base: "g", pieceG: 5 }),
    );
    book.specs.push(...specLines("Shot", "2026-03-01", ["10 ml Honey", "2 each Cherry", "1 oz Rum"]));
    const bill = amounts(billOfDrink(book, "Shot"));
    expect(bill.Honey).toBeCloseTo(14.2, 12);
    expect(bill.Cherry).toBe(10);
    expect(bill.Rum).toBeCloseTo(29.5735295625, 10); // NIST Handbook 44, Appendix C
  });
});

describe("the bill of a batch", () => {
  it("opens the prep itself but not the stocked preps in it", () => {
    const bill = billOfBatch(catalogueOf(handBook()), { prep: "Ginger syrup", amount: 900, date });
    expect(bill && amounts(bill)).toEqual({ "Simple syrup": 800, Ginger: 200 });
  });

  it("takes both the fruit and the lines of a prep that has a cut and a spec", () => {
    const book = handBook();
    book.items = book.items.map((item) => (item.name === "Lime juice" ? { ...item, stocked: true } : item));
    book.items.push(anItem({ name: "Acid", base: "g" }));
    book.preps.push(aPrep("Lime juice", "2026-01-01", 1000));
    book.specs.push(...specLines("Lime juice", "2026-01-01", ["8 g Acid"]));
    const bill = billOfBatch(catalogueOf(book), { prep: "Lime juice", amount: 500, date });
    expect(bill && amounts(bill)).toEqual({ Acid: 4 });
    expect(bill?.cuts).toMatchObject([{ source: "Lime", shares: 20 }]);
  });

  it("is not known before the prep's first version", () => {
    expect(
      billOfBatch(catalogueOf(handBook()), { prep: "Ginger syrup", amount: 900, date: "2025-12-31" }),
    ).toBeUndefined();
  });
});
