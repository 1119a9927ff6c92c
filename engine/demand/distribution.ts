import jstat from "jstat";

const { normal, gamma, beta } = jstat.jStat;

/** Demand over some time, in base units or serves. */
export type Demand = { mean: number; variance: number };

/** A variance so near the mean that the counts are Poisson. */
const POISSON_WITHIN = 1e-9;

/** A chance that falls on the level exactly has reached it. */
const ROUNDING = 1e-10;

/** Past this many the gamma distribution stands in for a count: they differ by less than a piece. */
const LARGE_COUNT = 5000;

/**
 * Chance that a count is at most `count`: negative binomial when its variance exceeds its mean, else Poisson.
 *
 * Both by the incomplete beta and gamma functions (NIST DLMF 8.17.24, 8.4.10), which stay exact for large
 * means. Mean 6, variance 6, count 8 → 0.847237.
 */
export function countCdf(count: number, { mean, variance }: Demand): number {
  if (count < 0) return 0;
  if (mean <= 0) return 1;
  const whole = Math.floor(count);
  const excess = variance - mean;
  if (excess <= mean * POISSON_WITHIN) return 1 - gamma.cdf(mean, whole + 1, 1);
  const size = (mean * mean) / excess;
  return beta.cdf(mean / variance, size, whole + 1);
}

/**
 * The smallest count that demand does not pass with chance `level`.
 *
 * Mean 6, variance 12, level 0.95 → 12; Poisson mean 6, level 0.95 → 10. Throws for a level outside 0–1.
 */
export function countQuantile(demand: Demand, level: number): number {
  checkLevel(level);
  if (demand.mean <= 0) return 0;
  if (demand.mean > LARGE_COUNT) return Math.ceil(amountQuantile(demand, level));
  let count = Math.max(0, Math.floor(amountQuantile(spreadAtLeastPoisson(demand), level)));
  const reached = level - ROUNDING;
  while (count > 0 && countCdf(count - 1, demand) >= reached) count -= 1;
  while (countCdf(count, demand) < reached) count += 1;
  return count;
}

/** The mid-distribution of a count: chance of fewer plus half the chance of just so many. */
export function midCdf(count: number, demand: Demand): number {
  return (countCdf(count - 1, demand) + countCdf(count, demand)) / 2;
}

/**
 * A count's quantile between whole numbers, through its mid-distribution P(X < x) + P(X = x) ÷ 2.
 *
 * A band of whole-number quantiles holds more than its share of small counts; this one holds its share
 * on the average (Parzen's mid-distribution; Ma, Genton & Parzen 2011, "Asymptotic properties of sample
 * quantiles of discrete distributions"). Poisson mean 4, level 0.95 → 7.7.
 */
export function midQuantile(demand: Demand, level: number): number {
  checkLevel(level);
  if (demand.mean <= 0) return 0;
  if (demand.mean > LARGE_COUNT) return amountQuantile(demand, level);
  const mid = (count: number) => midCdf(count, demand);
  let upper = countQuantile(demand, level);
  while (mid(upper) < level) upper += 1;
  while (upper > 0 && mid(upper - 1) >= level) upper -= 1;
  if (upper === 0) return 0;
  const below = mid(upper - 1);
  return upper - 1 + (level - below) / (mid(upper) - below);
}

/** Chance that an amount is at most `amount`, by the gamma distribution of that mean and variance. */
export function amountCdf(amount: number, { mean, variance }: Demand): number {
  if (amount < 0) return 0;
  if (mean <= 0) return 1;
  if (isSure({ mean, variance })) return amount >= mean ? 1 : 0;
  if (isNearNormal({ mean, variance })) return normal.cdf(amount, mean, Math.sqrt(variance));
  return gamma.cdf(amount, (mean * mean) / variance, variance / mean);
}

/**
 * The amount that demand does not pass with chance `level`, by the gamma distribution.
 *
 * Mean 6, variance 12, level 0.95 → 12.591587. Throws for a level outside 0–1.
 */
export function amountQuantile({ mean, variance }: Demand, level: number): number {
  checkLevel(level);
  if (mean <= 0) return 0;
  if (isSure({ mean, variance })) return mean;
  if (isNearNormal({ mean, variance })) return Math.max(0, normal.inv(level, mean, Math.sqrt(variance)));
  return gamma.inv(level, (mean * mean) / variance, variance / mean);
}

/**
 * The demand quantile of an item: of a count where it is counted in pieces, else of an amount.
 *
 * Pieces taken in shares (an eighth of a lime) spread less than whole ones: their amount is rounded up.
 */
export function demandQuantile(demand: Demand, level: number, { isCount }: { isCount: boolean }): number {
  if (!isCount) return amountQuantile(demand, level);
  if (demand.variance >= demand.mean) return countQuantile(demand, level);
  const poisson = countQuantile({ mean: demand.mean, variance: demand.mean }, level);
  return Math.min(poisson, Math.ceil(amountQuantile(demand, level) - 1e-9));
}

/** Chance that demand exceeds what there is. Nothing there and some demand → the chance of any demand at all. */
export function chanceAbove(demand: Demand, amount: number, { isCount }: { isCount: boolean }): number {
  if (demand.mean <= 0) return 0;
  if (amount < 0) return 1;
  const isWhole = isCount && demand.variance >= demand.mean;
  return Math.max(0, 1 - (isWhole ? countCdf(amount + 1e-9, demand) : amountCdf(amount, demand)));
}

function spreadAtLeastPoisson({ mean, variance }: Demand): Demand {
  return { mean, variance: Math.max(mean, variance) };
}

function isSure({ mean, variance }: Demand): boolean {
  return variance <= mean * mean * 1e-12;
}

/** A shape this large is normal to six digits, and past the reach of the gamma routines' iterations. */
function isNearNormal({ mean, variance }: Demand): boolean {
  return mean * mean > variance * 1e5;
}

function checkLevel(level: number): void {
  if (!(level > 0 && level < 1)) throw new RangeError(`A level lies between 0 and 1, not at ${level}.`);
}
