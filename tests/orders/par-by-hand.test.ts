import { describe, expect, it } from "vitest";
import { factsOf } from "#engine/facts.ts";
import { planOrder } from "#engine/orders/order.ts";
import type { Item } from "#engine/stock/item.ts";
import { AT, aCount, aPack, EIGHT_WEEKS, orderBook } from "./order-bar.ts";

function planned(par: number | null, more: Partial<Item> = {}) {
  const book = orderBook({}, (item) =>
    item.name === "Gin"
      ? { ...item, par, parReason: par === null ? "" : "tastings on Friday", ...more }
      : item,
  );
  return planOrder({ facts: factsOf(book), sales: EIGHT_WEEKS, at: AT });
}

function gin(plan: ReturnType<typeof planned>) {
  return {
    line: plan.suppliers.flatMap(({ lines }) => lines).find(({ item }) => item === "Gin"),
    item: plan.items.find(({ item }) => item === "Gin"),
  };
}

describe("a par set by hand", () => {
  const [computed, set] = [gin(planned(null)), gin(planned(9000))];

  it("is the one that is ordered up to, beside the computed one", () => {
    // 2000 ml of gin are on hand: 7000 ml are short, ten bottles of 700.
    expect(set.line).toMatchObject({ quantity: 10, par: 9000, parSet: 9000 });
    expect(set.line?.parComputed).toBe(computed.line?.par);
    expect(computed.line).toMatchObject({ parSet: null });
    expect(set.line?.why).toContain("up to the par set by hand");
    expect(set.item?.parWhy).toMatch(/^set by hand \(tastings on Friday\); computed \d+ ml: /);
  });

  it("says what it changes: a smaller chance of running out for more money on the shelf", () => {
    const { atPar } = set.item ?? {};
    expect(atPar?.set?.runOutChance).toBeLessThan(atPar?.computed.runOutChance ?? 0);
    // 0.03 a ml, by the pack's price of 21.00 for 700 ml.
    expect(atPar?.set?.money).toBeCloseTo(270, 9);
    expect(computed.item?.atPar.set).toBeNull();
  });

  it("may ask for less than the computed one, even for nothing", () => {
    const none = gin(planned(0));
    expect(none.line).toBeUndefined();
    expect(none.item?.atPar.set?.runOutChance).toBeGreaterThan(0.9);
  });

  it("orders what no drink uses", () => {
    const book = orderBook();
    const [first] = book.items;
    if (first === undefined) throw new Error("no items");
    const napkins: Item = { ...first, name: "Napkins", base: "each", par: 500, parReason: "" };
    const facts = factsOf({
      ...book,
      items: [...book.items, napkins],
      packs: [...book.packs, aPack("Napkins", { pack: "box", amount: 250, unit: "each", perCase: 1 })],
      counts: [...book.counts, aCount("Napkins", 60, "each")],
    });
    const plan = planOrder({ facts, sales: EIGHT_WEEKS, at: AT });
    const line = plan.suppliers.flatMap(({ lines }) => lines).find(({ item }) => item === "Napkins");
    expect(line).toMatchObject({ quantity: 2, par: 500, expectedUse: 0, runOutChance: 0 });
  });
});
