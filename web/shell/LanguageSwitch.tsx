import { chooseLanguage, LANGUAGES, type Language, language } from "../texts/language.ts";

const CODES = Object.keys(LANGUAGES) as Language[];

/** Steps to the next language; it is named in itself, so that whoever needs it can read it. */
export function LanguageSwitch() {
  const next = CODES[(CODES.indexOf(language) + 1) % CODES.length] ?? language;
  return (
    <button type="button" className="theme-switch" lang={next} onClick={() => chooseLanguage(next)}>
      <span className="language-mark" aria-hidden="true">
        {next.toUpperCase()}
      </span>
      <span className="theme-words">{LANGUAGES[next]}</span>
    </button>
  );
}
