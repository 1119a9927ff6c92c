import type { Facts } from "#engine/facts.ts";
import { parOf } from "#engine/orders/par.ts";
import type { PastItem } from "#engine/orders/replay-items.ts";
import { type Past, type PastOrder, pastOf } from "#engine/orders/replay-past.ts";
import { type ParPolicy, type ReplayFigures, replayPolicy } from "#engine/orders/replay-policy.ts";
import { levelForWorth } from "#engine/orders/worth-level.ts";
import type { SaleGroup } from "#engine/sales/tally.ts";
import type { BusinessDate, Instant } from "#engine/time.ts";

/** Ways of ordering tried on the venue's own past. */
export type Replay = {
  from: BusinessDate;
  to: BusinessDate;
  weeks: number;
  /** Items replayed: bought from a supplier with order days, and used. */
  items: number;
  /** With the settings of the book. */
  planned: ReplayFigures;
  /** With pars set by hand: those given, twice the mean weekly use of the others. */
  byHand: ReplayFigures & { given: number };
  /** With one service level for all items but those that have their own. Risk falls as stock rises. */
  curve: LevelFigures[];
  /** With a level for each item, so that safety stands where it takes little money; by what a run-out is worth. */
  worthCurve: WorthFigures[];
  /** What needs the least money with no more nights out than by hand; null where nothing tried is as safe. */
  asSafe: AsSafe | null;
};

export type LevelFigures = { serviceLevel: number } & ReplayFigures;
export type WorthFigures = { nightWorth: number } & ReplayFigures;

/** One level for all, or one an item, to be set as its service level. */
export type AsSafe = ReplayFigures & {
  serviceLevel: number | null;
  nightWorth: number | null;
  levels: { item: string; serviceLevel: number }[];
};

export type ReplayQuestion = {
  facts: Facts;
  sales: readonly SaleGroup[];
  at: Instant;
  weeks?: number;
  /** Pars set by hand, in base units. */
  pars?: ReadonlyMap<string, number>;
};

const REPLAY_WEEKS = 12;
const LEVELS = [0.7, 0.8, 0.9, 0.95, 0.98, 0.99, 0.995, 0.998, 0.999] as const;
/** Major units of the venue's currency that a night without an item is held to be worth. */
const WORTHS = [0.1, 0.2, 0.5, 1, 2, 5, 10, 20] as const;

/** The least and the most chance of lasting that weighing waste against lost sales may lead to. */
const LEAST_SPOILT_LEVEL = 0.5;
const MOST_SPOILT_LEVEL = 0.995;

/**
 * What the last weeks would have been like ordered by the book's settings, by pars set by hand, and by other service
 * levels: nights on which an item ran out against money standing in stock.
 *
 * Each order of the replay knows only the sales before its week. Null when the past is too short.
 */
export function replay({
  facts,
  sales,
  at,
  weeks = REPLAY_WEEKS,
  pars = new Map(),
}: ReplayQuestion): Replay | null {
  const past = pastOf({ facts, sales, at, weeks });
  if (past === null) return null;
  const [from = "", to = ""] = [past.dates[0], past.dates.at(-1)];
  const byHand = replayPolicy(past, (item) => pars.get(item.item) ?? twiceWeekly(item));
  const curve = LEVELS.map((level) => ({ serviceLevel: level, ...replayPolicy(past, atLevel(level)) }));
  const worthCurve = WORTHS.map((worth) => ({
    nightWorth: worth,
    ...replayPolicy(past, parAt(worthLevels(past, worth))),
  }));
  return {
    from,
    to,
    weeks: past.dates.length / 7,
    items: past.items.length,
    planned: replayPolicy(past, atLevel(facts.catalogue.venue.serviceLevel)),
    byHand: { ...byHand, given: past.items.filter(({ item }) => pars.has(item)).length },
    curve,
    worthCurve,
    asSafe: leastMoney(past, byHand, [
      ...curve.map((point) => ({ nightWorth: null, ...point })),
      ...worthCurve.map((point) => ({ serviceLevel: null, ...point })),
    ]),
  };
}

type Level = (item: PastItem, order: PastOrder["items"][number]) => number;

function atLevel(venueLevel: number): ParPolicy {
  return parAt(({ ownLevel }) => ownLevel ?? venueLevel);
}

/** The par at a level; what spoils first is weighed as in the newsvendor problem whatever the level. */
function parAt(level: Level): ParPolicy {
  return (item, order) => {
    const { isCount, spoiltLevel } = item;
    const serviceLevel =
      order.isSpoilt && spoiltLevel !== null
        ? Math.min(MOST_SPOILT_LEVEL, Math.max(LEAST_SPOILT_LEVEL, spoiltLevel))
        : level(item, order);
    return parOf({ demand: order.demand, isCount, serviceLevel });
  };
}

function worthLevels({ dates, orders }: Past, worth: number): Level {
  const counts = new Map<number, number>();
  for (const { index } of orders.flatMap(({ items }) => items))
    counts.set(index, (counts.get(index) ?? 0) + 1);
  return ({ ownLevel, costPerBase }, { index, demand }) =>
    ownLevel ??
    levelForWorth({
      worth,
      ordersPerYear: ((counts.get(index) ?? 0) * 365) / dates.length,
      costPerBase,
      sd: Math.sqrt(demand.variance),
    });
}

/** Common practice where nobody reckons: two weeks of use on the shelf. */
function twiceWeekly({ use }: PastItem): number {
  return (2 * 7 * use.reduce((sum, value) => sum + value, 0)) / Math.max(1, use.length);
}

type Point = ReplayFigures & { serviceLevel: number | null; nightWorth: number | null };

function leastMoney(past: Past, byHand: ReplayFigures, points: readonly Point[]): AsSafe | null {
  const [best] = points
    .filter(({ itemNightsOut }) => itemNightsOut <= byHand.itemNightsOut)
    .sort((a, b) => a.stockMoney - b.stockMoney);
  if (best === undefined) return null;
  return { ...best, levels: best.nightWorth === null ? [] : itemLevels(past, best.nightWorth) };
}

/** Each item's level at its last order, rounded as a person would write it. */
function itemLevels(past: Past, worth: number): AsSafe["levels"] {
  const level = worthLevels(past, worth);
  const last = new Map(
    past.orders.flatMap(({ items }) => items.map((order) => [order.index, order] as const)),
  );
  return past.items.flatMap((item, index) => {
    const order = last.get(index);
    return order === undefined || order.isSpoilt
      ? []
      : [{ item: item.item, serviceLevel: Math.round(level(item, order) * 1000) / 1000 }];
  });
}
