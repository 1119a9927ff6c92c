import { currencyDigits } from "#engine/currency.ts";
import type { Facts } from "#engine/facts.ts";
import type { SaleGroup } from "#engine/sales/tally.ts";
import { dividerAt } from "#engine/sales/when.ts";
import type { Count } from "#engine/stock/counts.ts";
import { isBetween } from "#engine/stock/on-hand.ts";
import type { ItemPeriod } from "#engine/variance/period.ts";

/** Money in major units. Items without a known cost are not in it. */
export type Totals = {
  usedCost: number;
  expectedCost: number;
  unexplainedCost: number;
  unexplainedCostSd: number;
  sales: number;
  /** usedCost ÷ sales × 100; null without sales. */
  pourCostPct: number | null;
};

/**
 * The period's cost of drink used = opening + purchases + transfers − closing, against what it should have been.
 *
 * What was made in house counts by its inputs, so the made part of a prep's use is taken off: 700 ml of syrup
 * made and 700 ml used cost the sugar, once. Opening 10 000, purchases 7500, closing 9000 → 8500.
 */
export function totalsOf(
  periods: Iterable<ItemPeriod>,
  costPerBase: Map<string, number | null>,
  sales: number,
): Totals {
  const totals = { usedCost: 0, expectedCost: 0, unexplainedCost: 0 };
  let variance = 0;
  for (const { item, used, made, expected, unexplained, sd } of periods) {
    const cost = costPerBase.get(item) ?? null;
    if (cost === null) continue;
    totals.usedCost += (used - made) * cost;
    totals.expectedCost += (expected.amount - made) * cost;
    totals.unexplainedCost += unexplained * cost;
    variance += (sd * cost) ** 2;
  }
  return {
    ...totals,
    unexplainedCostSd: Math.sqrt(variance),
    sales,
    pourCostPct: sales > 0 ? (totals.usedCost / sales) * 100 : null,
  };
}

/** Net sales between two counts, by the counts' own moments, in minor units. */
export function netSalesBetween(
  { catalogue }: Facts,
  sales: readonly SaleGroup[],
  opening: Count,
  closing: Count,
): number {
  const from = dividerAt(opening.at, catalogue.venue);
  const to = dividerAt(closing.at, catalogue.venue);
  return sales.reduce((sum, sale) => (isBetween(sale, from, to) ? sum + sale.netMinor : sum), 0);
}

/** Minor units as major units of the venue's currency. 1250 in EUR → 12.5. */
export function inMajor(minor: number, currency: string): number {
  return minor / 10 ** currencyDigits(currency);
}
