/** The languages that have a whole catalogue, by the name that each gives itself. */
export const LANGUAGES = { en: "English", de: "Deutsch" } as const;

export type Language = keyof typeof LANGUAGES;

/** How numbers and dates are written in a language when the device names no country for it. */
const USUAL_LOCALE: Record<Language, string> = { en: "en-GB", de: "de-DE" };

const KEY = "ullage-language";

function isLanguage(code: string | null | undefined): code is Language {
  return code === "en" || code === "de";
}

/** What the device asks for, most wanted first. Outside a browser: nothing. */
const asked: readonly string[] = globalThis.navigator?.languages ?? [];

/** The language of this device: as chosen on it, else the first it asks for that there is, else English. */
export const language: Language = chosen() ?? asked.map(codeOf).find(isLanguage) ?? "en";

/** Numbers and dates as the device writes the language of the words between them. */
export const locale: string = asked.find((tag) => codeOf(tag) === language) ?? USUAL_LOCALE[language];

/** Keeps the choice on this device and draws everything anew in it. */
export function chooseLanguage(code: Language): void {
  localStorage.setItem(KEY, code);
  window.location.reload();
}

function chosen(): Language | null {
  const saved = globalThis.localStorage?.getItem(KEY);
  return isLanguage(saved) ? saved : null;
}

function codeOf(tag: string): string {
  return tag.split("-", 1)[0]?.toLowerCase() ?? "";
}
