import { itemNamed } from "#engine/catalogue.ts";
import type { Facts } from "#engine/facts.ts";
import { shownAmount } from "#engine/measure/shown-amount.ts";
import { expectedUse } from "#engine/sales/expected-use.ts";
import type { SaleGroup } from "#engine/sales/tally.ts";
import type { Count } from "#engine/stock/counts.ts";
import { asksOn, datesBetween, dividersWithin, periodAsks } from "#engine/variance/asks.ts";
import { habitsBefore, withHabits } from "#engine/variance/habits.ts";
import { itemPeriods, spanOf, windowFilter, windowsBetween } from "#engine/variance/period.ts";

/** Where an item's uncertainty comes from: shares of the variance that add up to 1. */
export type Budget = {
  item: string;
  sd: number;
  shares: { opening: number; closing: number; pours: number; yields: number; topUps: number };
  /** The largest share in one line, as "most of the ± 310 ml is the open containers at closing". */
  text: string;
  /** Where an estimate follows the bar's own earlier periods: by how much, and how many they are. */
  learned: { amount: number; periods: number } | null;
};

const SOURCES = {
  opening: "how exactly the opening count could be read",
  closing: "how exactly the closing count could be read",
  pours: "the spread of single pours",
  yields: "the spread of what batches yield",
  topUps: "the estimate of top-ups",
} as const;

/** The uncertainty budget of one item between two counts; undefined where it has no variance. */
export function uncertaintyBudget(
  facts: Facts,
  sales: readonly SaleGroup[],
  item: string,
  opening: Count,
  closing: Count,
): Budget | undefined {
  const windows = windowsBetween(opening, closing).filter((window) => window.item === item);
  const span = spanOf(windows);
  if (span === undefined) return undefined;
  const asks = periodAsks(facts, sales);
  const habits = habitsBefore(facts, { sales, asks }, opening);
  const period = withHabits(itemPeriods(facts, asks, windows), habits).get(item);
  if (period === undefined) return undefined;
  const dates = datesBetween(facts, span);
  const options = {
    dividersOf: dividersWithin(facts.dividers, dates),
    within: windowFilter(facts, windows),
  };
  const yields = expectedUse(asksOn(asks.batched, dates), options).get(item)?.variance ?? 0;
  const variances = {
    opening: period.opening.variance,
    closing: period.closing.variance,
    pours: Math.max(0, period.expected.variance - yields),
    yields,
    topUps: period.expected.bias ** 2,
  };
  const sum = Object.values(variances).reduce((total, variance) => total + variance, 0);
  const share = (variance: number) => (sum === 0 ? 0 : variance / sum);
  const shares = {
    opening: share(variances.opening),
    closing: share(variances.closing),
    pours: share(variances.pours),
    yields: share(variances.yields),
    topUps: share(variances.topUps),
  };
  return {
    item,
    sd: period.sd,
    shares,
    text: budgetText(facts, item, period.sd, shares),
    learned: period.learned ?? null,
  };
}

function budgetText(facts: Facts, item: string, sd: number, shares: Budget["shares"]): string {
  const { base } = itemNamed(facts.catalogue, item);
  const shown = shownAmount(sd, base, facts.catalogue.venue);
  const amount = `± ${base === "each" ? `${shown} pieces` : shown}`;
  const [largest, share] = Object.entries(shares).reduce((a, b) => (b[1] > a[1] ? b : a)) as [
    keyof typeof SOURCES,
    number,
  ];
  if (sd === 0) return "Everything was counted and sold whole: there is no uncertainty to speak of.";
  const part = share > 0.5 ? "Most" : "The largest part";
  return `${part} of the ${amount} is ${SOURCES[largest]} (${Math.round(share * 100)} %).`;
}
