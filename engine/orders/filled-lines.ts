import { groupBy } from "#engine/catalogue.ts";
import type { Facts } from "#engine/facts.ts";
import { foldName } from "#engine/name.ts";
import type { OrderLine } from "#engine/orders/supplier.ts";
import { businessDateOf } from "#engine/sales/read/clock.ts";
import type { Pack } from "#engine/stock/item.ts";
import type { Delivery } from "#engine/stock/movement.ts";
import { containersIn, packNamed } from "#engine/stock/pack.ts";
import type { Instant } from "#engine/time.ts";

/** An order line with what came of it, in containers of its pack. */
export type FilledLine = {
  line: OrderLine;
  pack: Pack;
  ordered: number;
  left: number;
  /** Deliveries that brought some of it, the oldest first. */
  filledBy: { delivery: Delivery; containers: number }[];
};

/**
 * The order lines placed by a moment, each with the deliveries that filled it by then.
 *
 * Deliveries of an item and pack fill its supplier's lines, the oldest first; each only what came after it was
 * placed.
 */
export function filledLines({ catalogue, book }: Facts, at: Instant): FilledLine[] {
  const delivered = groupBy(
    book.deliveries.filter((delivery) => delivery.at <= at),
    supplyKey,
  );
  const placed = groupBy(
    book.orders.filter((line) => line.placed <= at),
    supplyKey,
  );
  return [...placed].flatMap(([key, lines]) =>
    filled(
      lines.map((line) => {
        const pack = packOf(line, line.placed);
        const ordered = containersIn(pack, line.quantity, line.of);
        return { line, pack, ordered, left: ordered, filledBy: [] };
      }),
      (delivered.get(key) ?? []).map((delivery) => ({
        delivery,
        containers: containersIn(packOf(delivery, delivery.at), delivery.quantity, delivery.of),
      })),
    ),
  );

  function packOf({ item, pack, supplier }: OrderLine | Delivery, moment: Instant): Pack {
    const date = businessDateOf(moment, catalogue.venue);
    const found = packNamed(catalogue, { item, pack, supplier, date });
    if (found === undefined) throw new Error(`"${item}" has no pack "${pack}".`);
    return found;
  }
}

function supplyKey({ supplier, item, pack }: OrderLine | Delivery): string {
  return JSON.stringify([supplier, item, foldName(pack)]);
}

function filled(
  lines: readonly FilledLine[],
  deliveries: readonly { delivery: Delivery; containers: number }[],
): FilledLine[] {
  const open = [...lines].sort((a, b) => compare(a.line.placed, b.line.placed));
  const inOrder = [...deliveries].sort((a, b) => compare(a.delivery.at, b.delivery.at));
  for (const { delivery, containers } of inOrder) {
    let came = containers;
    for (const entry of open) {
      if (entry.line.placed > delivery.at || came <= 0) continue;
      const taken = Math.min(entry.left, came);
      if (taken <= 0) continue;
      entry.left -= taken;
      came -= taken;
      entry.filledBy.push({ delivery, containers: taken });
    }
  }
  return open;
}

function compare(a: string, b: string): number {
  return a < b ? -1 : a > b ? 1 : 0;
}
