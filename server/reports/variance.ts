import { unitCosts } from "#engine/costing/unit-cost.ts";
import type { Count } from "#engine/stock/counts.ts";
import { wholeCounts } from "#engine/stock/whole-counts.ts";
import { type VarianceReport, varianceReport } from "#engine/variance/report.ts";
import { salesNeeded } from "#engine/variance/sales-needed.ts";
import { experienceFrom } from "#server/causes/experience.ts";
import { type CountsChosen, countsBetween } from "#server/reports/counts-between.ts";
import type { World } from "#server/world.ts";

/** A variance, and whether one of its counts was a spot count, so that its sums are of a few items. */
export type VarianceAnswer = VarianceReport & { isOfFew: boolean };

/** The variance between the counts named, by default the last two. */
export async function varianceFor(world: World, choice: CountsChosen): Promise<VarianceAnswer> {
  const { opening, closing } = countsBetween(world.facts, choice);
  const key = JSON.stringify(["variance", opening.name, closing.name]);
  return world.remembered(key, () => varianceBetween(world, opening, closing));
}

async function varianceBetween(world: World, opening: Count, closing: Count): Promise<VarianceAnswer> {
  const { facts } = world;
  const sales = await world.salesBetween(salesNeeded(facts, opening, closing));
  const counts = { opening: opening.name, closing: closing.name };
  const report = varianceReport({
    facts,
    sales,
    opening,
    closing,
    costPerBase: unitCosts(facts, closing.at, closing.holdings),
    experience: experienceFrom(world.settlements, counts),
  });
  const whole = wholeCounts(facts.counts);
  return { ...report, isOfFew: !whole.includes(opening) || !whole.includes(closing) };
}
