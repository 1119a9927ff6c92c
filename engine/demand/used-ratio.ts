import type { ItemDemand } from "#engine/demand/item-demand.ts";
import type { ItemNeed } from "#engine/demand/item-sums.ts";
import { median } from "#engine/demand/median.ts";
import type { Facts } from "#engine/facts.ts";
import { type Ask, batchAsks, saleAsks } from "#engine/sales/asks.ts";
import { expectedUse, type Used } from "#engine/sales/expected-use.ts";
import { businessDateOf } from "#engine/sales/read/clock.ts";
import type { SaleGroup } from "#engine/sales/tally.ts";
import { dividerAt } from "#engine/sales/when.ts";
import { type Balance, balances } from "#engine/stock/balance.ts";
import type { Count } from "#engine/stock/counts.ts";
import { isBetween } from "#engine/stock/on-hand.ts";
import { addDays, type Instant } from "#engine/time.ts";

/** What an item is really used up by for each unit its specs ask for, and the variance of knowing it. */
export type UsedRatio = { ratio: number; variance: number };

/** Older counts speak of an older bar. */
const PERIODS = 8;
/** Two periods cannot tell a habit from a slip. */
const LEAST_PERIODS = 3;
/** Common practice: careful bars use within a twentieth of what their specs say. */
const USUAL_SD = 0.05;
/** A median of so many values scatters as a mean of fewer: π ÷ 2. */
const MEDIAN_VARIANCE = Math.PI / 2;
const LEAST_RATIO = 0.3;
const MOST_RATIO = 3;

/**
 * Reads from the last counts what the bar really uses of each item: pours that run over, spills, and tops whose
 * amount the specs leave open.
 *
 * The median of used ÷ expected over the periods between counts, drawn to 1 as far as their scatter leaves it
 * open; one delivery not entered does not move it. Only items with at least three such periods are in it.
 */
export function usedRatios(facts: Facts, sales: readonly SaleGroup[], at: Instant): Map<string, UsedRatio> {
  const counts = facts.counts.filter((count) => count.at <= at).slice(-PERIODS - 1);
  const [first, last] = [counts[0], counts.at(-1)];
  if (first === undefined || last === undefined || counts.length <= LEAST_PERIODS) return new Map();
  const asks = asksBetween(facts, sales, first, last);
  const seen = new Map<string, Period[]>();
  for (const [index, closing] of counts.entries()) {
    const opening = counts[index - 1];
    if (opening === undefined) continue;
    for (const period of periodsBetween(facts, asks, opening, closing)) {
      seen.set(period.item, [...(seen.get(period.item) ?? []), period]);
    }
  }
  return new Map([...seen].flatMap(([item, periods]) => ratioOf(item, periods)));
}

/** The demand for items as the bar really uses them; items without a ratio are left as they are. */
export function asUsed({ total, days }: ItemDemand, ratios: ReadonlyMap<string, UsedRatio>): ItemDemand {
  return {
    total: scaled(total, ratios),
    days: days.map(({ date, items }) => ({ date, items: scaled(items, ratios) })),
  };
}

function scaled(
  needs: ReadonlyMap<string, ItemNeed>,
  ratios: ReadonlyMap<string, UsedRatio>,
): Map<string, ItemNeed> {
  return new Map(
    [...needs].map(([item, need]) => {
      const known = ratios.get(item);
      if (known === undefined) return [item, need];
      const mean = need.mean * known.ratio;
      const biasSd = need.mean * Math.sqrt(known.variance);
      const apart = Math.max(0, need.variance - need.biasSd ** 2) * known.ratio ** 2;
      return [item, { mean, variance: apart + biasSd ** 2, biasSd }];
    }),
  );
}

/** One item between two counts. */
type Period = { item: string; ratio: number; variance: number; biasCv: number };

function asksBetween(facts: Facts, sales: readonly SaleGroup[], first: Count, last: Count): Ask[] {
  const { catalogue, book } = facts;
  const { from, to } = datesAround(facts, first, last);
  const sold = sales.filter(({ businessDate }) => businessDate >= from && businessDate <= to);
  return [...saleAsks(catalogue, sold).asks, ...batchAsks(catalogue, book)];
}

/** The business dates that may lie between two counts, whose items have moments of their own. */
function datesAround({ catalogue }: Facts, opening: Count, closing: Count) {
  const moments = [...opening.holdings.values()].map(({ at }) => at).sort();
  return {
    from: addDays(businessDateOf(moments[0] ?? opening.at, catalogue.venue), -1),
    to: businessDateOf(closing.at, catalogue.venue),
  };
}

function periodsBetween(facts: Facts, asks: readonly Ask[], opening: Count, closing: Count): Period[] {
  const { venue } = facts.catalogue;
  const byItem = new Map(
    balances(facts.movements, opening, closing).map((balance) => [balance.item, balance]),
  );
  const windows = new Map(
    [...byItem].map(([item, { from, to }]) => [
      item,
      { from: dividerAt(from, venue), to: dividerAt(to, venue) },
    ]),
  );
  const { from, to } = datesAround(facts, opening, closing);
  const use = expectedUse(
    asks.filter(({ businessDate }) => businessDate >= from && businessDate <= to),
    {
      dividersOf: (item) => facts.dividers.get(item) ?? [],
      within: (item, when) => {
        const window = windows.get(item);
        return window !== undefined && isBetween(when, window.from, window.to);
      },
    },
  );
  return [...byItem.values()].flatMap((balance) => periodOf(balance, use.get(balance.item)));
}

function periodOf(
  { item, used, openingVariance, closingVariance }: Balance,
  use: Used | undefined,
): Period[] {
  if (use === undefined || use.amount <= 0) return [];
  const variance = openingVariance + closingVariance + Math.max(0, use.variance);
  // A period whose counting could be off by a third of the use says nothing of the use.
  if (9 * variance > use.amount ** 2) return [];
  return [
    {
      item,
      ratio: used / use.amount,
      variance: variance / use.amount ** 2,
      biasCv: Math.abs(use.bias) / use.amount,
    },
  ];
}

function ratioOf(item: string, periods: readonly Period[]): [string, UsedRatio][] {
  if (periods.length < LEAST_PERIODS) return [];
  const middle = median(periods.map(({ ratio }) => ratio));
  const scatter = 1.4826 * median(periods.map(({ ratio }) => Math.abs(ratio - middle)));
  const counting = median(periods.map(({ variance }) => variance));
  const seenVariance = (MEDIAN_VARIANCE * Math.max(scatter ** 2, counting)) / periods.length;
  const beliefVariance = USUAL_SD ** 2 + median(periods.map(({ biasCv }) => biasCv)) ** 2;
  const trust = beliefVariance / (beliefVariance + seenVariance);
  const ratio = Math.min(MOST_RATIO, Math.max(LEAST_RATIO, 1 + trust * (middle - 1)));
  return [[item, { ratio, variance: (1 - trust) * beliefVariance }]];
}
