import type { Facts } from "#engine/facts.ts";
import { parOf } from "#engine/orders/par.ts";
import type { PastItem } from "#engine/orders/replay-items.ts";
import { type Past, type PastOrder, pastOf, stretchOf } from "#engine/orders/replay-past.ts";
import { type ParPolicy, type ReplayFigures, replayPolicy } from "#engine/orders/replay-policy.ts";
import { levelByMargin } from "#engine/orders/service-level.ts";
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
  /** With the settings of the book, every par computed. */
  planned: ReplayFigures;
  /** With the pars set by hand where there are some, the others computed; null where none is set. */
  handSet: (ReplayFigures & { given: number }) | null;
  /** Pars of twice the mean weekly use of these very weeks, filled up without a look at dates. */
  twoWeeks: ReplayFigures;
  /** With one service level for all items. Risk falls as stock rises. */
  curve: LevelFigures[];
  /** With a level for each item, so that safety stands where it takes little money; by what a run-out is worth. */
  worthCurve: WorthFigures[];
  /** Chosen on the earlier weeks and tried on the later ones; null where there are too few, or nothing is as safe. */
  asSafe: AsSafe | null;
};

export type LevelFigures = { serviceLevel: number } & ReplayFigures;
export type WorthFigures = { nightWorth: number } & ReplayFigures;

/**
 * What took the least money with no more nights out than pars of two weeks' use in the earlier weeks, and what it came
 * to in the later ones, which the choice knew nothing of. One level for all, or one an item, to be set as its own.
 */
export type AsSafe = {
  serviceLevel: number | null;
  nightWorth: number | null;
  levels: { item: string; serviceLevel: number }[];
  /** First day of the weeks that it was tried on; those before are the ones it was chosen on. */
  triedFrom: BusinessDate;
  tried: ReplayFigures;
  /** In the same weeks: with the book's settings, and with pars of twice the weekly use of the earlier weeks. */
  planned: ReplayFigures;
  twoWeeks: ReplayFigures;
};

export type ReplayQuestion = {
  facts: Facts;
  sales: readonly SaleGroup[];
  at: Instant;
  weeks?: number;
  /** Pars set by hand beside those of the book, in base units. */
  pars?: ReadonlyMap<string, number>;
};

const REPLAY_WEEKS = 12;
/** Fewer weeks than these are not cut in two: a handful of nights decides nothing. */
const LEAST_WEEKS_TO_CHOOSE = 4;
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
  const parSetOf = ({ item, parSet }: PastItem) => pars.get(item) ?? parSet;
  const given = past.items.filter((item) => parSetOf(item) !== null).length;
  return {
    from,
    to,
    weeks: past.dates.length / 7,
    items: past.items.length,
    planned: replayPolicy(past, PLANNED),
    handSet:
      given === 0
        ? null
        : { ...replayPolicy(past, (item, order) => parSetOf(item) ?? PLANNED(item, order)), given },
    twoWeeks: twoWeeksFigures(past, past),
    ...curves(past),
    asSafe: chosenEarlier(past),
  };
}

function curves(past: Past): Pick<Replay, "curve" | "worthCurve"> {
  return {
    curve: LEVELS.map((level) => ({
      serviceLevel: level,
      ...replayPolicy(
        past,
        parAt(() => level),
      ),
    })),
    worthCurve: WORTHS.map((worth) => ({
      nightWorth: worth,
      ...replayPolicy(past, parAt(worthLevel(worth))),
    })),
  };
}

type Level = (item: PastItem, order: PastOrder["items"][number]) => number;

/** As the planner orders: the level stated, else by the margin at risk. */
const PLANNED = parAt(
  ({ statedLevel, lostMargin, costPerBase }, order) =>
    statedLevel ?? levelByMargin({ ...order, lostMargin, costPerBase: costPerBase > 0 ? costPerBase : null }),
);

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

function worthLevel(worth: number): Level {
  return ({ costPerBase }, { demand, daysBetweenOrders }) =>
    levelForWorth({
      worth,
      ordersPerYear: 365 / Math.max(1, daysBetweenOrders),
      costPerBase,
      sd: Math.sqrt(demand.variance),
    });
}

/** Common practice where nobody reckons: two weeks of use on the shelf, as the weeks known had it. */
function twoWeeksFigures(past: Past, known: Past): ReplayFigures {
  const pars = new Map(
    known.items.map(({ item, use }) => [
      item,
      (2 * 7 * use.reduce((sum, value) => sum + value, 0)) / Math.max(1, use.length),
    ]),
  );
  return replayPolicy(past, ({ item }) => pars.get(item) ?? 0, { looksAtDates: false });
}

function chosenEarlier(past: Past): AsSafe | null {
  const weeks = past.dates.length / 7;
  if (weeks < LEAST_WEEKS_TO_CHOOSE) return null;
  const cut = 7 * Math.floor(weeks / 2);
  const earlier = stretchOf(past, { from: 0, until: cut });
  const later = stretchOf(past, { from: cut, until: past.dates.length });
  const { curve, worthCurve } = curves(earlier);
  const aim = twoWeeksFigures(earlier, earlier).itemNightsOut;
  const [best] = [
    ...curve.map((point) => ({ nightWorth: null, ...point })),
    ...worthCurve.map((point) => ({ serviceLevel: null, ...point })),
  ]
    .filter(({ itemNightsOut }) => itemNightsOut <= aim)
    .sort((a, b) => a.stockMoney - b.stockMoney);
  if (best === undefined) return null;
  const { serviceLevel, nightWorth } = best;
  const level = nightWorth === null ? () => serviceLevel ?? 0 : worthLevel(nightWorth);
  return {
    serviceLevel,
    nightWorth,
    levels: nightWorth === null ? [] : itemLevels(past, level),
    triedFrom: later.dates[0] ?? "",
    tried: replayPolicy(later, parAt(level)),
    planned: replayPolicy(later, PLANNED),
    twoWeeks: twoWeeksFigures(later, earlier),
  };
}

/** Each item's level at its last order, cut to what a person would write, for no level is 1. */
function itemLevels(past: Past, level: Level): AsSafe["levels"] {
  const last = new Map(
    past.orders.flatMap(({ items }) => items.map((order) => [order.index, order] as const)),
  );
  return past.items.flatMap((item, index) => {
    const order = last.get(index);
    return order === undefined || order.isSpoilt
      ? []
      : [{ item: item.item, serviceLevel: Math.floor(level(item, order) * 1000) / 1000 }];
  });
}
