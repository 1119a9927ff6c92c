import type { Cause } from "../answers.ts";
import { formatAmount, formatNumber, type Measuring, plural } from "../format.ts";

type SentenceOf = Pick<Cause, "kind" | "what" | "size" | "unit"> & {
  sign?: Cause["sign"] | undefined;
  count?: string | undefined;
};

/** A cause in one plain sentence without its probability. It names things, never a person. */
export function causeSentence({ kind, what, size, unit, sign, count }: SentenceOf, venue: Measuring): string {
  const [first, second] = typeof what === "string" ? [what, ""] : what;
  const amount = sizeWords(size, unit, venue);
  switch (kind) {
    case "delivery-not-entered":
      return `A delivery of ${first} was not entered: ${amount}.`;
    case "delivery-entered-twice":
      return `A delivery of ${first} was entered twice: ${amount}.`;
    case "delivery-short":
      return `A delivery of ${first} came short of its invoice: ${amount}.`;
    case "container-miscounted":
      return `${first} was miscounted${count === undefined ? "" : ` in count ${count}`}: ${amount} ${sign === undefined ? "off" : sign === -1 ? "too few" : "too many"}.`;
    case "area-skipped":
      return `${[first, second].filter(Boolean).join(" and ")} was entered as none in an area where it stood: ${amount}.`;
    case "wrong-pack-size":
      return `A delivery of ${first} was entered in the wrong pack size: ${amount} off.`;
    case "poured-for-another":
      return `${second} was poured where the spec says ${first}: ${amount}.`;
    case "rung-for-another":
      return `${second} was made but ${first} rung: ${amount}.`;
    case "not-rung":
      return `${first} was made but not rung: ${amount}.`;
    case "over-pour":
      return `${first} was poured over the spec: ${amount} in all.`;
    case "older-spec":
      return `${first} was built to an older spec: ${amount}.`;
    case "batch-not-logged":
      return `A batch of ${first} was made but not logged: ${amount}.`;
    case "batch-thrown-out":
      return `A batch of ${first} was thrown out but not logged: ${amount}.`;
    case "breakage":
      return `${first} broke and was not recorded: ${amount}.`;
    case "yield-drift":
      return `${first} gives another yield than the cut says: ${amount}.`;
    case "unmapped-sale":
      return `“${first}” was sold but has no meaning yet: ${amount}.`;
    case "unit-slip":
      return `An amount in the spec of ${first} is off by a unit: ${amount} sold.`;
  }
}

/** What was settled, as a sentence: it was this, and what was changed; or it was not. */
export function settledWords(
  { answer, cause, words }: { answer: "confirmed" | "refuted"; cause: NamedCause; words?: string | null },
  venue: Measuring,
): string {
  const sentence = causeSentence({ ...cause, sign: undefined, count: cause.count ?? undefined }, venue);
  if (answer === "refuted") return `It was not this: ${sentence}`;
  return words == null ? `It was this: ${sentence}` : `It was this: ${sentence} ${words}`;
}

type NamedCause = Pick<Cause, "kind" | "what" | "size" | "unit"> & { count: string | null };

function sizeWords(size: number, unit: string, venue: Measuring): string {
  if (unit === "ml" || unit === "g") return formatAmount(size, unit, venue);
  const rounded = Math.round(size * 10) / 10;
  if (unit === "container" || unit === "containers") return plural(rounded, "container");
  if (unit === "serve" || unit === "serves") return plural(Math.round(size), "serve");
  if (unit === "piece" || unit === "pieces" || unit === "each") return plural(Math.round(size), "piece");
  return `${formatNumber(size)} ${unit}`;
}

/** How sure a probability is, in words. */
export function sureness(probability: number): string {
  if (probability >= 0.9) return "very likely";
  if (probability >= 0.65) return "likely";
  if (probability >= 0.4) return "even chance";
  return "possible";
}
