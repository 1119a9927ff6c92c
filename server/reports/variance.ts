import { unitCosts } from "#engine/costing/unit-cost.ts";
import { salesNeeded } from "#engine/variance/neighbours.ts";
import { type VarianceReport, varianceReport } from "#engine/variance/report.ts";
import { countsBetween } from "#server/reports/counts-between.ts";
import type { World } from "#server/world.ts";

export type VarianceChoice = { count?: string | undefined; since?: string | undefined };

/** The variance between the counts named, by default the last two. */
export async function varianceFor(world: World, choice: VarianceChoice): Promise<VarianceReport> {
  const { facts } = world;
  const { opening, closing } = countsBetween(facts, choice);
  const sales = await world.salesBetween(salesNeeded(facts, opening, closing));
  return varianceReport({ facts, sales, opening, closing, costPerBase: unitCosts(facts, closing.at) });
}
