import type { CauseKind } from "#engine/variance/causes/cause.ts";
import { formatShare } from "../figures.ts";
import { listWords, type Measuring } from "../format.ts";
import type { TextId } from "../texts/catalogues.ts";
import { say } from "../texts/say.ts";
import { causeSentence } from "../variance/cause-words.ts";
import type { OwnerReport } from "./query.ts";

type Check = OwnerReport["checks"][number];
type Rival = Check["rivals"][number];

const NAMES = {
  "delivery-not-entered": "report.deliveryNotEntered",
  "delivery-entered-twice": "report.deliveryEnteredTwice",
  "delivery-short": "report.deliveryShort",
  "container-miscounted": "report.containerMiscounted",
  "area-skipped": "report.areaSkipped",
  "wrong-pack-size": "report.wrongPackSize",
  "poured-for-another": "report.pouredForAnother",
  "rung-for-another": "report.rungForAnother",
  "not-rung": "report.notRung",
  "over-pour": "report.overPour",
  "older-spec": "report.olderSpec",
  "batch-not-logged": "report.batchNotLogged",
  "batch-thrown-out": "report.batchThrownOut",
  breakage: "report.breakage",
  "yield-drift": "report.yieldDrift",
  "unmapped-sale": "report.unmappedSale",
  "unit-slip": "report.unitSlip",
} as const satisfies Record<CauseKind, TextId>;

/** A thing to check in one plain sentence; areas that a count left out are named together with it. */
export function checkSentence(
  { kind, what, size, unit, items, count, sign }: Check,
  venue: Measuring,
): string {
  if (items.length > 0) return say("report.areaLeftOut", { count: count ?? "", items: listWords(items) });
  return causeSentence({ kind, what, size, unit, count: count ?? undefined, sign: sign ?? undefined }, venue);
}

/** What else explains the same numbers: "The same numbers could be: breakage of Gin (30%) and unit slip of Sour (12%)." */
export function rivalWords(rivals: readonly Rival[]): string {
  const named = rivals.map(({ kind, what, probability }) =>
    say("report.rival", {
      cause: say(NAMES[kind]),
      what: [what].flat().join(" / "),
      share: formatShare(probability),
    }),
  );
  return say("report.rivals", { rivals: listWords(named) });
}
