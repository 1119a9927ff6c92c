import { baseAmount } from "#engine/catalogue.ts";
import type { Facts } from "#engine/facts.ts";
import { expectedYield, learnYield, type YieldBelief } from "#engine/measure/yield.ts";
import type { Making } from "#engine/prep/making.ts";
import { businessDateOf } from "#engine/sales/read/clock.ts";
import { addDays, type BusinessDate } from "#engine/time.ts";

/** What a pressed batch says of its fruit in its note: "pressed 92 Lime". */
export function pressedNote({ pieces, fruit }: { pieces: number; fruit: string }): string {
  return `pressed ${pieces} ${fruit}`;
}

const LOOK_BACK_DAYS = 91;
const BATCHES_MIN = 3;

/** Piece by piece a lime varies by a quarter (USDA SR26, see YIELD_PRIORS); the other fruit is taken to vary alike. */
const SPREAD_SHARE = 4;

/**
 * What a piece gives, as learnt from the batches of the last quarter that say how many pieces they took.
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
  const batches = [...book.batches].sort((a, b) => (a.at < b.at ? -1 : 1));
  for (const { prep, at, made, unit, note } of batches) {
    const day = businessDateOf(at, catalogue.venue);
    if (prep !== making.prep || day >= date || day < addDays(date, -LOOK_BACK_DAYS)) continue;
    const pieces = piecesIn(note, cut.source);
    if (pieces === undefined) continue;
    belief = learnYield(belief, {
      pieces,
      volumeMl: baseAmount(catalogue, { item: prep, amount: made, unit }),
    });
    seen += 1;
  }
  return seen < BATCHES_MIN ? undefined : belief;
}

/**
 * Pieces that give a volume on the average, and how many a juicier or a drier box may take: two standard deviations,
 * 19 batches in 20. Belief of 25 ml ± 6 worth 400 pieces, 950 ml → 38 (36 to 42).
 */
export function piecesFor(
  belief: YieldBelief,
  volumeMl: number,
): { pieces: number; piecesLow: number; piecesHigh: number } {
  const exact = volumeMl / belief.meanMl;
  const { sd } = expectedYield(belief, exact);
  const share = Math.min(0.9, (2 * sd) / volumeMl);
  const whole = (pieces: number) => Math.ceil(pieces - 1e-9);
  return {
    pieces: whole(exact),
    piecesLow: whole(exact / (1 + share)),
    piecesHigh: whole(exact / (1 - share)),
  };
}

function piecesIn(note: string, fruit: string): number | undefined {
  const match = /\bpressed (\d+(?:\.\d+)?) (.+?)(?:;|$)/.exec(note);
  const pieces = Number(match?.[1]);
  return match?.[2] === fruit && pieces > 0 ? pieces : undefined;
}
