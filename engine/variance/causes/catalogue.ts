import { batchNotLogged, batchThrownOut } from "#engine/variance/causes/batches.ts";
import { breakage } from "#engine/variance/causes/breakage.ts";
import type { Candidate } from "#engine/variance/causes/candidate.ts";
import type { CauseKind } from "#engine/variance/causes/cause.ts";
import { deliveryEnteredTwice, deliveryShort } from "#engine/variance/causes/deliveries.ts";
import { areaSkipped, containerMiscounted } from "#engine/variance/causes/miscounts.ts";
import { deliveryNotEntered } from "#engine/variance/causes/not-entered.ts";
import { overPour, pouredForAnother } from "#engine/variance/causes/pouring.ts";
import { notRung, rungForAnother } from "#engine/variance/causes/ringing.ts";
import type { Scene } from "#engine/variance/causes/scene.ts";
import { olderSpec } from "#engine/variance/causes/specs.ts";
import { unitSlip } from "#engine/variance/causes/unit-slips.ts";
import { unmappedSale } from "#engine/variance/causes/unmapped.ts";
import { wrongPackSize } from "#engine/variance/causes/wrong-pack.ts";
import { yieldDrift } from "#engine/variance/causes/yields.ts";

/** Every kind of cause and the function that proposes its candidates. */
const FAMILIES: { [kind in CauseKind]: (scene: Scene) => Candidate[] } = {
  "delivery-not-entered": deliveryNotEntered,
  "delivery-entered-twice": deliveryEnteredTwice,
  "delivery-short": deliveryShort,
  "container-miscounted": containerMiscounted,
  "area-skipped": areaSkipped,
  "wrong-pack-size": wrongPackSize,
  "poured-for-another": pouredForAnother,
  "rung-for-another": rungForAnother,
  "not-rung": notRung,
  "over-pour": overPour,
  "older-spec": olderSpec,
  "batch-not-logged": batchNotLogged,
  "batch-thrown-out": batchThrownOut,
  breakage,
  "yield-drift": yieldDrift,
  "unmapped-sale": unmappedSale,
  "unit-slip": unitSlip,
};

/** All that might have happened between the two counts. */
export function candidatesOf(scene: Scene): Candidate[] {
  return Object.values(FAMILIES).flatMap((propose) => propose(scene));
}
