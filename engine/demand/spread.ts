/** How far counts scatter around their expectation: variance = chance × mean + own² × mean². */
export type Spread = {
  /** 1 for guests who order one by one; more where tables order the same round. */
  chance: number;
  /** By drink: relative variance of its share from day to day. */
  own: number[];
};

/** One drink's serves on its days beside what the day's total let expect. */
export type Fitted = {
  serves: Float64Array;
  /** Same days. Share of the day's serves expected. */
  shares: Float64Array;
  totals: Float64Array;
};

/** What the own spread of a drink is worth before it has shown its own, in days. */
const POOLED_DAYS = 20;

/**
 * Scatter of the drinks given how busy each day was, by the method of moments.
 *
 * Given a day's total n, a drink of share p has variance chance × n p (1 − p) + own × (n p)². The two parts are
 * told apart by slow and fast drinks together; each drink's own part is drawn towards the pooled one.
 */
export function fitSpread(drinks: readonly Fitted[]): Spread {
  const moments = drinks.map(momentsOf);
  const all = moments.reduce(addMoments, { ...NONE });
  const { chance, own } = pooledSpread(all);
  return {
    chance,
    own: moments.map(({ square, chanceSum, meanSquare, days }) => {
      if (days === 0) return own;
      const belief = (POOLED_DAYS * meanSquare) / days;
      if (meanSquare + belief <= 0) return own;
      return Math.max(0, (square - chance * chanceSum + own * belief) / (meanSquare + belief));
    }),
  };
}

type Moments = {
  days: number;
  /** Sums over days: squared errors, n p (1 − p), (n p)². */
  square: number;
  chanceSum: number;
  meanSquare: number;
  /** The same in units of the day's chance variance, of days with enough of it. */
  scaledDays: number;
  scaledSquare: number;
  scaledMeanSquare: number;
};

const NONE: Moments = {
  days: 0,
  square: 0,
  chanceSum: 0,
  meanSquare: 0,
  scaledDays: 0,
  scaledSquare: 0,
  scaledMeanSquare: 0,
};

function momentsOf({ serves, shares, totals }: Fitted): Moments {
  const sums = { ...NONE };
  serves.forEach((sold, day) => {
    const share = shares[day] ?? 0;
    const expected = share * (totals[day] ?? 0);
    if (expected <= 0) return;
    const chance = expected * (1 - share);
    const square = (sold - expected) ** 2;
    sums.days += 1;
    sums.square += square;
    sums.chanceSum += chance;
    sums.meanSquare += expected * expected;
    if (chance < 0.3) return;
    sums.scaledDays += 1;
    sums.scaledSquare += square / chance;
    sums.scaledMeanSquare += (expected * expected) / chance;
  });
  // The share was fitted to these very days, which takes about two of them away.
  const fitted = sums.days > 4 ? sums.days / (sums.days - 2) : 1;
  sums.square *= fitted;
  sums.scaledSquare *= fitted;
  return sums;
}

function addMoments(a: Moments, b: Moments): Moments {
  return {
    days: a.days + b.days,
    square: a.square + b.square,
    chanceSum: a.chanceSum + b.chanceSum,
    meanSquare: a.meanSquare + b.meanSquare,
    scaledDays: a.scaledDays + b.scaledDays,
    scaledSquare: a.scaledSquare + b.scaledSquare,
    scaledMeanSquare: a.scaledMeanSquare + b.scaledMeanSquare,
  };
}

/** Two moments, two unknowns; neither below what counts can have. */
function pooledSpread(all: Moments): { chance: number; own: number } {
  const determinant = all.scaledDays * all.meanSquare - all.scaledMeanSquare * all.chanceSum;
  const chance =
    Math.abs(determinant) > 1e-9
      ? (all.scaledSquare * all.meanSquare - all.scaledMeanSquare * all.square) / determinant
      : 1;
  const bounded = Math.min(4, Math.max(1, chance));
  const own = all.meanSquare > 0 ? (all.square - bounded * all.chanceSum) / all.meanSquare : 0;
  if (own >= 0) return { chance: bounded, own };
  return { chance: Math.max(1, all.chanceSum > 0 ? all.square / all.chanceSum : 1), own: 0 };
}
