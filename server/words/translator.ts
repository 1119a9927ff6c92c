import { createRequire } from "node:module";
import { groupBy } from "#engine/catalogue.ts";
import { remembering } from "#engine/sales/read/remember.ts";
import { figuresIn, isQuoted } from "#server/words/figures.ts";
import { placesIn, type Sentence, sentenceOf } from "#server/words/sentence.ts";

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
    // A plural is chosen by the number as it is, and writes it itself.
    if (isCounted(sentences[sentence.written] ?? "", at)) return place;
    const figure = figures(place, before);
    if (figure !== place) return figure;
    const said = translate(place, depth + 1);
    return said === place ? (amountOf(place) ?? place) : said;
  };
  /** "1.5 dash Old Harbour Bitters", "0.7 (1 L)": an amount and a name, which stays. */
  const amountOf = (place: string): string | undefined => {
    const [, level, pack] = LEVEL.exec(place) ?? [];
    if (level !== undefined) return `${figures(level, "")} ${pack}`;
    const [, number = "", unit = "", name = ""] = AMOUNT.exec(place) ?? [];
    const message = measures[unit];
    if (message !== undefined) {
      const shown = isCounted(message, 0) ? number : figures(number, "");
      return `${format.compile(message)({ 0: shown })} ${name}`;
    }
    const written = figures(`${number} ${unit}`, "");
    return written === `${number} ${unit}` ? undefined : `${written} ${name}`;
  };
  /** A figure or something that is said; what joins mere names is a name itself, as Cream of Coconut. */
  const isSaid = (place: string, depth: number) => /\d/.test(place) || translate(place, depth + 1) !== place;
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

/** An amount before a name. */
const AMOUNT = /^(\d+(?:\.\d+)?) (\S+) (\p{Lu}.*)$/su;

/** Stands for a place among the words of a sentence. */
const PLACE = "…";

/** Whether a place decides a plural. */
function isCounted(message: string, place: number): boolean {
  return new RegExp(`\\{${place}, ?plural`).test(message);
}

/** Whether places hold more than one thing that is said, in a sentence that has but one. */
function holdMore({ written }: Sentence, places: readonly string[]): boolean {
  return places.some(
    (place) => SENTENCES_MEET.test(place) || (place.includes("; ") && !written.includes("; ")),
  );
}

/** "{0} to {1}" is found in many a sentence that it is not. */
function isStrong({ parts }: Sentence): boolean {
  return parts.length === 1 || (parts.join("").match(/\p{L}/gu)?.length ?? 0) >= 5;
}

/** Where one sentence ends and the next begins; "No. 4" and "St. Nobody" are names. */
const SENTENCES_MEET = /(?<=[.?!])(?<!\b(?:No|St)\.) (?=["“]?[\p{Lu}\d])/u;

/** What is said of something, or after something: "Row 3: the cell is empty; fill it in". */
const CLAUSES_MEET = /^(.+?)(: |; )(.+)$/s;

/**
 * Two words can be a name or a kind that somebody compares; as a text of its own only more than that is a sentence, or a word
 * that says what follows, as "Contains: {0}." does.
 */
function standsAlone({ parts, written }: Sentence): boolean {
  const words = parts.join(" ").match(/\p{L}{2,}/gu)?.length ?? 0;
  return words >= 3 || (words === 2 && /[.?!]$/.test(written)) || /^\p{L}{2,}: \{0\}\.$/u.test(written);
}

/** Letters of the beginning by which sentences are looked up; those that begin with a place are tried for every text. */
const HEAD = 4;

/** Which sentences a text may be, those with most words of their own first. */
function bySpecificity(sentences: readonly Sentence[]): (text: string) => readonly Sentence[] {
  const weight = ({ parts }: Sentence) => parts.reduce((sum, part) => sum + part.length, 0);
  const sorted = sentences.toSorted((a, b) => weight(b) - weight(a));
  const isOpen = ({ parts: [head = ""] }: Sentence) => head.length < HEAD;
  const byHead = groupBy(sorted, (sentence) =>
    isOpen(sentence) ? "" : (sentence.parts[0] ?? "").slice(0, HEAD),
  );
  const open = byHead.get("") ?? [];
  return (text) => [...(byHead.get(text.slice(0, HEAD)) ?? []), ...open];
}
