import { groupBy } from "#engine/catalogue.ts";
import { foldName } from "#engine/name.ts";
import type { Delivery } from "#engine/stock/movement.ts";
import { type Candidate, effectNow, shareChance, type Weighed } from "#engine/variance/causes/candidate.ts";
import { containersOf } from "#engine/variance/causes/containers.ts";
import type { Correction } from "#engine/variance/causes/correction.ts";
import { received, receivedIn } from "#engine/variance/causes/received.ts";
import type { Scene } from "#engine/variance/causes/scene.ts";

/** That an invoice written twice is truly twice, rather than two drops under one number. */
const SAME_INVOICE = 0.8;
/** That two like deliveries without a number, within some days, are one: drops often repeat themselves. */
const NO_NUMBER = 0.05;
const NO_NUMBER_DAYS = 2;

/**
 * A delivery written down twice: more seems to have been used than the drinks needed. The book decides whether that
 * can be: without a second line of the same item and invoice nothing was entered twice.
 */
export function deliveryEnteredTwice(scene: Scene): Candidate[] {
  const byItem = groupBy(scene.facts.book.deliveries, ({ item }) => item);
  return receivedIn(scene).flatMap(({ delivery, containers, size }): Candidate[] => {
    const others = (byItem.get(delivery.item) ?? []).filter(
      (other) => other !== delivery && isSameDrop(scene, other, delivery),
    );
    const isWrittenTwice = others.some((other) => isSameInvoice(other, delivery));
    const isNear = others.some((other) => isUnnumberedPair(other, delivery));
    if (!isWrittenTwice && !isNear) return [];
    return [
      {
        kind: "delivery-entered-twice",
        what: delivery.item,
        unit: "container",
        effects: [effectNow(delivery.item, size)],
        size: { kind: "around", center: containers, relativeSd: 1e-3 },
        chance: isWrittenTwice ? SAME_INVOICE : NO_NUMBER,
        correct: () => ({
          sheet: "deliveries",
          was: delivery,
          fact: null,
          words: `Takes one of the two entries of ${nameOf(delivery)} back: ${containers} × ${delivery.pack} of ${delivery.item}.`,
        }),
        check: () =>
          `Compare the entries of ${nameOf(delivery)} with the paper: ${delivery.item} may have been entered twice.`,
      },
    ];
  });
}

/** The same supplier and as much in all, whether written by the case or by the bottle. */
function isSameDrop(scene: Scene, a: Delivery, b: Delivery): boolean {
  if (a.supplier !== b.supplier) return false;
  const [one, other] = [received(scene, a), received(scene, b)];
  return (
    one !== undefined &&
    other !== undefined &&
    Math.abs(one.containers * one.size - other.containers * other.size) < 1e-6
  );
}

/** No number is not the same number. */
function isSameInvoice(a: Delivery, b: Delivery): boolean {
  const invoice = foldName(a.invoice);
  return invoice !== "" && invoice === foldName(b.invoice);
}

function isUnnumberedPair(a: Delivery, b: Delivery): boolean {
  const apartMs = Math.abs(Date.parse(a.at) - Date.parse(b.at));
  return (foldName(a.invoice) === "" || foldName(b.invoice) === "") && apartMs <= NO_NUMBER_DAYS * DAY_MS;
}

const DAY_MS = 86_400_000;

/** "invoice 114 from Quarry Drinks", or its day where it has no number. */
function nameOf({ invoice, supplier, at }: Delivery): string {
  return invoice.trim() === ""
    ? `the delivery of ${at.slice(0, 10)} from ${supplier}`
    : `invoice ${invoice} from ${supplier}`;
}

/** Common practice: as often as a bottle breaks that nobody wrote down. */
const SHORT = 0.2;
/** One missing among so many is overlooked; the only one missing is seen at the door. */
const MANY = 8;

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
        weight: Math.min(1, 0.2 + containers / MANY),
        correct: (short) => shortened(delivery, short, short / containers),
        check: (short) =>
          `Compare ${nameOf(delivery)} with its delivery note: ${short} × ${delivery.pack} of ${item} may not have been in the drop.`,
      },
    ];
  });
  return shareChance(SHORT, weighed);
}

/** A delivery less what was missing from it, by the share it was of the whole; all of it missing takes it back. */
function shortened(delivery: Delivery, short: number, share: number): Correction {
  const words = `Takes ${short} × ${delivery.pack} of ${delivery.item} off ${nameOf(delivery)}.`;
  if (share >= 1) return { sheet: "deliveries", was: delivery, fact: null, words };
  const quantity = Number((delivery.quantity * (1 - share)).toFixed(6));
  // What was paid for stays paid: the credit note is another paper.
  return { sheet: "deliveries", was: delivery, fact: { ...delivery, quantity }, words };
}

/** One container short, most often; one case short, or the whole line; else any number. */
function shortChance(containers: number, perCase: number): (size: number) => number {
  return (size) => {
    const any = 0.2 / containers;
    return Math.log(
      any + (size === 1 ? 0.6 : 0) + (size === perCase ? 0.1 : 0) + (size === containers ? 0.1 : 0),
    );
  };
}
