import { itemNamed } from "#engine/catalogue.ts";
import type { Facts } from "#engine/facts.ts";
import type { BaseUnit } from "#engine/measure/units.ts";
import { localMinute } from "#engine/sales/read/clock.ts";
import type { SaleGroup } from "#engine/sales/tally.ts";
import type { Count } from "#engine/stock/counts.ts";
import { periodAsks } from "#engine/variance/asks.ts";
import type { Cause } from "#engine/variance/causes/cause.ts";
import type { Experience } from "#engine/variance/causes/experience.ts";
import { causesIn } from "#engine/variance/causes/find.ts";
import { sceneOf } from "#engine/variance/causes/scene.ts";
import { habitsBefore, withHabits } from "#engine/variance/habits.ts";
import { countedShort, notCounted } from "#engine/variance/not-counted.ts";
import { type ItemPeriod, itemPeriods, windowsBetween } from "#engine/variance/period.ts";
import { type SpotCount, spotCount } from "#engine/variance/spot.ts";
import type { Thresholds } from "#engine/variance/thresholds.ts";
import { inMajor, netSalesBetween, type Totals, totalsOf } from "#engine/variance/totals.ts";
import { DEFAULT_THRESHOLDS, ratioOf, type Verdict, verdicts } from "#engine/variance/verdict.ts";
import { type Where, whereItIs } from "#engine/variance/where.ts";

/** One item between two counts, in base units; `cost` = unexplained at cost, in major units of money. */
export type VarianceItem = {
  item: string;
  category: string;
  base: BaseUnit;
  openingQty: number;
  received: number;
  made: number;
  transferredIn: number;
  transferredOut: number;
  closingQty: number;
  used: number;
  expected: number;
  losses: number;
  unexplained: number;
  /** Standard uncertainty of `unexplained`. */
  sd: number;
  ratio: number;
  verdict: Verdict;
  cost: number | null;
  /** Of what is topped up by eye: by how much `expected` follows the bar's own earlier periods, and how many. */
  learned?: { amount: number; periods: number };
};

export type VarianceReport = {
  opening: string;
  closing: string;
  /** The counts' moments on the venue's clock, "YYYY-MM-DD HH:MM". */
  from: string;
  to: string;
  items: VarianceItem[];
  notCounted: string[];
  notCountedIn: Record<string, string[]>;
  causes: Cause[];
  totals: Totals;
  /** The few items worth counting tonight. */
  spotCount: SpotCount;
  /** What is unexplained by category, by area and by drink. */
  where: Where;
};

export type VarianceInput = {
  facts: Facts;
  /** Sales that reach over `salesNeeded` (sales-needed.ts); the days that a count divides line by line. */
  sales: readonly SaleGroup[];
  opening: Count;
  closing: Count;
  /** Major units per base unit; null where the price is not known. */
  costPerBase: Map<string, number | null>;
  /** Net sales between the counts, where the caller knows them better than the groups do. */
  salesNetMinor?: number;
  /** What the venue confirmed and refuted so far. */
  experience?: Experience;
};

/** Shown wherever a variance is shown. */
export const NO_ACCUSATION =
  "A variance is no accusation: it says that the numbers do not meet, not who or what made them differ. Check the counts, invoices and specs first.";

/**
 * What was used between two counts against what the drinks sold and the batches made should have used.
 *
 * An item that one of the counts missed, or counted in only some of its areas, has no variance and is
 * listed as such. Items come by the money unexplained, largest first.
 */
export function varianceReport(input: VarianceInput): VarianceReport {
  const { facts, sales, opening, closing, costPerBase } = input;
  const { venue } = facts.catalogue;
  const { thresholds = DEFAULT_THRESHOLDS } = venue;
  const asks = periodAsks(facts, sales);
  const habits = habitsBefore(facts, { sales, asks }, opening);
  const periods = withHabits(itemPeriods(facts, asks, windowsBetween(opening, closing)), habits);
  const netMinor = input.salesNetMinor ?? netSalesBetween(facts, sales, opening, closing);
  const items = reportItems(facts, [...periods.values()], costPerBase, thresholds);
  const scene = sceneOf({ facts, sales, asks, opening, closing, periods, habits });
  const causes = scene === undefined ? [] : causesIn(scene, input.experience);
  return {
    opening: opening.name,
    closing: closing.name,
    from: localMinute(opening.at, venue),
    to: localMinute(closing.at, venue),
    items,
    notCounted: notCounted(facts, opening, closing),
    notCountedIn: countedShort(opening, closing),
    causes,
    totals: totalsOf(periods.values(), costPerBase, inMajor(netMinor, venue.currency)),
    spotCount: spotCount(facts, { items, causes }),
    where: whereItIs(facts, items, scene),
  };
}

function reportItems(
  { catalogue }: Facts,
  periods: readonly ItemPeriod[],
  costPerBase: Map<string, number | null>,
  thresholds: Thresholds,
): VarianceItem[] {
  const weighed = periods.map((period) => {
    const perBase = costPerBase.get(period.item) ?? null;
    return { period, ratio: ratioOf(period), cost: perBase === null ? null : period.unexplained * perBase };
  });
  const verdictOf = verdicts(weighed, thresholds);
  return weighed
    .map(({ period, ratio, cost }, index): VarianceItem => {
      const { item, opening, closing, expected, used, losses, unexplained, sd } = period;
      const { category, base } = itemNamed(catalogue, item);
      const { received, made, transferredIn, transferredOut } = period;
      return {
        item,
        category,
        base,
        openingQty: opening.quantity,
        received,
        made,
        transferredIn,
        transferredOut,
        closingQty: closing.quantity,
        used,
        expected: expected.amount,
        losses,
        unexplained,
        sd,
        ratio,
        verdict: verdictOf[index] ?? "quiet",
        cost,
        ...(period.learned === undefined ? {} : { learned: period.learned }),
      };
    })
    .sort(byMoney);
}

/** Largest money first; what has no known cost comes after, the names in order. */
function byMoney(a: VarianceItem, b: VarianceItem): number {
  const money = (item: VarianceItem) => (item.cost === null ? -1 : Math.abs(item.cost));
  return money(b) - money(a) || (a.item < b.item ? -1 : a.item > b.item ? 1 : 0);
}
