import { describe, expect, it } from "vitest";
import { unitCosts } from "#engine/costing/unit-cost.ts";
import { factsOf } from "#engine/facts.ts";
import { checkOrder } from "#engine/orders/check-delivery.ts";
import { planOrder } from "#engine/orders/order.ts";
import { AT, aDelivery, anOrder, aPack, EIGHT_WEEKS, orderBook } from "./order-bar.ts";

/** A bottle of gin at 21.00 with 1.50 on it. */
const DEPOSIT = aPack("Gin", { depositMinor: 150 });
const packs = [DEPOSIT, ...orderBook().packs.filter(({ item }) => item !== "Gin")];

describe("deposits on containers", () => {
  it("come on top of an order's goods, and touch neither its total nor the minimum", () => {
    const [without, with_] = [orderBook(), orderBook({ packs })].map((book) =>
      planOrder({ facts: factsOf(book), sales: EIGHT_WEEKS, at: AT }),
    );
    const gin = with_?.suppliers[0]?.lines.find(({ item }) => item === "Gin");
    expect(gin?.deposit).toBeCloseTo(1.5 * (gin?.quantity ?? 0), 9);
    expect(with_?.suppliers[0]?.deposits).toBe(gin?.deposit);
    expect(without?.suppliers[0]?.deposits).toBe(0);
    expect(with_?.suppliers[0]?.total).toBe(without?.suppliers[0]?.total);
    expect(gin?.cost).toBe((gin?.quantity ?? 0) * 21);
  });

  it("are no part of what an item costs, whatever the invoice charges", () => {
    const delivery = aDelivery({ priceTotalMinor: 4200, depositMinor: 300, empties: 12 });
    const costs = unitCosts(factsOf(orderBook({ packs, deliveries: [delivery] })), "2026-03-10T10:00:00Z");
    expect(costs.get("Gin")).toBeCloseTo(0.03, 9);
  });

  it("are checked with the delivery, short or whole, and empties handed back are to be credited", () => {
    const deliveries = [aDelivery({ quantity: 1, priceTotalMinor: 2100, depositMinor: 300, empties: 4 })];
    const facts = factsOf(orderBook({ packs, orders: [anOrder()], deliveries }));
    const [check] = checkOrder(facts, "A1", "2026-03-05T10:00:00Z");
    // One bottle of two came: 1.50 is due and 3.00 was charged. Four empties give 6.00 back.
    expect(check?.lines).toMatchObject([
      { state: "short", depositDue: 1.5, depositCharged: 3, pricePaid: 21 },
    ]);
    expect(check?.deposits).toEqual({ due: 1.5, charged: 3, empties: 4, back: 6 });
  });

  it("are shared out where one delivery fills two lines, and count what came without being ordered", () => {
    const litre = aPack("Gin", { pack: "1 L", amount: 1000, depositMinor: 200 });
    const deliveries = [
      aDelivery({ quantity: 4, depositMinor: 600 }),
      aDelivery({ quantity: 1, pack: "1 L", depositMinor: 200 }),
    ];
    const orders = [anOrder(), anOrder({ order: "A2", placed: "2026-02-27T12:00:00Z" })];
    const facts = factsOf(orderBook({ packs: [...packs, litre], orders, deliveries }));
    const [check] = checkOrder(facts, "A1", AT);
    expect(check?.lines).toMatchObject([{ depositDue: 3, depositCharged: 3 }]);
    expect(check?.deposits).toEqual({ due: 8, charged: 8, empties: 0, back: 0 });
  });

  it("are none where no pack has any", () => {
    const facts = factsOf(orderBook({ orders: [anOrder()], deliveries: [aDelivery()] }));
    const [check] = checkOrder(facts, "A1", AT);
    expect(check?.deposits).toEqual({ due: 0, charged: null, empties: 0, back: 0 });
  });
});
