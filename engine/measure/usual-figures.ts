import { US_FLUID_OUNCE_ML } from "#engine/measure/unit-factor.ts";
import { foldName } from "#engine/name.ts";

/**
 * Weights of a US fluid ounce in g and water in % of the weight: USDA SR26 (WEIGHT, ABBREV; 2013). Its measures are good to
 * about 2 % (lime by the ounce is 1.041 g/ml, by the cup 1.023), so they are hints to a person, never reckoned with.
 */
const OUNCES: readonly (readonly [words: RegExp, name: string, gPerOz: number])[] = [
  [/\blime juice\b/, "lime juice", 30.8],
  [/\blemon juice\b/, "lemon juice", 30.5],
  [/\borange juice\b/, "orange juice", 31.0],
  [/\bgrapefruit juice\b/, "grapefruit juice", 30.9],
  [/\bpineapple juice\b/, "pineapple juice", 31.3],
  [/\bapple juice\b/, "apple juice", 31.0],
  [/\bpomegranate juice\b/, "pomegranate juice", 31.4],
  [/\bpassion ?fruit juice\b/, "passion fruit juice", 30.9],
  [/\btomato juice\b/, "tomato juice", 30.4],
  [/\bcondensed milk\b/, "sweetened condensed milk", 38.2],
  [/\bmilk\b/, "whole milk", 30.5],
  [/\b(?:heavy|double|whipping) cream\b/, "heavy cream", 29.8],
  [/\bcoffee liqueur\b/, "coffee liqueur", 34.8],
  [/\bcreme de menthe\b/, "crème de menthe", 33.6],
  [/\b(?:tonic|ginger ale)\b/, "tonic water", 30.5],
  [/\bcola\b/, "cola", 30.7],
  [/\b(?:soda|sparkling) ?(?:water)?\b/, "soda water", 29.6],
  [/\b(?:beer|lager|ale|stout)\b/, "beer", 29.7],
  [/\b(?:port|sherry|madeira)\b/, "dessert wine", 29.5],
  [/\bwine\b/, "table wine", 29.4],
];

/** A weight as hint: "lime juice weighs about 1.04 g/ml (USDA SR26)". */
export type Hint = { name: string; figure: number };

/** What a ml of a liquid usually weighs, by its name; undefined for what the tables do not hold. "Fresh lime juice" → 1.041. */
export function usualDensity(item: string): Hint | undefined {
  const words = plain(item);
  const found = OUNCES.find(([pattern]) => pattern.test(words));
  return found === undefined ? undefined : { name: found[1], figure: found[2] / US_FLUID_OUNCE_ML };
}

/** A fruit as USDA SR26 has it: its edible part, what is thrown away of what was bought, and its juice where that is printed. */
export type Produce = { edibleG: number; refusePct: number; juiceG?: number };

/** USDA SR26 (WEIGHT, FOOD_DES): one fruit of the usual size, its refuse as % of the weight bought, the juice of one. */
export const PRODUCE: Readonly<Record<string, Produce>> = {
  lime: { edibleG: 67, refusePct: 16, juiceG: 44 },
  lemon: { edibleG: 58, refusePct: 47, juiceG: 48 },
  orange: { edibleG: 131, refusePct: 27, juiceG: 86 },
  pineapple: { edibleG: 905, refusePct: 49 },
  cucumber: { edibleG: 301, refusePct: 3 },
  strawberry: { edibleG: 12, refusePct: 6 },
  "passion fruit": { edibleG: 18, refusePct: 48 },
  pomegranate: { edibleG: 282, refusePct: 44 },
  celery: { edibleG: 40, refusePct: 11 },
  egg: { edibleG: 50, refusePct: 12 },
};

/** Weight of one piece as it is bought: edible ÷ (1 − refuse). Lime 67 g, 16 % refuse → 79.8 g. */
export function boughtG({ edibleG, refusePct }: Produce): number {
  return edibleG / (1 - refusePct / 100);
}

/** Juice as a share of the weight bought; undefined where none is printed. Lime 44 of 79.8 g → 0.55. */
export function juiceShare(produce: Produce): number | undefined {
  return produce.juiceG === undefined ? undefined : produce.juiceG / boughtG(produce);
}

/** What one piece usually weighs as it is bought, by its name; undefined for what the tables do not hold. "Limes" → 79.8. */
export function usualPieceG(item: string): Hint | undefined {
  const words = plain(item);
  const found = Object.entries(PRODUCE).find(([name]) => new RegExp(`^(?:\\S+ )?${name}e?s?$`).test(words));
  return found === undefined ? undefined : { name: found[0], figure: boughtG(found[1]) };
}

function plain(name: string): string {
  return foldName(name).normalize("NFKD").replace(/\p{M}/gu, "");
}
