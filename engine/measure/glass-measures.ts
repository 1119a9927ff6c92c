import { kindOf } from "#engine/measure/standard-sizes.ts";
import { IMPERIAL_FLUID_OUNCE_ML } from "#engine/measure/unit-factor.ts";
import { foldName } from "#engine/name.ts";

/** What may be sold by the glass in set measures only. */
export type GlassKind = "gin, rum, vodka or whisky" | "still wine" | "fortified wine" | "draught beer";

/**
 * The measures of the United Kingdom, in ml: each of them, and its multiples. Sparkling wine, other spirits, and a mixture
 * of three liquids or more are free. A house sells its spirits by 25 ml or by 35 ml, not by both.
 *
 * Source: Weights and Measures (Intoxicating Liquor) Order 1988 (SI 1988/2039), as gov.uk puts it.
 */
const UK_MEASURES: Readonly<Record<GlassKind, readonly number[]>> = {
  "gin, rum, vodka or whisky": [25, 35],
  "still wine": [125, 175],
  "fortified wine": [50, 70],
  "draught beer": [1 / 2],
};

/** Of a pint, also these; only the half has multiples. */
const UK_BEER_SINGLES = [1 / 3, 2 / 3];
const PINT_ML = 20 * IMPERIAL_FLUID_OUNCE_ML;
/** A jigger of 25 ml is no other at 24.9. */
const SAME_ML = 0.5;

/**
 * The kind by whose measures something is sold in the United Kingdom, by its name and category; undefined for what is free.
 * Beer has set measures where it is drawn from a keg.
 */
export function glassKind({
  name,
  category,
  isDraught = false,
}: {
  name: string;
  category: string;
  isDraught?: boolean;
}): GlassKind | undefined {
  const trade = foldName(category);
  if (/\b(?:liqueur|bitters|amaro|vermouth|aromati[sz]ed)s?\b/.test(trade)) return undefined;
  const kind = kindOf(category);
  const spirit = /\b(?:gin|rum|vodka|whiske?y|bourbon|scotch)s?\b/;
  if (spirit.test(trade) || (kind === "spirit" && spirit.test(foldName(name)))) {
    return "gin, rum, vodka or whisky";
  }
  if (kind === "still wine" || kind === "fortified wine") return kind;
  return isDraught && /\b(?:beer|cider|ale|lager|stout|porter)s?\b/.test(trade) ? "draught beer" : undefined;
}

/** Whether so much of a kind is a lawful measure in the United Kingdom. Spirit: 25, 50, 35, 70 → true; 30, 60 → false. */
export function isUkMeasure(kind: GlassKind, ml: number): boolean {
  return nearestUkMeasures(kind, ml).some((measure) => Math.abs(measure - ml) <= SAME_ML);
}

/** The lawful measures on either side of an amount, in ml, the smaller first. Spirit: 30 → [25, 35]; wine: 150 → [125, 175]. */
export function nearestUkMeasures(kind: GlassKind, ml: number): number[] {
  const all = ukMeasures(kind, ml);
  const below = all.findLast((measure) => measure <= ml + SAME_ML);
  const above = all.find((measure) => measure >= ml - SAME_ML);
  return [...new Set([below, above].flatMap((measure) => measure ?? []))];
}

function ukMeasures(kind: GlassKind, upTo: number): number[] {
  const isBeer = kind === "draught beer";
  const unit = isBeer ? PINT_ML : 1;
  const multiples = UK_MEASURES[kind].flatMap((step) => {
    const count = Math.ceil(upTo / (step * unit)) + 1;
    return Array.from({ length: count }, (_, at) => (at + 1) * step * unit);
  });
  const singles = isBeer ? UK_BEER_SINGLES.map((share) => share * unit) : [];
  return [...new Set([...multiples, ...singles])].sort((a, b) => a - b);
}
