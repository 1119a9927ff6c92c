import { groupBy } from "#engine/catalogue.ts";
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
  const { totals, where, from, to, closing } = report;
  return {
    venue: world.facts.catalogue.venue.name,
    opening: report.opening,
    closing,
    from,
    to,
    totals,
    specCostPct: totals.sales > 0 ? (totals.expectedCost / totals.sales) * 100 : null,
    periods: periodsUpTo(trend, to),
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

/** Unexplained money of the periods that ended by then, oldest first, at the cost of today. */
function periodsUpTo({ items }: TrendReport, until: string) {
  const sums = new Map<string, { closing: string; to: string; cost: number; variance: number }>();
  for (const { costPerBase, points } of items) {
    if (costPerBase === null) continue;
    for (const { closing, to, unexplained, sd } of points) {
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
  const { kind, what, size, unit, probability, check, count = null, sign = null, evidence } = cause;
  const cost = evidence.reduce((sum, { item, amount }) => {
    const row = report.items.find((one) => one.item === item);
    const perBase = row?.cost == null || row.unexplained === 0 ? 0 : row.cost / row.unexplained;
    return sum + Math.abs(amount * perBase);
  }, 0);
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
    cost,
    rivals: rivals.map((rival) => ({ kind: rival.kind, what: rival.what, probability: rival.probability })),
  };
}
