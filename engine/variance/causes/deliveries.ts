import { groupBy } from "#engine/catalogue.ts";
import { foldName } from "#engine/name.ts";
import type { Delivery } from "#engine/stock/movement.ts";
import { type Candidate, effectNow, shareChance, type Weighed } from "#engine/variance/causes/candidate.ts";
import { containersOf } from "#engine/variance/causes/containers.ts";
import { receivedIn } from "#engine/variance/causes/received.ts";
import type { Scene } from "#engine/variance/causes/scene.ts";

/** That an invoice written twice is truly twice, rather than two drops under one number. */
const SAME_INVOICE = 0.8;
/** That two like deliveries within some days are one that was written down under two numbers. */
const LIKE_DELIVERY = 0.003;
const LIKE_DAYS = 3;

/** A delivery written down twice: more seems to have been used than the drinks needed. */
export function deliveryEnteredTwice(scene: Scene): Candidate[] {
  const { deliveries } = scene.facts.book;
  return receivedIn(scene).flatMap(({ delivery, containers, size }): Candidate[] => {
    const alike = deliveries.filter((other) => other !== delivery && isSameDrop(other, delivery));
    const isWrittenTwice = alike.some((other) => isSameInvoice(other, delivery));
    const isNear = alike.some((other) => isWithin(other, delivery, LIKE_DAYS));
    if (!isWrittenTwice && !isNear) return [];
    return [
      {
        kind: "delivery-entered-twice",
        what: delivery.item,
        unit: "container",
        effects: [effectNow(delivery.item, size)],
        size: { kind: "around", center: containers, relativeSd: 1e-3 },
        chance: isWrittenTwice ? SAME_INVOICE : LIKE_DELIVERY,
        check: () =>
          `Compare the entries of ${nameOf(delivery)} with the paper: ${delivery.item} may have been entered twice.`,
      },
    ];
  });
}

function isSameDrop(a: Delivery, b: Delivery): boolean {
  return (
    a.item === b.item &&
    a.supplier === b.supplier &&
    foldName(a.pack) === foldName(b.pack) &&
    a.quantity === b.quantity &&
    a.of === b.of
  );
}

/** No number is not the same number. */
function isSameInvoice(a: Delivery, b: Delivery): boolean {
  const invoice = foldName(a.invoice);
  return invoice !== "" && invoice === foldName(b.invoice);
}

function isWithin(a: Delivery, b: Delivery, days: number): boolean {
  return Math.abs(Date.parse(a.at) - Date.parse(b.at)) <= days * 86_400_000;
}

/** "invoice 114 from Quarry Drinks", or its day where it has no number. */
function nameOf({ invoice, supplier, at }: Delivery): string {
  return invoice.trim() === ""
    ? `the delivery of ${at.slice(0, 10)} from ${supplier}`
    : `invoice ${invoice} from ${supplier}`;
}

const SHORT = 0.15;

/** Less came than was written down: more seems to have been used than the drinks needed. */
export function deliveryShort(scene: Scene): Candidate[] {
  const byItem = groupBy(receivedIn(scene), ({ delivery }) => delivery.item);
  const weighed = [...byItem].flatMap(([item, entries]): Weighed[] => {
    const largest = entries.reduce((a, b) => (b.containers > a.containers ? b : a));
    const { delivery, size, containers } = largest;
    const perCase = containersOf(scene, item).find((container) => container.size === size)?.perCase ?? 1;
    return [
      {
        kind: "delivery-short",
        what: item,
        unit: "container",
        effects: [effectNow(item, size)],
        size: { kind: "whole", max: containers, logChance: shortChance(containers, perCase) },
        weight: 1,
        check: (short) =>
          `Compare ${nameOf(delivery)} with its delivery note: ${short} × ${delivery.pack} of ${item} may not have been in the drop.`,
      },
    ];
  });
  return shareChance(SHORT, weighed);
}

/** One container short, one case short, or the whole line; else any number. */
function shortChance(containers: number, perCase: number): (size: number) => number {
  return (size) => {
    const any = 0.2 / containers;
    return Math.log(
      any + (size === 1 ? 0.4 : 0) + (size === perCase ? 0.2 : 0) + (size === containers ? 0.2 : 0),
    );
  };
}
