import { describe, expect, it } from "vitest";
import { factsOf } from "#engine/facts.ts";
import { checkOrder, lateLines } from "#engine/orders/check-delivery.ts";
import type { OrderLine } from "#engine/orders/supplier.ts";
import type { Delivery } from "#engine/stock/movement.ts";
import { AT, aDelivery, anOrder, aPack, orderBook } from "./order-bar.ts";

const TWO_PACKS = [...orderBook().packs, aPack("Gin", { pack: "1 L", amount: 1000, price: 28 })];

function factsWith(orders: OrderLine[], deliveries: Delivery[]) {
  return factsOf(orderBook({ packs: TWO_PACKS, orders, deliveries }));
}

function checked(deliveries: Delivery[], orders = [anOrder()], at = AT) {
  return checkOrder(factsWith(orders, deliveries), "A1", at)[0];
}

describe("two bottles of gin, ordered at 21 for Tuesday 3 March", () => {
  it.each<[string, Delivery[], string, Record<string, unknown>]>([
    ["not yet due", [], AT, { state: "waiting", received: 0, daysLate: 0 }],
    ["came", [aDelivery()], AT, { state: "whole", received: 2, daysLate: 0 }],
    [
      "came a day late",
      [aDelivery({ at: "2026-03-04T12:30:00Z" })],
      "2026-03-09T10:00:00Z",
      { state: "whole", daysLate: 1 },
    ],
    [
      "came short",
      [aDelivery({ quantity: 1 })],
      "2026-03-05T10:00:00Z",
      { state: "short", received: 1, daysLate: 2 },
    ],
    ["never came", [], "2026-03-05T10:00:00Z", { state: "missing", received: 0, daysLate: 2 }],
    [
      "cost what they should",
      [aDelivery({ priceTotalMinor: 4200 })],
      AT,
      { priceOrdered: 21, pricePaid: 21, paidMore: 0 },
    ],
    [
      "cost a euro more each",
      [aDelivery({ priceTotalMinor: 4400 })],
      AT,
      { priceOrdered: 21, pricePaid: 22, paidMore: 2 },
    ],
    ["came without a price", [aDelivery()], AT, { pricePaid: null, paidMore: 0 }],
    [
      "came in two deliveries at two prices",
      [
        aDelivery({ quantity: 1, priceTotalMinor: 2100 }),
        aDelivery({ quantity: 1, invoice: "Q-2", priceTotalMinor: 2300 }),
      ],
      AT,
      { state: "whole", pricePaid: 22, paidMore: 2 },
    ],
  ])("%s", (_, deliveries, at, line) => {
    expect(checked(deliveries, [anOrder()], at)?.lines).toMatchObject([line]);
  });

  it("with litres on the invoice instead of the second bottle", () => {
    const check = checked([aDelivery({ quantity: 1 }), aDelivery({ pack: "1 L", quantity: 1 })]);
    expect(check?.invoices).toEqual(["Q-1"]);
    expect(check?.unordered).toEqual([
      { item: "Gin", pack: "1 L", quantity: 1, invoice: "Q-1", insteadOf: "Gin" },
    ]);
  });

  it("with rum in the place of gin, which is of the same category", () => {
    const check = checked([aDelivery({ quantity: 1 }), aDelivery({ item: "Rum", quantity: 1 })]);
    expect(check?.unordered).toMatchObject([{ item: "Rum", insteadOf: "Gin" }]);
  });

  it("with a bottle more than ordered, in nobody's place", () => {
    expect(checked([aDelivery({ quantity: 3 })])?.unordered).toMatchObject([
      { item: "Gin", quantity: 1, insteadOf: null },
    ]);
  });

  it("does not lay what other invoices brought to this order", () => {
    const check = checked([aDelivery(), aDelivery({ item: "Rum", invoice: "Q-9" })]);
    expect(check?.unordered).toEqual([]);
  });
});

describe("late lines", () => {
  const orders = [
    anOrder(),
    anOrder({ order: "A2", item: "Rum", expected: "2026-03-02" }),
    anOrder({ order: "A3", expected: "2026-03-20", placed: "2026-03-01T12:00:00Z" }),
  ];

  it("are those whose day is over, the latest first", () => {
    const late = lateLines(factsWith(orders, []), "2026-03-05T10:00:00Z");
    expect(late.map(({ order, daysLate, state }) => [order, daysLate, state])).toEqual([
      ["A2", 3, "missing"],
      ["A1", 2, "missing"],
    ]);
  });

  it("are none once all came, and none any more when nobody waits for them", () => {
    expect(lateLines(factsWith([anOrder()], [aDelivery()]), "2026-03-05T10:00:00Z")).toEqual([]);
    expect(lateLines(factsWith([anOrder()], []), "2026-04-05T10:00:00Z")).toEqual([]);
  });

  it("knows nothing of an order that was never placed", () => {
    expect(checkOrder(factsWith([], []), "A1", AT)).toEqual([]);
  });
});
