import { itemNamed } from "#engine/catalogue.ts";
import type { Facts } from "#engine/facts.ts";
import type { BaseUnit } from "#engine/measure/units.ts";
import { type Wanted, withinBudget } from "#engine/orders/budget.ts";
import { type NextOrder, nextOrder } from "#engine/orders/calendar.ts";
import {
  lineOf,
  type OrderPlanLine,
  type Position,
  positionOf,
  quantityFor,
} from "#engine/orders/order-line.ts";
import { type Outlook, outlookAt } from "#engine/orders/outlook.ts";
import { type BuyingUnit, buyingUnit, chooseUnit } from "#engine/orders/purchase.ts";
import type { Supplier } from "#engine/orders/supplier.ts";
import type { SaleGroup } from "#engine/sales/tally.ts";
import { packsInForce } from "#engine/stock/pack.ts";
import { addHours, type Instant } from "#engine/time.ts";
import { currencyDigits } from "#engine/venue.ts";

export type SupplierOrder = {
  supplier: string;
  /** Null for a supplier without order days: no arrival is known, and nothing is reckoned. */
  orderBy: Instant | null;
  arrives: Instant | null;
  coversUntil: Instant | null;
  lines: OrderPlanLine[];
  /** Of the lines whose price is known, in major units. */
  total: number;
  /** Whether the lines reach the supplier's least value and least cases. */
  minimumMet: boolean;
  /** What is missing to the least value, in major units, and to the least cases. */
  missingValue: number;
  missingCases: number;
  /** Items bought here that could not be reckoned because nobody knows when an order would arrive. */
  unplanned: string[];
};

export type OrderPlan = {
  at: Instant;
  suppliers: SupplierOrder[];
  /** Used, but no pack of them names a supplier. */
  noSupplier: { item: string; base: BaseUnit; expectedUse: number }[];
  /** Used, but never counted whole: what there is, is not known, so nothing is ordered. */
  notCounted: string[];
  /** What the budget left out, in units of each line's pack; empty without a budget. */
  leftOut: { supplier: string; item: string; pack: string; quantity: number; cost: number }[];
};

export type OrderQuestion = {
  facts: Facts;
  sales: readonly SaleGroup[];
  at: Instant;
  /** Only this supplier's order. */
  supplier?: string;
  /** The most to spend on all of it, in minor units of the venue's currency. */
  budgetMinor?: number;
};

/**
 * What to order from whom at a moment: each item up to its par, in what can be bought.
 *
 * Par = the demand quantile at the item's service level over the days until the delivery after the next
 * one. Preps made in house are not ordered; what they are made of is.
 */
export function planOrder({ facts, sales, at, supplier, budgetMinor }: OrderQuestion): OrderPlan {
  const outlook = outlookAt(facts, sales, at);
  const suppliers = facts.book.suppliers.filter(({ name }) => supplier === undefined || name === supplier);
  const calendars = new Map(facts.book.suppliers.map(({ name }) => [name, nextOrder(facts.book, name, at)]));
  const bought = boughtItems(outlook, calendars);
  const wanted = bought.wanted.filter((want) =>
    suppliers.some(({ name }) => name === want.unit.pack.supplier),
  );
  const digits = 10 ** currencyDigits(facts.catalogue.venue.currency);
  const quantities =
    budgetMinor === undefined
      ? wanted.map(({ quantity }) => quantity)
      : withinBudget(wanted, budgetMinor / digits);
  return {
    at,
    suppliers: suppliers.map((one) =>
      supplierOrder(one, calendars.get(one.name) ?? NO_DAYS, {
        lines: wanted.flatMap(({ position, unit }, index) => {
          const quantity = quantities[index] ?? 0;
          if (unit.pack.supplier !== one.name || quantity <= 0) return [];
          return [{ line: lineOf(outlook, position, unit, quantity), cases: unit.cases * quantity }];
        }),
        unplanned: bought.unplanned.get(one.name) ?? [],
        digits,
      }),
    ),
    noSupplier: bought.noSupplier,
    notCounted: bought.notCounted,
    leftOut: wanted.flatMap((want, index) => leftOut(want, quantities[index] ?? 0)),
  };
}

const NO_DAYS: NextOrder = { orderBy: null, arrives: null, coversUntil: null };

/** Common practice for what no supplier's calendar covers: a week's use, to show how much it matters. */
const WEEK_HOURS = 7 * 24;

type Bought = {
  wanted: Wanted[];
  unplanned: Map<string, string[]>;
  noSupplier: OrderPlan["noSupplier"];
  notCounted: string[];
};

function boughtItems(outlook: Outlook, calendars: ReadonlyMap<string, NextOrder>): Bought {
  const { catalogue } = outlook.facts;
  const bought: Bought = { wanted: [], unplanned: new Map(), noSupplier: [], notCounted: [] };
  const week = outlook.demandUntil(addHours(outlook.at, WEEK_HOURS)).demand.total;
  for (const { name, base } of catalogue.items.values()) {
    const packs = packsInForce(catalogue, name, outlook.date);
    const expectedUse = week.get(name)?.mean ?? 0;
    if (packs.length === 0 || expectedUse <= 0) continue;
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
    const position = positionOf(outlook, item, { arrives, coversUntil });
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
  bought.wanted.push({ position, unit, quantity: quantityFor(position, unit), lostMargin });
}

function supplierOf({ pack }: BuyingUnit): string {
  return pack.supplier ?? "";
}

function supplierOrder(
  { name, minimumValueMinor, minimumCases }: Supplier,
  next: NextOrder,
  {
    lines,
    unplanned,
    digits,
  }: { lines: { line: OrderPlanLine; cases: number }[]; unplanned: string[]; digits: number },
): SupplierOrder {
  const total = lines.reduce((sum, { line }) => sum + (line.cost ?? 0), 0);
  const cases = lines.reduce((sum, line) => sum + line.cases, 0);
  const missingValue = Math.max(0, (minimumValueMinor ?? 0) / digits - total);
  const missingCases = Math.max(0, (minimumCases ?? 0) - cases);
  return {
    supplier: name,
    ...next,
    lines: lines.map(({ line }) => line),
    total,
    minimumMet: missingValue <= 1e-9 && missingCases <= 1e-9,
    missingValue,
    missingCases,
    unplanned,
  };
}

function leftOut({ unit, quantity }: Wanted & { position: Position }, bought: number): OrderPlan["leftOut"] {
  const missing = quantity - bought;
  if (missing <= 0) return [];
  const { supplier, item, pack } = unit.pack;
  return [{ supplier: supplier ?? "", item, pack, quantity: missing, cost: missing * (unit.price ?? 0) }];
}
