/**
 * The argument at which a monotonic function takes a value, by bisection down to the last bits.
 *
 * The caller makes sure that the value lies between those at `low` and `high`. x² = 2 on 0…2 → 1.41421356…
 */
export function bisect(
  value: number,
  { f, low, high }: { f: (x: number) => number; low: number; high: number },
): number {
  const rises = f(high) >= f(low);
  let [from, to] = [low, high];
  for (let step = 0; step < 60; step += 1) {
    const middle = (from + to) / 2;
    if (f(middle) < value === rises) from = middle;
    else to = middle;
  }
  return (from + to) / 2;
}
