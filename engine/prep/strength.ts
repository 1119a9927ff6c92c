import { type Catalogue, itemNamed } from "#engine/catalogue.ts";
import { blend } from "#engine/measure/blend.ts";
import { OutOfRangeError } from "#engine/measure/range.ts";
import type { Input } from "#engine/prep/weights.ts";

/**
 * Strength of a batch in % vol, from the strengths and volumes of what goes in, with the contraction that `blend` knows (OIML
 * R 22); undefined where nothing in it has any, or where the tables end.
 *
 * Shared out over what the batch makes, or over what was poured in where that is more: what a fruit soaks up takes its
 * alcohol along. For a bench label, not for declaring a product.
 * 3000 ml of 40 %, 800 ml of 18 %, 800 ml of water → 29.4 % of 4572 ml.
 */
export function strengthPct(
  catalogue: Catalogue,
  inputs: readonly Input[],
  makeMl: number,
): number | undefined {
  const parts = inputs.flatMap(({ item: name, amount }) => {
    const { base, abv, brix, densityGPerMl } = itemNamed(catalogue, name);
    if (base !== "ml" || amount <= 0) return [];
    const abvPct = abv ?? 0;
    const sugar = abvPct > 0 && densityGPerMl === null ? 0 : (brix ?? 0);
    return [{ volumeMl: amount, abvPct, brix: sugar, ...(densityGPerMl === null ? {} : { densityGPerMl }) }];
  });
  if (!parts.some(({ abvPct }) => abvPct > 0)) return undefined;
  try {
    const { volumeMl, abvPct } = blend(parts);
    return (abvPct * volumeMl) / Math.max(makeMl, volumeMl);
  } catch (error) {
    if (error instanceof OutOfRangeError) return undefined;
    throw error;
  }
}
