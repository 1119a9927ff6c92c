import { GERMAN, GERMAN_TYPED } from "#engine/known-words/german.ts";
import { foldName } from "#engine/name.ts";

/** Of what the book holds words that the product knows: it looks for some of them, as cautions do for "egg". */
export type KnownKind = "allergen" | "part" | "category";

/** The words of one language by the English that the book has, folded; the first of several with one word is meant by it. */
export type KnownWords = Readonly<Record<KnownKind, Readonly<Record<string, string>>>>;

const LANGUAGES: Readonly<Record<string, KnownWords>> = { de: GERMAN };

/** By what is typed in a language besides its own words, folded, the English that is meant. */
const TYPED: Readonly<Record<string, Partial<KnownWords>>> = { de: GERMAN_TYPED };

/**
 * A word of the book as a language says it; what a bar wrote in words of its own stays.
 *
 * @example knownWord("de", "allergen", "egg") → "Ei"; knownWord("de", "allergen", "Oma's Mix") → "Oma's Mix"
 */
export function knownWord(language: string, kind: KnownKind, written: string): string {
  const words = LANGUAGES[language]?.[kind] ?? {};
  const key = foldName(written);
  return (Object.hasOwn(words, key) ? words[key] : undefined) ?? written;
}

/**
 * What somebody typed in a language, as the book has it: a word it `held` so already, else the English one; all else stays.
 *
 * @example bookWord("de", "allergen", "ei") → "egg"; bookWord("de", "allergen", "Sulfite", ["sulfites"]) → "sulfites"
 */
export function bookWord(
  language: string,
  kind: KnownKind,
  typed: string,
  held: readonly string[] = [],
): string {
  const words = Object.keys(LANGUAGES[language]?.[kind] ?? {});
  const isMeant = (word: string) => foldName(knownWord(language, kind, word)) === foldName(typed);
  const also = new Map(Object.entries(TYPED[language]?.[kind] ?? {}));
  return held.find(isMeant) ?? words.find(isMeant) ?? also.get(foldName(typed)) ?? typed.trim();
}
