import { type Catalogue, itemNamed } from "#engine/catalogue.ts";
import { usualDensity } from "#engine/measure/usual-figures.ts";
import { foldName } from "#engine/name.ts";
import { type Input, isAcid, weightG } from "#engine/prep/weights.ts";
import type { BusinessDate } from "#engine/time.ts";

/**
 * Acid in fresh juice in g/l, as citric acid: Penniston et al., J. Endourol. 22 (2008) 567 (lemon 48.0 ± 3.8, lime
 * 45.8 ± 6.9, orange 9.1 ± 2.0).
 */
const JUICE_ACID_G_PER_L: readonly (readonly [juice: RegExp, gPerL: number])[] = [
  [/\blemon juice\b/, 48],
  [/\blime juice\b/, 45.8],
  [/\borange juice\b/, 9.1],
];

/**
 * Acid in a batch in % of its weight: of juices by their names, and of acids weighed in as powder; undefined where an
 * input's weight is not known, or where none of them is sour.
 *
 * 500 g of sugar, 480 g of water, 20 g of citric acid → 2; 1000 ml of lime juice (1.041 g/ml) and 1000 g of sugar → 2.24.
 */
export function acidPctOf(
  catalogue: Catalogue,
  inputs: readonly Input[],
  date: BusinessDate,
): number | undefined {
  const acidG = inputs.reduce((sum, input) => sum + acidIn(catalogue, input), 0);
  if (acidG <= 0) return undefined;
  let totalG = 0;
  for (const input of inputs) {
    const grams = weightG(catalogue, input, date) ?? usualWeightG(catalogue, input);
    if (grams === undefined) return undefined;
    totalG += grams;
  }
  return (acidG / totalG) * 100;
}

function acidIn(catalogue: Catalogue, { item, amount }: Input): number {
  const { base } = itemNamed(catalogue, item);
  if (base === "g") return isAcid(catalogue, item) ? amount : 0;
  const juice = JUICE_ACID_G_PER_L.find(([words]) => words.test(foldName(item)));
  return base === "ml" && juice !== undefined ? (amount / 1000) * juice[1] : 0;
}

function usualWeightG(catalogue: Catalogue, { item, amount }: Input): number | undefined {
  const density = itemNamed(catalogue, item).base === "ml" ? usualDensity(item)?.figure : undefined;
  return density === undefined ? undefined : amount * density;
}
