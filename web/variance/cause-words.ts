import type { Cause } from "../answers.ts";
import { formatAmount, formatNumber, listWords, type Measuring, withUnit } from "../format.ts";
import type { TextId } from "../texts/catalogues.ts";
import { say } from "../texts/say.ts";

type SentenceOf = Pick<Cause, "kind" | "what" | "size" | "unit"> & {
  sign?: Cause["sign"] | undefined;
  count?: string | undefined;
};

const SENTENCES = {
  "delivery-not-entered": "variance.causeDeliveryNotEntered",
  "delivery-entered-twice": "variance.causeDeliveryEnteredTwice",
  "delivery-short": "variance.causeDeliveryShort",
  "container-miscounted": "variance.causeMiscounted",
  "area-skipped": "variance.causeAreaSkipped",
  "wrong-pack-size": "variance.causeWrongPackSize",
  "poured-for-another": "variance.causePouredForAnother",
  "rung-for-another": "variance.causeRungForAnother",
  "not-rung": "variance.causeNotRung",
  "over-pour": "variance.causeOverPour",
  "older-spec": "variance.causeOlderSpec",
  "batch-not-logged": "variance.causeBatchNotLogged",
  "batch-thrown-out": "variance.causeBatchThrownOut",
  breakage: "variance.causeBreakage",
  "yield-drift": "variance.causeYieldDrift",
  "unmapped-sale": "variance.causeUnmappedSale",
  "unit-slip": "variance.causeUnitSlip",
} as const satisfies Record<Cause["kind"], TextId>;

/** A cause in one plain sentence without its probability. It names things, never a person. */
export function causeSentence({ kind, what, size, unit, sign, count }: SentenceOf, venue: Measuring): string {
  const names = [what].flat();
  const [first = "", second = ""] = names;
  return say(SENTENCES[kind], {
    first,
    second,
    both: listWords(names),
    amount: sizeWords(size, unit, venue),
    where: count === undefined ? "unnamed" : "named",
    count: count ?? "",
    sign: sign === undefined ? "unknown" : sign === -1 ? "few" : "many",
  });
}

/** What was settled, as a sentence: it was this, and what was changed; or it was not. */
export function settledWords(
  { answer, cause, words }: { answer: "confirmed" | "refuted"; cause: NamedCause; words?: string | null },
  venue: Measuring,
): string {
  const sentence = causeSentence({ ...cause, sign: undefined, count: cause.count ?? undefined }, venue);
  if (answer === "refuted") return say("variance.wasNotThis", { cause: sentence });
  return say("variance.wasThis", { cause: words == null ? sentence : `${sentence} ${words}` });
}

type NamedCause = Pick<Cause, "kind" | "what" | "size" | "unit"> & { count: string | null };

function sizeWords(size: number, unit: string, venue: Measuring): string {
  if (unit === "ml" || unit === "g") return formatAmount(size, unit, venue);
  const count = Math.round(size);
  if (unit === "container" || unit === "containers") return say("variance.containers", { count });
  if (unit === "serve" || unit === "serves") return say("variance.serves", { count });
  if (unit === "piece" || unit === "pieces" || unit === "each") return say("variance.pieces", { count });
  return withUnit(formatNumber(size), unit);
}

/** How sure a probability is, in words. */
export function sureness(probability: number): string {
  if (probability >= 0.9) return say("variance.veryLikely");
  if (probability >= 0.65) return say("variance.likely");
  if (probability >= 0.4) return say("variance.evenChance");
  return say("variance.possible");
}
