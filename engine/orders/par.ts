import { amountQuantile, type Demand, demandQuantile } from "#engine/demand/distribution.ts";

/** What a par is reckoned from; amounts in base units. */
export type ParQuestion = {
  /** Over the days that the order has to last. */
  demand: Demand;
  /** Chance of lasting that the item should have. */
  serviceLevel: number;
  /** Counted in pieces: its demand is a count. */
  isCount: boolean;
};

/**
 * The level to order up to: what demand over the days to cover does not pass with chance `serviceLevel`.
 *
 * Mean 15 000, sd 1224.745, level 0.90 → about 16 570 (Chopra & Meindl's worked case, by the normal
 * distribution). It never falls when the spread rises: where so much of the chance lies near nothing
 * that the quantile itself would fall, the par stays where it was highest.
 */
export function parOf({ demand, serviceLevel, isCount }: ParQuestion): number {
  const mostSpread = demand.mean * widestCv(serviceLevel);
  const counted = isCount && demand.variance >= demand.mean;
  const bound = mostSpread * mostSpread + (counted ? demand.mean : 0);
  const held = { mean: demand.mean, variance: Math.min(demand.variance, bound) };
  return Math.max(
    demandQuantile(held, serviceLevel, { isCount }),
    // Shares of a piece, rounded up, spread up to a count's own: a wider spread must not fall below that.
    counted ? demandQuantile(justBelowCount(demand), serviceLevel, { isCount }) : 0,
    isCount ? 0 : meanIfLikely(demand, serviceLevel),
  );
}

function justBelowCount({ mean }: Demand): Demand {
  return { mean, variance: mean * (1 - 1e-9) };
}

/** Below even chances a wider spread lowers the quantile; at and above them the mean is the least par. */
function meanIfLikely({ mean }: Demand, serviceLevel: number): number {
  return serviceLevel >= 0.5 ? mean : 0;
}

const widest = new Map<number, number>();

/** The coefficient of variation at which a gamma quantile of mean 1 is largest, by golden-section search. */
function widestCv(level: number): number {
  const known = widest.get(level);
  if (known !== undefined) return known;
  const quantile = (cv: number) => amountQuantile({ mean: 1, variance: cv * cv }, level);
  const golden = (Math.sqrt(5) - 1) / 2;
  let [low, high] = [1e-3, 20];
  while (high - low > 1e-4) {
    const [left, right] = [high - golden * (high - low), low + golden * (high - low)];
    if (quantile(left) < quantile(right)) low = left;
    else high = right;
  }
  widest.set(level, low);
  return low;
}

/**
 * The chance of lasting that pays best for stock that spoils: what is lost by a unit short over what is
 * lost by a unit short or over (the newsvendor's critical ratio).
 *
 * Price 4, cost 1, nothing back → 0.75. Null where either is unknown or nothing is at stake.
 */
export function criticalRatio({
  shortCost,
  overCost,
}: {
  shortCost: number | null;
  overCost: number | null;
}): number | null {
  if (shortCost === null || overCost === null) return null;
  if (shortCost <= 0 || overCost < 0 || shortCost + overCost <= 0) return null;
  return shortCost / (shortCost + overCost);
}
