/**
 * Weighted absolute percentage error: Σ |sold − expected| ÷ Σ sold. Null when nothing was sold.
 *
 * Sold 10 and 20, expected 12 and 17 → 5 ÷ 30.
 */
export function wape(cases: readonly { sold: number; expected: number }[]): number | null {
  let [error, sum] = [0, 0];
  for (const { sold, expected } of cases) {
    error += Math.abs(sold - expected);
    sum += sold;
  }
  return sum > 0 ? error / sum : null;
}
