import { itemNamed } from "#engine/catalogue.ts";
import type { Facts } from "#engine/facts.ts";
import type { BaseUnit } from "#engine/measure/units.ts";
import { localMinute } from "#engine/sales/read/clock.ts";
import type { SaleGroup } from "#engine/sales/tally.ts";
import { periodAsks } from "#engine/variance/asks.ts";
import { cusum, cusumSignal, ewma, shiftBegan } from "#engine/variance/control-chart.ts";
import { habitsAlong, withHabit } from "#engine/variance/habits.ts";
import { type ItemPeriod, itemPeriods, type Window } from "#engine/variance/period.ts";
import { ratioOf } from "#engine/variance/verdict.ts";

/**
 * How the charts are set, in standard uncertainties.
 *
 * EWMA λ 0.2 with limits at 2.962 and CUSUM with k 0.5 and h 5 both alarm falsely once in some 480 points and
 * find a steady shift of one standard uncertainty after 10 (published run lengths). Two counts in a row share
 * one, so that a count that was off is taken back by the next point and false alarms are rarer still. A point
 * counts for no more than 3: one broken bottle or one skipped area is a leap, not a leak, and the variance of
 * its own week tells of it.
 */
export const CHART = { lambda: 0.2, width: 2.962, slack: 0.5, limit: 5, most: 3 } as const;

/** One item between two of its whole counts that follow each other. */
export type TrendPoint = {
  opening: string;
  closing: string;
  /** On the venue's clock, "YYYY-MM-DD HH:MM". */
  from: string;
  to: string;
  unexplained: number;
  sd: number;
  ratio: number;
  ewma: number;
  ewmaLimit: number;
  cusumHigh: number;
  cusumLow: number;
};

/** A steady drift that no single period need show. */
export type Drift = {
  /** `missing`: more goes than is explained; `over`: less. */
  direction: "missing" | "over";
  charts: ("ewma" | "cusum")[];
  /** The count after which it began, by the best estimate. */
  since: string;
  sinceAt: string;
  /** Median unexplained per period since, in base units, and at cost in major units. */
  perPeriod: number;
  costPerPeriod: number | null;
};

export type ItemTrend = {
  item: string;
  category: string;
  base: BaseUnit;
  /** Major units; null where the price is not known. */
  costPerBase: number | null;
  points: TrendPoint[];
  drift: Drift | null;
};

export type TrendReport = { items: ItemTrend[] };

export type TrendInput = {
  facts: Facts;
  /** From the first count to the last; the days that a count divides line by line. */
  sales: readonly SaleGroup[];
  costPerBase: Map<string, number | null>;
  /** Only this item. */
  item?: string;
};

/**
 * Each item's unexplained use over its counts, with EWMA and tabular CUSUM.
 *
 * An item's points lie between its own whole counts that follow each other: a spot count of a few bottles
 * makes a short period of those bottles alone. Items with a drift come first, by money.
 */
export function trendReport({ facts, sales, costPerBase, item }: TrendInput): TrendReport {
  const asks = periodAsks(facts, sales);
  const series = new Map<string, { pair: CountPair; period: ItemPeriod }[]>();
  for (const pair of countPairs(facts, item)) {
    for (const [name, period] of itemPeriods(facts, asks, pair.windows)) {
      const own = series.get(name) ?? [];
      own.push({ pair, period });
      series.set(name, own);
    }
  }
  const items = [...series].map(([name, own]) => itemTrend(facts, name, own, costPerBase.get(name) ?? null));
  return { items: items.sort(byDrift) };
}

/** Two counts between which some items were not counted whole. */
type CountPair = { opening: string; closing: string; windows: Window[] };

function countPairs({ counts }: Facts, only: string | undefined): CountPair[] {
  const pairs = new Map<string, CountPair>();
  const last = new Map<string, { count: string; holding: Window["opening"] }>();
  for (const { name: closing, holdings, missedAreas } of counts) {
    for (const [item, holding] of holdings) {
      if (missedAreas.has(item) || (only !== undefined && item !== only)) continue;
      const before = last.get(item);
      last.set(item, { count: closing, holding });
      if (before === undefined || before.holding.at >= holding.at) continue;
      const key = JSON.stringify([before.count, closing]);
      const pair = pairs.get(key) ?? { opening: before.count, closing, windows: [] };
      pair.windows.push({ item, opening: before.holding, closing: holding });
      pairs.set(key, pair);
    }
  }
  return [...pairs.values()];
}

function itemTrend(
  facts: Facts,
  item: string,
  found: readonly { pair: CountPair; period: ItemPeriod }[],
  costPerBase: number | null,
): ItemTrend {
  const { catalogue } = facts;
  const habits = habitsAlong(
    facts,
    item,
    found.map(({ period }) => period),
  );
  const series = found.map(({ pair, period }, index) => ({ pair, period: withHabit(period, habits[index]) }));
  const ratios = series.map(({ period }) => ratioOf(period));
  const charted = ratios.map((ratio) => Math.max(-CHART.most, Math.min(CHART.most, ratio)));
  const averages = ewma(charted, { lambda: CHART.lambda, target: 0, sd: 1, width: CHART.width });
  const sums = cusum(charted, { target: 0, slack: CHART.slack });
  const local = (at: string) => localMinute(at, catalogue.venue);
  const points = series.map(
    ({ pair, period }, index): TrendPoint => ({
      opening: pair.opening,
      closing: pair.closing,
      from: local(period.opening.at),
      to: local(period.closing.at),
      unexplained: period.unexplained,
      sd: period.sd,
      ratio: ratios[index] ?? 0,
      ewma: averages[index]?.value ?? 0,
      ewmaLimit: averages[index]?.halfWidth ?? 0,
      cusumHigh: sums[index]?.high ?? 0,
      cusumLow: sums[index]?.low ?? 0,
    }),
  );
  const { category, base } = itemNamed(catalogue, item);
  return { item, category, base, costPerBase, points, drift: driftOf(points, charted, costPerBase) };
}

/** One odd period can carry a chart over its limit, but nothing is steady before a third (common practice). */
const FEWEST_PERIODS = 3;

/** The drift that the charts show at the last point, if any. */
function driftOf(
  points: readonly TrendPoint[],
  charted: readonly number[],
  costPerBase: number | null,
): Drift | null {
  const last = points.at(-1);
  if (last === undefined || points.length < FEWEST_PERIODS) return null;
  const sums = points.map(({ cusumHigh, cusumLow }) => ({ high: cusumHigh, low: cusumLow }));
  const signal = cusumSignal(sums, CHART.limit);
  const isOut = Math.abs(last.ewma) > last.ewmaLimit;
  if (signal === undefined && !isOut) return null;
  const direction = signal?.direction ?? (last.ewma > 0 ? "high" : "low");
  const run = points.slice(shiftBegan(charted, direction));
  const perPeriod = middleOf(run.map(({ unexplained }) => unexplained));
  return {
    direction: direction === "high" ? "missing" : "over",
    charts: [...(isOut ? (["ewma"] as const) : []), ...(signal === undefined ? [] : (["cusum"] as const))],
    since: run[0]?.opening ?? last.opening,
    sinceAt: run[0]?.from ?? last.from,
    perPeriod,
    costPerPeriod: costPerBase === null ? null : perPeriod * costPerBase,
  };
}

/** The median: one wild week does not make the leak larger. */
function middleOf(values: readonly number[]): number {
  const sorted = [...values].sort((a, b) => a - b);
  const half = sorted.length / 2;
  return ((sorted[Math.ceil(half) - 1] ?? 0) + (sorted[Math.floor(half)] ?? 0)) / 2;
}

function byDrift(a: ItemTrend, b: ItemTrend): number {
  const money = ({ drift }: ItemTrend) => (drift === null ? -1 : Math.abs(drift.costPerPeriod ?? 0));
  return money(b) - money(a) || (a.item < b.item ? -1 : a.item > b.item ? 1 : 0);
}
