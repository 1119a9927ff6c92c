import { type Catalogue, itemNamed } from "#engine/catalogue.ts";
import { sucroseDensity, waterDensity } from "#engine/measure/sucrose.ts";
import { acidCorrection } from "#engine/measure/sugar-reading.ts";
import { SWEETENERS } from "#engine/measure/syrup.ts";
import { foldName } from "#engine/name.ts";
import { packsInForce } from "#engine/stock/pack.ts";
import type { BusinessDate } from "#engine/time.ts";

/** An input of a batch, in its base unit. */
export type Input = { item: string; amount: number };

/** A sweetener by its name alone is taken at its published solids (USDA SR26); an item that states its °Brix is not. */
const BY_NAME: [pattern: RegExp, brix: number][] = [
  [/\bhoney\b/, SWEETENERS.honey.solidsPct],
  [/\bagave (?:syrup|nectar)\b/, SWEETENERS.agave.solidsPct],
  [/\bmaple syrup\b/, SWEETENERS.maple.solidsPct],
  [/\bmolasses\b/, SWEETENERS.molasses.solidsPct],
];

/**
 * Weight of an amount of an item in g, unrounded; undefined where neither density nor piece weight is known.
 *
 * Water is taken at 20 °C (0.99820 g/ml). 1000 ml of water → 998.2.
 */
export function weightG(
  catalogue: Catalogue,
  { item, amount }: Input,
  date: BusinessDate,
): number | undefined {
  const { base, densityGPerMl, pieceG } = itemNamed(catalogue, item);
  if (base === "g") return amount;
  if (base === "each") return pieceG === null ? undefined : amount * pieceG;
  if (densityGPerMl !== null) return amount * densityGPerMl;
  return isWater(catalogue, item, date) ? amount * waterDensity() : undefined;
}

/** Weights of the inputs that have one, by name. */
export function weightsG(
  catalogue: Catalogue,
  inputs: readonly Input[],
  date: BusinessDate,
): Record<string, number> {
  return Object.fromEntries(
    inputs.flatMap((input) => {
      const grams = weightG(catalogue, input, date);
      return grams === undefined ? [] : [[input.item, grams] as const];
    }),
  );
}

/** What a mix of sugar and water comes to; `brix` as a refractometer reads it. */
export type Mixed = { brix: number; weightG: number; volumeMl: number };

/** An acid of the kitchen by its name, weighed in as powder. */
export function isAcid(catalogue: Catalogue, name: string): boolean {
  const { base, inHouse } = itemNamed(catalogue, name);
  const acid = /\b(?:citric|malic|tartaric|lactic|ascorbic|succinic) acid\b/;
  return base === "g" && !inHouse && acid.test(foldName(name));
}

/**
 * °Brix, weight and volume at 20 °C of what sweet inputs and water make, by sums of weights.
 *
 * Undefined unless every input's weight and share of sugar are known, or when one is a spirit, to which the sucrose
 * tables (ICUMSA SPS-4) do not apply. 1000 g sugar + 1000 g water → 50 °Bx, 1626 ml. Acid in powder counts as solids,
 * and takes off the reading what `acidCorrection` says: 500 g sugar + 480 g water + 20 g citric acid → 51.6 °Bx.
 */
export function mixedSyrup(
  catalogue: Catalogue,
  inputs: readonly Input[],
  date: BusinessDate,
): Mixed | undefined {
  let totalG = 0;
  let sugarG = 0;
  let acidG = 0;
  for (const input of inputs) {
    const grams = weightG(catalogue, input, date);
    const isSour = isAcid(catalogue, input.item);
    const brix = isSour ? 100 : brixOf(catalogue, input.item, date);
    if (grams === undefined || brix === undefined) return undefined;
    totalG += grams;
    if (isSour) acidG += grams;
    sugarG += (grams * brix) / 100;
  }
  const solidsPct = totalG > 0 ? (sugarG / totalG) * 100 : 0;
  // Dry sugar alone is no syrup, and the tables end at 85; a sour powder is no syrup either.
  if (solidsPct <= 0 || solidsPct > 85 || acidG > sugarG / 2) return undefined;
  return {
    brix: solidsPct - acidCorrection((acidG / totalG) * 100),
    weightG: totalG,
    volumeMl: totalG / sucroseDensity({ brix: solidsPct }),
  };
}

/** Sugar as % of an item's weight; undefined when nothing says so, or when it is alcoholic. */
export function brixOf(catalogue: Catalogue, name: string, date: BusinessDate): number | undefined {
  const item = itemNamed(catalogue, name);
  if (item.abv !== null && item.abv > 0) return undefined;
  if (item.brix !== null) return item.brix;
  if (isWater(catalogue, name, date)) return 0;
  if (item.inHouse) return undefined;
  const folded = foldName(name);
  // "Sugar syrup" is bought by the litre and is no sugar.
  if (item.base === "g" && /\bsugar\b/.test(folded)) return 100;
  return BY_NAME.find(([pattern]) => pattern.test(folded))?.[1];
}

/** Water is the liquid nobody buys, makes or gives a strength or a sweetness; or one stated at 0 °Bx. */
export function isWater(catalogue: Catalogue, name: string, date: BusinessDate): boolean {
  const { base, abv, brix, inHouse } = itemNamed(catalogue, name);
  if (base === "each" || (abv !== null && abv > 0)) return false;
  if (brix !== null) return brix === 0;
  const isMade = inHouse || catalogue.cuts.has(name) || catalogue.specs.has(name);
  if (isMade || packsInForce(catalogue, name, date).length > 0) return false;
  return base === "ml" || /\bwater\b/.test(foldName(name));
}
