import { type Catalogue, itemNamed } from "#engine/catalogue.ts";
import type { Facts } from "#engine/facts.ts";
import type { BaseUnit, Unit } from "#engine/measure/units.ts";
import type { YieldBelief } from "#engine/measure/yield.ts";
import { type Allergens, allergensOf } from "#engine/prep/allergens.ts";
import { largestBatch, vesselLoads } from "#engine/prep/batch-size.ts";
import { measureText, piecesText } from "#engine/prep/card-text.ts";
import { cautionsOf } from "#engine/prep/cautions.ts";
import { type Corrective, correctiveOf } from "#engine/prep/correction.ts";
import { fruitYield, type PiecesRange, piecesFor, piecesRange } from "#engine/prep/fruit-yield.ts";
import { inputsOf } from "#engine/prep/inputs.ts";
import { type Label, labelOf } from "#engine/prep/label.ts";
import { type Making, makingOf } from "#engine/prep/making.ts";
import { strengthPct } from "#engine/prep/strength.ts";
import { syrupCautions } from "#engine/prep/syrup-check.ts";
import { useBy } from "#engine/prep/use-by.ts";
import { type Input, mixedSyrup, weightG } from "#engine/prep/weights.ts";
import { type YieldSeen, yieldCautions, yieldSeen } from "#engine/prep/yield-seen.ts";
import { businessDateOf } from "#engine/sales/read/clock.ts";
import type { BusinessDate } from "#engine/time.ts";
import { inForce } from "#engine/versions.ts";

/** One line to weigh, measure or count. */
export type CardInput = {
  item: string;
  /** In the item's base unit, unrounded. */
  amount: number;
  base: BaseUnit;
  weightG: number | null;
  /** Whole pieces, as the kitchen's own batches taught, and those that a juicier or drier fruit may take instead. */
  pieces?: number;
  piecesLow?: number;
  piecesHigh?: number;
  /** As it is read at the bench, on a scale of whole grams: "1000 g", "998 g (1000 ml)", "40 pieces (35 to 47)". */
  text: string;
};

/** How to make one prep in a given size. */
export type BatchCard = {
  prep: string;
  date: BusinessDate;
  /** In `unit`. */
  make: number;
  unit: Unit;
  /** What goes into each vessel, in `unit`; one entry a batch. */
  loads: number[];
  /** For all of `make`; a vessel takes its share of every line. */
  inputs: CardInput[];
  steps: string[];
  activeMinutes: number | null;
  standingHours: number | null;
  /** What batches on record gave against the sheet, and so what to expect of this one, in `unit`. */
  yieldSeen: YieldSeen | null;
  expectedYield: number;
  /** What the finished syrup must read; of the item, where the inputs do not tell. */
  targetBrix: number | null;
  /** What a syrup that reads off its target is mended with; null where a refractometer does not tell. */
  corrective: Corrective | null;
  /** What the inputs weigh together, where all weights are known. */
  totalWeightG: number | null;
  /** Volume at 20 °C that sugar and water come to by their weights. */
  volumeMl: number | null;
  useBy: BusinessDate | null;
  allergens: Allergens;
  cautions: string[];
  /** % vol, of what has any. */
  abv: number | null;
  /** One for each vessel, numbered on from the day's batches before. */
  labels: Label[];
};

/** A batch card that cannot be written; the message says why and what to do. */
export class BatchCardError extends Error {
  override name = "BatchCardError";
}

export type CardQuestion = {
  facts: Facts;
  prep: string;
  date: BusinessDate;
  /** In the prep's unit. */
  make?: number;
  /** As much as this much of one input (in its base unit) will make. */
  scaleTo?: { item: string; amount: number };
  /** As much as fills the vessel in whole steps. */
  vessel?: boolean;
  /** How sure it shall be that the most pieces of a fruit are enough (0.5–0.999); default: `USUAL_CERTAINTY`. */
  certainty?: number;
  /** Which of the prep's batches of that day its first vessel is; by default the next after those on record. */
  batchNo?: number;
};

/**
 * The card of one prep, scaled to an amount made, to an amount of one input, or to the vessel; else one yield of its
 * sheet row (of a cut alone: one piece).
 *
 * Throws BatchCardError for what is not made here on that date, and for a size that is not above nothing.
 * Syrup of 500 g sugar + 500 ml water → 800 ml, scaled to 1000 g sugar → 1600 ml with 1000 ml water.
 */
export function batchCard(question: CardQuestion): BatchCard {
  const { facts, prep, date, certainty } = question;
  const { catalogue } = facts;
  const making = catalogue.items.has(prep) ? makingOf(catalogue, prep, date) : undefined;
  if (making === undefined) {
    throw new BatchCardError(
      `"${prep}" is not made here on ${date}: it needs a spec and a preps row, or a cut, from that day or before.`,
    );
  }
  const learnt = fruitYield(facts, making, date);
  const make = sizeOf(catalogue, making, learnt, question);
  const inputs = inputsOf(making, make);
  const weights = inputs.map((input) => weightG(catalogue, input, date));
  const mix = mixedSyrup(catalogue, inputs, date);
  const item = itemNamed(catalogue, prep);
  const seen = yieldSeen(facts, prep, date);
  const makeMl = item.base === "ml" ? make : null;
  const targetBrix = mix?.brix ?? item.brix;
  const abv = item.abv ?? (makeMl === null ? undefined : strengthPct(catalogue, inputs, makeMl));
  const loads = vesselLoads(make, making).map((load) => load / making.perUnit);
  const first = question.batchNo ?? 1 + batchesOn(facts, prep, date);
  return {
    prep,
    date,
    make: make / making.perUnit,
    unit: making.unit,
    loads,
    inputs: inputs.map((input) =>
      withLearntPieces(cardInput(catalogue, input, { date, certainty }), learnt, { make, certainty }),
    ),
    steps: stepsOf(making.method),
    activeMinutes: making.activeMinutes,
    standingHours: making.standingHours,
    yieldSeen: seen ?? null,
    expectedYield: (make * (seen?.ratio ?? 1)) / making.perUnit,
    targetBrix,
    corrective: targetBrix === null ? null : (correctiveOf(catalogue, inputs, { date, targetBrix }) ?? null),
    totalWeightG: weights.some((grams) => grams === undefined) ? null : sum(weights),
    volumeMl: mix?.volumeMl ?? null,
    useBy: useBy(date, making.shelfLifeDays),
    allergens: allergensOf(catalogue, prep, date),
    cautions: [
      ...yieldCautions(seen),
      ...syrupCautions({ mix, makeMl }),
      ...cautionsOf(catalogue, prep, date),
    ],
    abv: abv ?? null,
    labels: loads.map((_, index) => labelOf(catalogue, { prep, madeOn: date, number: first + index, abv })),
  };
}

/** How many batches of a prep are on record on a business day. */
function batchesOn({ book, catalogue }: Facts, prep: string, date: BusinessDate): number {
  const own = book.batches.filter((batch) => batch.prep === prep);
  return own.filter(({ at }) => businessDateOf(at, catalogue.venue) === date).length;
}

/** The size asked for, in base units of the prep. */
function sizeOf(
  catalogue: Catalogue,
  making: Making,
  learnt: YieldBelief | undefined,
  { date, make, scaleTo, vessel }: CardQuestion,
): number {
  const asked = [make, scaleTo, vessel || undefined].filter((size) => size !== undefined);
  if (asked.length > 1) throw new BatchCardError("Give one size: make, scaleTo or vessel.");
  if (make !== undefined) return aboveNothing(make, "The amount to make") * making.perUnit;
  if (scaleTo !== undefined) return sizeFromInput(making, learnt, scaleTo);
  if (vessel) return sizeOfVessel(making);
  const version = inForce(catalogue.preps.get(making.prep) ?? [], date);
  return version === undefined ? onePiece(making) : version.yield * making.perUnit;
}

function sizeFromInput(
  making: Making,
  learnt: YieldBelief | undefined,
  { item, amount }: { item: string; amount: number },
): number {
  const perUnit = inputsOf(making, 1).find((input) => input.item === item)?.amount;
  if (perUnit === undefined) {
    const names = inputsOf(making, 1).map((input) => `"${input.item}"`);
    throw new BatchCardError(`"${making.prep}" takes no "${item}"; it takes ${names.join(", ")}.`);
  }
  const held = aboveNothing(amount, `The amount of "${item}"`);
  // Only what is pressed from one fruit alone teaches what a piece gives.
  return learnt === undefined ? held / perUnit : held * learnt.meanMl;
}

function sizeOfVessel(making: Making): number {
  const size = largestBatch(making);
  if (Number.isFinite(size)) return size;
  throw new BatchCardError(`"${making.prep}" has no vessel_max in its preps row; give an amount instead.`);
}

function onePiece({ cuts }: Making): number {
  return 1 / Math.max(...cuts.map(({ shares }) => shares));
}

function aboveNothing(amount: number, what: string): number {
  if (Number.isFinite(amount) && amount > 0) return amount;
  throw new BatchCardError(`${what} must be above 0; it is ${amount}.`);
}

function cardInput(
  catalogue: Catalogue,
  { item: name, amount }: Input,
  { date, certainty }: { date: BusinessDate; certainty: number | undefined },
): CardInput {
  const { base } = itemNamed(catalogue, name);
  const grams = weightG(catalogue, { item: name, amount }, date) ?? null;
  const line = { item: name, amount, base, weightG: grams };
  return base === "each"
    ? { ...line, ...onCard(piecesRange(amount, catalogue.venue.uncertainty.yield, certainty)) }
    : { ...line, text: measureText(line) };
}

function onCard(range: PiecesRange) {
  return { ...range, text: piecesText(range) };
}

/** Pressed fruit as the kitchen's own batches taught it; `amount` stays the sheet's, by which the book reckons use. */
function withLearntPieces(
  line: CardInput,
  learnt: YieldBelief | undefined,
  { make, certainty }: { make: number; certainty: number | undefined },
): CardInput {
  if (learnt === undefined || line.base !== "each") return line;
  return { ...line, ...onCard(piecesFor(learnt, make, certainty)) };
}

/** A method as steps: its lines, or else its sentences, without numbers in front. */
export function stepsOf(method: string): string[] {
  const lines = method.split(/\r?\n/).filter((line) => line.trim() !== "");
  const parts = lines.length > 1 ? lines : method.split(/(?<=[.!?;])\s+(?=[\p{Lu}\d])/u);
  return parts.map((part) => part.trim().replace(/^\d+[.)]\s*/, "")).filter((part) => part !== "");
}

function sum(values: readonly (number | undefined)[]): number {
  return values.reduce<number>((total, value) => total + (value ?? 0), 0);
}
