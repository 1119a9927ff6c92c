import { unitFactor } from "#engine/measure/unit-factor.ts";
import type { BaseUnit, Unit } from "#engine/measure/units.ts";
import { type Measured, weighedAs } from "#engine/prep/card-text.ts";
import type { PiecesRange } from "#engine/prep/fruit-yield.ts";
import type { Venue } from "#engine/venue.ts";
import { formatNumber, withUnit } from "../format.ts";
import { locale } from "../texts/language.ts";
import { say } from "../texts/say.ts";

/**
 * An amount as it is measured at the bench: whole ml, g or pieces, with litres and kilograms from a thousand on.
 * 1500 ml → "1.5 l"; 945 g → "945 g"; 3.6 each → "4 pieces".
 */
export function benchAmount(amount: number, unit: Unit, venue: Pick<Venue, "oz" | "houseMl">): string {
  const { base, factor } = unitFactor(unit, venue);
  return benchBase(amount * factor, base);
}

/** A unit as people read it; sheets and commands have its code. */
export function unitWord(unit: Unit): string {
  return say("prep.unit", { unit });
}

/** An amount to be made, rounded up to what is measured: whole ml, g and pieces, tenths of other units. 753.65 ml → 754. */
export function wholeUp(amount: number, unit: Unit): number {
  const steps = unit === "ml" || unit === "g" || unit === "each" || unit === "piece" ? 1 : 10;
  return Math.ceil(amount * steps - 1e-6) / steps;
}

/** As benchAmount, of an amount in base units. */
export function benchBase(amount: number, base: BaseUnit): string {
  if (base === "each") {
    return say("prep.pieces", { count: Math.max(0, Math.ceil(amount - 1e-9)) });
  }
  if (amount >= 1000) return withUnit(trimmed(amount / 1000, 2), base === "ml" ? "l" : "kg");
  return withUnit(amount < 10 ? trimmed(amount, 1) : formatNumber(amount), base);
}

function trimmed(value: number, digits: number): string {
  return formatNumber(Number(value.toFixed(digits)), digits)
    .replace(/([.,]\d*?)0+$/, "$1")
    .replace(/[.,]$/, "");
}

/** How much of an input a card asks for; of fruit in pieces, with their range. */
type CardAmount = Measured & { [Key in keyof PiecesRange]?: number | undefined };

/**
 * An input as it is read at the scale, weights in whole steps of it; what is too light for it in tenths of a gram; fruit in pieces.
 * 1000 ml of water (998.2 g), steps of 5 g → "1000 g (1000 ml)"; 6.25 g, steps of 1 g → "6.3 g (fine scale)".
 */
export function inputWords(input: CardAmount, stepG = 1): string {
  const { base, amount, weightG, pieces, piecesLow, piecesHigh } = input;
  if (pieces !== undefined && piecesLow !== undefined && piecesHigh !== undefined) {
    return piecesWords({ pieces, piecesLow, piecesHigh });
  }
  const volume = withUnit(plainNumber(amount, amount < 10 ? 1 : 0), "ml");
  if (weightG === null) return volume;
  const { grams, digits, isFine } = weighedAs(weightG, stepG);
  const shown = withUnit(plainNumber(grams, digits), "g");
  const weight = isFine ? say("prep.fineScale", { weight: shown }) : shown;
  return base === "g" ? weight : `${weight} (${volume})`;
}

/** "38 pieces (34 to 43)"; one figure where there is no range. */
export function piecesWords({ pieces, piecesLow, piecesHigh }: PiecesRange): string {
  return piecesLow < piecesHigh
    ? say("prep.piecesRange", { count: pieces, low: piecesLow, high: piecesHigh })
    : say("prep.pieces", { count: pieces });
}

/** A number without marks between its thousands, as it is typed into a scale or a field: 22.5 → "22.5", in German "22,5". */
export function plainNumber(value: number, digits?: number): string {
  const [most, least] = [digits ?? 4, digits ?? 0];
  return Number(value.toFixed(most)).toLocaleString(locale, {
    useGrouping: false,
    minimumFractionDigits: least,
    maximumFractionDigits: most,
  });
}
