import type { Day, SimPack } from "./catalogue.ts";
import { type Bar, containerOf, itemNamed, type OpenOrder } from "./state.ts";

export type OrderedLine = OpenOrder["lines"][number];

/** What a line costs on a day, by the list price, in major units. */
export function orderedValue(bar: Bar, line: OrderedLine, day = 0): number {
  const pack = itemNamed(bar, line.item).packs[0];
  if (pack === undefined) return 0;
  const containers = line.of === "case" ? line.quantity * pack.perCase : line.quantity;
  return priceOn(pack, day) * (pack.pricePer === "case" ? containers / pack.perCase : containers);
}

function priceOn(pack: SimPack, day: Day): number {
  return pack.laterPrice !== undefined && day >= pack.laterPrice.fromDay ? pack.laterPrice.price : pack.price;
}

/** Cases of a line; single containers are parts of one. */
export function casesOf(bar: Bar, { item, quantity, of }: OrderedLine): number {
  return of === "case" ? quantity : quantity / containerOf(itemNamed(bar, item)).perCase;
}
