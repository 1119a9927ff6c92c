import { baseAmount } from "#engine/catalogue.ts";
import type { Facts } from "#engine/facts.ts";
import { OutOfRangeError } from "#engine/measure/range.ts";
import {
  expectedYield,
  learnYield,
  normalQuantile,
  piecesToPress,
  type YieldBelief,
} from "#engine/measure/yield.ts";
import type { Making } from "#engine/prep/making.ts";
import { businessDateOf } from "#engine/sales/read/clock.ts";
import { inputsByBatch } from "#engine/stock/batch-inputs.ts";
import { addDays, type BusinessDate } from "#engine/time.ts";

const LOOK_BACK_DAYS = 91;
const BATCHES_MIN = 3;

/** Piece by piece a lime varies by a quarter (USDA SR26, see YIELD_PRIORS); the other fruit is taken to vary alike. */
const SPREAD_SHARE = 4;

/**
 * What a piece gives, as learnt from the batches of the last quarter of which it is on record how many pieces they took.
 *
 * Starts from the sheet's yield, worth one piece. Undefined for what is not pressed from one fruit alone, and with
 * fewer than three such batches: the sheet's yield then stands.
 * Sheet 25 ml; 40 limes giving 880 ml three times over → about 22 ml.
 */
export function fruitYield(
  { catalogue, book }: Facts,
  making: Making,
  date: BusinessDate,
): YieldBelief | undefined {
  const cut = making.cuts[0];
  if (cut === undefined || making.cuts.length > 1 || making.inputs.length > 0) return undefined;
  const meanMl = 1 / cut.shares;
  let belief: YieldBelief = {
    meanMl,
    spreadMl: meanMl / SPREAD_SHARE,
    pieces: 1,
    batches: 2,
    source: "the sheet",
  };
  let seen = 0;
  const batches = [...inputsByBatch(book)].sort(([a], [b]) => (a.at < b.at ? -1 : 1));
  for (const [{ prep, at, made, unit }, used] of batches) {
    const day = businessDateOf(at, catalogue.venue);
    if (prep !== making.prep || day >= date || day < addDays(date, -LOOK_BACK_DAYS)) continue;
    const fruit = used.find(({ item }) => item === cut.source);
    const pieces = fruit === undefined ? 0 : baseAmount(catalogue, fruit);
    if (pieces <= 0) continue;
    belief = learnYield(belief, {
      pieces,
      volumeMl: baseAmount(catalogue, { item: prep, amount: made, unit }),
    });
    seen += 1;
  }
  return seen < BATCHES_MIN ? undefined : belief;
}

/** So many pieces on the average, and how many a juicier or a drier box may take. */
export type PiecesRange = { pieces: number; piecesLow: number; piecesHigh: number };

/** That so many are enough: two standard deviations, so 19 batches in 20 lie within the range. */
export const USUAL_CERTAINTY = 0.97725;

/**
 * Pieces that give a volume on the average, with their range: the most are enough with the certainty (0.5–0.999).
 * Belief of 25 ml ± 6 worth 400 pieces, 950 ml → 38 (36 to 42); with 0.9 → 38 (36 to 41).
 */
export function piecesFor(
  belief: YieldBelief,
  volumeMl: number,
  certainty: number = USUAL_CERTAINTY,
): PiecesRange {
  const exact = volumeMl / belief.meanMl;
  const range = piecesRange(exact, expectedYield(belief, exact).sd / volumeMl, certainty);
  try {
    return { ...range, piecesHigh: piecesToPress(belief, { volumeMl, certainty }).pieces };
  } catch (error) {
    // Known too badly for any number to be that certain.
    if (error instanceof OutOfRangeError) return range;
    throw error;
  }
}

/**
 * Whole pieces about an exact number, which may be off by a share (standard deviation); the most are enough with the
 * certainty. 44 ± 8 % → 44 (38 to 53).
 */
export function piecesRange(
  exact: number,
  sdShare: number,
  certainty: number = USUAL_CERTAINTY,
): PiecesRange {
  const whole = (pieces: number) => Math.ceil(pieces - 1e-9);
  const share = Math.min(0.9, normalQuantile(certainty) * sdShare);
  return {
    pieces: whole(exact),
    piecesLow: whole(exact / (1 + share)),
    piecesHigh: whole(exact / (1 - share)),
  };
}
