import { itemNamed } from "#engine/catalogue.ts";
import type { BaseUnit } from "#engine/measure/units.ts";
import type { Wanted } from "#engine/orders/budget.ts";
import type { NextOrder } from "#engine/orders/calendar.ts";
import { type Position, positionOf, quantityFor } from "#engine/orders/order-line.ts";
import type { Outlook } from "#engine/orders/outlook.ts";
import { type BuyingUnit, buyingUnit, chooseUnit } from "#engine/orders/purchase.ts";
import { packsInForce } from "#engine/stock/pack.ts";
import { addHours } from "#engine/time.ts";

/** What no order can be reckoned of: used, and no pack names who brings it. */
export type NoSupplier = { item: string; base: BaseUnit; expectedUse: number };

/** For a supplier without order days: no arrival is known. */
export const NO_DAYS: NextOrder = { orderBy: null, arrives: null, coversUntil: null };

/** Common practice for what no supplier's calendar covers: a week's use, to show how much it matters. */
const WEEK_HOURS = 7 * 24;

/** Every bought item that is used, by what can be said of it. */
export type Bought = {
  wanted: Wanted[];
  unplanned: Map<string, string[]>;
  noSupplier: NoSupplier[];
  notCounted: string[];
};

/** Reckons all items that are used in the week ahead, or have a par set by hand, and can be bought. */
export function boughtItems(outlook: Outlook, calendars: ReadonlyMap<string, NextOrder>): Bought {
  const { catalogue } = outlook.facts;
  const bought: Bought = { wanted: [], unplanned: new Map(), noSupplier: [], notCounted: [] };
  const week = outlook.demandUntil(addHours(outlook.at, WEEK_HOURS)).demand.total;
  for (const { name, base, par } of catalogue.items.values()) {
    const packs = packsInForce(catalogue, name, outlook.date);
    const expectedUse = week.get(name)?.mean ?? 0;
    // What no drink uses, napkins say, is still ordered up to a par that somebody set.
    if (packs.length === 0 || (expectedUse <= 0 && par === null)) continue;
    const units = packs
      .filter(({ supplier }) => supplier !== null)
      .map((pack) => buyingUnit(catalogue, pack));
    if (units.length === 0) bought.noSupplier.push({ item: name, base, expectedUse });
    else if (!outlook.onHand.has(name)) bought.notCounted.push(name);
    else addWanted(outlook, name, { units, calendars, perDay: expectedUse / 7, bought });
  }
  return bought;
}

/** Reckons the item for each supplier that can bring it, and buys where it is cheapest in reasonable amounts. */
function addWanted(
  outlook: Outlook,
  item: string,
  {
    units,
    calendars,
    perDay,
    bought,
  }: { units: BuyingUnit[]; calendars: ReadonlyMap<string, NextOrder>; perDay: number; bought: Bought },
): void {
  const positions = new Map<string, Position>();
  for (const name of new Set(units.map(supplierOf))) {
    const { arrives, coversUntil } = calendars.get(name) ?? NO_DAYS;
    if (arrives === null || coversUntil === null) continue;
    const position = positionOf(outlook, item, { supplier: name, arrives, coversUntil });
    if (position !== undefined) positions.set(name, position);
  }
  const planned = units.filter((unit) => positions.has(supplierOf(unit)));
  if (planned.length === 0) {
    for (const name of new Set(units.map(supplierOf)))
      bought.unplanned.set(name, [...(bought.unplanned.get(name) ?? []), item]);
    return;
  }
  const { shelfLifeDays } = itemNamed(outlook.facts.catalogue, item);
  const short = Math.max(...[...positions.values()].map((position) => position.short));
  const unit = chooseUnit(planned, { short, perDay, shelfLifeDays });
  const position = unit && positions.get(supplierOf(unit));
  if (unit === undefined || position === undefined) return;
  const lostMargin = outlook.lostMargins.get(item) ?? null;
  bought.wanted.push({ position, unit, quantity: quantityFor(position, unit), lostMargin, perDay });
}

function supplierOf({ pack }: BuyingUnit): string {
  return pack.supplier ?? "";
}
