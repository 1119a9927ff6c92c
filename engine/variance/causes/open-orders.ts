import { groupBy } from "#engine/catalogue.ts";
import { foldName } from "#engine/name.ts";
import type { OrderLine } from "#engine/orders/supplier.ts";
import { businessDateOf } from "#engine/sales/read/clock.ts";
import { containersIn, packNamed } from "#engine/stock/pack.ts";
import { addDays, daysBetween } from "#engine/time.ts";
import { received } from "#engine/variance/causes/received.ts";
import type { Scene } from "#engine/variance/causes/scene.ts";

/** An order line that should have come, with what is still to come, in containers. */
export type OpenOrder = { order: OrderLine; containers: number };

/** An order expected this many days before the opening count may have come after it. */
const LATE_DAYS = 2;
/** A delivery is looked for among the order lines expected within these days of it. */
const MATCH_DAYS = 10;

/** Order lines expected between the two counts of which something did not come, each delivery taken for the nearest. */
export function openOrders(scene: Scene): OpenOrder[] {
  const { book, catalogue } = scene.facts;
  const first = addDays(businessDateOf(scene.from, catalogue.venue), -LATE_DAYS);
  const last = businessDateOf(scene.to, catalogue.venue);
  const near = book.orders.filter(
    ({ expected, placed }) =>
      placed < scene.to && expected >= addDays(first, -MATCH_DAYS) && expected <= addDays(last, MATCH_DAYS),
  );
  const came = cameOn(scene, groupBy(near, lineKey));
  return near.flatMap((order) => {
    if (order.expected < first || order.expected > last) return [];
    const { item, pack, supplier, quantity, of } = order;
    const bought = packNamed(catalogue, { item, pack, supplier, date: order.expected });
    if (bought === undefined) return [];
    const containers = Math.round(containersIn(bought, quantity, of) - (came.get(order) ?? 0));
    return containers > 0 ? [{ order, containers }] : [];
  });
}

function lineKey({ item, supplier, pack }: Pick<OrderLine, "item" | "supplier" | "pack">): string {
  return JSON.stringify([item, supplier, foldName(pack)]);
}

/** What came on each order line, in containers: a delivery belongs to the line whose expected date is nearest. */
function cameOn(scene: Scene, orders: Map<string, OrderLine[]>): Map<OrderLine, number> {
  const { book, catalogue } = scene.facts;
  const came = new Map<OrderLine, number>();
  for (const delivery of book.deliveries) {
    const date = businessDateOf(delivery.at, catalogue.venue);
    const off = (order: OrderLine) => Math.abs(daysBetween({ from: order.expected, to: date }));
    const lines = (orders.get(lineKey(delivery)) ?? []).filter(
      (order) => order.placed < delivery.at && off(order) <= MATCH_DAYS,
    );
    const [firstLine, ...rest] = lines;
    if (firstLine === undefined) continue;
    const nearest = rest.reduce((a, b) => (off(b) < off(a) ? b : a), firstLine);
    came.set(nearest, (came.get(nearest) ?? 0) + (received(scene, delivery)?.containers ?? 0));
  }
  return came;
}
