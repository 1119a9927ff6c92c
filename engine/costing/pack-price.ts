import type { Catalogue } from "#engine/catalogue.ts";
import type { Pack } from "#engine/stock/item.ts";
import type { Of } from "#engine/stock/movement.ts";
import { containerSize, packsInForce } from "#engine/stock/pack.ts";
import type { BusinessDate } from "#engine/time.ts";

/** Price of one container of a pack, in major units; null when the pack has no price. */
export function containerPrice({ price, pricePer, perCase }: Pack): number | null {
  if (price === null) return null;
  return pricePer === "case" ? price / perCase : price;
}

/** Price of so many containers or cases, in major units; null when the pack has no price. */
export function priceOf(pack: Pack, quantity: number, of: Of): number | null {
  const container = containerPrice(pack);
  return container === null ? null : container * (of === "case" ? quantity * pack.perCase : quantity);
}

/**
 * Cost per base unit by the first pack of an item that has a price on a date, in major units.
 *
 * 18.00 for a 750 ml bottle → 0.024. Null for an item that is bought but has no price; 0 for one that
 * no pack can bring (water from the tap).
 */
export function listCostPerBase(catalogue: Catalogue, item: string, date: BusinessDate): number | null {
  const packs = packsInForce(catalogue, item, date);
  if (packs.length === 0) return 0;
  for (const pack of packs) {
    const price = containerPrice(pack);
    if (price !== null) return price / containerSize(catalogue, pack);
  }
  return null;
}
