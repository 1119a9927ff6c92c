import { groupBy } from "#engine/catalogue.ts";
import { listCostPerBase, priceOf } from "#engine/costing/pack-price.ts";
import { portionCost } from "#engine/costing/portion-cost.ts";
import { currencyDigits } from "#engine/currency.ts";
import type { Facts } from "#engine/facts.ts";
import { businessDateOf } from "#engine/sales/read/clock.ts";
import { recipeInForce } from "#engine/specs/recipe.ts";
import type { Delivery } from "#engine/stock/movement.ts";
import { containerSize, containersIn, packNamed } from "#engine/stock/pack.ts";
import type { BusinessDate, Instant } from "#engine/time.ts";

/** Cost per base unit in major money units; null for what is bought at a price nobody wrote down. */
export type UnitCosts = Map<string, number | null>;

/**
 * Weighted-average cost of every item at a moment; of an item with a moment of its own, at that.
 *
 * Between two counts the cost is the average of the opening stock, at the cost carried into it, and of
 * the deliveries of the period: 1000 ml at 0.02 and 700 ml delivered for 21.00 → 41/1700 = 0.0241. Before
 * the first count it is the first price in the packs. A prep costs what its inputs cost per its yield.
 */
export function unitCosts(
  facts: Facts,
  at: Instant,
  ownMoments: ReadonlyMap<string, { at: Instant }> = new Map(),
): UnitCosts {
  const { catalogue, book } = facts;
  const date = businessDateOf(at, catalogue.venue);
  const deliveries = groupBy(book.deliveries, (delivery) => delivery.item);
  const costs: UnitCosts = new Map();
  for (const name of catalogue.items.keys()) {
    const bought = (deliveries.get(name) ?? []).length > 0 || (catalogue.packs.get(name) ?? []).length > 0;
    const until = ownMoments.get(name)?.at ?? at;
    if (bought) costs.set(name, boughtCost(facts, name, deliveries.get(name) ?? [], until));
  }
  for (const name of catalogue.items.keys()) madeCost(facts, name, date, costs, []);
  return costs;
}

function boughtCost(facts: Facts, item: string, deliveries: readonly Delivery[], at: Instant): number | null {
  const { catalogue } = facts;
  const holdings = facts.counts
    .flatMap((count) => count.holdings.get(item) ?? [])
    .filter((held) => held.at < at);
  const first = holdings[0]?.at ?? at;
  let cost = listCostPerBase(catalogue, item, businessDateOf(first, catalogue.venue));
  for (const [index, opening] of holdings.entries()) {
    const until = holdings[index + 1]?.at ?? at;
    const received = deliveries.filter((delivery) => delivery.at >= opening.at && delivery.at < until);
    cost = averagedWith(facts, cost, Math.max(0, opening.quantity), received);
  }
  if (holdings.length > 0) return cost;
  return averagedWith(
    facts,
    cost,
    0,
    deliveries.filter((delivery) => delivery.at < at),
  );
}

function averagedWith(
  facts: Facts,
  openingCost: number | null,
  openingQty: number,
  deliveries: readonly Delivery[],
): number | null {
  let quantity = openingCost === null ? 0 : openingQty;
  let value = (openingCost ?? 0) * quantity;
  for (const delivery of deliveries) {
    const bought = deliveredCost(facts, delivery);
    if (bought === undefined) continue;
    quantity += bought.quantity;
    value += bought.value;
  }
  return quantity > 0 ? value / quantity : openingCost;
}

function deliveredCost(
  { catalogue }: Facts,
  { item, pack, supplier, at, quantity, of, priceTotalMinor }: Delivery,
): { quantity: number; value: number } | undefined {
  const date = businessDateOf(at, catalogue.venue);
  const bought = packNamed(catalogue, { item, pack, supplier, date });
  if (bought === undefined) return undefined;
  const value =
    priceTotalMinor === null
      ? priceOf(bought, quantity, of)
      : priceTotalMinor / 10 ** currencyDigits(catalogue.venue.currency);
  if (value === null) return undefined;
  return { quantity: containersIn(bought, quantity, of) * containerSize(catalogue, bought), value };
}

/** Fills in the cost of what is made in house, inputs first; a bought item keeps its bought cost. */
function madeCost(
  facts: Facts,
  name: string,
  date: BusinessDate,
  costs: UnitCosts,
  path: readonly string[],
): number | null {
  const known = costs.get(name);
  if (known !== undefined) return known;
  const recipe = recipeInForce(facts.catalogue, name, date);
  if (recipe === undefined || path.includes(name)) {
    // What is neither bought nor made costs nothing (water); a prep without a recipe costs nobody knows what.
    const cost = facts.catalogue.items.get(name)?.inHouse ? null : 0;
    costs.set(name, cost);
    return cost;
  }
  const inner = [...path, name];
  for (const { item } of recipe.inputs) madeCost(facts, item, date, costs, inner);
  if (recipe.cut !== undefined) madeCost(facts, recipe.cut.source, date, costs, inner);
  const cost = portionCost(recipe, costs);
  costs.set(name, cost);
  return cost;
}
