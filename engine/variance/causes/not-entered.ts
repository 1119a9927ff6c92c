import { groupBy } from "#engine/catalogue.ts";
import { foldName } from "#engine/name.ts";
import type { OrderLine } from "#engine/orders/supplier.ts";
import { businessDateOf, localToInstant } from "#engine/sales/read/clock.ts";
import { weekdayOf } from "#engine/time.ts";
import { type Candidate, effectNow, shareChance, type Weighed } from "#engine/variance/causes/candidate.ts";
import { type Container, containersOf } from "#engine/variance/causes/containers.ts";
import { type Correction, middleOf, SETTLED_BY, within } from "#engine/variance/causes/correction.ts";
import { openOrders } from "#engine/variance/causes/open-orders.ts";
import { received } from "#engine/variance/causes/received.ts";
import type { Scene } from "#engine/variance/causes/scene.ts";

/** Common practice: a note that slipped behind the till about once in a month of weeks. */
const NOT_ENTERED = 0.2;
/** How much likelier an item is whose order should have come in these days and is still open. */
const ON_ORDER_WEIGHT = 40;

/** Stock that came but was not written down: less seems to have been used than the drinks needed. */
export function deliveryNotEntered(scene: Scene): Candidate[] {
  const usual = usualQuantities(scene);
  const open = groupBy(openOrders(scene), ({ order }) => order.item);
  const weighed = [...scene.items.keys()].flatMap((item): Weighed[] =>
    containersOf(scene, item).map((container) => {
      const due = (open.get(item) ?? []).filter(({ order }) => isOf(order, container));
      const quantities = usual.get(item) ?? [];
      const bought = quantities.length > 0 ? 1 : 0.2;
      return {
        kind: "delivery-not-entered",
        what: item,
        unit: "container",
        effects: [effectNow(item, -container.size)],
        size: {
          kind: "whole",
          max: 500,
          logChance: quantityChance(
            due.map((line) => line.containers),
            quantities,
            container.perCase,
          ),
        },
        weight: bought + (due.length > 0 ? ON_ORDER_WEIGHT : 0),
        correct: (size) => entered(scene, item, size, container, due[0]?.order),
        check: (size) => notEnteredCheck(scene, item, size, container, due[0]?.order),
      };
    }),
  );
  return shareChance(NOT_ENTERED, weighed);
}

/** The delivery of an open order, or, without one, of the pack's own supplier in the middle of the window. */
function entered(
  scene: Scene,
  item: string,
  size: number,
  { pack }: Container,
  order: OrderLine | undefined,
): Correction | undefined {
  const supplier = order?.supplier ?? pack.supplier;
  const window = scene.items.get(item)?.now;
  if (supplier === null || window === undefined) return undefined;
  const at =
    order === undefined
      ? middleOf(window)
      : within(localToInstant(`${order.expected} 12:00`, scene.facts.catalogue.venue), window);
  const from = order === undefined ? supplier : `${supplier} on order ${order.order}`;
  return {
    sheet: "deliveries",
    was: null,
    fact: {
      at,
      supplier,
      invoice: "",
      item,
      pack: pack.pack,
      quantity: size,
      of: "container",
      priceTotalMinor: null,
      depositMinor: null,
      empties: null,
      by: SETTLED_BY,
    },
    words: `Enters ${size} × ${pack.pack} of ${item} as delivered by ${from}.`,
  };
}

function isOf(order: OrderLine, { pack }: Container): boolean {
  return foldName(order.pack) === foldName(pack.pack);
}

function notEnteredCheck(
  scene: Scene,
  item: string,
  size: number,
  { pack }: Container,
  order: OrderLine | undefined,
): string {
  if (order !== undefined) {
    const day = weekdayOf(businessDateOf(order.placed, scene.facts.catalogue.venue));
    return `Look for the delivery note of ${day}'s order ${order.order} from ${order.supplier}: ${size} × ${pack.pack} of ${item} may have come without being entered.`;
  }
  const supplier = pack.supplier === null ? "the suppliers" : pack.supplier;
  return `Look for a delivery note or invoice from ${supplier} with ${size} × ${pack.pack} of ${item}, or for bottles brought in from elsewhere.`;
}

/** The quantities in which each item was delivered so far, in containers. */
function usualQuantities(scene: Scene): Map<string, number[]> {
  const usual = new Map<string, number[]>();
  for (const delivery of scene.facts.book.deliveries) {
    const came = received(scene, delivery);
    if (came === undefined) continue;
    const own = usual.get(delivery.item) ?? [];
    own.push(came.containers);
    usual.set(delivery.item, own);
  }
  return usual;
}

/** A delivery has the size that is still on order, else a usual one, else whole cases, else any. */
function quantityChance(
  due: readonly number[],
  usual: readonly number[],
  perCase: number,
): (size: number) => number {
  const [onOrder, asUsual, asCases] = [due.length > 0 ? 0.7 : 0, usual.length > 0 ? 0.7 : 0.1, 0.5];
  return (size) => {
    const ordered = due.includes(size) ? 1 / due.length : 0;
    const before = usual.filter((quantity) => quantity === size).length / Math.max(1, usual.length);
    const cases = perCase > 1 && size % perCase === 0 ? 0.5 ** (size / perCase) : 0;
    const any = 1 / (size * (size + 1));
    const rest = asUsual * before + (1 - asUsual) * (asCases * cases + (1 - asCases) * any);
    return Math.log(onOrder * ordered + (1 - onOrder) * rest);
  };
}
