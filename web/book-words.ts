import { bookWord, type KnownKind, knownWord } from "#engine/known-words/known-words.ts";
import { language } from "./texts/language.ts";

/** A word of the book in the language of this device, where the product knows it: "egg" → "Ei". */
export function shownWord(kind: KnownKind, written: string): string {
  return knownWord(language, kind, written);
}

/** An item to pick, with its category under the name. */
export function itemChoice({ name, category }: { name: string; category: string }) {
  return { value: name, detail: shownWord("category", category) };
}

/** A word typed on this device, as the book has it: "Ei" → "egg". */
export function wordForBook(kind: KnownKind, typed: string, held?: readonly string[]): string {
  return bookWord(language, kind, typed, held);
}
