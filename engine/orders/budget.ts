import { expectedShort } from "#engine/demand/loss-function.ts";
import type { Position } from "#engine/orders/order-line.ts";
import type { BuyingUnit } from "#engine/orders/purchase.ts";

/** A line that could be bought, up to so many units. */
export type Wanted = {
  position: Position;
  unit: BuyingUnit;
  quantity: number;
  /** Major units lost by a base unit short; null when not known. */
  lostMargin: number | null;
  /** Mean use a day, base units. */
  perDay: number;
};

/** Expected cost of running short with so many units bought, in major units. */
export function shortageCost({ position, unit, lostMargin }: Wanted, quantity: number): number {
  const { demand, onHand, spoils, onOrder, isCount } = position;
  const stock = onHand - spoils + onOrder + quantity * unit.size;
  return expectedShort(demand, stock, { isCount }) * (lostMargin ?? costPerBase(unit));
}

/** Without a margin a unit short is at least worth what one pays for it. */
function costPerBase({ price, size }: BuyingUnit): number {
  return price === null ? 0 : price / size;
}

/**
 * Spends a budget where it spares most: unit by unit, the one that saves the most expected shortage for its
 * money first; what does not fit any more is passed over for the next that does.
 *
 * More money never means more shortage: the first unit that only the larger budget can pay saves more than all
 * that the smaller one buys instead, for that costs less and saves less for its money. Units without a price
 * are bought in any case.
 */
export function withinBudget(wanted: readonly Wanted[], budget: number): number[] {
  const quantities = wanted.map(({ unit, quantity }) => (unit.price === null ? quantity : 0));
  const steps = wanted.flatMap((want, index) => stepsOf(want, index)).sort((a, b) => b.worth - a.worth);
  let left = budget;
  for (const { index, price } of steps) {
    if (price > left + 1e-9) continue;
    left -= price;
    quantities[index] = (quantities[index] ?? 0) + 1;
  }
  return quantities;
}

function stepsOf(want: Wanted, index: number): { index: number; price: number; worth: number }[] {
  const { price } = want.unit;
  if (price === null) return [];
  let worthBefore = Number.POSITIVE_INFINITY;
  return Array.from({ length: want.quantity }, (_, units) => {
    const saved = shortageCost(want, units) - shortageCost(want, units + 1);
    // Held from rising, as rounding could make it, so that units are bought in their order.
    worthBefore = Math.min(worthBefore, price > 0 ? saved / price : Number.MAX_VALUE);
    return { index, price, worth: worthBefore };
  });
}
