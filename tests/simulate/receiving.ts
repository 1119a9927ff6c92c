import { minutesOf, stamp } from "./calendar.ts";
import type { Day } from "./catalogue.ts";
import { type Fault, faultsIn } from "./faults.ts";
import { type OrderedLine, orderedValue } from "./ordered.ts";
import {
  type Bar,
  containerOf,
  dateOf,
  itemNamed,
  type OpenOrder,
  packSize,
  plant,
  type Row,
  weekOf,
} from "./state.ts";

/** What arrives on a day is checked in and written down, apart from planted trouble. */
export function receiveDeliveries(bar: Bar, day: Day): void {
  const arriving = bar.openOrders.filter(({ arrivesOn }) => arrivesOn === day);
  bar.openOrders = bar.openOrders.filter(({ arrivesOn }) => arrivesOn !== day);
  for (const order of arriving) {
    bar.next.invoice += 1;
    const prefix =
      bar.catalogue.suppliers.find(({ supplier }) => supplier === order.supplier)?.invoicePrefix ?? "";
    const invoice = `${prefix}-${bar.next.invoice}`;
    for (const line of order.lines) receiveLine(bar, day, { ...order, invoice }, line);
  }
}

function receiveLine(bar: Bar, day: Day, order: OpenOrder & { invoice: string }, line: OrderedLine): void {
  const { pack, size, perCase } = containerOf(itemNamed(bar, line.item));
  const containers = line.of === "case" ? line.quantity * perCase : line.quantity;
  const row: Row = {
    at: stamp(dateOf(bar, day), minutesOf(order.arrivesAt)),
    supplier: order.supplier,
    invoice: order.invoice,
    item: line.item,
    pack,
    quantity: line.quantity,
    of: line.of,
    price_total: orderedValue(bar, line, day).toFixed(2),
    by: "bar",
  };
  const fault = deliveryFault(bar, line.item, day);
  const short = fault?.kind === "delivery-short" ? Math.min(fault.containers, containers) : 0;
  bar.stockroom.add(line.item, (containers - short) * size, "received");
  bar.records.deliveries.push(...writtenRows(bar, day, { row, fault, containers, short, size }));
}

type DeliveryFault = Extract<
  Fault,
  { kind: "delivery-not-entered" | "delivery-entered-twice" | "delivery-short" | "wrong-pack-size" }
>;

/** The first delivery of the item in the week carries the trouble. */
function deliveryFault(bar: Bar, item: string, day: Day): DeliveryFault | undefined {
  const week = weekOf(day);
  const planned: DeliveryFault[] = [
    ...faultsIn(bar.faults, "delivery-not-entered", week),
    ...faultsIn(bar.faults, "delivery-entered-twice", week),
    ...faultsIn(bar.faults, "delivery-short", week),
    ...faultsIn(bar.faults, "wrong-pack-size", week),
  ];
  const isDone = (kind: string) =>
    bar.plantings
      .all()
      .some((planted) => planted.kind === kind && planted.week === week && planted.what === item);
  return planned.find((fault) => fault.item === item && !isDone(fault.kind));
}

function writtenRows(
  bar: Bar,
  day: Day,
  {
    row,
    fault,
    containers,
    short,
    size,
  }: { row: Row; fault: DeliveryFault | undefined; containers: number; short: number; size: number },
): Row[] {
  const what = String(row.item);
  switch (fault?.kind) {
    case undefined:
      return [row];
    case "delivery-not-entered":
      plant(bar, day, { kind: fault.kind, what, size: containers, unit: "container" });
      return [];
    case "delivery-entered-twice":
      plant(bar, day, { kind: fault.kind, what, size: containers, unit: "container" });
      return [row, { ...row }];
    case "delivery-short":
      plant(bar, day, { kind: fault.kind, what, size: short, unit: "container" });
      return [row];
    case "wrong-pack-size": {
      const item = itemNamed(bar, what);
      const wrong = item.packs.find(({ pack }) => pack === fault.pack);
      if (wrong === undefined) throw new Error(`${what} has no pack ${fault.pack}`);
      const baseUnits = Math.abs(containers * (packSize(wrong) - size));
      plant(bar, day, { kind: fault.kind, what, size: baseUnits, unit: item.base });
      return [{ ...row, pack: wrong.pack }];
    }
  }
}
