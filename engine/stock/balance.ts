import type { Book } from "#engine/book.ts";
import { baseAmount, type Catalogue } from "#engine/catalogue.ts";
import { businessDateOf } from "#engine/sales/read/clock.ts";
import type { Count } from "#engine/stock/counts.ts";
import { containerSize, containersIn, packNamed } from "#engine/stock/pack.ts";
import type { Instant } from "#engine/time.ts";

/** One recorded movement of one item, in base units, always positive. */
export type Movement = {
  kind: "received" | "made" | "transferredIn" | "transferredOut";
  item: string;
  at: Instant;
  quantity: number;
};

/** What came and went between two moments, in base units. */
export type Flow = { received: number; made: number; transferredIn: number; transferredOut: number };

/** One item between two counts. `used` = opening + received + made + in − out − closing. */
export type Balance = Flow & {
  item: string;
  from: Instant;
  to: Instant;
  openingQty: number;
  closingQty: number;
  openingVariance: number;
  closingVariance: number;
  used: number;
};

/** The book's deliveries, batches and transfers as movements of items. */
export function movementsOf(
  catalogue: Catalogue,
  book: Pick<Book, "deliveries" | "batches" | "transfers">,
): Movement[] {
  return [
    ...book.deliveries.map(({ item, at, pack, supplier, quantity, of }) => {
      const date = businessDateOf(at, catalogue.venue);
      const bought = packNamed(catalogue, { item, pack, supplier, date });
      if (bought === undefined) throw new Error(`"${item}" has no pack "${pack}".`);
      const size = containerSize(catalogue, bought);
      return { kind: "received" as const, item, at, quantity: containersIn(bought, quantity, of) * size };
    }),
    ...book.batches.map(({ prep, at, made, unit }) => ({
      kind: "made" as const,
      item: prep,
      at,
      quantity: baseAmount(catalogue, { item: prep, amount: made, unit }),
    })),
    ...book.transfers.map(({ direction, item, at, amount, unit }) => ({
      kind: direction === "in" ? ("transferredIn" as const) : ("transferredOut" as const),
      item,
      at,
      quantity: baseAmount(catalogue, { item, amount, unit }),
    })),
  ];
}

/** What moved of one item from one moment on and before another; the first belongs to the period. */
export function flowBetween(
  movements: readonly Movement[],
  { item, from, to }: { item: string; from: Instant; to: Instant },
): Flow {
  const flow: Flow = { received: 0, made: 0, transferredIn: 0, transferredOut: 0 };
  for (const movement of movements) {
    if (movement.item !== item || movement.at < from || movement.at >= to) continue;
    flow[movement.kind] += movement.quantity;
  }
  return flow;
}

/** Net of a flow: what it added to the shelf. */
export function netFlow({ received, made, transferredIn, transferredOut }: Flow): number {
  return received + made + transferredIn - transferredOut;
}

/**
 * The balances of all items that two counts both found whole, each from its own moment in the opening
 * count to its own moment in the closing one.
 *
 * Opening 2100 ml, received 700, closing 1400 → used 1400.
 */
export function balances(movements: readonly Movement[], opening: Count, closing: Count): Balance[] {
  const byItem = new Map<string, Movement[]>();
  for (const movement of movements) {
    const own = byItem.get(movement.item);
    if (own === undefined) byItem.set(movement.item, [movement]);
    else own.push(movement);
  }
  return [...closing.holdings].flatMap(([item, close]) => {
    const open = opening.holdings.get(item);
    if (open === undefined || opening.missedAreas.has(item) || closing.missedAreas.has(item)) return [];
    const flow = flowBetween(byItem.get(item) ?? [], { item, from: open.at, to: close.at });
    return [
      {
        item,
        from: open.at,
        to: close.at,
        openingQty: open.quantity,
        closingQty: close.quantity,
        openingVariance: open.variance,
        closingVariance: close.variance,
        ...flow,
        used: open.quantity + netFlow(flow) - close.quantity,
      },
    ];
  });
}
