import type { BaseUnit } from "#engine/measure/units.ts";
import type { PiecesRange } from "#engine/prep/fruit-yield.ts";

/** An input of a card as it is measured: its amount in base units, and its weight where that is known. */
export type Measured = { base: BaseUnit; amount: number; weightG: number | null };

/** Of fewer steps than this a scale is too coarse to weigh by: a half step is 5 % of it. */
const STEPS_MIN = 10;

/**
 * An input as it is read at the bench, weights in whole steps of the scale; what is too light for it in tenths of a gram.
 *
 * 1000 ml of water (998.2 g): steps of 1 g → "998 g (1000 ml)", of 5 g → "1000 g (1000 ml)"; 6.25 g → "6.3 g (fine scale)".
 */
export function measureText({ base, amount, weightG }: Measured, stepG = 1): string {
  if (weightG === null) return `${roundedMl(amount)} ml`;
  const { grams, digits, isFine } = weighedAs(weightG, stepG);
  const weight = `${grams.toFixed(digits)} g${isFine ? " (fine scale)" : ""}`;
  return base === "g" ? weight : `${weight} (${roundedMl(amount)} ml)`;
}

/** "38 pieces (34 to 43)"; one figure where there is no range. */
export function piecesText({ pieces, piecesLow, piecesHigh }: PiecesRange): string {
  const range = piecesLow < piecesHigh ? ` (${piecesLow} to ${piecesHigh})` : "";
  return `${pieces} ${pieces === 1 ? "piece" : "pieces"}${range}`;
}

/** A weight in whole steps of the scale, and the decimals to show of it; `isFine` where it takes a finer scale. */
export function weighedAs(grams: number, stepG: number): { grams: number; digits: 0 | 1; isFine: boolean } {
  if (grams < STEPS_MIN * stepG) return { grams, digits: 1, isFine: true };
  return { grams: Math.round(grams / stepG) * stepG, digits: stepG < 1 ? 1 : 0, isFine: false };
}

function roundedMl(amount: number): string {
  return amount < 10 ? amount.toFixed(1) : String(Math.round(amount));
}
