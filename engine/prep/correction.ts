import { type Catalogue, itemNamed } from "#engine/catalogue.ts";
import { SWEETENERS } from "#engine/measure/syrup.ts";
import { acidPctOf } from "#engine/prep/acid.ts";
import { brixOf, type Input, isWater, weightG } from "#engine/prep/weights.ts";
import type { BusinessDate } from "#engine/time.ts";

/** What a batch that reads off its target is mended with. */
export type Corrective = {
  /** What is stirred in when it reads too thin, and how much of its weight is sugar. */
  sweetener: { item: string; solidsPct: number };
  /** What is stirred in when it is too sweet. */
  water: string;
  /** Acid in the batch, in % of its weight, which a refractometer reads too low, where it holds any that is known. */
  acidPct?: number | undefined;
};

/**
 * What to mend a batch with: its own sweetener (the input that brings in most of the sugar and is sweeter than the target),
 * else sugar; and its own water.
 *
 * Undefined for what a refractometer does not read: anything with alcohol in it. Honey and water to 60 °Bx → honey, 82.9 %.
 */
export function correctiveOf(
  catalogue: Catalogue,
  inputs: readonly Input[],
  { date, targetBrix }: { date: BusinessDate; targetBrix: number },
): Corrective | undefined {
  if (inputs.some(({ item }) => (itemNamed(catalogue, item).abv ?? 0) > 0)) return undefined;
  const sweet = inputs
    .flatMap((input) => {
      const solidsPct = brixOf(catalogue, input.item, date);
      const grams = weightG(catalogue, input, date);
      return solidsPct === undefined || grams === undefined
        ? []
        : [{ ...input, solidsPct, sugarG: grams * solidsPct }];
    })
    .filter(({ solidsPct }) => solidsPct > targetBrix)
    .sort((a, b) => b.sugarG - a.sugarG);
  const [main = { item: "sugar", solidsPct: SWEETENERS.sugar.solidsPct }] = sweet;
  const acidPct = acidPctOf(catalogue, inputs, date);
  return {
    sweetener: { item: main.item, solidsPct: main.solidsPct },
    water: inputs.find(({ item }) => isWater(catalogue, item, date))?.item ?? "water",
    ...(acidPct === undefined ? {} : { acidPct }),
  };
}
