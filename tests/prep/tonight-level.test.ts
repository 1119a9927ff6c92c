import { describe, expect, it } from "vitest";
import { factsOf } from "#engine/facts.ts";
import { prepPlan } from "#engine/prep/plan.ts";
import type { Pack } from "#engine/stock/item.ts";
import { datesFrom } from "#engine/time.ts";
import { bookWithDrinks, soldOn } from "./hand-service.ts";

/** Twenty gimlets a day at a price, of limes at a price; a lime gives 25 ml, a gimlet takes 20 ml juice and no cordial. */
function planWith({
  priceMinor,
  lime,
  level = null,
}: {
  priceMinor: number | null;
  lime: number | null;
  level?: number | null;
}) {
  const book = bookWithDrinks();
  book.specs = book.specs.filter(({ makes, item }) => makes !== "Gimlet" || item === "Lime juice");
  book.drinks = book.drinks.map((drink) => ({ ...drink, priceMinor }));
  book.items = book.items.map((item) =>
    item.name === "Lime juice" ? { ...item, serviceLevel: level } : item,
  );
  book.packs.push(limesAt(lime));
  const sales = datesFrom({ from: "2026-01-05", to: "2026-03-01" }).map((date) => soldOn(date, "Gimlet", 20));
  const plan = prepPlan({ facts: factsOf(book), sales, date: "2026-03-02" });
  const juice = plan.batches.find(({ prep }) => prep === "Lime juice");
  if (juice === undefined) throw new Error("juice is pressed every day");
  return juice;
}

function limesAt(price: number | null): Pack {
  return {
    item: "Lime",
    pack: "piece",
    amount: 1,
    unit: "each",
    from: null,
    perCase: 1,
    supplier: null,
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

describe("juice that is thrown out tonight", () => {
  it("is pressed for the chance that pays best: margin lost over margin lost and waste", () => {
    // A gimlet at 10.00 takes 20 ml of juice at 0.75 ÷ 25 = 0.03 a ml, and earns 9.40: 0.47 a ml. 0.47 ÷ 0.50 = 0.94.
    expect(planWith({ priceMinor: 1000, lime: 0.75 }).serviceLevel).toBeCloseTo(0.94, 6);
  });

  it("is never pressed for less than even chances, nor for more than 995 nights in 1000", () => {
    // At 2.00 with limes of 2.00 (0.08 a ml) it earns 0.40: 0.02 a ml, a ratio of 0.2.
    expect(planWith({ priceMinor: 200, lime: 2 }).serviceLevel).toBe(0.5);
    expect(planWith({ priceMinor: 2000, lime: 0.01 }).serviceLevel).toBe(0.995);
  });

  it("keeps the house's service level where a price is missing, and its own where the sheet states one", () => {
    const house = factsOf(bookWithDrinks()).catalogue.venue.serviceLevel;
    expect(planWith({ priceMinor: null, lime: 0.75 }).serviceLevel).toBe(house);
    expect(planWith({ priceMinor: 1000, lime: null }).serviceLevel).toBe(house);
    expect(planWith({ priceMinor: 1000, lime: 0.75, level: 0.8 }).serviceLevel).toBe(0.8);
  });

  it("is pressed more of where a drink earns more", () => {
    const [dear, cheap] = [planWith({ priceMinor: 1500, lime: 0.1 }), planWith({ priceMinor: 110, lime: 1 })];
    expect(dear.need).toBeGreaterThan(cheap.need);
  });
});
