import { groupBy } from "#engine/catalogue.ts";
import type { Facts } from "#engine/facts.ts";
import { foldName } from "#engine/name.ts";
import type { OrderLine } from "#engine/orders/supplier.ts";
import { businessDateOf, instantToLocal } from "#engine/sales/read/clock.ts";
import type { Delivery } from "#engine/stock/movement.ts";
import { containerSize, containersIn, packNamed } from "#engine/stock/pack.ts";
import { addDays, type BusinessDate, type Instant } from "#engine/time.ts";

/** What is still to come of an order line, in the item's base unit. */
export type OpenOrder = {
  order: string;
  supplier: string;
  item: string;
  quantity: number;
  expected: BusinessDate;
};

/** An order this long past its day is not coming any more. */
export const OPEN_DAYS_AFTER_EXPECTED = 14;

/**
 * The order lines open at a moment: placed by then, not yet delivered in full, and not long past their day.
 *
 * Deliveries of an item and pack fill its lines with that supplier, the oldest first; each only what came
 * after it was placed.
 */
export function openOrders({ catalogue, book }: Facts, at: Instant): OpenOrder[] {
  const today = instantToLocal(at, catalogue.venue).slice(0, 10);
  const delivered = groupBy(
    book.deliveries.filter((delivery) => delivery.at <= at),
    supplyKey,
  );
  const placed = groupBy(
    book.orders.filter((line) => line.placed <= at),
    supplyKey,
  );
  return [...placed].flatMap(([key, lines]) =>
    unfilled(lines, delivered.get(key) ?? [], (entry) => containers(entry)).flatMap(({ line, left }) => {
      const isGivenUp = today > addDays(line.expected, OPEN_DAYS_AFTER_EXPECTED);
      if (isGivenUp || left <= 1e-9) return [];
      const size = containerSize(catalogue, packOf(line, line.placed));
      return [
        {
          order: line.order,
          supplier: line.supplier,
          item: line.item,
          quantity: left * size,
          expected: line.expected,
        },
      ];
    }),
  );

  function containers(entry: OrderLine | Delivery): number {
    const pack = packOf(entry, "placed" in entry ? entry.placed : entry.at);
    return containersIn(pack, entry.quantity, entry.of);
  }

  function packOf({ item, pack, supplier }: OrderLine | Delivery, moment: Instant) {
    const date = businessDateOf(moment, catalogue.venue);
    const found = packNamed(catalogue, { item, pack, supplier, date });
    if (found === undefined) throw new Error(`"${item}" has no pack "${pack}".`);
    return found;
  }
}

function supplyKey({ supplier, item, pack }: OrderLine | Delivery): string {
  return JSON.stringify([supplier, item, foldName(pack)]);
}

function unfilled(
  lines: readonly OrderLine[],
  deliveries: readonly Delivery[],
  containers: (entry: OrderLine | Delivery) => number,
): { line: OrderLine; left: number }[] {
  const open = [...lines]
    .sort((a, b) => (a.placed < b.placed ? -1 : a.placed > b.placed ? 1 : 0))
    .map((line) => ({ line, left: containers(line) }));
  const inOrder = [...deliveries].sort((a, b) => (a.at < b.at ? -1 : a.at > b.at ? 1 : 0));
  for (const delivery of inOrder) {
    let came = containers(delivery);
    for (const entry of open) {
      if (entry.line.placed > delivery.at || came <= 0) continue;
      const filled = Math.min(entry.left, came);
      entry.left -= filled;
      came -= filled;
    }
  }
  return open;
}
