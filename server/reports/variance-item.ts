import { unitCosts } from "#engine/costing/unit-cost.ts";
import { localMinute } from "#engine/sales/read/clock.ts";
import { uncertaintyBudget } from "#engine/variance/budget.ts";
import { causesByMoney } from "#engine/variance/causes/by-money.ts";
import { drinksThatUsed } from "#engine/variance/drinks-that-used.ts";
import { salesNeeded } from "#engine/variance/sales-needed.ts";
import { trendReport } from "#engine/variance/trend.ts";
import { type CountsChosen, countsBetween } from "#server/reports/counts-between.ts";
import { itemKnown } from "#server/reports/trend.ts";
import { varianceFor } from "#server/reports/variance.ts";
import type { World } from "#server/world.ts";

/** All there is to see of one item between two counts. */
export async function varianceItemFor(world: World, choice: CountsChosen & { item: string }) {
  const { facts } = world;
  const item = itemKnown(facts, choice.item);
  const { opening, closing } = countsBetween(facts, choice);
  const report = await varianceFor(world, choice);
  const sales = await world.salesBetween(salesNeeded(facts, opening, closing));
  const trend = trendReport({
    facts,
    sales: await world.salesBetween({}),
    costPerBase: unitCosts(facts, closing.at, closing.holdings),
    item,
  });
  const causes = causesByMoney(report).filter(({ evidence }) => evidence.some((one) => one.item === item));
  const explained = new Set(causes.flatMap(({ evidence }) => evidence.map((one) => one.item)));
  return {
    opening: report.opening,
    closing: report.closing,
    from: report.from,
    to: report.to,
    /** Null when one of the counts missed the item, or an area of it. */
    balance: report.items.find((row) => row.item === item) ?? null,
    notCountedIn: report.notCountedIn[item] ?? [],
    causes,
    /** In which unit each item that the causes explain is kept. */
    bases: Object.fromEntries(
      report.items.filter((row) => explained.has(row.item)).map((row) => [row.item, row.base]),
    ),
    drinks: drinksThatUsed(facts, sales, item, opening, closing),
    budget: uncertaintyBudget(facts, sales, item, opening, closing) ?? null,
    trend: trend.items[0] ?? null,
    counts: facts.book.counts
      .filter((row) => row.item === item && [opening.name, closing.name].includes(row.count))
      .map((row) => ({ ...row, local: localMinute(row.at, facts.catalogue.venue) })),
  };
}
