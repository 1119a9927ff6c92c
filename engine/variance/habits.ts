import type { Catalogue } from "#engine/catalogue.ts";
import { median } from "#engine/demand/median.ts";
import type { Facts } from "#engine/facts.ts";
import type { SaleGroup } from "#engine/sales/tally.ts";
import { dividerAt } from "#engine/sales/when.ts";
import type { Count } from "#engine/stock/counts.ts";
import type { PeriodAsks } from "#engine/variance/asks.ts";
import { coveredWindows, holdingsOf } from "#engine/variance/neighbours.ts";
import { type ItemPeriod, itemPeriods, type Window } from "#engine/variance/period.ts";

/** What a bar's own earlier weeks say of an estimate that is off by the same every time. */
export type Habit = {
  /** By how many of its standard uncertainties the estimate was off, and how surely that is known: beforehand 0 ± 1. */
  shift: number;
  sd: number;
  /** By how much more than stated the weeks scatter about it, as a factor of the variance; at least 1. */
  scatter: number;
  periods: number;
};

/** Two weeks cannot tell a habit from a slip. */
const LEAST_PERIODS = 3;
const MOST_PERIODS = 8;
/** Of so many windows back the oldest are taken: a leak that began since stands out against them, and keeps standing out. */
const REACH = 26;
/** What lies farther from the middle than this is trouble of its week and no habit. */
const QUIET = 2.5;
/** The habit may lie so many standard uncertainties from the estimate; beyond that something else is wrong. */
const MOST_SHIFT = 2;
/** The stated scatter is worth so many weeks. */
const SCATTER_WORTH = 6;

/** A week as a habit sees it: by how many standard uncertainties of the estimate it was off, and the variance of that. */
type Past = { off: number; variance: number };

/**
 * The habit that earlier weeks bear out: the mean of a normal distribution whose prior is 0 ± 1 (normal–normal
 * update), over those weeks that lie near their median. Undefined for fewer than three.
 *
 * Off by 0.8, 0.9 and 1.0, each ± 0.1 → shift 0.897, sd 0.058.
 */
export function habitFrom(past: readonly Past[]): Habit | undefined {
  if (past.length < LEAST_PERIODS) return undefined;
  const middle = median(past.map(({ off }) => off));
  const spread = 1.4826 * median(past.map(({ off }) => Math.abs(off - middle)));
  const quiet = past.filter(
    ({ off, variance }) => Math.abs(off - middle) <= QUIET * Math.max(spread, Math.sqrt(variance)),
  );
  const mean = quiet.reduce((sum, { off }) => sum + off, 0) / quiet.length;
  const squares = quiet.reduce((sum, { off, variance }) => sum + (off - mean) ** 2 / variance, 0);
  const scatter = Math.max(1, (SCATTER_WORTH + squares) / (SCATTER_WORTH + quiet.length - 1));
  return { ...updated(quiet, scatter), scatter, periods: quiet.length };
}

function updated(past: readonly Past[], scatter: number): { shift: number; sd: number } {
  let precision = 1;
  let sum = 0;
  for (const { off, variance } of past) {
    precision += 1 / (scatter * variance);
    sum += off / (scatter * variance);
  }
  const shift = Math.max(-MOST_SHIFT, Math.min(MOST_SHIFT, sum / precision));
  return { shift, sd: 1 / Math.sqrt(precision) };
}

/**
 * A period with its expected use as the bar's habit has it: the estimate moved by the habit, and only what is still
 * unknown of it left in the uncertainty.
 */
export function withHabit(period: ItemPeriod, habit: Habit | undefined): ItemPeriod {
  const { expected, sd } = period;
  if (habit === undefined || expected.bias === 0) return period;
  const moved = habit.shift * expected.bias;
  const wider = (habit.scatter - 1) * (sd ** 2 - expected.bias ** 2);
  const bias = expected.bias * habit.sd;
  return {
    ...period,
    expected: { amount: expected.amount + moved, variance: expected.variance + wider, bias },
    unexplained: period.unexplained - moved,
    sd: Math.sqrt(sd ** 2 - expected.bias ** 2 + wider + bias ** 2),
    learned: { amount: moved, periods: habit.periods },
  };
}

export function withHabits(
  periods: ReadonlyMap<string, ItemPeriod>,
  habits: ReadonlyMap<string, Habit>,
): Map<string, ItemPeriod> {
  return new Map([...periods].map(([item, period]) => [item, withHabit(period, habits.get(item))]));
}

/** The habits known before a count, by item: of those whose expected use hangs on an estimate. */
export function habitsBefore(
  facts: Facts,
  { sales, asks }: { sales: readonly SaleGroup[]; asks: PeriodAsks },
  opening: Count,
): Map<string, Habit> {
  const past = new Map<string, Past[]>();
  for (const windows of inTurns(habitWindows(facts, opening))) {
    for (const [item, period] of itemPeriods(facts, asks, coveredWindows(facts, windows, sales))) {
      past.set(item, [...(past.get(item) ?? []), ...pastOf(period)]);
    }
  }
  return new Map(
    [...past].flatMap(([item, own]) => {
      const habit = habitFrom(own);
      return habit === undefined ? [] : [[item, habit]];
    }),
  );
}

/** The habit known before each of an item's periods, which follow each other; undefined where there is none yet. */
export function habitsAlong(
  { catalogue }: Facts,
  item: string,
  periods: readonly ItemPeriod[],
): (Habit | undefined)[] {
  if (!periods.some(({ expected }) => expected.bias !== 0)) return periods.map(() => undefined);
  const changes = topUpChanges(catalogue).get(item) ?? [];
  return periods.map(({ opening }, index) => {
    const since = changes.findLast((date) => date <= dateOf(catalogue, opening.at)) ?? "";
    const before = periods
      .slice(Math.max(0, index - REACH), index)
      .filter((period) => dateOf(catalogue, period.opening.at) >= since);
    return habitFrom(before.slice(0, MOST_PERIODS).flatMap(pastOf));
  });
}

function pastOf({ expected: { bias }, unexplained, sd }: ItemPeriod): Past[] {
  const variance = sd ** 2 - bias ** 2;
  return bias > 0 && variance > 0 ? [{ off: unexplained / bias, variance: variance / bias ** 2 }] : [];
}

/** The windows before a count from which each topped-up item's habit is read, oldest first. */
export function habitWindows(facts: Facts, opening: Count): Window[][] {
  const { catalogue } = facts;
  return [...topUpChanges(catalogue)].flatMap(([item, changes]) => {
    const until = opening.holdings.get(item)?.at;
    if (until === undefined) return [];
    const since = changes.findLast((date) => date <= dateOf(catalogue, until)) ?? "";
    const holdings = holdingsOf(facts, item).filter(({ at }) => at <= until);
    const windows = holdings.slice(-REACH - 1).flatMap((closing, index, last): Window[] => {
      const before = last[index - 1];
      return before === undefined || dateOf(catalogue, before.at) < since
        ? []
        : [{ item, opening: before, closing }];
    });
    return windows.length < LEAST_PERIODS ? [] : [windows.slice(0, MOST_PERIODS)];
  });
}

/** The first windows of all items, then the second ones: a window an item at a time. */
function inTurns(windows: readonly Window[][]): Window[][] {
  return Array.from({ length: MOST_PERIODS }, (_, turn) => windows.flatMap((own) => own[turn] ?? []));
}

function dateOf({ venue }: Catalogue, at: string): string {
  return dividerAt(at, venue).businessDate;
}

/** Every item that tops up a glass, with the dates on which a spec that tops with it changed: a new habit begins. */
function topUpChanges({ specs }: Catalogue): Map<string, string[]> {
  const changes = new Map<string, string[]>();
  for (const versions of specs.values()) {
    versions.forEach(({ from, lines }, index) => {
      const before = versions[index - 1]?.lines ?? [];
      const topped = [...before, ...lines].filter(({ unit }) => unit === "top").map(({ item }) => item);
      for (const item of topped) {
        changes.set(item, [...(changes.get(item) ?? []), ...(index === 0 ? [] : [from])]);
      }
    });
  }
  for (const dates of changes.values()) dates.sort();
  return changes;
}
