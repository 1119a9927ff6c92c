import { groupBy } from "#engine/catalogue.ts";
import type { Count } from "#engine/stock/counts.ts";
import { wholeCounts } from "#engine/stock/whole-counts.ts";
import { moneyOf } from "#engine/variance/causes/by-money.ts";
import type { Cause } from "#engine/variance/causes/cause.ts";
import { NO_ACCUSATION, type VarianceReport } from "#engine/variance/report.ts";
import type { TrendReport } from "#engine/variance/trend.ts";
import { type CountsChosen, countsBetween } from "#server/reports/counts-between.ts";
import { trendFor } from "#server/reports/trend.ts";
import { varianceFor } from "#server/reports/variance.ts";
import type { World } from "#server/world.ts";

/** One thing to check: the likeliest explanation of some numbers, and the others of the same numbers. */
export type Check = Pick<Cause, "kind" | "what" | "size" | "unit" | "probability" | "check"> & {
  count: string | null;
  /** Of a miscount: +1 counted too many, −1 too few. */
  sign: 1 | -1 | null;
  /** Of an area that was left out: all its items; else empty. */
  items: string[];
  /** Money it explains, in major units. */
  cost: number;
  rivals: Pick<Cause, "kind" | "what" | "probability">[];
};

const MOST_CHECKS = 3;
const MOST_PERIODS = 6;
const MOST_DRIFTS = 3;

/** The owner's page: cost against spec, unexplained and its past, three things to check, what was settled. */
export async function ownerReportFor(world: World, choice: CountsChosen) {
  const { opening } = countsBetween(world.facts, choice);
  const report = await varianceFor(world, choice);
  const trend = await world.remembered(JSON.stringify(["trend"]), () => trendFor(world, {}));
  const { where, from, to, closing } = report;
  // A few items' cost is no share of all that was sold.
  const totals = report.isOfFew ? { ...report.totals, pourCostPct: null } : report.totals;
  return {
    venue: world.facts.catalogue.venue.name,
    opening: report.opening,
    closing,
    from,
    to,
    totals,
    specCostPct: totals.pourCostPct === null ? null : (totals.expectedCost / totals.sales) * 100,
    isOfFew: report.isOfFew,
    /** How many items both counts saw whole; without any there is nothing to say. */
    compared: report.items.length,
    periods: periodsUpTo(trend, to, world.facts.counts),
    drifts: trend.items
      .flatMap(({ item, base, drift }) => (drift === null ? [] : [{ item, base, ...drift }]))
      .slice(0, MOST_DRIFTS),
    checks: checksOf(report),
    settled: world.settlements
      .filter(({ takenBackAt, settledAt }) => takenBackAt === null && settledAt >= opening.at)
      .map(({ id, answer, settledAt, cause, correction }) => ({
        id,
        answer,
        settledAt,
        cause,
        words: correction?.words ?? null,
      }))
      .reverse(),
    where,
    spotCount: report.spotCount,
    notCounted: report.notCounted.length + Object.keys(report.notCountedIn).length,
    caution: NO_ACCUSATION,
  };
}

/**
 * Unexplained money of the periods that ended by then, oldest first, at the cost of today. A spot count ends none: what it
 * split off belongs to the whole count after it.
 */
function periodsUpTo({ items }: TrendReport, until: string, counts: readonly Count[]) {
  const whole = new Set(wholeCounts(counts));
  const endOf = new Map(
    counts.map(({ name }, at) => [name, counts.slice(at).find((count) => whole.has(count))?.name]),
  );
  const sums = new Map<string, { closing: string; to: string; cost: number; variance: number }>();
  for (const { costPerBase, points } of items) {
    if (costPerBase === null) continue;
    for (const { closing: counted, to, unexplained, sd } of points) {
      const closing = endOf.get(counted);
      if (closing === undefined) continue;
      const held = sums.get(closing) ?? { closing, to, cost: 0, variance: 0 };
      if (to > held.to) held.to = to;
      held.cost += unexplained * costPerBase;
      held.variance += (sd * costPerBase) ** 2;
      sums.set(closing, held);
    }
  }
  return [...sums.values()]
    .filter(({ to }) => to <= until)
    .sort((a, b) => (a.to < b.to ? -1 : 1))
    .slice(-MOST_PERIODS)
    .map(({ closing, to, cost, variance }) => ({ closing, to, cost, sd: Math.sqrt(variance) }));
}

/** The first of each group, an area that was left out as one, those that explain most money first. */
function checksOf(report: VarianceReport): Check[] {
  const groups = [...groupBy(report.causes, ({ group }) => String(group)).values()];
  const checks = groups.flatMap(([first, ...rivals]) =>
    first === undefined ? [] : [checkOf(report, first, rivals)],
  );
  const bySkip = groupBy(checks, (check) =>
    check.kind === "area-skipped" ? `skipped ${check.count}` : JSON.stringify([check.kind, check.what]),
  );
  return [...bySkip.values()]
    .flatMap(([first, ...rest]) => {
      if (first === undefined) return [];
      if (rest.length === 0) return [first];
      const all = [first, ...rest];
      return [
        {
          ...first,
          items: all.map(({ what }) => [what].flat().join(", ")),
          cost: all.reduce((sum, { cost }) => sum + cost, 0),
        },
      ];
    })
    .sort((a, b) => b.cost * b.probability - a.cost * a.probability)
    .slice(0, MOST_CHECKS);
}

function checkOf(report: VarianceReport, cause: Cause, rivals: readonly Cause[]): Check {
  const { kind, what, size, unit, probability, check, count = null, sign = null } = cause;
  return {
    kind,
    what,
    size,
    unit,
    probability,
    check,
    count,
    sign,
    items: [],
    cost: moneyOf(report, cause),
    rivals: rivals.map((rival) => ({ kind: rival.kind, what: rival.what, probability: rival.probability })),
  };
}
