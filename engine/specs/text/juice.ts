import type { Unit } from "#engine/measure/units.ts";
import { isBareDescription, isFruit } from "#engine/specs/text/descriptions.ts";

const POURED: readonly (Unit | "top" | null)[] = [
  "oz",
  "ml",
  "cl",
  "dl",
  "l",
  "tsp",
  "tbsp",
  "cup",
  "barspoon",
  "dash",
  "drop",
  "splash",
  "top",
];

/** Fruit that a bar pours as juice alone. Any other, and a cup of pineapple, could be a purée, a syrup or cut fruit. */
const JUICED = /\b(?:lemon|lime|orange|grapefruit|mandarin|tangerine)$/i;
const JUICED_BY_SMALL = /\b(?:pineapple|apple|cranberry)$/i;

/** What tells one fruit from another of its kind. */
const KIND =
  /^(?:fresh(?:ly)?(?:[\s-]+(?:squeezed|pressed|juiced))?\s+)?(?:(?:blood|key|meyer|persian|ruby|pink)\s+)?/i;

/**
 * The juice that is meant where a fruit is measured by volume: 0.75 oz "fresh lime" → "lime juice" (common practice).
 *
 * Undefined where the name is no bare fruit or the unit measures no volume; null where the fruit could as well be a
 * purée, a syrup or cut fruit.
 */
export function juiceMeant(name: string, unit: Unit | "top" | null): string | null | undefined {
  const kind = KIND.exec(name)?.[0] ?? "";
  const fruit = name.slice(kind.length);
  if (!POURED.includes(unit) || !isFruit(fruit) || !isBareDescription(fruit)) return undefined;
  const isJuice = JUICED.test(fruit) || (unit !== "cup" && JUICED_BY_SMALL.test(fruit));
  return isJuice ? `${name} juice` : null;
}
