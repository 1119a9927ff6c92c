import type { Facts } from "#engine/facts.ts";
import { filledLines } from "#engine/orders/filled-lines.ts";
import { instantToLocal } from "#engine/sales/read/clock.ts";
import { containerSize } from "#engine/stock/pack.ts";
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

/** The order lines open at a moment: placed by then, not yet delivered in full, and not long past their day. */
export function openOrders(facts: Facts, at: Instant): OpenOrder[] {
  const today = instantToLocal(at, facts.catalogue.venue).slice(0, 10);
  return filledLines(facts, at).flatMap(({ line, pack, left }) => {
    const isGivenUp = today > addDays(line.expected, OPEN_DAYS_AFTER_EXPECTED);
    if (isGivenUp || left <= 1e-9) return [];
    return [
      {
        order: line.order,
        supplier: line.supplier,
        item: line.item,
        quantity: left * containerSize(facts.catalogue, pack),
        expected: line.expected,
      },
    ];
  });
}
