import { createRequire } from "node:module";
import { type KnownKind, knownWord } from "#engine/known-words/known-words.ts";
import { remembering } from "#engine/sales/read/remember.ts";
import { bySpecificity } from "#server/words/by-specificity.ts";
import { figuresIn, isQuoted } from "#server/words/figures.ts";
import { isStrong, placesIn, type Sentence, sentenceOf, standsAlone } from "#server/words/sentence.ts";

// Its types name a default export that its CommonJS file does not have when Node reads it.
const MessageFormat: new (
  language: string,
) => { compile(message: string): (places: Record<string, string>) => string } = createRequire(
  import.meta.url,
)("@messageformat/core");

/** The sentences of one language by the English they stand for; places are {0}, {1} … in the order of the English. */
export type Sentences = Readonly<Record<string, string>>;

/** How many texts are remembered: those of a bar's week many times over. */
const REMEMBERED = 10_000;

/** Sentences within sentences within sentences are as deep as any goes. */
const DEEPEST = 6;

/**
 * A function from a text that the server says in English to the same in another language. What is no known sentence, as a
 * name or a note, stays as it is; a place that itself holds a sentence is translated too, and one that is a number or a
 * day is written as that language does. Of a label, which nothing compares, two words are enough.
 *
 * @param language BCP 47, for its plurals.
 * @param sentences In ICU syntax.
 * @param measures Measures that are words, by their code, with the amount as {0}.
 * @throws where a sentence is not ICU, when it is first used.
 */
export function translatorOf(
  language: string,
  sentences: Sentences,
  measures: Sentences = {},
): (text: string, isLabel?: boolean) => string {
  const format = new MessageFormat(language);
  const figures = figuresIn(language);
  const known = bySpecificity(Object.keys(sentences).map(sentenceOf));
  const made = new Map<string, (places: Record<string, string>) => string>();

  const say = (sentence: Sentence, places: readonly string[]) => {
    const ready =
      made.get(sentence.written) ?? format.compile(sentences[sentence.written] ?? sentence.written);
    made.set(sentence.written, ready);
    return ready(Object.fromEntries(places.map((place, index) => [String(index), place])));
  };
  const translate = (text: string, depth: number): string => {
    if (depth > DEEPEST || !/\p{L}/u.test(text)) return text;
    return (
      asOne(text, depth, (sentence, places) => isStrong(sentence) && !holdMore(sentence, places)) ??
      inPieces(text, depth) ??
      // A name may look like the end of a sentence, as St. Nobody does.
      asOne(text, depth, () => true) ??
      text
    );
  };
  /** What "of" follows: an amount, or a word for what happened; "2 × box" of "box of 50" is the pack's name. */
  const isOfWhat = (place: string) => OF_AMOUNT.test(place) || Object.hasOwn(sentences, place);
  const asOne = (
    text: string,
    depth: number,
    isIt: (sentence: Sentence, places: readonly string[]) => boolean,
  ): string | undefined => {
    for (const sentence of known(text)) {
      if (depth === 0 && !standsAlone(sentence)) continue;
      const places = placesIn(sentence, text);
      if (places === null || !isIt(sentence, places)) continue;
      if (!isStrong(sentence) && !places.some((place) => isSaid(place, depth))) continue;
      if (sentence.written === OF && !isOfWhat(places[0] ?? "")) continue;
      return say(
        sentence,
        places.map((place, at) => inPlace(sentence, place, at, depth)),
      );
    }
    return undefined;
  };
  const inPlace = (sentence: Sentence, place: string, at: number, depth: number): string => {
    const before = sentence.parts.slice(0, at + 1).join(PLACE);
    // What stands in quotation marks is somebody's own words.
    if (isQuoted(before)) return place;
    const kind = LISTED[sentence.written];
    if (kind !== undefined) return knownWords(place, kind);
    const [, quoted] = QUOTED.exec(place) ?? [];
    if (quoted !== undefined) return say(QUOTATION, [unitOf(quoted)]);
    // A plural is chosen by the number as it is, and writes it itself.
    if (isCounted(sentences[sentence.written] ?? "", at)) return place;
    const figure = figures(place, before);
    if (figure !== place) return figure;
    const said = translate(place, depth + 1);
    return said === place ? (amountOf(place) ?? place) : said;
  };
  const unitOf = (name: string) => (Object.hasOwn(measures, name) ? sentences[name] : undefined) ?? name;
  const knownWords = (list: string, kind: KnownKind) =>
    list
      .split(", ")
      .map((word) => knownWord(language, kind, word))
      .join(", ");
  /** "1.5 dash Old Harbour Bitters", "0.7 (1 L)": an amount and a name, which stays. */
  const amountOf = (place: string): string | undefined => {
    const [, level, pack] = LEVEL.exec(place) ?? [];
    if (level !== undefined) return `${figures(level, "")} ${pack}`;
    const [, pieces, thing] = PIECES.exec(place) ?? [];
    if (pieces !== undefined) return `${figures(pieces, "")} ${thing}`;
    const [, number = "", unit = "", name = ""] = AMOUNT.exec(place) ?? [];
    const message = measures[unit];
    if (message !== undefined) {
      const shown = isCounted(message, 0) ? number : figures(number, "");
      return `${format.compile(message)({ 0: shown })} ${name}`;
    }
    const written = figures(`${number} ${unit}`, "");
    return written === `${number} ${unit}` ? undefined : `${written} ${name}`;
  };
  /** A figure, a quoted name or something that is said; what joins mere names is a name itself, as Cream of Coconut. */
  const isSaid = (place: string, depth: number) =>
    /\d/.test(place) || QUOTED.test(place) || translate(place, depth + 1) !== place;
  /** Several sentences after each other, or what is said of something: "Row 3: the cell is empty." */
  const inPieces = (text: string, depth: number): string | undefined => {
    const sentences = text.split(SENTENCES_MEET);
    if (sentences.length > 1) {
      const said = sentences.map((one) => translate(one, depth));
      return said.every((one, at) => one !== sentences[at]) ? said.join(" ") : undefined;
    }
    const [, what = "", mark = "", said = ""] = CLAUSES_MEET.exec(text) ?? [];
    const whole = `${translate(what, depth + 1)}${mark}${translate(said, depth + 1)}`;
    return whole === text || said === "" ? undefined : whole;
  };
  const spoken = remembering((text) => translate(text, 0), REMEMBERED);
  return (text, isLabel = false) => {
    if (isLabel) return translate(text, 1);
    return text.includes(" ") ? spoken(text) : text;
  };
}

/** Levels before the pack that they are of. */
const LEVEL = /^(\d[\d., ]*) (\(.+\))$/s;

/** A number with decimals before the name of a thing, which is longer than the "L" of a pack. */
const PIECES = /^(\d+\.\d+) (\p{Lu}\p{L}.*)$/su;

/** An amount before a name. */
const AMOUNT = /^(\d+(?:\.\d+)?) (\S+) (\p{Lu}.*)$/su;

/** Sentences that list words of the book, some of which the product knows. */
const LISTED: Readonly<Record<string, KnownKind>> = {
  "Contains: {0}.": "allergen",
  "May contain: {0}.": "allergen",
};

/** A name in quotation marks that fills a place by itself. */
const QUOTED = /^"([^"]+)"$/s;

/** How a language quotes a name. */
const QUOTATION = sentenceOf('"{0}"');

/** What joins an amount and what it is of, and stands within many a name. */
const OF = "{0} of {1}";
const OF_AMOUNT = /^\d[\d.,]*(?: [^\s×]+| × \d[\d.,]* \S+)?$/;

/** Stands for a place among the words of a sentence. */
const PLACE = "…";

/** Whether a place decides a plural. */
function isCounted(message: string, place: number): boolean {
  return new RegExp(`\\{${place}, ?plural`).test(message);
}

/** Whether places hold more than one thing that is said, in a sentence that has but one. */
function holdMore({ written }: Sentence, places: readonly string[]): boolean {
  // What begins with its joint goes on with the sentence: "; did you mean …?"
  const joins = (place: string) => place.includes("; ") && !place.startsWith("; ");
  return places.some(
    (place) =>
      SENTENCES_MEET.test(place) ||
      (joins(place) && !written.includes("; ")) ||
      // A cell of a sheet, and what is said of a name: losses, unit: "Lime" …
      /: "/.test(place),
  );
}

/** Where one sentence ends and the next begins; "No. 4" and "St. Nobody" are names. */
const SENTENCES_MEET = /(?<=[.?!])(?<!\b(?:No|St)\.) (?=["“]?[\p{Lu}\d])/u;

/** What is said of something, or after something: "Row 3: the cell is empty; fill it in". */
const CLAUSES_MEET = /^(.+?)(: |; )(.+)$/s;
