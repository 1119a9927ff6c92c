import type { Catalogue } from "#engine/catalogue.ts";
import { containerPrice } from "#engine/costing/pack-price.ts";
import { currencyDigits } from "#engine/currency.ts";
import type { Pack } from "#engine/stock/item.ts";
import type { Of } from "#engine/stock/movement.ts";
import { containerSize } from "#engine/stock/pack.ts";

/** The least that can be bought of a pack: a container where single ones are sold, else a case. */
export type BuyingUnit = {
  pack: Pack;
  of: Of;
  /** Base units in it. */
  size: number;
  /** Cases in it, for a supplier's minimum. */
  cases: number;
  /** Major units; null when nobody wrote the price down. */
  price: number | null;
  /** Deposit on its containers in major units, beside the price; 0 without. */
  deposit: number;
};

/** A case of 6 × 700 ml that is not split → a case of 4200 ml. */
export function buyingUnit(catalogue: Catalogue, pack: Pack): BuyingUnit {
  const of = pack.split || pack.perCase === 1 ? "container" : "case";
  const containers = of === "case" ? pack.perCase : 1;
  const price = containerPrice(pack);
  return {
    pack,
    of,
    size: containerSize(catalogue, pack) * containers,
    cases: of === "case" ? 1 : 1 / pack.perCase,
    price: price === null ? null : price * containers,
    deposit: (containers * (pack.depositMinor ?? 0)) / 10 ** currencyDigits(catalogue.venue.currency),
  };
}

/** Units to buy to fill a shortfall, rounded up; 0 when there is none. 1400 ml short, bottles of 700 → 2. */
export function unitsFor({ short, size }: { short: number; size: number }): number {
  return short <= size * 1e-9 ? 0 : Math.ceil(short / size - 1e-9);
}

/** Common practice: nobody wants three months of a slow bottle because the case was cheaper. */
export const MOST_DAYS_BOUGHT = 60;

/**
 * The unit to buy an item in: the cheapest a base unit of those that would be used up in a reasonable time,
 * within its shelf life; where none would, the one that brings the least too much. Priced ones come first.
 */
export function chooseUnit(
  units: readonly BuyingUnit[],
  { short, perDay, shelfLifeDays }: { short: number; perDay: number; shelfLifeDays: number | null },
): BuyingUnit | undefined {
  const most = short + perDay * Math.min(MOST_DAYS_BOUGHT, shelfLifeDays ?? MOST_DAYS_BOUGHT);
  const bought = (unit: BuyingUnit) => unitsFor({ short, size: unit.size }) * unit.size;
  const fitting = units.filter((unit) => bought(unit) <= most);
  if (fitting.length > 0)
    return least(fitting, ({ price, size }) => (price === null ? Infinity : price / size));
  return least(units, bought);
}

/** The first of the least, so that the sheet's order decides between equals. */
function least<T>(list: readonly T[], measure: (entry: T) => number): T | undefined {
  let best: T | undefined;
  for (const entry of list) if (best === undefined || measure(entry) < measure(best)) best = entry;
  return best;
}
