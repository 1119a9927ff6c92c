import jstat from "jstat";
import type { Demand } from "#engine/demand/distribution.ts";

const { normal } = jstat.jStat;

/** Shares asked of the parts of a fruit on one day: means and covariances. */
export type PartDemand = { mean: number[]; covariance: number[][] };

/**
 * Mean and variance of the largest of several correlated demands: pieces of fruit are as many as the part
 * most asked for needs.
 *
 * Two at a time by Clark 1961 ("The greatest of a finite set of random variables"), exact for two normal
 * ones. Two independent ones of mean 0 and variance 1 → mean 0.5642, variance 0.6817.
 */
export function largestPart({ mean, covariance }: PartDemand): Demand {
  let largest: Demand = { mean: mean[0] ?? 0, variance: covariance[0]?.[0] ?? 0 };
  let shared = mean.map((_, other) => covariance[0]?.[other] ?? 0);
  for (let part = 1; part < mean.length; part += 1) {
    const next = { mean: mean[part] ?? 0, variance: covariance[part]?.[part] ?? 0 };
    const { demand, firstChance } = largerOf(largest, next, shared[part] ?? 0);
    shared = shared.map(
      (own, other) => own * firstChance + (covariance[part]?.[other] ?? 0) * (1 - firstChance),
    );
    largest = demand;
  }
  return largest;
}

function largerOf(a: Demand, b: Demand, covariance: number): { demand: Demand; firstChance: number } {
  const spread = Math.sqrt(Math.max(0, a.variance + b.variance - 2 * covariance));
  if (spread < 1e-12) {
    return a.mean >= b.mean ? { demand: a, firstChance: 1 } : { demand: b, firstChance: 0 };
  }
  const alpha = (a.mean - b.mean) / spread;
  const [density, chance] = [normal.pdf(alpha, 0, 1), normal.cdf(alpha, 0, 1)];
  const mean = a.mean * chance + b.mean * (1 - chance) + spread * density;
  const square =
    (a.mean ** 2 + a.variance) * chance +
    (b.mean ** 2 + b.variance) * (1 - chance) +
    (a.mean + b.mean) * spread * density;
  return { demand: { mean, variance: Math.max(0, square - mean * mean) }, firstChance: chance };
}
