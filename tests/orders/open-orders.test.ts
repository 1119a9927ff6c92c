import { expect, it } from "vitest";
import { factsOf } from "#engine/facts.ts";
import { openOrders } from "#engine/orders/open-orders.ts";
import type { OrderLine } from "#engine/orders/supplier.ts";
import type { Delivery } from "#engine/stock/movement.ts";
import { AT, aDelivery, anOrder, orderBook } from "./order-bar.ts";

function openMl(orders: OrderLine[], deliveries: Delivery[], at = AT): number[] {
  return openOrders(factsOf(orderBook({ orders, deliveries })), at).map(({ quantity }) => quantity);
}

it.each<[string, OrderLine[], Delivery[], number[]]>([
  ["nothing came: all of it is open", [anOrder()], [], [1400]],
  ["all of it came", [anOrder()], [aDelivery()], []],
  ["half of it came", [anOrder()], [aDelivery({ quantity: 1 })], [700]],
  [
    "it came in two deliveries",
    [anOrder()],
    [aDelivery({ quantity: 1 }), aDelivery({ quantity: 1, invoice: "Q-2" })],
    [],
  ],
  ["a case came for the bottles", [anOrder({ quantity: 6 })], [aDelivery({ quantity: 1, of: "case" })], []],
  [
    "what came before the order does not fill it",
    [anOrder()],
    [aDelivery({ at: "2026-02-25T12:00:00Z" })],
    [1400],
  ],
  ["another pack does not fill it", [anOrder()], [aDelivery({ item: "Rum" })], [1400]],
  [
    "the older order is filled first",
    [anOrder({ order: "A2", placed: "2026-02-27T09:00:00Z", quantity: 1 }), anOrder()],
    [aDelivery({ quantity: 2 })],
    [700],
  ],
  ["placed after the moment asked about", [anOrder({ placed: "2026-03-02T11:00:00Z" })], [], []],
  ["fourteen days past its day it is still waited for", [anOrder({ expected: "2026-02-16" })], [], [1400]],
  ["fifteen days past its day nobody waits for it", [anOrder({ expected: "2026-02-15" })], [], []],
  [
    "what comes after the moment asked about is still to come",
    [anOrder()],
    [aDelivery({ at: "2026-03-02T10:30:00Z" })],
    [1400],
  ],
])("%s", (_, orders, deliveries, open) => {
  expect(openMl(orders, deliveries)).toEqual(open);
});
