import { describe, expect, it } from "vitest";
import { factsOf } from "#engine/facts.ts";
import { lotsReader } from "#engine/orders/lots.ts";
import { planOrder } from "#engine/orders/order.ts";
import { levelByMargin } from "#engine/orders/service-level.ts";
import { AT, aCount, aDelivery, EIGHT_WEEKS, orderBook } from "./order-bar.ts";

const GIN = {
  lostMargin: 0.2,
  costPerBase: 0.03,
  demand: { mean: 2100, variance: 800 * 800 },
  days: 7,
  daysBetweenOrders: 7,
};

describe("the service level that nobody set", () => {
  it("weighs the margin lost on a run-out against the money on the shelf", () => {
    // 0.05 × 0.2 × 300 = 3.00 a run-out; √(2 ln(3 × 52.14 ÷ (√(2π) × 0.03 × 800 × 0.25))) = 2.1646 → 0.9848 (arithmetic).
    expect(levelByMargin(GIN)).toBeCloseTo(0.9848, 3);
  });

  it("is higher for what earns more, lower for what is dear to keep, and never wild", () => {
    expect(levelByMargin({ ...GIN, lostMargin: 0.4 })).toBeGreaterThan(levelByMargin(GIN));
    expect(levelByMargin({ ...GIN, costPerBase: 0.06 })).toBeLessThan(levelByMargin(GIN));
    expect(levelByMargin({ ...GIN, lostMargin: 100 })).toBe(0.996);
    expect(levelByMargin({ ...GIN, costPerBase: 1 })).toBe(0.95);
    expect(levelByMargin({ ...GIN, lostMargin: null })).toBe(0.995);
  });

  it("gives way to the venue's, and that to the item's own", () => {
    const levelWith = (venueLevel: number | null, own: number | null) => {
      const book = orderBook({}, (item) => ({ ...item, serviceLevel: own }));
      const venue = { ...book.venue, serviceLevel: venueLevel };
      const plan = planOrder({ facts: factsOf({ ...book, venue }), sales: EIGHT_WEEKS, at: AT });
      return plan.items.find(({ item }) => item === "Gin")?.serviceLevel;
    };
    expect(levelWith(0.9, null)).toBe(0.9);
    expect(levelWith(0.9, 0.97)).toBe(0.97);
    expect(levelWith(null, null)).toBeGreaterThanOrEqual(0.95);
  });
});

describe("stock that will be past its date", () => {
  const book = (shelfLifeDays: number) =>
    orderBook(
      {
        counts: [...orderBook().counts.filter(({ item }) => item !== "Lime"), aCount("Lime", 200, "each")],
        // Ten days before the order, kept for a fortnight: past its date on the Saturday after it.
        deliveries: [
          aDelivery({
            at: "2026-02-20T08:00:00Z",
            supplier: "Green Cart",
            item: "Lime",
            pack: "piece",
            quantity: 150,
          }),
        ],
      },
      (item) => (item.name === "Lime" ? { ...item, shelfLifeDays } : item),
    );

  it("is told from what came when, the oldest used first", () => {
    const lots = lotsReader(factsOf(book(14)), AT)("Lime", 200);
    // 150 came on 20 February, ten days before; what is older is not known to spoil.
    expect(lots).toEqual([
      { amount: 50, spoils: Number.POSITIVE_INFINITY },
      { amount: 150, spoils: 4 },
    ]);
    expect(lotsReader(factsOf(book(5)), AT)("Lime", 200)).toEqual([
      { amount: 200, spoils: Number.POSITIVE_INFINITY },
    ]);
  });

  it("does not keep fresh stock from being ordered, and the line says so", () => {
    const plan = (shelfLifeDays: number) =>
      planOrder({ facts: factsOf(book(shelfLifeDays)), sales: EIGHT_WEEKS, at: AT }).items.find(
        ({ item }) => item === "Lime",
      );
    expect(plan(60)?.onHand).toBe(200);
    expect(plan(60)?.spoils).toBe(0);
    // Eleven days kept: past its date on the day of the delivery, and far fewer than 150 are used by then.
    expect(plan(11)?.spoils).toBeGreaterThan(50);
  });
});
