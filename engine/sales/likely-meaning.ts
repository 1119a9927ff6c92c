import { ratio, token_sort_ratio } from "fuzzball";
import type { Catalogue } from "#engine/catalogue.ts";
import { type RingWords, ringWords } from "#engine/sales/ring-words.ts";

/** Something a ring name may stand for. */
export type Meaning = {
  name: string;
  kind: "drink" | "item";
  /** 0–100: how alike the names are. */
  score: number;
  /** Whether the names are the same but for their writing, or only alike. */
  how: "normalised" | "likely";
  /** Why, in words for a person. */
  reason: string;
  /** Serves of the drink that the name itself says; null where it names a size that only the bar knows. */
  serves: number | null;
};

const LIKELY = 55;
const SHOWN = 5;
/** Two meanings within so many points of each other are not told apart, and one that cannot be told apart is not sure. */
const TOLD_APART = 4;
const NOT_SURE_MOST = 79;

/**
 * What an unknown ring name may mean, likeliest first: drinks and items by how alike the names are, whatever the order of their
 * words, with their score and the reason. Never taken without a person's yes.
 *
 * "LANTERN DAIQ" → Lantern Daiquiri, 92: its words are shortened. "Negroni Dbl" → Negroni, 96, 2 serves: a double of it.
 */
export function likelyMeanings(catalogue: Catalogue, ringName: string): Meaning[] {
  const drinks = [...catalogue.drinks.keys()].map((name) => ({ name, kind: "drink" as const }));
  const items = [...catalogue.items.keys()].map((name) => ({ name, kind: "item" as const }));
  const rung = ringWords(ringName);
  const found = [...drinks, ...items]
    .map(({ name, kind }): Meaning => ({ name, kind, ...compared(rung, name), serves: rung.serves }))
    .filter(({ score }) => score >= LIKELY)
    .sort((a, b) => b.score - a.score || byKind(a, b) || (a.name < b.name ? -1 : 1));
  return notToldApart(found).slice(0, SHOWN);
}

/** A drink before an item: most of what a till rings is a drink. */
function byKind(a: Meaning, b: Meaning): number {
  return a.kind === b.kind ? 0 : a.kind === "drink" ? -1 : 1;
}

function compared(rung: RingWords, name: string): Pick<Meaning, "score" | "how" | "reason"> {
  const own = ringWords(name).words;
  const [one, other] = [rung.words.join(" "), own.join(" ")];
  const isSame = one === other || [...rung.words].sort().join(" ") === [...own].sort().join(" ");
  if (isSame || one.replaceAll(" ", "") === other.replaceAll(" ", "")) return sameName(rung);
  const added = addedTo(rung);
  const off = added === "" ? 0 : 2;
  if (areShortened(rung.words, own))
    return { score: 92 - off, how: "likely", reason: `its words are shortened${added}` };
  if (singular(one) === singular(other))
    return { score: 96 - off, how: "normalised", reason: `one is the plural of the other${added}` };
  const score = Math.round(Math.max(token_sort_ratio(one, other), ratio(one, other)));
  const isTypo = score >= 85 && one.length >= 5 && Math.abs(one.length - other.length) <= 2;
  return {
    score: Math.min(score, isTypo ? 90 : NOT_SURE_MOST) - off,
    how: "likely",
    reason: isTypo ? `a letter or two differ${added}` : "some of its words are alike",
  };
}

/** The same words: what differs is the writing, the price or the size. */
function sameName(rung: RingWords): Pick<Meaning, "score" | "how" | "reason"> {
  if (rung.serves === null)
    return { score: NOT_SURE_MOST, how: "likely", reason: "a size of it: say how many serves" };
  if (rung.serves !== 1)
    return { score: 96, how: "normalised", reason: `the same name, ${rung.serves} serves of it` };
  return rung.isPriced
    ? { score: 98, how: "normalised", reason: "the same name at another price" }
    : { score: 100, how: "normalised", reason: "the same name, written otherwise" };
}

function addedTo({ serves, isPriced }: RingWords): string {
  if (serves === null) return ", of a size: say how many serves";
  if (serves !== 1) return `, ${serves} serves of it`;
  return isPriced ? ", at another price" : "";
}

/** "lantern daiq" of "lantern daiquiri": as many words, each the beginning of the other's, three letters or more. */
function areShortened(words: readonly string[], whole: readonly string[]): boolean {
  if (words.length !== whole.length) return false;
  return words.every((word, at) => {
    const full = whole[at] ?? "";
    return word === full || (word.length >= 3 && full.startsWith(word));
  });
}

function singular(words: string): string {
  return words.replace(/(?<=\p{L}{3})e?s(?= |$)/gu, "");
}

/** Where two different things are as likely as each other, neither is. */
function notToldApart(found: readonly Meaning[]): Meaning[] {
  const best = found[0]?.score ?? 0;
  const rivals = found.filter(({ score, name }) => best - score < TOLD_APART && name !== found[0]?.name);
  const isSure = rivals.length === 0 || (best === 100 && rivals.every(({ score }) => score < 100));
  const hasSize = found[0]?.serves === null;
  if (isSure && !hasSize) return [...found];
  return found.map((meaning) => ({ ...meaning, score: Math.min(meaning.score, NOT_SURE_MOST) }));
}
