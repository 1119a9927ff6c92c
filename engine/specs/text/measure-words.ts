import type { Unit } from "#engine/measure/units.ts";

/** How each unit is written; tried in this order, so that "fl oz" comes before "oz" and "oz-wt" before both. */
const SPELLINGS: readonly (readonly [pattern: RegExp, unit: Unit, factor?: number])[] = [
  [/^(?:oz[\s.-]*wt|(?:oz|ounces?)\.?\s*(?:\(\s*by weight\s*\)|by weight))/i, "oz-wt"],
  [/^(?:fl(?:uid)?\.?\s*(?:oz|ounces?|ozs)|ounces?|ozs?|onces?)/i, "oz"],
  [/^(?:ml'?s?|m\.l\b|millilit(?:re|er)s?|cc)/i, "ml"],
  [/^(?:cls?|c\.l\b|centilit(?:re|er)s?)/i, "cl"],
  [/^(?:dls?|decilit(?:re|er)s?)/i, "dl"],
  [/^(?:lit(?:re|er)s?|ltrs?|lts?|l)/i, "l"],
  [/^(?:tbsp[sn]?|tbls?p?s?|tbs|table[\s-]?spoon(?:ful|sful)?s?|tablesp)/i, "tbsp"],
  [/^(?:tsp?[sn]?|tea[\s-]?spoon(?:ful|sful)?s?|teasp)/i, "tsp"],
  [/^T(?![A-Za-z])/, "tbsp"],
  [/^t(?![A-Za-z])/, "tsp"],
  [/^(?:cups?|c(?=\.?\s))/i, "cup"],
  [/^(?:quarts?|qts?)/i, "cup", 4],
  [/^(?:dash(?:es|s)?|ds)/i, "dash"],
  [/^(?:bar[\s-]?spoon(?:ful|sful)?s?|bar\s?spn?|bsps?|brsp|bs)/i, "barspoon"],
  [/^drops?/i, "drop"],
  [/^splash(?:es)?/i, "splash"],
  [/^(?:kilogram(?:me)?s?|kgs?|kilos?)/i, "kg"],
  [/^(?:grams?|grammes?|gms?|grs?|g)/i, "g"],
  [/^(?:lbs?|pounds?)/i, "lb"],
  [/^(?:pieces?|pcs?)/i, "piece"],
  [/^(?:each|ea|nos)/i, "each"],
];

/** How a measure may be qualified without being another measure; kept as a note. */
const QUALIFIER =
  /^(?:scant|heavy|generous|heaping|heaped|level|rounded|good|healthy|hefty|large|big|small|short|long|light|bare|fat|full|thin|thick|wide|medium|overflowing|muddled|torn|slapped|fresh|\d[\dx/.\s]*"(?:[-\s]?(?:thick|long|wide))?(?=\s)|(?:thinly|finely|thickly|roughly)[\s-](?:sliced|cut|chopped)|[a-z]+-sized?|(?:\d[\d/]*|one|two|three|four)-inch(?:-(?:thick|long|wide))?)(?:\b|(?<=")),?\s*/i;

/** Measures and shares that no venue's units know: a line with one is refused at that word. */
const VAGUE =
  /^(?:an?\s+)?(?:pinch(?:es)?|rinse|squeezes?|handfuls?|bunch(?:es)?|parts?(?!-\p{L})|measures?|shots?|jiggers?|pon(?:y|ies)|wine[\s-]?glass(?:es)?|glass(?:es)?|bottles?|cans?|tins?|cartons?|jars?|box(?:es)?|packets?|packages?|scoops?|floats?|drizzles?|touch|dollops?|sprays?|spritz(?:es)?|spritz|mists?|hint|knobs?|few|some|several|little|bit|lots?|snits?|fingers?(?!\s+limes?\b)|pints?|gallons?|gills?|fifths?|inch(?:es)?|in\.?|cm|mm|"|grinds?|grates?|gratings?|dusting|sprinkles?|dabs?|spoons?|spoonfuls?|mug|mugs|pitchers?|pumps?|squirts?|bags?|pours?|dropper(?:ful)?s?|eye\s?droppers?|counts?|thumbs?|sachets?|punnets?|baskets?|trays?|kegs?|carafes?|ladles?|ladlefuls?|glugs?|lugs?|swirls?|smidgens?|tots?|nips?|drams?|thimbles?|thimblefuls?|hookers?|pkgs?|pkts?|packs?|btls?|pts?|gals?|portions?|minutes?|mins?|seconds?|secs?|hours?|servings?|persons?|people|calories|kcal|heaps?|scrapes?|scrapings?|turns?|cracks?|slugs?|sloshes|slosh|trickles?|dribbles?|wisps?|doubles?|singles?|ponies|copitas?|goblets?)(?![\p{L}\d'])/iu;

export type UnitFound = { unit: Unit; factor: number; rest: string; qualifiers: string[] };

/** The unit that a text starts with, after any "scant" or "heaping"; undefined when it starts with none. */
export function readUnit(text: string): UnitFound | undefined {
  const { qualifiers, rest } = readQualifiers(text.replace(/^\s*-?\s*/, ""));
  for (const [pattern, unit, factor = 1] of SPELLINGS) {
    const found = pattern.exec(rest);
    if (found === null) continue;
    const after = rest.slice(found[0].length);
    if (/^[\p{L}\d'-]/u.test(after) && !/^-[\s\d]/.test(after)) continue;
    return { unit, factor, rest: after.replace(/^\.(?!\d)/, ""), qualifiers };
  }
  return undefined;
}

/** Dash, barspoon, drop and splash: written without a number, they are one. */
export function isHouseMeasure({ unit }: UnitFound): boolean {
  return unit === "dash" || unit === "barspoon" || unit === "drop" || unit === "splash";
}

/** "scant ", "large fresh " and the like off the front of a text. */
export function readQualifiers(text: string): { qualifiers: string[]; rest: string } {
  const found = QUALIFIER.exec(text);
  if (found === null) return { qualifiers: [], rest: text };
  const more = readQualifiers(text.slice(found[0].length));
  return { qualifiers: [found[0].replace(/,?\s*$/, "").toLowerCase(), ...more.qualifiers], rest: more.rest };
}

/** The word of a measure that is not one of the units, if a text starts with one: "pinch of salt" → "pinch". */
export function vagueMeasure(text: string): string | undefined {
  const { rest } = readQualifiers(text.replace(/^\s*-?\s*/, ""));
  return VAGUE.exec(rest)?.[0];
}
