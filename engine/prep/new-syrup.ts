import { waterDensity } from "#engine/measure/sucrose.ts";
import {
  crystalCaution,
  SWEETENERS,
  type Sweetener,
  syrupByVolume,
  syrupByWeight,
  syrupRecipe,
} from "#engine/measure/syrup.ts";
import { foldName } from "#engine/name.ts";

/** How a syrup is asked for: by what it must read, or by parts of sweetener to parts of water. */
export type SyrupWish =
  | { way: "brix"; brix: number }
  | { way: "weight" | "volume"; sweetenerParts: number; waterParts: number };

/** A syrup to weigh out; grams are whole, as a kitchen scale shows them. */
export type NewSyrup = {
  sweetenerG: number;
  waterG: number;
  /** The same water in ml at 20 °C. */
  waterMl: number;
  brix: number;
  /** What the rounded weights come to at 20 °C. */
  volumeMl: number;
  /** Where sugar may come out in the fridge; null where it should not, or where the sweetener is no pure sugar. */
  caution: string | null;
};

/** What a fridge is set to. */
const FRIDGE_C = 4;

/**
 * Weights of a syrup of a wanted volume, from °Brix or from a ratio by weight or by volume (cups); ICUMSA SPS-4.
 *
 * 1 : 1 by weight, 1626 ml → 1000 g sugar + 1000 g water, 50 °Bx; 1 : 1 by volume → 45.9 °Bx. Throws OutOfRangeError
 * for a strength that the sweetener cannot reach.
 */
export function newSyrup({
  wish,
  volumeMl,
  sweetener = SWEETENERS.sugar,
}: {
  wish: SyrupWish;
  volumeMl: number;
  sweetener?: Sweetener;
}): NewSyrup {
  const recipe = syrupRecipe({ brix: brixOf(wish, sweetener), volumeMl, sweetener });
  const sweetenerG = Math.round(recipe.sweetenerG);
  const waterG = Math.max(0, Math.round(recipe.waterG));
  const made = syrupByWeight({ sweetenerG, waterG, sweetener });
  const isSugar = sweetener.name === SWEETENERS.sugar.name;
  return {
    sweetenerG,
    waterG,
    waterMl: Math.round(waterG / waterDensity()),
    brix: made.brix,
    volumeMl: made.volumeMl,
    caution: (isSugar ? crystalCaution({ brix: made.brix, keptAtC: FRIDGE_C }) : undefined) ?? null,
  };
}

function brixOf(wish: SyrupWish, sweetener: Sweetener): number {
  if (wish.way === "brix") return wish.brix;
  const { sweetenerParts, waterParts } = wish;
  return wish.way === "weight"
    ? syrupByWeight({ sweetenerG: sweetenerParts, waterG: waterParts, sweetener }).brix
    : syrupByVolume({ sweetenerMl: sweetenerParts, waterMl: waterParts, sweetener }).brix;
}

/** What an item sweetens with, by its name; undefined for what is no known sweetener. */
export function sweetenerNamed(item: string): Sweetener | undefined {
  const folded = foldName(item);
  if (/\bhoney\b/.test(folded)) return SWEETENERS.honey;
  if (/\bagave (?:syrup|nectar)\b/.test(folded)) return SWEETENERS.agave;
  if (/\bmaple syrup\b/.test(folded)) return SWEETENERS.maple;
  if (/\bmolasses\b/.test(folded)) return SWEETENERS.molasses;
  return /\bsugar\b/.test(folded) && !/\bsyrup\b/.test(folded) ? SWEETENERS.sugar : undefined;
}

/** A ratio as people write it: "2:1", "2 : 1", "1.5 to 1", "1". Undefined where it is none. */
export function readRatio(text: string): { sweetenerParts: number; waterParts: number } | undefined {
  const match = /^\s*(\d+(?:[.,]\d+)?)\s*(?:(?::|to|\/)\s*(\d+(?:[.,]\d+)?))?\s*$/i.exec(text);
  if (match === null) return undefined;
  const [sweetenerParts, waterParts] = [match[1], match[2] ?? "1"].map((part) =>
    Number((part ?? "").replace(",", ".")),
  );
  if (!sweetenerParts || !waterParts) return undefined;
  return { sweetenerParts, waterParts };
}
