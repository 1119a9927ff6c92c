import { groupBy } from "#engine/catalogue.ts";
import { foldName } from "#engine/name.ts";
import type { OrderLine } from "#engine/orders/supplier.ts";
import { businessDateOf } from "#engine/sales/read/clock.ts";
import type { Delivery } from "#engine/stock/movement.ts";
import { containerSize, containersIn, packNamed } from "#engine/stock/pack.ts";
import { addDays, weekdayOf } from "#engine/time.ts";
import { type Candidate, effectNow, shareChance, type Weighed } from "#engine/variance/causes/candidate.ts";
import { type Container, containersOf, dateOfScene } from "#engine/variance/causes/containers.ts";
import type { Scene } from "#engine/variance/causes/scene.ts";

/** A delivery that lies in its item's window, in containers. */
export type Received = { delivery: Delivery; containers: number; size: number };

/** The deliveries entered between the two counts. */
export function receivedIn(scene: Scene): Received[] {
  const { book } = scene.facts;
  return book.deliveries.flatMap((delivery) => {
    const windows = scene.items.get(delivery.item);
    if (windows === undefined) return [];
    const { opening, closing } = windows.now;
    if (delivery.at < opening.at || delivery.at >= closing.at) return [];
    return received(scene, delivery) ?? [];
  });
}

function received(scene: Scene, delivery: Delivery): Received | undefined {
  const { catalogue } = scene.facts;
  const { item, pack, supplier, quantity, of } = delivery;
  const date = businessDateOf(delivery.at, catalogue.venue);
  const bought = packNamed(catalogue, { item, pack, supplier, date });
  if (bought === undefined) return undefined;
  return { delivery, containers: containersIn(bought, quantity, of), size: containerSize(catalogue, bought) };
}

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
        check: (size) => notEnteredCheck(scene, item, size, container, due[0]?.order),
      };
    }),
  );
  return shareChance(NOT_ENTERED, weighed);
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

/** An order line that should have come, with what is still to come, in containers. */
type OpenOrder = { order: OrderLine; containers: number };

/** A delivery may come this many days off its expected date. */
const SLACK_DAYS = 2;

/** Order lines expected between the two counts of which something is still to come. */
function openOrders(scene: Scene): OpenOrder[] {
  const { book, catalogue } = scene.facts;
  const first = addDays(businessDateOf(scene.from, catalogue.venue), -SLACK_DAYS);
  const last = addDays(businessDateOf(scene.to, catalogue.venue), SLACK_DAYS);
  return book.orders.flatMap((order) => {
    if (order.expected < first || order.expected > last || order.placed >= scene.to) return [];
    const { item, pack, supplier, quantity, of } = order;
    const bought = packNamed(catalogue, { item, pack, supplier, date: order.expected });
    if (bought === undefined) return [];
    const until = addDays(order.expected, 7);
    const came = book.deliveries
      .filter(
        (delivery) =>
          delivery.item === item &&
          delivery.supplier === supplier &&
          foldName(delivery.pack) === foldName(pack) &&
          delivery.at > order.placed &&
          delivery.at.slice(0, 10) <= until,
      )
      .reduce((sum, delivery) => sum + containersIn(bought, delivery.quantity, delivery.of), 0);
    const containers = Math.round(containersIn(bought, quantity, of) - came);
    return containers > 0 ? [{ order, containers }] : [];
  });
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

/** That an invoice written twice is truly twice, rather than two drops under one number. */
const SAME_INVOICE = 0.8;
const ENTERED_TWICE = 0.05;

/** A delivery written down twice: more seems to have been used than the drinks needed. */
export function deliveryEnteredTwice(scene: Scene): Candidate[] {
  const all = receivedIn(scene);
  const [alike, single] = [
    all.filter((entry) => hasTwin(all, entry)),
    all.filter((entry) => !hasTwin(all, entry)),
  ];
  const candidate = ({ delivery, containers, size }: Received) => ({
    kind: "delivery-entered-twice" as const,
    what: delivery.item,
    unit: "container",
    effects: [effectNow(delivery.item, size)],
    size: { kind: "around" as const, center: containers, relativeSd: 1e-3 },
    check: () =>
      `Compare the entries of invoice ${delivery.invoice} from ${delivery.supplier} with the paper: ${delivery.item} may have been entered twice.`,
  });
  return [
    // The earlier and the later of a pair are one cause.
    ...alike
      .filter((entry) => all.find((other) => isTwin(other, entry)) === entry)
      .map((entry) => ({ ...candidate(entry), chance: SAME_INVOICE })),
    ...shareChance(
      ENTERED_TWICE,
      single.map((entry) => ({ ...candidate(entry), weight: looksAlike(scene, entry) ? 4 : 1 })),
    ),
  ];
}

function hasTwin(all: readonly Received[], entry: Received): boolean {
  return all.some((other) => other !== entry && isTwin(other, entry));
}

function isTwin(a: Received, b: Received): boolean {
  return (
    a.delivery.item === b.delivery.item &&
    a.containers === b.containers &&
    a.size === b.size &&
    a.delivery.supplier === b.delivery.supplier &&
    foldName(a.delivery.invoice) === foldName(b.delivery.invoice)
  );
}

/** The same quantity of the same item from the same supplier within a few days, or in a window beside. */
function looksAlike({ facts }: Scene, { delivery }: Received): boolean {
  return facts.book.deliveries.some(
    (other) =>
      other !== delivery &&
      other.item === delivery.item &&
      other.supplier === delivery.supplier &&
      other.pack === delivery.pack &&
      other.quantity === delivery.quantity &&
      Math.abs(Date.parse(other.at) - Date.parse(delivery.at)) < 3 * 86_400_000,
  );
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
          `Compare invoice ${delivery.invoice} from ${delivery.supplier} with its delivery note: ${short} × ${delivery.pack} of ${item} may not have been in the drop.`,
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

const WRONG_PACK = 0.08;

/** A delivery written down in another size than came, or a case for a bottle. */
export function wrongPackSize(scene: Scene): Candidate[] {
  const date = dateOfScene(scene);
  const weighed = receivedIn(scene).flatMap(({ delivery, containers, size }): Weighed[] => {
    const { item, supplier, invoice, pack } = delivery;
    const others = containersOf(scene, item).filter((container) => container.size !== size);
    const booked = packNamed(scene.facts.catalogue, { item, pack, supplier, date });
    const perCase = booked?.perCase ?? 1;
    const swapped = delivery.of === "case" ? containers / perCase : containers * perCase;
    const wrong = (trueQuantity: number, weight: number, instead: string): Weighed => {
      const off = trueQuantity - containers * size;
      return {
        kind: "wrong-pack-size",
        what: item,
        unit: scene.facts.catalogue.items.get(item)?.base ?? "",
        effects: [effectNow(item, -Math.sign(off))],
        size: { kind: "around", center: Math.abs(off), relativeSd: 1e-3 },
        weight,
        check: () =>
          `Look at invoice ${invoice} from ${supplier}: ${item} is entered as ${pack} by the ${delivery.of}; it may have come ${instead}.`,
      };
    };
    return [
      ...others.map((other) =>
        wrong(containers * other.size, other.pack.supplier === supplier ? 2 : 1, `as ${other.pack.pack}`),
      ),
      ...(perCase > 1
        ? [wrong(swapped * size, 0.2, `by the ${delivery.of === "case" ? "container" : "case"}`)]
        : []),
    ];
  });
  return shareChance(WRONG_PACK, weighed);
}
