import { type Language, language } from "./language.ts";
import { type Texts, takeTexts } from "./say.ts";

type Loader = () => Promise<{ default: Texts }>;

const FILES: Record<Language, { first: Loader; rest: Loader }> = {
  en: { first: () => import("virtual:texts/en/first"), rest: () => import("virtual:texts/en/rest") },
  de: { first: () => import("virtual:texts/de/first"), rest: () => import("virtual:texts/de/rest") },
};

/** Loads the texts of the frame and the count, before anything is drawn. */
export async function loadFirstTexts(): Promise<void> {
  document.documentElement.lang = language;
  takeTexts((await FILES[language].first()).default);
}

/** A screen's module together with the texts that all screens but the count need: withTexts(() => import("./WeekPage.tsx")). */
export async function withTexts<Module>(load: () => Promise<Module>): Promise<Module> {
  const [module, texts] = await Promise.all([load(), FILES[language].rest()]);
  takeTexts(texts.default);
  return module;
}
