/** A ring name put into plain words: what the till adds to a drink's name taken off, and what that says. */
export type RingWords = {
  words: string[];
  /** Happy hour, promotion, staff price: the same drink for other money. */
  isPriced: boolean;
  /** How many serves the name itself says: 2 for a double, 3 for "x3"; null for a size that only the bar knows. */
  serves: number | null;
};

const PRICED = new Set([
  "hh",
  "happy",
  "hour",
  "hr",
  "promo",
  "special",
  "offer",
  "deal",
  "staff",
  "comp",
  "open",
]);
const SERVES: ReadonlyMap<string, number> = new Map([
  ["double", 2],
  ["dbl", 2],
  ["dble", 2],
  ["doble", 2],
  ["doppio", 2],
  ["single", 1],
  ["sgl", 1],
]);
/** Sizes that differ from bar to bar. */
const SIZES = new Set([
  ..."lg large grande big xl small sm sml piccolo mini half pitcher jug carafe flight tower bowl".split(" "),
]);
const TIMES = /^(?:x(\d{1,2})|(\d{1,2})x)$/;
const FILLERS = new Set(["the", "a", "of", "and", "with"]);

/**
 * The words of a name as people would say them: small letters, no accents or marks, without leading numbers of the till, without
 * words of price and size.
 *
 * ringWords("12 HH Dbl. Élan-Sour") → words ["elan", "sour"], isPriced true, serves 2
 */
export function ringWords(name: string): RingWords {
  const plain = name
    .normalize("NFKD")
    .replace(/\p{M}/gu, "")
    .toLowerCase()
    .replace(/['’`´]/gu, "")
    .replace(/[^\p{L}\p{N}]+/gu, " ")
    .trim();
  const found: RingWords = { words: [], isPriced: false, serves: 1 };
  for (const [place, word] of plain.split(" ").entries()) {
    const times = TIMES.exec(word);
    const factor = times === null ? SERVES.get(word) : Number(times[1] ?? times[2]);
    if (PRICED.has(word)) found.isPriced = true;
    else if (factor !== undefined) found.serves = found.serves === null ? null : found.serves * factor;
    else if (SIZES.has(word)) found.serves = null;
    else if (!(place === 0 && /^\d+$/.test(word)) && !FILLERS.has(word)) found.words.push(word);
  }
  // A name that is nothing but such words is called so.
  return found.words.length === 0 ? { words: plain.split(" "), isPriced: false, serves: 1 } : found;
}
