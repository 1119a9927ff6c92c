import { groupBy } from "#engine/catalogue.ts";
import type { Cause } from "#engine/variance/causes/cause.ts";
import type { VarianceItem } from "#engine/variance/report.ts";

type Explains = { evidence: readonly { item: string; amount: number }[] };

type Money = { items: readonly Pick<VarianceItem, "item" | "unexplained" | "cost">[] };

/** The money, in major units, of the unexplained use that a cause would explain; what has no price counts nothing. */
export function moneyOf({ items }: Money, { evidence }: Explains): number {
  return evidence.reduce((sum, { item, amount }) => {
    const row = items.find((one) => one.item === item);
    const perBase = row?.cost == null || row.unexplained === 0 ? 0 : row.cost / row.unexplained;
    return sum + Math.abs(amount * perBase);
  }, 0);
}

/**
 * The causes, those whose check is worth most money first; explanations of the same numbers stay together, the likeliest first.
 * Very likely 54.00 comes before very likely 2.70, and a fair chance of 54.00 before a sure 20.00.
 */
export function causesByMoney<Found extends Explains & Pick<Cause, "group" | "probability">>(
  report: Money & { causes: readonly Found[] },
): Found[] {
  const worth = ([first]: Found[]) => (first === undefined ? 0 : moneyOf(report, first) * first.probability);
  return [...groupBy(report.causes, ({ group }) => String(group)).values()]
    .sort((a, b) => worth(b) - worth(a))
    .flat();
}
