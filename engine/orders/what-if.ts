import { type Change, changedBook, firstFelt } from "#engine/demand/changed-book.ts";
import { type Facts, factsOf } from "#engine/facts.ts";
import type { BaseUnit } from "#engine/measure/units.ts";
import { orderChances } from "#engine/orders/calendar.ts";
import { listPrice, takenPerServe } from "#engine/orders/lost-margin.ts";
import { type OrderPlan, orderFrom } from "#engine/orders/order.ts";
import { type Outlook, outlookAt } from "#engine/orders/outlook.ts";
import { instantToLocal } from "#engine/sales/read/clock.ts";
import type { SaleGroup } from "#engine/sales/tally.ts";
import { packsInForce } from "#engine/stock/pack.ts";
import { addDays, type BusinessDate, datesFrom, type Instant } from "#engine/time.ts";

type Pair = { before: number; after: number };

/** What changes would do to the days ahead, beside the days as they stand. Money in major units. */
export type WhatIf = {
  from: BusinessDate;
  to: BusinessDate;
  /** Serves over those days, of the drinks that change. */
  drinks: ({ what: string } & Pair)[];
  /** Need over those days in base units, of the items that change, the most money first. */
  items: ({
    item: string;
    base: BaseUnit;
    moneyMore: number;
    supplier: string | null;
    orderBy: Instant | null;
  } & Pair)[];
  /** Lines of the next orders that change, in units of their pack. */
  order: ({ supplier: string; item: string; pack: string; of: string } & Pair)[];
  totals: { serves: Pair; sales: Pair; cost: Pair; contribution: Pair; order: Pair };
};

export type WhatIfQuestion = {
  facts: Facts;
  sales: readonly SaleGroup[];
  at: Instant;
  changes: readonly Change[];
  /** Days looked ahead, today included. */
  days: number;
};

/** Less than this share of a change is the same number reckoned twice. */
const SAME_WITHIN = 1e-6;

/**
 * What a menu, a price, a party or a closed day would change in what is sold, used, ordered and earned.
 *
 * Nothing is kept: the book as it stands and the book as it would stand are reckoned side by side. `orderBy` of an
 * item is the last cut-off whose delivery comes before the change is felt; null where it is too late or not known.
 */
export function whatIf({ facts, sales, at, changes, days }: WhatIfQuestion): WhatIf {
  const now = outlookAt(facts, sales, at);
  const dates = datesFrom({ from: now.date, to: addDays(now.date, days - 1) });
  const book = changedBook(facts.book, changes, { model: now.model, dates });
  const then = outlookAt(factsOf(book, facts.holidays), sales, at);
  const [before, after] = [viewOf(now, sales, dates, facts), viewOf(then, sales, dates, facts)];
  const totals = {
    serves: pairOf(before, after, ({ drinks }) => sumOf(drinks)),
    sales: pairOf(before, after, ({ money }) => money),
    cost: pairOf(before, after, ({ cost }) => cost),
    contribution: pairOf(before, after, ({ money, cost }) => money - cost),
    order: pairOf(before, after, ({ plan }) => plan.suppliers.reduce((sum, { total }) => sum + total, 0)),
  };
  return {
    from: now.date,
    to: dates.at(-1) ?? now.date,
    drinks: changed(before.drinks, after.drinks).map(([what, pair]) => ({ what, ...pair })),
    items: changedItems(now, before.items, after.items, firstFelt(changes)),
    order: changedLines(before.plan, after.plan),
    totals,
  };
}

type View = {
  drinks: Map<string, number>;
  items: Map<string, number>;
  money: number;
  cost: number;
  plan: OrderPlan;
};

function viewOf(
  outlook: Outlook,
  sales: readonly SaleGroup[],
  dates: readonly BusinessDate[],
  asItStands: Facts,
): View {
  const drinks = new Map<string, number>();
  for (const { what, mean } of dates.flatMap((date) => outlook.model.on(date)))
    drinks.set(what, (drinks.get(what) ?? 0) + mean);
  const demand = outlook.demandOver(dates.map((date) => ({ date, share: 1 })));
  const items = new Map([...demand.total].map(([item, { mean }]) => [item, mean]));
  const taken = takenPerServe(asItStands, sales, outlook.date);
  const priceOf = (what: string) => {
    const [was, is] = [listPrice(asItStands, what), listPrice(outlook.facts, what)];
    const paid = taken.get(what);
    if (paid === undefined) return is ?? 0;
    return was === null || is === null || was === 0 ? paid : (paid * is) / was;
  };
  return {
    drinks,
    items,
    money: [...drinks].reduce((sum, [what, serves]) => sum + serves * priceOf(what), 0),
    cost: [...items].reduce((sum, [item, amount]) => sum + amount * (outlook.costs.get(item) ?? 0), 0),
    plan: orderFrom(outlook, {}),
  };
}

function changedItems(
  { facts, costs, at, date }: Outlook,
  before: Map<string, number>,
  after: Map<string, number>,
  felt: BusinessDate | null,
): WhatIf["items"] {
  const { catalogue, book } = facts;
  return changed(before, after)
    .flatMap(([name, pair]) => {
      const item = catalogue.items.get(name);
      const packs = packsInForce(catalogue, name, date);
      // Water runs from the tap: nobody buys it.
      if (item === undefined || packs.length === 0) return [];
      const supplier = packs.find((pack) => pack.supplier !== null)?.supplier;
      const last =
        felt === null || supplier == null
          ? undefined
          : orderChances(book, supplier, at).findLast(
              ({ arrives }) => instantToLocal(arrives, catalogue.venue).slice(0, 10) <= felt,
            );
      return [
        {
          item: name,
          base: item.base,
          ...pair,
          moneyMore: (pair.after - pair.before) * (costs.get(name) ?? 0),
          supplier: supplier ?? null,
          orderBy: last?.orderBy ?? null,
        },
      ];
    })
    .sort((a, b) => Math.abs(b.moneyMore) - Math.abs(a.moneyMore));
}

function changedLines(before: OrderPlan, after: OrderPlan): WhatIf["order"] {
  const [was, is] = [linesOf(before), linesOf(after)];
  return [...new Set([...was.keys(), ...is.keys()])].flatMap((key) => {
    const [old, next] = [was.get(key), is.get(key)];
    const line = next ?? old;
    const pair = { before: old?.quantity ?? 0, after: next?.quantity ?? 0 };
    if (line === undefined || pair.before === pair.after) return [];
    const { supplier, item, pack, of } = line;
    return [{ supplier, item, pack, of, ...pair }];
  });
}

function linesOf({ suppliers }: OrderPlan) {
  return new Map(
    suppliers.flatMap(({ supplier, lines }) =>
      lines.map((line) => [JSON.stringify([line.item, line.pack]), { supplier, ...line }] as const),
    ),
  );
}

function changed(before: Map<string, number>, after: Map<string, number>): [string, Pair][] {
  return [...new Set([...before.keys(), ...after.keys()])].flatMap((name) => {
    const pair = { before: before.get(name) ?? 0, after: after.get(name) ?? 0 };
    const isSame = Math.abs(pair.after - pair.before) <= SAME_WITHIN * Math.max(pair.before, pair.after);
    return isSame ? [] : [[name, pair] as [string, Pair]];
  });
}

function pairOf(before: View, after: View, figure: (view: View) => number): Pair {
  return { before: figure(before), after: figure(after) };
}

function sumOf(values: Map<string, number>): number {
  return [...values.values()].reduce((sum, value) => sum + value, 0);
}
