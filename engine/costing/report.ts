import { billCost } from "#engine/costing/portion-cost.ts";
import { type UnitCosts, unitCosts } from "#engine/costing/unit-cost.ts";
import { currencyDigits } from "#engine/currency.ts";
import type { Facts } from "#engine/facts.ts";
import type { BaseUnit } from "#engine/measure/units.ts";
import { businessDateOf } from "#engine/sales/read/clock.ts";
import { billOf } from "#engine/specs/bill.ts";
import { modifyLines, serveLines, servePortions } from "#engine/specs/serve.ts";
import { type BusinessDate, type Instant, justAfter } from "#engine/time.ts";
import { inForce } from "#engine/versions.ts";

/** Money in major units. `costPct` = cost ÷ price × 100; `contribution` = price − cost. */
export type DrinkCost = {
  drink: string;
  /** First day of the version reckoned with. */
  from: BusinessDate;
  cost: number | null;
  price: number | null;
  costPct: number | null;
  contribution: number | null;
  /** Items without a known price, for which the cost is null. */
  unpriced: string[];
};

export type ItemCost = { item: string; base: BaseUnit; costPerBase: number | null };

export type CostReport = { drinks: DrinkCost[]; items: ItemCost[] };

/** What each drink's spec costs on a moment's business date, and each item's cost per base unit. */
export function costReport(facts: Facts, at: Instant): CostReport {
  const { catalogue } = facts;
  const costs = unitCosts(facts, justAfter(at));
  const date = businessDateOf(at, catalogue.venue);
  return {
    drinks: [...catalogue.drinks.keys()].flatMap((drink) => drinkCost(facts, drink, date, costs) ?? []),
    items: [...catalogue.items.values()].map(({ name, base }) => ({
      item: name,
      base,
      costPerBase: costs.get(name) ?? null,
    })),
  };
}

/** The cost of a drink's version in force; undefined before its first version. */
export function drinkCost(
  { catalogue }: Facts,
  drink: string,
  date: BusinessDate,
  costs: UnitCosts,
): DrinkCost | undefined {
  const version = inForce(catalogue.specs.get(drink) ?? [], date);
  const lines = serveLines(catalogue, drink, date);
  if (version === undefined || lines === undefined) return undefined;
  const facts = catalogue.drinks.get(drink);
  const portions = servePortions(catalogue, facts, modifyLines(lines, []));
  const { cost, unpriced } = billCost(billOf(catalogue, portions, { date }), costs);
  const priceMinor = facts?.priceMinor ?? null;
  const price = priceMinor === null ? null : priceMinor / 10 ** currencyDigits(catalogue.venue.currency);
  return {
    drink,
    from: version.from,
    cost,
    price,
    costPct: cost === null || price === null || price === 0 ? null : (cost / price) * 100,
    contribution: cost === null || price === null ? null : price - cost,
    unpriced,
  };
}
