import { OutOfRangeError } from "#engine/measure/range.ts";
import { spiritDensity } from "#engine/measure/spirit-density.ts";
import { sucroseDensity } from "#engine/measure/sucrose.ts";
import { foldName } from "#engine/name.ts";

/** What is known of a liquid; null for a fact not known. */
export type LiquidFacts = {
  name: string;
  category: string;
  abv: number | null;
  brix: number | null;
  densityGPerMl: number | null;
};

/** The weights of one container, empty and full, and what it holds; null for a weight not known. */
export type WeighedPack = { emptyG: number | null; fullG: number | null; volumeMl: number };

export type KnownDensity = {
  densityGPerMl: number;
  source: "stated" | "weighed full and empty" | "°Brix" | "strength";
};

/** Highest °Brix for which a density is worked out; above it a syrup must state its own. */
const BRIX_MAX = 85;

/**
 * The density at 20 °C that an item is reckoned with, and where it comes from: stated; else from a container weighed
 * full and empty; else from °Brix where there is no strength; else, for category "spirit", from strength.
 *
 * Undefined when nothing gives one (a liqueur by its label alone): the caller asks for one of these. Throws
 * OutOfRangeError when a full container is said to weigh no more than an empty one.
 * Sources: `spiritDensity` (OIML R 22), `sucroseDensity` (ICUMSA SPS-4).
 * A spirit of 40 % vol → { densityGPerMl: 0.94805, source: "strength" }.
 */
export function densityGPerMl(item: LiquidFacts, pack?: WeighedPack): KnownDensity | undefined {
  if (item.densityGPerMl !== null) return { densityGPerMl: item.densityGPerMl, source: "stated" };
  if (pack !== undefined && pack.emptyG !== null && pack.fullG !== null) {
    return {
      densityGPerMl: weighedDensity(item.name, pack, pack.fullG - pack.emptyG),
      source: "weighed full and empty",
    };
  }
  const hasStrength = item.abv !== null && item.abv > 0;
  if (item.brix !== null && item.brix <= BRIX_MAX && !hasStrength) {
    return { densityGPerMl: sucroseDensity({ brix: item.brix }), source: "°Brix" };
  }
  if (item.abv !== null && foldName(item.category) === "spirit") {
    return { densityGPerMl: spiritDensity({ abvPct: item.abv }), source: "strength" };
  }
  return undefined;
}

function weighedDensity(name: string, pack: WeighedPack, netG: number): number {
  if (netG > 0 && pack.volumeMl > 0) return netG / pack.volumeMl;
  throw new OutOfRangeError(
    `A full container of "${name}" is said to weigh ${pack.fullG} g and an empty one ${pack.emptyG} g; weigh both again.`,
  );
}
