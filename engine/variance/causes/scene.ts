import type { Facts } from "#engine/facts.ts";
import { type Ask, saleAsks, type UnmappedSale } from "#engine/sales/asks.ts";
import { FruitDays } from "#engine/sales/expected-use.ts";
import type { SaleGroup } from "#engine/sales/tally.ts";
import { type Divider, dividerAt } from "#engine/sales/when.ts";
import { type Bill, billOf } from "#engine/specs/bill.ts";
import { modifyLines, type ServeLine, serveLines, servePortions } from "#engine/specs/serve.ts";
import type { Count } from "#engine/stock/counts.ts";
import { isBetween } from "#engine/stock/on-hand.ts";
import type { BusinessDate, Instant } from "#engine/time.ts";
import { asksOn, datesBetween, dividersWithin, type PeriodAsks } from "#engine/variance/asks.ts";
import { middleOf } from "#engine/variance/causes/correction.ts";
import { type Habit, withHabits } from "#engine/variance/habits.ts";
import { coveredWindows, neighboursOf } from "#engine/variance/neighbours.ts";
import { type ItemPeriod, itemPeriods, spanOf, type Window } from "#engine/variance/period.ts";

/** One item's window between the two counts, and those beside it where the sales reach over them. */
export type ItemScene = { now: ItemPeriod; before: ItemPeriod | undefined; after: ItemPeriod | undefined };

/** A number between the two counts, and in the windows before and after. */
export type Thrice = { before: number; now: number; after: number };

/** A drink as it was sold between the two counts. */
export type DrinkScene = {
  drink: string;
  /** The business date whose version is reckoned with: the last one it was sold on. */
  date: BusinessDate;
  serves: Thrice;
  /** One serve's amounts, fruit by the part that decides its pieces. */
  perServe: Map<string, number>;
};

/** Everything the causes look at, gathered once. */
export type Scene = {
  facts: Facts;
  opening: Count;
  closing: Count;
  from: Instant;
  to: Instant;
  items: Map<string, ItemScene>;
  drinks: Map<string, DrinkScene>;
  unmapped: (UnmappedSale & { serves: Thrice })[];
  /** What so many makings of a bill add to each item's use; only items that have a variance. */
  useOf: (bill: Bill) => Map<string, number>;
};

/** The middle of an item's window: a moment in it for what nobody saw happen. */
export function middleOfItem({ items, from }: Scene, item: string): Instant {
  const now = items.get(item)?.now;
  return now === undefined ? from : middleOf(now);
}

/** The middle between the two counts. */
export function middleOfScene({ opening, closing }: Pick<Scene, "opening" | "closing">): Instant {
  return middleOf({ opening, closing });
}

/** An item's expected use in the windows beside, for each base unit between the counts. */
export function expectedBeside({ now, before, after }: ItemScene): { before: number; after: number } {
  const share = (period: ItemPeriod | undefined) =>
    period === undefined || now.expected.amount <= 0
      ? 0
      : Math.max(0, period.expected.amount / now.expected.amount);
  return { before: share(before), after: share(after) };
}

export type SceneInput = {
  facts: Facts;
  sales: readonly SaleGroup[];
  asks: PeriodAsks;
  opening: Count;
  closing: Count;
  periods: Map<string, ItemPeriod>;
  habits: ReadonlyMap<string, Habit>;
};

/** A stretch of time with the sales that lie in it. */
type Stretch = { from: Divider; to: Divider; sales: readonly SaleGroup[] };

export function sceneOf(input: SceneInput): Scene | undefined {
  const { facts, sales, asks, opening, closing, periods, habits } = input;
  const span = spanOf([...periods.values()]);
  if (span === undefined) return undefined;
  const neighbours = neighboursOf(facts, opening, closing);
  const windowsBefore = coveredWindows(facts, neighbours.before, sales);
  const windowsAfter = coveredWindows(facts, neighbours.after, sales);
  const before = withHabits(itemPeriods(facts, asks, windowsBefore), habits);
  const after = withHabits(itemPeriods(facts, asks, windowsAfter), habits);
  const useOf = useFinder(facts, asks, span, periods);
  const stretches = {
    before: stretchOf(facts, sales, windowsBefore),
    now: stretchOf(facts, sales, [...periods.values()]),
    after: stretchOf(facts, sales, windowsAfter),
  };
  return {
    facts,
    opening,
    closing,
    ...span,
    items: new Map(
      [...periods].map(([item, now]) => [item, { now, before: before.get(item), after: after.get(item) }]),
    ),
    drinks: drinkScenes(facts, asks.sold, stretches, useOf),
    unmapped: unmappedSales(facts, stretches),
    useOf,
  };
}

/** The stretch that most items' windows share, and its sales. */
function stretchOf(
  facts: Facts,
  sales: readonly SaleGroup[],
  windows: readonly Window[],
): Stretch | undefined {
  const { venue } = facts.catalogue;
  const middle = <T>(list: T[]) => list.sort()[Math.floor(list.length / 2)];
  const from = middle(windows.map(({ opening }) => opening.at));
  const to = middle(windows.map(({ closing }) => closing.at));
  if (from === undefined || to === undefined) return undefined;
  const stretch = { from: dividerAt(from, venue), to: dividerAt(to, venue) };
  return { ...stretch, sales: sales.filter((sale) => isBetween(sale, stretch.from, stretch.to)) };
}

type Stretches = { [when in keyof Thrice]: Stretch | undefined };

function drinkScenes(
  facts: Facts,
  sold: readonly Ask[],
  stretches: Stretches,
  useOf: Scene["useOf"],
): Map<string, DrinkScene> {
  const serves = new Map<string, Thrice & { date: BusinessDate }>();
  for (const when of ["before", "now", "after"] as const) {
    const stretch = stretches[when];
    if (stretch === undefined) continue;
    for (const ask of sold) {
      if (!facts.catalogue.drinks.has(ask.what) || !isBetween(ask, stretch.from, stretch.to)) continue;
      const held = serves.get(ask.what) ?? { before: 0, now: 0, after: 0, date: "" };
      held[when] += ask.times;
      if (when === "now" && ask.businessDate > held.date) held.date = ask.businessDate;
      serves.set(ask.what, held);
    }
  }
  const last = stretches.now?.to.untimedUntil ?? "";
  return new Map(
    [...facts.catalogue.drinks.keys()].flatMap((drink) => {
      const { date = "", ...count } = serves.get(drink) ?? { before: 0, now: 0, after: 0 };
      const bill = serveBill(facts, drink, date === "" ? last : date);
      if (bill === undefined) return [];
      return [[drink, { drink, date: date === "" ? last : date, serves: count, perServe: useOf(bill) }]];
    }),
  );
}

/** The bill of one serve of a drink's version on a date; undefined before its first one. */
export function serveBill(facts: Facts, drink: string, date: BusinessDate): Bill | undefined {
  const lines = serveLines(facts.catalogue, drink, date);
  return lines === undefined ? undefined : linesBill(facts, drink, lines, date);
}

/** The bill of one serve of a drink by other lines than those in force. */
export function linesBill(
  facts: Facts,
  drink: string,
  lines: readonly ServeLine[],
  date: BusinessDate,
): Bill {
  const { catalogue } = facts;
  const portions = servePortions(catalogue, catalogue.drinks.get(drink), modifyLines(lines, []));
  return billOf(catalogue, portions, { date });
}

function unmappedSales(facts: Facts, stretches: Stretches): Scene["unmapped"] {
  const read = (stretch: Stretch | undefined) =>
    new Map(
      (stretch === undefined ? [] : saleAsks(facts.catalogue, stretch.sales).unmapped).map((sale) => [
        sale.ringName.toLowerCase(),
        sale,
      ]),
    );
  const [before, now, after] = [read(stretches.before), read(stretches.now), read(stretches.after)];
  return [...now].map(([name, sale]) => ({
    ...sale,
    serves: {
      before: before.get(name)?.quantity ?? 0,
      now: sale.quantity,
      after: after.get(name)?.quantity ?? 0,
    },
  }));
}

/**
 * Use of a bill by item. Another slice of a fruit asks for another piece only by the part that decides how
 * many pieces the day needs, so each part counts by the share of the pieces it decided between the counts.
 */
function useFinder(
  facts: Facts,
  asks: PeriodAsks,
  span: { from: Instant; to: Instant },
  periods: Map<string, ItemPeriod>,
): Scene["useOf"] {
  const dates = datesBetween(facts, span);
  const fruit = new FruitDays(dividersWithin(facts.dividers, dates));
  for (const ask of [...asksOn(asks.sold, dates), ...asksOn(asks.batched, dates)]) {
    for (const cut of ask.bill.cuts) fruit.add(ask, cut);
  }
  const decided = new Map<string, { pieces: number; byPart: Map<string, number> }>();
  for (const { source, pieces, parts } of fruit.pieces()) {
    const most = parts.reduce((a, b) => (b.shares > a.shares ? b : a));
    const held = decided.get(source) ?? { pieces: 0, byPart: new Map<string, number>() };
    held.pieces += pieces;
    held.byPart.set(most.part, (held.byPart.get(most.part) ?? 0) + pieces);
    decided.set(source, held);
  }
  const weightOf = (source: string, parts: readonly string[]) => {
    const held = decided.get(source);
    if (held === undefined || held.pieces <= 0) return 1;
    return parts.reduce((sum, part) => sum + (held.byPart.get(part) ?? 0), 0) / held.pieces;
  };
  return (bill) => {
    const use = new Map<string, number>();
    const add = (item: string, amount: number) => {
      if (amount !== 0 && periods.has(item)) use.set(item, (use.get(item) ?? 0) + amount);
    };
    for (const { item, amount } of bill.items) add(item, amount);
    for (const { source, parts, shares } of bill.cuts) add(source, shares * weightOf(source, parts));
    return use;
  };
}
