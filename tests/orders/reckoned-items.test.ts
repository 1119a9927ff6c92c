import { describe, expect, it } from "vitest";
import { factsOf } from "#engine/facts.ts";
import { planOrder } from "#engine/orders/order.ts";
import { parInPacks } from "#engine/orders/par-in-packs.ts";
import { AT, aCount, aPack, EIGHT_WEEKS, orderBook } from "./order-bar.ts";

const bottles = {
  pack: aPack("Gin"),
  of: "container" as const,
  size: 700,
  cases: 1 / 6,
  price: 21,
  deposit: 0,
};
const cases = {
  pack: aPack("Lager", { pack: "bottle", amount: 1, unit: "each", perCase: 24, split: false }),
  of: "case" as const,
  size: 24,
  cases: 1,
  price: 30,
  deposit: 0,
};

describe("a par as people say it", () => {
  it.each([
    [1640, bottles, 3, "container", 2100],
    [700, bottles, 1, "container", 700],
    [0, bottles, 0, "container", 0],
    [31, cases, 2, "case", 48],
    [24, cases, 1, "case", 24],
    [9, cases, 9, "container", 9],
  ])("%f is %o", (par, unit, quantity, of, amount) => {
    expect(parInPacks(par, unit)).toMatchObject({ quantity, of, amount });
  });
});

describe("the items of an order", () => {
  const full = { counts: [aCount("Gin", 50_000), aCount("Rum", 900), aCount("Lime", 30, "each")] };
  const plan = planOrder({ facts: factsOf(orderBook(full)), sales: EIGHT_WEEKS, at: AT });
  const gin = plan.items.find(({ item }) => item === "Gin");

  it("have a par where nothing has to be ordered", () => {
    expect(plan.suppliers.flatMap(({ lines }) => lines).some(({ item }) => item === "Gin")).toBe(false);
    expect(gin).toMatchObject({ base: "ml", onHand: 50_000, serviceLevel: 0.95, supplier: "Quay Spirits" });
    expect(gin?.par).toBeGreaterThan(gin?.expectedUse ?? 0);
    expect(gin?.parInPacks.amount).toBeGreaterThanOrEqual(gin?.par ?? 0);
    expect((gin?.parInPacks.amount ?? 0) - (gin?.par ?? 0)).toBeLessThan(700);
    expect(gin?.runOutChance).toBeLessThan(1e-6);
  });

  it("say why in a sentence", () => {
    // Monday is closed, and is one of the days all the same.
    expect(gin?.parWhy).toMatch(
      /^\d trading days until Fri 2026-03-06, 95 % sure: \d+ ml on the average and \d+ ml to be safe$/,
    );
  });

  it("are the same whichever supplier is asked for", () => {
    const one = planOrder({
      facts: factsOf(orderBook(full)),
      sales: EIGHT_WEEKS,
      at: AT,
      supplier: "Green Cart",
    });
    expect(one.items).toEqual(plan.items);
  });
});
