import { unitCosts } from "#engine/costing/unit-cost.ts";
import type { Count } from "#engine/stock/counts.ts";
import { type VarianceReport, varianceReport } from "#engine/variance/report.ts";
import { salesNeeded } from "#engine/variance/sales-needed.ts";
import { experienceFrom } from "#server/causes/experience.ts";
import { type CountsChosen, countsBetween } from "#server/reports/counts-between.ts";
import type { World } from "#server/world.ts";

/** The variance between the counts named, by default the last two. */
export async function varianceFor(world: World, choice: CountsChosen): Promise<VarianceReport> {
  const { opening, closing } = countsBetween(world.facts, choice);
  const key = JSON.stringify(["variance", opening.name, closing.name]);
  return world.remembered(key, () => varianceBetween(world, opening, closing));
}

async function varianceBetween(world: World, opening: Count, closing: Count): Promise<VarianceReport> {
  const { facts } = world;
  const sales = await world.salesBetween(salesNeeded(facts, opening, closing));
  const counts = { opening: opening.name, closing: closing.name };
  return varianceReport({
    facts,
    sales,
    opening,
    closing,
    costPerBase: unitCosts(facts, closing.at, closing.holdings),
    experience: experienceFrom(world.settlements, counts),
  });
}
