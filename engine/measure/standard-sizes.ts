import { US_FLUID_OUNCE_ML } from "#engine/measure/unit-factor.ts";
import { foldName } from "#engine/name.ts";

/** What a container may hold by law, in ml, and by which law. */
export type LawfulSizes = {
  kind: "spirit" | "still wine" | "sparkling wine" | "fortified wine";
  place: string;
  source: string;
  sizesMl: readonly number[];
};

/** The US sizes of spirits that stood before 10 January 2025, cans among them. */
const US_SPIRITS = [50, 100, 200, 355, 375, 700, 720, 750, 900, 1000, 1750, 1800];
const US_SPIRITS_ADDED_2025 = [187, 250, 331, 350, 475, 500, 570, 710, 945, 1500, 2000, 3000, 3750];
const US_WINE = [50, 100, 187, 200, 250, 355, 375, 500, 750, 1000, 1500, 3000];
const US_WINE_ADDED_2025 = [180, 300, 330, 360, 473, 550, 568, 600, 620, 700, 720, 1800, 2250];
const US_WINE_ALL = {
  place: "US",
  source: "27 CFR 4.72, T.D. TTB-165 and TTB-200",
  sizesMl: [...US_WINE, ...US_WINE_ADDED_2025],
};
const EU = { place: "EU and UK" };

/**
 * Sizes in which each kind may be sold. Wine above 3 l comes in whole litres from 4 l (US); outside of 100–2000 ml for
 * spirits, and of 100–1500 ml for wines, EU and UK sizes are free.
 */
export const LAWFUL_SIZES: readonly LawfulSizes[] = [
  {
    kind: "spirit",
    place: "US",
    source: "27 CFR 5.203, T.D. TTB-165 and TTB-200",
    sizesMl: [...US_SPIRITS, ...US_SPIRITS_ADDED_2025],
  },
  {
    kind: "spirit",
    ...EU,
    source: "Directive 2007/45/EC, annex; gov.uk, Specified quantities",
    sizesMl: [100, 200, 350, 500, 700, 1000, 1500, 1750, 2000],
  },
  { kind: "still wine", ...US_WINE_ALL },
  {
    kind: "still wine",
    ...EU,
    source: "Directive 2007/45/EC, annex; SI 1988/2039, Sch. A1",
    sizesMl: [100, 187, 250, 375, 500, 620, 750, 1000, 1500],
  },
  { kind: "sparkling wine", ...US_WINE_ALL },
  {
    kind: "sparkling wine",
    ...EU,
    source: "Directive 2007/45/EC, annex; SI 1988/2039, Sch. A1",
    sizesMl: [125, 200, 375, 750, 1500],
  },
  { kind: "fortified wine", ...US_WINE_ALL },
  {
    kind: "fortified wine",
    ...EU,
    source: "Directive 2007/45/EC, annex; gov.uk, Specified quantities",
    sizesMl: [100, 200, 375, 500, 750, 1000, 1500],
  },
];

/** A beer barrel in ml: 31 US gallons (27 CFR 25.11); states and petroleum have others, so the word is never read as a size. */
export const US_BEER_BARREL_ML = 31 * 128 * US_FLUID_OUNCE_ML;

/**
 * Kegs as beer is sold in, in ml: the fractions of a barrel of 27 CFR 25.156, and metric ones. A sixth is 19.56 l, not 20.
 *
 * None has a lawful empty weight (DIN 6647-1 sets volumes and dimensions only): weigh one, or read the stamp on it.
 */
export const KEGS_ML: Readonly<Record<string, number>> = {
  "1/2 barrel": US_BEER_BARREL_ML / 2,
  "1/4 barrel": US_BEER_BARREL_ML / 4,
  "1/6 barrel": US_BEER_BARREL_ML / 6,
  "1/8 barrel": US_BEER_BARREL_ML / 8,
  "5 gallons": 5 * 128 * US_FLUID_OUNCE_ML,
  "20 l": 20_000,
  "30 l": 30_000,
  "50 l": 50_000,
};

/** How kegs are called: "1/6 bbl", "half barrel", "sixtel". */
const KEG_WORDS: readonly (readonly [words: RegExp, keg: string])[] = [
  [/\b(?:1\/2|half)[\s-]*(?:bbl|barrel)\b/i, "1/2 barrel"],
  [/\b(?:1\/4|quarter)[\s-]*(?:bbl|barrel)\b|\bpony keg\b/i, "1/4 barrel"],
  [/\b(?:1\/6|sixth)[\s-]*(?:bbl|barrel)\b|\bsixtel\b/i, "1/6 barrel"],
  [/\b(?:1\/8|eighth)[\s-]*(?:bbl|barrel)\b/i, "1/8 barrel"],
];

/** The keg that a pack is called after, and what it holds: "Sixtel" → { keg: "1/6 barrel", volumeMl: 19558 }. */
export function kegCalled(pack: string): { keg: string; volumeMl: number } | undefined {
  const keg = KEG_WORDS.find(([words]) => words.test(pack))?.[1];
  const volumeMl = keg === undefined ? undefined : KEGS_ML[keg];
  return keg === undefined || volumeMl === undefined ? undefined : { keg, volumeMl };
}

/** The kind that a category of items is, by the words of the trade; undefined for what no law gives sizes to. */
export function kindOf(category: string): LawfulSizes["kind"] | undefined {
  const words = foldName(category);
  if (/\bspirits?\b/.test(words)) return "spirit";
  if (/\b(?:sparkling|champagne|prosecco|cava)\b/.test(words)) return "sparkling wine";
  if (/\b(?:vermouth|fortified|sherry|port|madeira|aromati[sz]ed)\b/.test(words)) return "fortified wine";
  return /\bwines?\b/.test(words) ? "still wine" : undefined;
}

/** All the sizes a kind is lawfully sold in somewhere, smallest first. Spirits → 50, 100, 187, 200, …, 3750. */
export function lawfulSizesMl(kind: LawfulSizes["kind"]): number[] {
  const sizes = LAWFUL_SIZES.filter((each) => each.kind === kind).flatMap(({ sizesMl }) => sizesMl);
  return [...new Set(sizes)].sort((a, b) => a - b);
}

/** Within this share a size is the lawful one in other words: 25.4 oz is 751 ml. */
const SAME = 0.006;
/** Where the lists end, sizes are free: whole litres of wine, miniatures and big bottles of spirit in Europe. */
const LISTED = { fromMl: 100, toMl: 2000 };
/** Sold until the metric sizes of 1980 and still found: 4/5 quart (27 CFR 5.47). */
const OLD_US_FIFTH_ML = 757.08;

/**
 * The lawful sizes nearest to one that no law knows, as a hint that it was typed wrong; undefined where it is lawful, or
 * where nothing is said of its kind or size.
 *
 * Of spirits, 740 ml → [720, 750]; 700, 750 and 50 ml → undefined.
 */
export function nearestLawfulSizes(category: string, volumeMl: number): number[] | undefined {
  const kind = kindOf(category);
  if (kind === undefined || volumeMl < LISTED.fromMl || volumeMl > LISTED.toMl) return undefined;
  const sizes = lawfulSizesMl(kind);
  const isLawful = [...sizes, OLD_US_FIFTH_ML].some((size) => Math.abs(volumeMl / size - 1) <= SAME);
  if (isLawful) return undefined;
  return [sizes.findLast((size) => size < volumeMl), sizes.find((size) => size > volumeMl)].flatMap(
    (size) => size ?? [],
  );
}
