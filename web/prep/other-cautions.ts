import type { Allergens } from "#engine/prep/allergens.ts";

/** The cautions but the one on allergens, which comes last where there are any: a card says those in a place of their own. */
export function otherCautions(
  cautions: readonly string[],
  { contains, mayContain }: Pick<Allergens, "contains" | "mayContain">,
): readonly string[] {
  return contains.length + mayContain.length > 0 ? cautions.slice(0, -1) : cautions;
}
