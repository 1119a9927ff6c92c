import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { factsOf } from "#engine/facts.ts";
import { latenessBySupplier, withLateness } from "#engine/orders/lateness.ts";
import { planOrder } from "#engine/orders/order.ts";
import { parOf } from "#engine/orders/par.ts";
import { addDays, datesFrom } from "#engine/time.ts";
import { AT, aDelivery, anOrder, EIGHT_WEEKS, orderBook } from "./order-bar.ts";

/** Ten orders in as many days, each of them so many days late. */
function tenOrders(daysLate: number) {
  const dates = datesFrom({ from: "2026-02-01", to: "2026-02-10" });
  return {
    orders: dates.map((date, index) =>
      anOrder({ order: `L${index}`, placed: `${date}T12:00:00Z`, expected: addDays(date, 2) }),
    ),
    deliveries: dates.map((date, index) =>
      aDelivery({ at: `${addDays(date, 2 + daysLate)}T12:30:00Z`, invoice: `L-${index}` }),
    ),
  };
}

describe("how late a supplier is", () => {
  it("is learnt from its lines, beside ten believed to be in time", () => {
    const facts = factsOf(orderBook(tenOrders(1)));
    expect(latenessBySupplier(facts, AT).get("Quay Spirits")).toEqual({ mean: 0.5, variance: 0.25 });
  });

  it("is nothing where all came in time or early", () => {
    for (const days of [0, -1]) {
      const facts = factsOf(orderBook(tenOrders(days)));
      expect(latenessBySupplier(facts, AT).get("Quay Spirits")).toEqual({ mean: 0, variance: 0 });
    }
  });

  it("is not known of one that never delivered", () => {
    expect(latenessBySupplier(factsOf(orderBook({ orders: [anOrder()] })), AT).size).toBe(0);
  });

  it("raises the par of what it brings, and of nothing else", () => {
    const parsOf = (daysLate: number) =>
      new Map(
        planOrder({ facts: factsOf(orderBook(tenOrders(daysLate))), sales: EIGHT_WEEKS, at: AT }).items.map(
          ({ item, par }) => [item, par],
        ),
      );
    const [inTime, late] = [parsOf(0), parsOf(3)];
    expect(late.get("Gin")).toBeGreaterThan(inTime.get("Gin") ?? 0);
    expect(late.get("Lime")).toBe(inTime.get("Lime"));
  });
});

describe.each([
  ["an amount", false],
  ["a count", true],
])("the par of %s never falls", (_, isCount) => {
  const positive = (min: number, max: number) => fc.double({ min, max, noNaN: true });

  it("when deliveries come later, or more unevenly late", () => {
    fc.assert(
      fc.property(
        fc.record({
          mean: positive(0.5, 4000),
          cv: positive(0.05, 2),
          level: positive(0.55, 0.995),
          days: positive(0, 5),
          spread: positive(0, 25),
          more: positive(0, 3),
        }),
        ({ mean, cv, level, days, spread, more }) => {
          const [demand, perDay] = [
            { mean: 7 * mean, variance: 7 * (mean * cv) ** 2 },
            { mean, variance: (mean * cv) ** 2 },
          ];
          const par = (late: number, variance: number) =>
            parOf({
              demand: withLateness(demand, perDay, { mean: late, variance }),
              serviceLevel: level,
              isCount,
            });
          const least = par(days, spread) * (1 - 1e-6);
          expect(par(days, spread + more)).toBeGreaterThanOrEqual(least);
          expect(par(days + more, spread)).toBeGreaterThanOrEqual(least);
        },
      ),
    );
  });
});
