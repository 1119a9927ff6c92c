import type { VarianceRow } from "../answers.ts";

/** A variance in money with its standard uncertainty. */
export type MoneyRow = { item: string; cost: number; costSd: number; verdict: VarianceRow["verdict"] };

/**
 * The rows whose cost is known, with the uncertainty carried from amount to money, largest money first.
 *
 * Unexplained 100 ml ± 20 at a cost of 3.00 → 3.00 ± 0.60. Without anything unexplained nothing is carried.
 */
export function moneyRows(rows: readonly VarianceRow[]): MoneyRow[] {
  return rows
    .flatMap(({ item, cost, unexplained, sd, verdict }) =>
      cost === null || unexplained === 0
        ? []
        : [{ item, cost, costSd: Math.abs(cost / unexplained) * sd, verdict }],
    )
    .sort((a, b) => Math.abs(b.cost) - Math.abs(a.cost));
}
