import type { Reading } from "#engine/specs/text/entry.ts";
import {
  COUNTED,
  COUNTED_ALONE,
  JUICES,
  PIECES,
  STATES,
  STEMS,
  USUALLY_ONE,
} from "#engine/specs/text/german/words.ts";

const ENDS = [...PIECES, ...COUNTED];

/** Ends of names that are the same for one and for several: "Zuckerwürfel". */
const SAME = PIECES.filter(([one, many]) => one === many).map(([one]) => one);

/** Whether a text names, by its last word, what is counted in German: "kleine Gurkenscheibe", "Eier". */
export function isCountedName(name: string): boolean {
  const last = lastWord(name);
  return (
    ENDS.some(([one, many]) => endsIn(last, one) || endsIn(last, many)) || COUNTED_ALONE.flat().includes(last)
  );
}

/** Whether a name without a number means one of the thing: "Zitronenzeste", not "Zitronenzesten". */
export function isOneAlone(name: string): boolean {
  const last = lastWord(name);
  const ones = [...PIECES.map(([one]) => one).filter((one) => !SAME.includes(one)), ...USUALLY_ONE];
  return ones.some((one) => last.endsWith(one));
}

/** The name of a piece of something: "scheiben", "Gurke" → "Gurkenscheibe"; "blätter", "Minze" → "Minzblatt". */
export function pieceNamed(piece: string, of: string): string {
  const [one] = PIECES.find((forms) => forms.some((form) => form === piece.toLowerCase())) ?? [piece];
  return `${stemOf(of)}${one}`;
}

/** "Minzblätter" → "Minzblatt"; a thing that is counted whole keeps its number, as "Limetten" does. */
export function onePiece(name: string): string {
  const forms = PIECES.find(([, many]) => endsIn(lastWord(name), many));
  return forms === undefined ? name : withEnd(name, forms[1], forms[0]);
}

function stemOf(name: string): string {
  const found = STEMS.find(([end]) => name.toLowerCase().endsWith(end));
  if (found !== undefined) return name.slice(0, name.length - found[0].length) + likeCase(name, found);
  return name.endsWith("e") ? `${name}n` : name;
}

/** "Minze" → "Minz", "Himbeere" → "Himbeer". */
function likeCase(name: string, [end, stem]: readonly [string, string]): string {
  const isWhole = name.length === end.length;
  return isWhole && /^\p{Lu}/u.test(name) ? (stem[0] ?? "").toUpperCase() + stem.slice(1) : stem;
}

const STATE = new RegExp(`^(?:${STATES}\\s+)+`, "iu");

/** Ways to look up what German names: in the singular and the plural, with any ending of its adjectives, and without how it is kept. */
export function germanWays(name: string): string[] {
  const plain = name.replace(STATE, "");
  return [...new Set([name, plain].flatMap((way) => inEachNumber(way).flatMap(inEachEnding)))];
}

function inEachNumber(name: string): string[] {
  const lower = name.toLowerCase();
  const forms = [...ENDS, ...COUNTED_ALONE].flatMap(([one, many]) => {
    if (lower.endsWith(many)) return [withEnd(name, many, one)];
    if (lower.endsWith(one)) return [withEnd(name, one, many)];
    return [];
  });
  return [name, ...forms];
}

/** A name with another end, in the case of the one that is written: "Äpfel" → "Apfel", "Minzblätter" → "Minzblatt". */
function withEnd(name: string, written: string, other: string): string {
  const start = name.slice(0, name.length - written.length);
  const isUpper = /^\p{Lu}/u.test(name.slice(start.length));
  return start + (isUpper ? (other[0] ?? "").toUpperCase() + other.slice(1) : other);
}

function inEachEnding(name: string): string[] {
  const [, stem, noun] = /^(\p{L}{3,}?)e[rnms]?\s+(\p{Lu}.*)$/u.exec(name) ?? [];
  if (stem === undefined || noun === undefined) return [name];
  return [name, ...["e", "er", "es", "en", "em"].map((ending) => `${stem}${ending} ${noun}`)];
}

/** The juice that is meant where a fruit is measured by volume: 2 cl "Limette" → "Limettensaft"; undefined for any other. */
export function germanJuice(name: string, unit: Reading["unit"]): string | undefined {
  if (unit === "each" || unit === "piece" || unit === "g" || unit === "kg") return undefined;
  const last = lastWord(name);
  const juice = JUICES.find(([fruit]) => last === fruit || last === `${fruit}n`)?.[1];
  return juice === undefined ? undefined : juice.charAt(0).toUpperCase() + juice.slice(1);
}

/** "Orangenrad" ends in "rad"; "Gurad" is no wheel, so a short end needs a name before it. */
function endsIn(word: string, end: string): boolean {
  return word === end || (word.endsWith(end) && word.length >= end.length + 3 && /^\p{L}+$/u.test(word));
}

/** The last word of a name, in small letters. */
export function lastWord(name: string): string {
  return (name.trim().split(" ").at(-1) ?? "").toLowerCase();
}
