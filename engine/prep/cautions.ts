import { type Catalogue, itemNamed } from "#engine/catalogue.ts";
import { foldName } from "#engine/name.ts";
import { allergensOf } from "#engine/prep/allergens.ts";
import { shelfLifeDays } from "#engine/prep/use-by.ts";
import { recipeInForce } from "#engine/specs/recipe.ts";
import type { BusinessDate } from "#engine/time.ts";
import { inForce } from "#engine/versions.ts";

/** What is known of a prep and of everything in it, as text to look for words in. */
type Seen = {
  /** Names, categories and allergens of the prep and all inputs, folded. */
  words: string;
  /** The prep's method, folded. */
  method: string;
  isPressed: boolean;
  /** Steeped or cooked with plants, by its name and category: an infusion, a syrup, an oil. */
  isSteeped: boolean;
  /** Highest strength of anything in it, % vol. */
  abvPct: number;
};

type Rule = { applies: (seen: Seen) => boolean; text: string };

const EGG = /\beggs?\b|\balbumen\b|\byolks?\b/;
// Plant milks and cream sherry are no dairy.
const DAIRY =
  /(?<!\b(?:coconut|oat|soya?|almond|rice|nut) )\b(?:milk|cream)\b(?! of coconut| of tartar| sherry| soda)|\bbutter\b|\byogh?urt\b|\bwhey\b|\bdairy\b/;
const NUTS =
  /\balmonds?\b|\bhazelnuts?\b|\bwalnuts?\b|\bpecans?\b|\bpistachios?\b|\bcashews?\b|\bmacadamias?\b|\bpeanuts?\b|\bnuts?\b|\borgeat\b/;
const OIL = /\boil\b|\bghee\b|\bfat\b/;
const PLANT =
  /\bgarlic\b|\bherbs?\b|\bchill?i(?:es|s)?\b|\bchiles?\b|\bpeppers?\b|\bbasil\b|\brosemary\b|\bthyme\b|\bmint\b|\bsage\b|\bginger\b|\bfruit\b|\bpeel\b|\bcucumbers?\b|\bberr(?:y|ies)\b|\bmushrooms?\b|\bvegetables?\b/;
const QUININE = /\bquinine\b|\bcinchona\b/;
const COLD = /\bdry ice\b|\bliquid nitrogen\b/;
const FLAME = /\bflam(?:e|ed|ing)\b|\btorch\b|\bflambe\b|\bsmok(?:e|ed|ing)\b|\bboil\b|\bsimmer\b|\bheat\b/;

/** Strength above which liquor gives off vapour that catches fire near a flame; common practice: 40 % vol. */
const FLAMMABLE_ABV_PCT = 40;

/** Below this an infusion does not keep by its alcohol; common practice: 20 % vol. */
const KEEPS_BY_ALCOHOL_ABV_PCT = 20;

// Each text names what to check and leaves the answer to the local code: none of them says that something is safe.
const RULES: Rule[] = [
  {
    applies: ({ words }) => EGG.test(words),
    text: "Raw or lightly treated egg: your local food code may ask for pasteurised egg, a notice to guests and chilling; check it before serving.",
  },
  {
    applies: ({ words }) => DAIRY.test(words),
    text: "Dairy: keep chilled and date-mark as your local food code asks.",
  },
  {
    applies: ({ isPressed }) => isPressed,
    text: "Fresh juice: date-mark and chill as your local food code asks; bottling juice for sale can need treatment or a warning label.",
  },
  {
    applies: ({ words, isSteeped, abvPct }) =>
      (OIL.test(words) && PLANT.test(words)) ||
      (isSteeped && PLANT.test(words) && abvPct < KEEPS_BY_ALCOHOL_ABV_PCT),
    text: "Garlic, herbs, vegetables or fruit in oil or in a low-acid liquid can grow dangerous bacteria without looking or smelling spoiled: check acidity, temperature and time against your local food code before making it.",
  },
  {
    applies: ({ words }) => NUTS.test(words),
    text: "Nuts: use separate, clean tools, label every container, and tell guests who ask.",
  },
  {
    applies: ({ words }) => QUININE.test(words),
    text: "Quinine or cinchona bark: amounts are limited by law and too much is harmful; check the limits that apply to you, or buy it made.",
  },
  {
    applies: ({ words, method }) => COLD.test(words) || COLD.test(method),
    text: "Dry ice or liquid nitrogen: cold burns and lack of air; trained staff and moving air only, and nothing of it may reach a guest. Follow local rules.",
  },
  {
    applies: ({ method, abvPct }) => abvPct >= FLAMMABLE_ABV_PCT && FLAME.test(method),
    text: "Strong spirit near heat: its vapour catches fire; keep it from flames and follow local fire rules.",
  },
];

/**
 * Cautions for a prep on a date, by what is in it at any depth, its method and its recorded allergens.
 *
 * They say what to check and defer to the local food code. Words are looked for in English; where the sheets are in
 * another language only categories and allergens in English words are seen.
 */
export function cautionsOf(catalogue: Catalogue, prep: string, date: BusinessDate): string[] {
  const seen = seenIn(catalogue, prep, date);
  const cautions = RULES.filter(({ applies }) => applies(seen)).map(({ text }) => text);
  cautions.push(...shorterLived(catalogue, prep, date));
  const { contains, mayContain, text } = allergensOf(catalogue, prep, date);
  return contains.length + mayContain.length > 0 ? [...cautions, `Allergens. ${text}`] : cautions;
}

/** A mixture keeps the date of its earliest ingredient where date marking applies (US Food Code 3-501.17). */
function shorterLived(catalogue: Catalogue, prep: string, date: BusinessDate): string[] {
  const own = shelfLifeDays(catalogue, prep, date);
  const inputs = recipeInForce(catalogue, prep, date)?.inputs ?? [];
  const shorter = inputs.filter(({ item }) => {
    if (!itemNamed(catalogue, item).inHouse) return false;
    return (
      (shelfLifeDays(catalogue, item, date) ?? Number.POSITIVE_INFINITY) < (own ?? Number.POSITIVE_INFINITY)
    );
  });
  if (shorter.length === 0) return [];
  const names = shorter.map(({ item }) => item).join(", ");
  return [
    `Keeps less long than the mix: ${names}. Check whether your local food code dates a mix by its earliest ingredient.`,
  ];
}

function seenIn(catalogue: Catalogue, prep: string, date: BusinessDate): Seen {
  const inside = [...insideOf(catalogue, prep, date, new Set())].map((name) => itemNamed(catalogue, name));
  const own = itemNamed(catalogue, prep);
  const words = inside.flatMap(({ name, category, allergens }) => [name, category, ...allergens]).join("; ");
  const abv = inside.map((item) => item.abv ?? 0);
  return {
    words: foldName(words),
    method: foldName(inForce(catalogue.preps.get(prep) ?? [], date)?.method ?? ""),
    isPressed: inside.some(({ name, base }) => base === "ml" && catalogue.cuts.has(name)),
    isSteeped: /\binfus|\bsyrup|\bshrub|\btincture|\btea\b|\boil\b/.test(
      foldName(`${own.name} ${own.category}`),
    ),
    abvPct: own.abv ?? Math.max(0, ...abv),
  };
}

/** A prep and everything it is made of, at any depth. */
function insideOf(catalogue: Catalogue, name: string, date: BusinessDate, found: Set<string>): Set<string> {
  if (found.has(name)) return found;
  found.add(name);
  const recipe = recipeInForce(catalogue, name, date);
  if (recipe?.cut !== undefined) insideOf(catalogue, recipe.cut.source, date, found);
  for (const { item } of recipe?.inputs ?? []) insideOf(catalogue, item, date, found);
  return found;
}
