import { language } from "../texts/language.ts";

/** A sentence as it goes on after a colon: in English with a small letter, in German as it begins. */
export function afterColon(sentence: string): string {
  return language === "en" ? sentence.charAt(0).toLocaleLowerCase() + sentence.slice(1) : sentence;
}
