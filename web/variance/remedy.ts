import type { Cause } from "../answers.ts";
import type { TextId } from "../texts/catalogues.ts";

/** Where a cause is put right once its check has confirmed it. */
export type Remedy = { to: "/movements" | "/count" | "/sales" | "/specs"; words: TextId };

const ENTER_DELIVERY: Remedy = { to: "/movements", words: "variance.correctDeliveries" };
const ENTER_BATCH: Remedy = { to: "/movements", words: "variance.enterBatch" };
const RECOUNT: Remedy = { to: "/count", words: "variance.countAgain" };
const OPEN_SPEC: Remedy = { to: "/specs", words: "variance.openSpecs" };
const OPEN_SALES: Remedy = { to: "/sales", words: "variance.openSales" };
const ENTER_LOSS: Remedy = { to: "/movements", words: "variance.enterLoss" };

const REMEDIES: Record<Cause["kind"], Remedy | null> = {
  "delivery-not-entered": ENTER_DELIVERY,
  "delivery-entered-twice": ENTER_DELIVERY,
  "delivery-short": ENTER_DELIVERY,
  "wrong-pack-size": ENTER_DELIVERY,
  "container-miscounted": RECOUNT,
  "area-skipped": RECOUNT,
  "batch-not-logged": ENTER_BATCH,
  "batch-thrown-out": ENTER_BATCH,
  breakage: ENTER_LOSS,
  "not-rung": ENTER_LOSS,
  "older-spec": OPEN_SPEC,
  "unit-slip": OPEN_SPEC,
  "yield-drift": OPEN_SPEC,
  "poured-for-another": OPEN_SPEC,
  "unmapped-sale": OPEN_SALES,
  // Nothing in the book is wrong: the next count shows whether it has stopped.
  "rung-for-another": null,
  "over-pour": null,
};

/** The screen on which a confirmed cause is entered; none where the book is right as it stands. */
export function remedyOf(kind: Cause["kind"]): Remedy | null {
  return REMEDIES[kind];
}
