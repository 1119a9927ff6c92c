/** Where additive seasonal smoothing stands: the level, and how far each weekday lies from it. */
export type Smoothed = { level: number; seasons: number[] };

/** Common practice for daily trade: slow enough not to chase single nights. */
export const SMOOTHING = { alpha: 0.2, gamma: 0.1 } as const;

/**
 * Exponential smoothing with an additive season and no trend, in its error form: ETS(A,N,A) of Hyndman, Koehler,
 * Ord & Snyder 2008. The yardstick that a forecast has to beat; `seasons[day]` says which season a value is of.
 *
 * Level 188.88 with a first season of 8.05 expects 196.93; a value of 174.90 moves the level to 184.47 at α = 0.2.
 */
export function smoothSeasonal(
  values: ArrayLike<number>,
  seasons: readonly number[],
  { start, alpha, gamma }: { start: Smoothed; alpha: number; gamma: number },
): Smoothed {
  let { level } = start;
  const index = [...start.seasons];
  for (let day = 0; day < values.length; day += 1) {
    const season = seasons[day] ?? 0;
    const error = (values[day] ?? 0) - level - (index[season] ?? 0);
    level += alpha * error;
    index[season] = (index[season] ?? 0) + gamma * error;
  }
  return { level, seasons: index };
}

/** The mean of the first two weeks as level, each weekday's mean around it as season. */
export function startOf(values: ArrayLike<number>, seasons: readonly number[], period: number): Smoothed {
  const days = Math.min(values.length, 2 * period);
  const sums = Array.from({ length: period }, () => ({ sum: 0, count: 0 }));
  let total = 0;
  for (let day = 0; day < days; day += 1) {
    const own = sums[seasons[day] ?? 0];
    if (own === undefined) continue;
    own.sum += values[day] ?? 0;
    own.count += 1;
    total += values[day] ?? 0;
  }
  const level = days > 0 ? total / days : 0;
  return { level, seasons: sums.map(({ sum, count }) => (count > 0 ? sum / count - level : 0)) };
}
