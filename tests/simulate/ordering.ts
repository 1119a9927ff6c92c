import { minutesOf, stamp, weekdayOf } from "./calendar.ts";
import type { Day, SimItem, SimSupplier } from "./catalogue.ts";
import { casesOf, type OrderedLine, orderedValue } from "./ordered.ts";
import { type Bar, containerOf, dateOf, itemNamed } from "./state.ts";

const ORDER_BEFORE_CUTOFF = 25;
const MIN_SAFETY_DAYS = 6;
/** One order line in so many comes with the supplier's next delivery instead. */
const BACKORDER_CHANCE = 0.015;

type Chance = { orderDay: Day; orderBy: string; arrivesOn: Day; arrivesAt: string };

/** Whether a supplier (or all) is closed on a day. */
function isClosed(bar: Bar, supplier: string, day: Day): boolean {
  return bar.catalogue.closures.some(
    (closure) =>
      [supplier, "all"].includes(closure.supplier) && closure.fromDay <= day && day <= closure.toDay,
  );
}

/** The order chances of a supplier from a day on, in order of arrival, over three weeks. */
function chancesFrom(bar: Bar, { supplier, days }: SimSupplier, from: Day): Chance[] {
  const chances = Array.from({ length: 21 }, (_, ahead) => from + ahead).flatMap((orderDay) =>
    days
      .filter((rule) => rule.orderDay === weekdayOf(orderDay))
      .map((rule) => ({
        orderDay,
        orderBy: rule.orderBy,
        arrivesOn: orderDay + ((rule.deliveryDay - rule.orderDay + 7) % 7 || 7),
        arrivesAt: rule.deliveryAt,
      })),
  );
  return chances
    .filter(
      ({ orderDay, arrivesOn }) => !isClosed(bar, supplier, orderDay) && !isClosed(bar, supplier, arrivesOn),
    )
    .sort((a, b) => a.arrivesOn - b.arrivesOn);
}

/** Places the day's orders: enough to last until the delivery after the next, and some days more. */
export function placeOrders(bar: Bar, day: Day): void {
  for (const supplier of bar.catalogue.suppliers) {
    const [now, next] = chancesFrom(bar, supplier, day);
    if (now === undefined || next === undefined || now.orderDay !== day) continue;
    const lines = bar.catalogue.items
      .filter(({ packs }) => packs[0]?.supplier === supplier.supplier)
      .flatMap((item) => orderLine(bar, item, { day, until: next.arrivesOn }));
    const order = meetingMinimum(bar, supplier, lines);
    if (order.length === 0) continue;
    const late = order.filter(() => bar.random.buying.chance(BACKORDER_CHANCE));
    const onTime = order.filter((line) => !late.includes(line));
    recordOrder(bar, supplier, now, onTime);
    recordOrder(bar, supplier, { ...now, arrivesOn: next.arrivesOn, arrivesAt: next.arrivesAt }, late);
  }
}

function orderLine(bar: Bar, item: SimItem, { day, until }: { day: Day; until: Day }): OrderedLine[] {
  const { size, perCase } = containerOf(item);
  const mean = bar.meanUse(day).get(item.name) ?? 0;
  const onOrder = bar.openOrders
    .flatMap(({ lines }) => lines)
    .filter((line) => line.item === item.name)
    .reduce((sum, { quantity, of }) => sum + quantity * size * (of === "case" ? perCase : 1), 0);
  const days = Array.from({ length: until - day }, (_, ahead) => bar.foreseen(day + ahead));
  const needDays = days.reduce((sum, busy) => sum + busy, 0) + (item.safetyDays ?? MIN_SAFETY_DAYS);
  const have = bar.stockroom.stock(item.name) + onOrder;
  // What only a modifier asks for has no mean; one container of it is kept.
  const target = Math.max(mean * needDays, size);
  if (have >= target) return [];
  const containers = Math.ceil((target - have) / size);
  const isSplit = item.packs[0]?.split === true || perCase === 1;
  return isSplit
    ? [{ item: item.name, quantity: containers, of: "container" }]
    : [{ item: item.name, quantity: Math.ceil(containers / perCase), of: "case" }];
}

/** A small order grows by its first line until the supplier will take it. */
function meetingMinimum(bar: Bar, supplier: SimSupplier, lines: OrderedLine[]): OrderedLine[] {
  const [first, ...rest] = lines;
  if (first === undefined) return [];
  const isMet = (all: OrderedLine[]) =>
    (supplier.minimumValue === undefined ||
      all.reduce((sum, line) => sum + orderedValue(bar, line), 0) >= supplier.minimumValue) &&
    (supplier.minimumCases === undefined ||
      all.reduce((sum, line) => sum + casesOf(bar, line), 0) >= supplier.minimumCases);
  let grown = first;
  while (!isMet([grown, ...rest])) grown = { ...grown, quantity: grown.quantity + 1 };
  return [grown, ...rest];
}

function recordOrder(bar: Bar, { supplier }: SimSupplier, chance: Chance, lines: OrderedLine[]): void {
  if (lines.length === 0) return;
  bar.next.order += 1;
  const order = `PO-${bar.next.order}`;
  bar.openOrders.push({ order, arrivesOn: chance.arrivesOn, arrivesAt: chance.arrivesAt, supplier, lines });
  for (const { item, quantity, of } of lines) {
    bar.records.orders.push({
      order,
      placed: stamp(dateOf(bar, chance.orderDay), minutesOf(chance.orderBy) - ORDER_BEFORE_CUTOFF),
      supplier,
      item,
      pack: containerOf(itemNamed(bar, item)).pack,
      quantity,
      of,
      expected: dateOf(bar, chance.arrivesOn),
    });
  }
}
