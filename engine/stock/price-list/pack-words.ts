import { readAmount } from "#engine/measure/amount.ts";
import type { Unit } from "#engine/measure/units.ts";

/** What a supplier writes of a pack: so many containers a case, each of an amount; and the words around it. */
export type PackWords = { perCase: number | null; amount: number; unit: Unit; rest: string };

/** The spellings of units on price lists (common practice). */
const UNIT_WORDS: [Unit, string][] = [
  ["ml", "ml|mls|millilit(?:er|re)s?"],
  ["cl", "cl|cls|centilit(?:er|re)s?"],
  ["dl", "dl"],
  ["oz", "fl\\.?\\s?oz\\.?|fluid ounces?|oz\\.?|ounces?"],
  ["kg", "kgs?|kilos?|kilograms?"],
  ["g", "gr?s?|grams?|grammes?"],
  ["lb", "lbs?\\.?|pounds?"],
  ["l", "lt?s?|ltrs?|lit(?:er|re)s?|liters?"],
  ["each", "each|ea|pcs?|pieces?|ct|count|stück|stk|pi[eè]ces?|unidades|uds?|pezzi"],
];

const NUMBER = "(\\d+(?:[.,]\\d+)?|\\d+\\s*/\\s*\\d+)";
const TIMES = "\\s*[x×*/]\\s*";
const AFTER = "(?![\\p{L}\\d])";

const FORMS = UNIT_WORDS.map(([unit, words]) => ({
  unit,
  // "6 x 70cl", "12/750 ml"
  caseFirst: new RegExp(`(?<![\\d.,])(\\d{1,4})${TIMES}${NUMBER}\\s*(?:${words})${AFTER}`, "iu"),
  // "70cl x 6", "330 ml × 24"
  caseLast: new RegExp(`(?<![\\d.,])${NUMBER}\\s*(?:${words})\\s*[x×*]\\s*(\\d{1,4})${AFTER}`, "iu"),
  alone: new RegExp(`(?<![\\d.,/])${NUMBER}\\s*(?:${words})${AFTER}`, "iu"),
}));

/**
 * Finds the size of a pack in a text, as on a price list, and gives the rest of the text.
 *
 * "Dry gin 6 x 70cl" → 6 of 70 cl, rest "Dry gin"; "Lime, 54 ct" → 54 each; undefined without a size. An ounce is fluid, as
 * everywhere in the book.
 */
export function readPackWords(text: string): PackWords | undefined {
  for (const form of ["caseFirst", "caseLast", "alone"] as const) {
    const hits = FORMS.flatMap(({ unit, [form]: pattern }) => {
      const found = pattern.exec(text);
      return found === null ? [] : [{ unit, found }];
    });
    // Of a strength and a size, "40% 70cl", only the size has a unit of these; of two sizes the first is the container.
    const [first] = hits.sort(
      (a, b) => a.found.index - b.found.index || b.found[0].length - a.found[0].length,
    );
    if (first === undefined) continue;
    const read = partsOf(form, first.found);
    if (read === undefined) continue;
    const rest = `${text.slice(0, first.found.index)} ${text.slice(first.found.index + first.found[0].length)}`;
    return { ...read, unit: first.unit, rest: tidied(rest) };
  }
  return undefined;
}

function partsOf(form: "caseFirst" | "caseLast" | "alone", found: RegExpExecArray) {
  const [, one = "", two = ""] = found;
  const size = form === "caseFirst" ? two : one;
  const amount = readAmount(size, { decimalComma: true });
  const perCase = form === "alone" ? null : Number(form === "caseFirst" ? one : two);
  if (amount === undefined || amount <= 0 || perCase === 0) return undefined;
  return { perCase, amount };
}

/** Without the brackets, commas and dashes that a taken-out size leaves behind. */
function tidied(text: string): string {
  return text
    .replace(/[([]\s*[)\]]/g, " ")
    .replace(/\s+/g, " ")
    .replace(/\s+([,;)])/g, "$1")
    .replace(/^[\s,;:–—-]+|[\s,;:–—-]+$/g, "");
}
