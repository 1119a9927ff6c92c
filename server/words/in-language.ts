import type { Context, MiddlewareHandler } from "hono";
import { languageDetector } from "hono/language";

/** The languages that the server's sentences are translated into; English is what it says by itself. */
const OTHERS = ["de"] as const;
type Other = (typeof OTHERS)[number];

/** Answers in the language that a request asks for by Accept-Language, if there is one; without that header in English. */
export function inAskedLanguage(): MiddlewareHandler {
  const detect = languageDetector({
    supportedLanguages: ["en", ...OTHERS],
    fallbackLanguage: "en",
    order: ["header"],
    caches: false,
    convertDetectedLanguage: (tag) => tag.split("-", 1)[0] ?? tag,
  });
  return async (c, next) => {
    await detect(c, next);
    await translate(c);
  };
}

async function translate(c: Context): Promise<void> {
  const language = OTHERS.find((other) => other === c.get("language"));
  if (language === undefined || !/^application\/json\b/.test(c.res.headers.get("content-type") ?? "")) return;
  const say = await translatorInto(language);
  const answer = new Response(JSON.stringify(inWords(await c.res.json(), say)), c.res);
  answer.headers.delete("content-length");
  answer.headers.set("content-language", language);
  c.res = answer;
}

type Say = (text: string, isLabel?: boolean) => string;

const translators = new Map<Other, Promise<Say>>();

/** Made when somebody first asks: most servers speak one language all their life. */
function translatorInto(language: Other): Promise<Say> {
  const ready = translators.get(language) ?? load(language);
  translators.set(language, ready);
  return ready;
}

async function load(language: Other): Promise<Say> {
  const [{ translatorOf }, { GERMAN }, { MEASURE_WORDS }] = await Promise.all([
    import("#server/words/translator.ts"),
    import("#server/words/german/german.ts"),
    import("#server/words/german/words.ts"),
  ]);
  return translatorOf(language, GERMAN, MEASURE_WORDS);
}

/** The fields whose few words are there to be read alone. */
const LABELS = new Set(["act", "summary"]);

/** Every text of an answer, whatever its shape; keys stay as they are. */
function inWords(value: unknown, say: Say, field = ""): unknown {
  if (typeof value === "string") return say(value, LABELS.has(field));
  if (Array.isArray(value)) return value.map((one) => inWords(one, say, field));
  if (typeof value !== "object" || value === null) return value;
  return Object.fromEntries(Object.entries(value).map(([key, one]) => [key, inWords(one, say, key)]));
}
