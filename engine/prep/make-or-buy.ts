import { baseAmount, type Catalogue, itemNamed } from "#engine/catalogue.ts";
import { listCostPerBase } from "#engine/costing/pack-price.ts";
import { portionCost } from "#engine/costing/portion-cost.ts";
import type { UnitCosts } from "#engine/costing/unit-cost.ts";
import type { BaseUnit } from "#engine/measure/units.ts";
import { recipeInForce } from "#engine/specs/recipe.ts";
import type { BusinessDate } from "#engine/time.ts";
import { inForce } from "#engine/versions.ts";

/** Cost of one base unit of a prep, made and bought, in major money units. */
export type MakeOrBuy = {
  prep: string;
  base: BaseUnit;
  made: { inputs: number; labour: number; loss: number; total: number } | null;
  bought: { cost: number; loss: number; total: number } | null;
  cheaper: "make" | "buy" | "same" | null;
  /**
   * Base units in a batch from which on making is the cheaper: 0 where it always is, null where it never is or where
   * something is missing.
   */
  breakEvenBatch: number | null;
  /** What is missing for a comparison, as sentences. */
  missing: string[];
};

export type MakeOrBuyQuestion = {
  catalogue: Catalogue;
  prep: string;
  date: BusinessDate;
  costs: UnitCosts;
  /** Major money units an hour of work; 0 leaves labour out. */
  labourPerHour?: number;
  /** Base units in a batch, over which its minutes are spread; default: one yield of the `preps` row. */
  batchSize?: number;
  /** Share of what is made, and of what is bought, that is thrown out in the end: 0 to below 1. */
  lossShareMade?: number;
  lossShareBought?: number;
  /** Per base unit; default: the first price in the packs. */
  boughtCost?: number;
};

/**
 * Making a prep against buying it, per base unit of what is really used.
 *
 * Made = (inputs + labour ÷ batch) ÷ (1 − share lost); bought likewise (a loss stated as a share of what goes in).
 * Null on a side whose price or recipe is not known. Throws RangeError for a share outside 0 to 1.
 * Inputs 0.002 and 15 min at 16 an hour over 1600 ml → 0.002 + 0.0025 = 0.0045 a ml; a tenth lost → 0.005.
 * Bought at 0.004 the 4.00 of labour are earned by 4 ÷ (0.004 − 0.002) = 2000 ml: the break-even batch.
 */
export function makeOrBuy(question: MakeOrBuyQuestion): MakeOrBuy {
  const { catalogue, prep } = question;
  const missing: string[] = [];
  const made = madeCost(question, missing);
  const bought = boughtCost(question, missing);
  const { base } = itemNamed(catalogue, prep);
  const breakEvenBatch = breakEven(question, made, bought);
  return { prep, base, made, bought, cheaper: cheaperOf(made, bought), breakEvenBatch, missing };
}

function madeCost(question: MakeOrBuyQuestion, missing: string[]): MakeOrBuy["made"] {
  const { catalogue, prep, date, costs, lossShareMade = 0 } = question;
  const recipe = recipeInForce(catalogue, prep, date);
  if (recipe === undefined) {
    missing.push(`Nothing says how "${prep}" is made on ${date}.`);
    return null;
  }
  const inputs = portionCost(recipe, costs);
  if (inputs === null) {
    const names = [...recipe.inputs.map(({ item }) => item), ...(recipe.cut ? [recipe.cut.source] : [])];
    const unpriced = names.filter((item) => costs.get(item) == null).map((item) => `"${item}"`);
    missing.push(`No price is known of ${unpriced.join(", ")}.`);
    return null;
  }
  const labour = labourPerBase(question, missing);
  return { inputs, labour, ...withLoss(inputs + labour, lossShareMade) };
}

function labourPerBase(question: MakeOrBuyQuestion, missing: string[]): number {
  const { catalogue, prep, date, labourPerHour = 0, batchSize } = question;
  if (labourPerHour === 0) return 0;
  const version = inForce(catalogue.preps.get(prep) ?? [], date);
  const yielded = version && baseAmount(catalogue, { item: prep, amount: version.yield, unit: version.unit });
  const size = batchSize ?? yielded;
  const perBatch = labourPerBatch(question);
  if (perBatch === undefined || size === undefined || size <= 0) {
    missing.push(`"${prep}" has no active_minutes or no batch size: its labour is left out.`);
    return 0;
  }
  return perBatch / size;
}

function labourPerBatch({ catalogue, prep, date, labourPerHour = 0 }: MakeOrBuyQuestion): number | undefined {
  const minutes = inForce(catalogue.preps.get(prep) ?? [], date)?.activeMinutes;
  return minutes == null ? undefined : (minutes / 60) * labourPerHour;
}

/** Where (inputs + labour of a batch ÷ batch) ÷ (1 − share lost) meets the price of what is bought. */
function breakEven(
  question: MakeOrBuyQuestion,
  made: MakeOrBuy["made"],
  bought: MakeOrBuy["bought"],
): number | null {
  const labour = labourPerBatch(question);
  if (made === null || bought === null || labour === undefined) return null;
  const forLabour = bought.total * (1 - (question.lossShareMade ?? 0)) - made.inputs;
  return forLabour > 0 ? labour / forLabour : null;
}

function boughtCost(question: MakeOrBuyQuestion, missing: string[]): MakeOrBuy["bought"] {
  const { catalogue, prep, date, lossShareBought = 0 } = question;
  const isBought = catalogue.packs.has(prep);
  const cost = question.boughtCost ?? (isBought ? listCostPerBase(catalogue, prep, date) : null);
  if (cost === null) {
    missing.push(`No price is known at which "${prep}" can be bought.`);
    return null;
  }
  return { cost, ...withLoss(cost, lossShareBought) };
}

function withLoss(cost: number, share: number): { loss: number; total: number } {
  if (!(share >= 0 && share < 1)) {
    throw new RangeError(`A share lost must lie from 0 to below 1; it is ${share}.`);
  }
  const total = cost / (1 - share);
  return { loss: total - cost, total };
}

function cheaperOf(made: MakeOrBuy["made"], bought: MakeOrBuy["bought"]): MakeOrBuy["cheaper"] {
  if (made === null || bought === null) return null;
  if (made.total === bought.total) return "same";
  return made.total < bought.total ? "make" : "buy";
}
