import { itemNamed } from "#engine/catalogue.ts";
import { currencyDigits } from "#engine/currency.ts";
import type { Facts } from "#engine/facts.ts";
import { shortageCost, type Wanted, withinBudget } from "#engine/orders/budget.ts";
import { type NextOrder, nextOrder } from "#engine/orders/calendar.ts";
import { lineOf, type OrderPlanLine, runOutChanceOf } from "#engine/orders/order-line.ts";
import { type Outlook, outlookAt } from "#engine/orders/outlook.ts";
import { type ReckonedItem, reckonedItem } from "#engine/orders/reckoned-item.ts";
import { type Solver, solveBudget } from "#engine/orders/solve-budget.ts";
import type { Supplier } from "#engine/orders/supplier.ts";
import { type Addition, additionsTo } from "#engine/orders/to-minimum.ts";
import { boughtItems, NO_DAYS, type NoSupplier } from "#engine/orders/wanted.ts";
import type { SaleGroup } from "#engine/sales/tally.ts";
import type { Instant } from "#engine/time.ts";

export type SupplierOrder = {
  supplier: string;
  /** Null for a supplier without order days: no arrival is known, and nothing is reckoned. */
  orderBy: Instant | null;
  arrives: Instant | null;
  coversUntil: Instant | null;
  lines: OrderPlanLine[];
  /** Goods, of the lines whose price is known, in major units. */
  total: number;
  /** Deposits on the containers ordered, which come on top and back with the empties. */
  deposits: number;
  /** Whether the lines reach the supplier's least value and least cases. */
  minimumMet: boolean;
  /** What is missing to the least value, in major units, and to the least cases. */
  missingValue: number;
  missingCases: number;
  /** What could be added to reach the minimum; empty when it is met or nothing sensible reaches it. */
  toMinimum: Addition[];
  /** Items bought here that could not be reckoned because nobody knows when an order would arrive. */
  unplanned: string[];
  /** Money expected to be lost by running short if nothing is ordered here this time, in major units. */
  shortageIfNotPlaced: number;
};

export type OrderPlan = {
  at: Instant;
  suppliers: SupplierOrder[];
  /** Every item that could be reckoned, ordered or not, in the order of the book. */
  items: ReckonedItem[];
  /** Used, but no pack of them names a supplier. */
  noSupplier: NoSupplier[];
  /** Used, but never counted whole: what there is, is not known, so nothing is ordered. */
  notCounted: string[];
  /** Likely to run out before the next delivery, whatever is ordered now; the likeliest first. */
  atRisk: { item: string; supplier: string; runOutChance: number }[];
  /** Money expected to be lost by running short in spite of this order, in major units. */
  expectedShortage: number;
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
  /**
   * Spends the budget exactly, with the suppliers' minimums kept, and reaches a minimum for the least money; without
   * one money goes to the best unit for it, one by one.
   */
  solver?: Solver;
};

/** Whether any order is too small for its supplier. */
export function isBelowMinimum({ suppliers }: OrderPlan): boolean {
  return suppliers.some(({ lines, minimumMet }) => lines.length > 0 && !minimumMet);
}

/**
 * What to order from whom at a moment: each item up to its par, in what can be bought.
 *
 * Par = the demand quantile at the item's service level over the days until the delivery after the next
 * one. Preps made in house are not ordered; what they are made of is.
 */
export function planOrder({ facts, sales, at, ...choice }: OrderQuestion): OrderPlan {
  return orderFrom(outlookAt(facts, sales, at), choice);
}

/** The same from an outlook at hand, for asking twice. */
export function orderFrom(
  outlook: Outlook,
  { supplier, budgetMinor, solver }: Omit<OrderQuestion, "facts" | "sales" | "at">,
): OrderPlan {
  const { facts, at } = outlook;
  const suppliers = facts.book.suppliers.filter(({ name }) => supplier === undefined || name === supplier);
  const calendars = new Map(facts.book.suppliers.map(({ name }) => [name, nextOrder(facts.book, name, at)]));
  const bought = boughtItems(outlook, calendars);
  const wanted = bought.wanted.filter((want) =>
    suppliers.some(({ name }) => name === want.unit.pack.supplier),
  );
  const unit = 10 ** currencyDigits(facts.catalogue.venue.currency);
  const quantities =
    budgetMinor === undefined
      ? wanted.map(({ quantity }) => quantity)
      : spent(facts, wanted, { budget: budgetMinor / unit, solver });
  const chosen = wanted.map((want, index) => ({ ...want, bought: quantities[index] ?? 0 }));
  return {
    at,
    suppliers: suppliers.map((one) => {
      const own = chosen.filter(({ unit }) => unit.pack.supplier === one.name);
      const unplanned = bought.unplanned.get(one.name) ?? [];
      return supplierOrder(outlook, one, calendars.get(one.name) ?? NO_DAYS, { own, unplanned, solver });
    }),
    items: bought.wanted.map((want) =>
      reckonedItem(outlook, want, calendars.get(want.unit.pack.supplier ?? "")?.coversUntil ?? null),
    ),
    noSupplier: bought.noSupplier,
    notCounted: bought.notCounted,
    atRisk: atRisk(chosen),
    expectedShortage: chosen.reduce((sum, want) => sum + shortageCost(want, want.bought), 0),
    leftOut: chosen.flatMap(leftOut),
  };
}

function spent(
  { book, catalogue }: Facts,
  wanted: readonly Wanted[],
  { budget, solver }: { budget: number; solver: Solver | undefined },
): number[] {
  const unit = 10 ** currencyDigits(catalogue.venue.currency);
  const minimums = new Map(
    book.suppliers.map(({ name, minimumValueMinor, minimumCases }) => [
      name,
      { value: (minimumValueMinor ?? 0) / unit, cases: minimumCases ?? 0 },
    ]),
  );
  const keepsDays = (item: string) => itemNamed(catalogue, item).shelfLifeDays ?? Number.POSITIVE_INFINITY;
  const solved = solver && solveBudget(wanted, { budget, minimums, keepsDays, solver });
  return solved ?? withinBudget(wanted, budget);
}

/** A line that could be bought, and how much of it is. */
type Chosen = Wanted & { bought: number };

function supplierOrder(
  outlook: Outlook,
  { name, minimumValueMinor, minimumCases }: Supplier,
  next: NextOrder,
  { own, unplanned, solver }: { own: readonly Chosen[]; unplanned: string[]; solver: Solver | undefined },
): SupplierOrder {
  const { catalogue } = outlook.facts;
  const ordered = own.filter(({ bought }) => bought > 0);
  const lines = ordered.map(({ position, unit, bought }) => lineOf(outlook, position, unit, bought));
  const total = lines.reduce((sum, { cost }) => sum + (cost ?? 0), 0);
  const cases = ordered.reduce((sum, { unit, bought }) => sum + unit.cases * bought, 0);
  const minimumValue = (minimumValueMinor ?? 0) / 10 ** currencyDigits(catalogue.venue.currency);
  const missingValue = Math.max(0, minimumValue - total);
  const missingCases = Math.max(0, (minimumCases ?? 0) - cases);
  const candidates = own.map((want) => ({
    ...want,
    keepsDays: itemNamed(catalogue, want.position.item).shelfLifeDays ?? Number.POSITIVE_INFINITY,
  }));
  return {
    supplier: name,
    ...next,
    lines,
    total,
    deposits: lines.reduce((sum, { deposit }) => sum + deposit, 0),
    minimumMet: missingValue <= 1e-9 && missingCases <= 1e-9,
    missingValue,
    missingCases,
    toMinimum: lines.length === 0 ? [] : additionsTo({ missingValue, missingCases }, candidates, solver),
    unplanned,
    shortageIfNotPlaced: own.reduce((sum, want) => sum + shortageCost(want, 0), 0),
  };
}

/** One in ten is more than a careful bar lets pass unseen: common practice. */
const RISK_SHOWN = 0.1;

function atRisk(chosen: readonly Chosen[]): OrderPlan["atRisk"] {
  return chosen
    .map(({ position, unit }) => ({
      item: position.item,
      supplier: unit.pack.supplier ?? "",
      runOutChance: runOutChanceOf(position),
    }))
    .filter(({ runOutChance }) => runOutChance > RISK_SHOWN)
    .sort((a, b) => b.runOutChance - a.runOutChance);
}

function leftOut({ unit, quantity, bought }: Chosen): OrderPlan["leftOut"] {
  const missing = quantity - bought;
  if (missing <= 0) return [];
  const { supplier, item, pack } = unit.pack;
  return [{ supplier: supplier ?? "", item, pack, quantity: missing, cost: missing * (unit.price ?? 0) }];
}
