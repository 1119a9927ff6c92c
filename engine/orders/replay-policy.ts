import { type Lot, usableBy } from "#engine/orders/lots.ts";
import { unitsFor } from "#engine/orders/purchase.ts";
import type { PastItem } from "#engine/orders/replay-items.ts";
import type { Past, PastOrder } from "#engine/orders/replay-past.ts";

/** What a way of ordering would have done. Money in major units. */
export type ReplayFigures = {
  /** Nights on which an item did not last, over all items. */
  itemNightsOut: number;
  /** Item-nights on which something of the item was asked for. */
  itemNights: number;
  /** Money standing in stock, mean of the nights before and after trade. */
  stockMoney: number;
  /** Money thrown out past its date. */
  spoiltMoney: number;
  /** The items that ran out, the most nights first. */
  out: { item: string; nights: number }[];
};

/** The level an order fills an item up to, in base units. */
export type ParPolicy = (item: PastItem, order: PastOrder["items"][number]) => number;

type Shelf = { lots: Lot[]; onOrder: { amount: number; arrives: number }[] };

/**
 * Orders through a past by a policy: each chance fills every item up to its par in what can be bought, deliveries
 * come on their day before the trade, the oldest is used first, and what is past its date is thrown out.
 *
 * Who looks at dates counts what will be past its date before it is used as not there. Begins with each item at its first par. Supplier minimums and budgets are left aside.
 */
export function replayPolicy(past: Past, policy: ParPolicy, { looksAtDates = true } = {}): ReplayFigures {
  const shelves: Shelf[] = past.items.map(() => ({ lots: [], onOrder: [] }));
  const nightsOut = past.items.map(() => 0);
  let [itemNights, standing, spoiltMoney] = [0, 0, 0];
  startAtPar(past, policy, shelves);
  for (let day = 0; day < past.dates.length; day += 1) {
    const orders = past.orders.filter((order) => order.day === day);
    past.items.forEach((item, index) => {
      const shelf = shelves[index];
      if (shelf === undefined) return;
      receive(shelf, item, day);
      spoiltMoney += throwOut(shelf, day) * item.costPerBase;
      const use = item.use[day] ?? 0;
      const before = stockOf(shelf);
      for (const order of orders) {
        const own = order.items.find((one) => one.index === index);
        if (own === undefined) continue;
        const interval = Math.max(1, order.coversUntil - day);
        const perDay = own.demand.mean / interval;
        const usable = usableBy(shelf.lots, { today: day, until: order.coversUntil, perDay });
        const spoils = looksAtDates ? before - usable : 0;
        const onHand = Math.max(0, before - spoils - order.tradeDone * use);
        const coming = shelf.onOrder.reduce((sum, { amount }) => sum + amount, 0);
        const units = unitsFor({ short: policy(item, own) - onHand - coming, size: item.unit.size });
        if (units > 0) shelf.onOrder.push({ amount: units * item.unit.size, arrives: order.arrives });
      }
      if (use > 0) itemNights += 1;
      if (use > before * (1 + 1e-9)) nightsOut[index] = (nightsOut[index] ?? 0) + 1;
      take(shelf, use);
      standing += ((before + stockOf(shelf)) / 2) * item.costPerBase;
    });
  }
  return {
    itemNightsOut: nightsOut.reduce((sum, nights) => sum + nights, 0),
    itemNights,
    stockMoney: past.dates.length === 0 ? 0 : standing / past.dates.length,
    spoiltMoney,
    out: past.items
      .map(({ item }, index) => ({ item, nights: nightsOut[index] ?? 0 }))
      .filter(({ nights }) => nights > 0)
      .sort((a, b) => b.nights - a.nights),
  };
}

function startAtPar(past: Past, policy: ParPolicy, shelves: readonly Shelf[]): void {
  for (const order of past.orders) {
    for (const own of order.items) {
      const [item, shelf] = [past.items[own.index], shelves[own.index]];
      if (item === undefined || shelf === undefined || shelf.lots.length > 0) continue;
      const units = unitsFor({ short: policy(item, own), size: item.unit.size });
      shelf.lots.push({ amount: units * item.unit.size, spoils: item.shelfLifeDays ?? Infinity });
    }
  }
}

function receive(shelf: Shelf, { shelfLifeDays }: PastItem, day: number): void {
  for (const { amount, arrives } of shelf.onOrder)
    if (arrives <= day) shelf.lots.push({ amount, spoils: day + (shelfLifeDays ?? Infinity) });
  shelf.onOrder = shelf.onOrder.filter(({ arrives }) => arrives > day);
}

function throwOut(shelf: Shelf, day: number): number {
  const spoilt = shelf.lots.filter(({ spoils }) => spoils < day);
  shelf.lots = shelf.lots.filter(({ spoils }) => spoils >= day);
  return spoilt.reduce((sum, { amount }) => sum + amount, 0);
}

function take(shelf: Shelf, use: number): void {
  let left = use;
  for (const lot of shelf.lots) {
    const taken = Math.min(lot.amount, left);
    lot.amount -= taken;
    left -= taken;
  }
  shelf.lots = shelf.lots.filter(({ amount }) => amount > 1e-9);
}

function stockOf({ lots }: Shelf): number {
  return lots.reduce((sum, { amount }) => sum + amount, 0);
}
