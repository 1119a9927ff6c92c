import { baseAmount, type Catalogue } from "#engine/catalogue.ts";
import { foldName } from "#engine/name.ts";
import type { Pack } from "#engine/stock/item.ts";
import type { Of } from "#engine/stock/movement.ts";
import type { BusinessDate } from "#engine/time.ts";

/**
 * The packs an item can be had in on a date, one row a pack and supplier, in the sheet's order.
 * Before its first day a pack is taken as it was first written: its size does not wait for its price.
 */
export function packsInForce(catalogue: Catalogue, item: string, date: BusinessDate): Pack[] {
  const newest = new Map<string, Pack>();
  for (const pack of catalogue.packs.get(item) ?? []) {
    const key = JSON.stringify([foldName(pack.pack), pack.supplier]);
    const held = newest.get(key);
    if (held === undefined || isNearer(pack, held, date)) newest.set(key, pack);
  }
  return [...newest.values()];
}

/** Of two rows of one pack the later one that has begun; if neither has, the one that begins first. */
function isNearer(pack: Pack, held: Pack, date: BusinessDate): boolean {
  const from = pack.from ?? "";
  const heldFrom = held.from ?? "";
  if (from <= date) return heldFrom > date || from > heldFrom;
  return heldFrom > date && from < heldFrom;
}

/** The pack of a name on a date, from that supplier where it has a row of its own. */
export function packNamed(
  catalogue: Catalogue,
  { item, pack, supplier, date }: { item: string; pack: string; supplier?: string; date: BusinessDate },
): Pack | undefined {
  const named = packsInForce(catalogue, item, date).filter((row) => foldName(row.pack) === foldName(pack));
  return named.find((row) => row.supplier === supplier) ?? named[0];
}

/** What one container of a pack holds, in the item's base unit. */
export function containerSize(catalogue: Catalogue, pack: Pack): number {
  return baseAmount(catalogue, pack);
}

/** Containers in so many containers or cases of a pack. */
export function containersIn(pack: Pack, quantity: number, of: Of): number {
  return of === "case" ? quantity * pack.perCase : quantity;
}
