import jstat from "jstat";
import { requireWithin } from "#engine/measure/range.ts";
import { juiceShare, PRODUCE, usualDensity } from "#engine/measure/usual-figures.ts";
import { foldName } from "#engine/name.ts";

/** What one piece of a fruit is believed to give, and how firmly. */
export type YieldBelief = {
  /** Mean of one piece, in ml. */
  meanMl: number;
  /** Standard deviation from piece to piece, in ml. */
  spreadMl: number;
  /** How many pieces the mean is worth. */
  pieces: number;
  /** How many batches the spread is worth. */
  batches: number;
  source: string;
};

/**
 * Where a bar has pressed nothing yet: USDA SR26, file WEIGHT (juice, raw: lime 44 ± 11 g of 12 limes, lemon 48 g,
 * orange 86 g, grapefruit 196 g), in ml by the same file's fluid ounces.
 *
 * Only the lime's spread is published, a quarter of its mean; the others are taken to vary alike. Bars report 20–30 ml
 * a lime (common practice), so each is worth one piece: a bar's first own batch outweighs it.
 */
export const YIELD_PRIORS = {
  lime: prior({ meanMl: 42.2, fruit: "lime" }),
  lemon: prior({ meanMl: 46.5, fruit: "lemon" }),
  orange: prior({ meanMl: 82.0, fruit: "orange" }),
  grapefruit: prior({ meanMl: 187.6, fruit: "grapefruit" }),
} as const satisfies Record<string, YieldBelief>;

function prior({ meanMl, fruit }: { meanMl: number; fruit: string }): YieldBelief {
  return { meanMl, spreadMl: meanMl / 4, pieces: 1, batches: 2, source: `USDA SR26, juice of one ${fruit}` };
}

/**
 * What one piece of a fruit is believed to give before any was pressed, by its name and, where known, its weight as
 * bought (the calibre of the box): the published juice of one, or that share of its own weight.
 *
 * Sources: `YIELD_PRIORS`; `juiceShare` and `usualDensity` (USDA SR26; grapefruit has no weight as bought). Undefined for
 * other fruit. "Limes" of 60 g → 60 · 0.55 ÷ 1.041 = 31.7 ml; of unknown weight → 42.2 ml.
 */
export function priorYield(fruit: string, pieceG: number | null): YieldBelief | undefined {
  const name = usualFruit(fruit);
  if (name === undefined) return undefined;
  const prior = YIELD_PRIORS[name];
  const produce = PRODUCE[name];
  const share = produce === undefined ? undefined : juiceShare(produce);
  const density = usualDensity(`${name} juice`)?.figure;
  if (pieceG === null || share === undefined || density === undefined) return prior;
  const meanMl = (pieceG * share) / density;
  return { ...prior, meanMl, spreadMl: meanMl / 4, source: `${prior.source}, at ${pieceG} g a piece` };
}

function usualFruit(fruit: string): keyof typeof YIELD_PRIORS | undefined {
  const words = foldName(fruit);
  const names = Object.keys(YIELD_PRIORS) as (keyof typeof YIELD_PRIORS)[];
  return names.find((name) => new RegExp(`^(?:\\S+ )?${name}s?$`).test(words));
}

/** How much of what was known counts after one more batch: fruit changes with the season (common practice). */
const KEPT_PER_BATCH = 0.9;

/**
 * A belief after one more batch was pressed: conjugate update of a normal mean and spread (normal, scaled inverse χ²),
 * what was known before being discounted a little.
 *
 * Source: Gelman et al., Bayesian Data Analysis, 3rd ed., section 3.3 (from memory). A batch adds one degree of freedom
 * to the spread, since only its mean is seen. Throws OutOfRangeError for a batch without pieces or volume.
 * Lime prior, 40 limes giving 1000 ml → mean 25.4 ml.
 */
export function learnYield(belief: YieldBelief, batch: { pieces: number; volumeMl: number }): YieldBelief {
  requireWithin(batch.pieces, { what: "Pieces pressed", low: 1e-9, high: 1e9 });
  requireWithin(batch.volumeMl, { what: "Juice in ml", low: 1e-9, high: 1e12 });
  const known = belief.pieces * KEPT_PER_BATCH;
  const batchesKnown = belief.batches * KEPT_PER_BATCH;
  const pieces = known + batch.pieces;
  const surpriseMl = batch.volumeMl / batch.pieces - belief.meanMl;
  const added = ((known * batch.pieces) / pieces) * surpriseMl ** 2;
  return {
    meanMl: belief.meanMl + (batch.pieces / pieces) * surpriseMl,
    spreadMl: Math.sqrt((batchesKnown * belief.spreadMl ** 2 + added) / (batchesKnown + 1)),
    pieces,
    batches: batchesKnown + 1,
    source: belief.source.endsWith(", and own batches") ? belief.source : `${belief.source}, and own batches`,
  };
}

/**
 * Juice of a number of pieces: mean and standard deviation, from piece to piece and of the mean itself (JCGM 100, 5.1.2).
 *
 * 12 limes by the prior alone → 506 ± 132 ml, nearly all of it because the bar's own limes are not known.
 */
export function expectedYield(belief: YieldBelief, pieces: number): { volumeMl: number; sd: number } {
  const variance = belief.spreadMl ** 2 * (pieces + pieces ** 2 / belief.pieces);
  return { volumeMl: pieces * belief.meanMl, sd: Math.sqrt(variance) };
}

/** Standard deviations above the mean that something stays below with a certainty (0.5–0.999). 0.97725 → 2.00. */
export function normalQuantile(certainty: number): number {
  requireWithin(certainty, { what: "Certainty of a plan", low: 0.5, high: 0.999 });
  return jstat.jStat.normal.inv(certainty, 0, 1);
}

/**
 * Pieces to press so that a volume is reached with a wanted certainty (0.5–0.999), never fewer than the mean asks for.
 *
 * Normal approximation of the sum. Solves n·mean − z·√(spread²(n + n²/pieces)) ≥ volume for the smallest whole n, and gives the margin over the mean's n.
 * Throws OutOfRangeError when the yield is known too badly for any number to be that certain.
 */
export function piecesToPress(
  belief: YieldBelief,
  wanted: { volumeMl: number; certainty: number },
): { pieces: number; margin: number } {
  requireWithin(wanted.volumeMl, { what: "Juice wanted in ml", low: 0, high: 1e9 });
  const z = normalQuantile(wanted.certainty);
  // However many pieces, the mean itself is uncertain: beyond this share more fruit does not make it surer.
  const surePerPieceMl = belief.meanMl - (z * belief.spreadMl) / Math.sqrt(belief.pieces);
  requireWithin(surePerPieceMl, { what: "The surely expected ml of a piece", low: 1e-9, high: 1e9 });
  const sureMl = (n: number) => {
    const { volumeMl, sd } = expectedYield(belief, n);
    return volumeMl - z * sd;
  };
  const least = Math.ceil(wanted.volumeMl / belief.meanMl - 1e-9);
  let [low, high] = [least - 1, Math.max(1, least)];
  while (sureMl(high) < wanted.volumeMl) high *= 2;
  while (high - low > 1) {
    const middle = Math.floor((low + high) / 2);
    if (sureMl(middle) >= wanted.volumeMl) high = middle;
    else low = middle;
  }
  const pieces = wanted.volumeMl === 0 ? 0 : high;
  return { pieces, margin: least === 0 ? 0 : pieces / least - 1 };
}
