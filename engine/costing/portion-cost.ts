import type { UnitCosts } from "#engine/costing/unit-cost.ts";
import type { Bill } from "#engine/specs/bill.ts";
import { fruitOf } from "#engine/specs/fruit.ts";
import type { Recipe } from "#engine/specs/recipe.ts";

/** Cost of one base unit of what a recipe makes; null when an input's price is not known. */
export function portionCost(recipe: Recipe, costs: UnitCosts): number | null {
  const inputs = recipe.inputs.map(({ item, perUnit }) => ({ item, amount: perUnit }));
  const fruit =
    recipe.cut === undefined ? [] : [{ item: recipe.cut.source, amount: 1 / recipe.cut.perPiece }];
  return costOf([...inputs, ...fruit], costs);
}

/**
 * Cost of one making of a bill, its fruit by the shared-parts rule of one serve; null when a price is
 * not known, with the items that lack one in `billCost`'s other half, `unpriced`.
 */
export function billCost(bill: Bill, costs: UnitCosts): { cost: number | null; unpriced: string[] } {
  const portions = [...bill.items, ...fruitOf(bill)];
  const unpriced = portions.filter(({ item }) => costs.get(item) == null).map(({ item }) => item);
  return { cost: costOf(portions, costs), unpriced: [...new Set(unpriced)] };
}

function costOf(portions: readonly { item: string; amount: number }[], costs: UnitCosts): number | null {
  let sum = 0;
  for (const { item, amount } of portions) {
    const cost = costs.get(item);
    if (cost == null) return null;
    sum += amount * cost;
  }
  return sum;
}
