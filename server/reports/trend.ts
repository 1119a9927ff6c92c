import { unitCosts } from "#engine/costing/unit-cost.ts";
import type { Facts } from "#engine/facts.ts";
import { foldName } from "#engine/name.ts";
import { type TrendReport, trendReport } from "#engine/variance/trend.ts";
import { InputError } from "#server/input-error.ts";
import { momentOf, type World } from "#server/world.ts";

/** The trend of unexplained use over all counts, of one item where one is named. */
export async function trendFor(world: World, { item }: { item?: string | undefined }): Promise<TrendReport> {
  const { facts } = world;
  const costPerBase = unitCosts(facts, momentOf(world));
  const named = item === undefined ? {} : { item: itemKnown(facts, item) };
  return trendReport({ facts, sales: await world.salesBetween({}), costPerBase, ...named });
}

/** An item's name as the book spells it. Throws InputError when there is none. */
export function itemKnown({ catalogue }: Facts, name: string): string {
  const known = catalogue.itemNames.get(foldName(name));
  if (known === undefined) throw new InputError(`No item is named "${name}".`);
  return known;
}
