import { type CostReport, costReport } from "#engine/costing/report.ts";
import { foldName } from "#engine/name.ts";
import { InputError } from "#server/input-error.ts";
import { momentOf, type World } from "#server/world.ts";

/** The cost report at the last moment of the book, of one drink where one is named. */
export function costFor(world: World, { drink }: { drink?: string | undefined }): CostReport {
  const report = costReport(world.facts, momentOf(world));
  if (drink === undefined) return report;
  const drinks = report.drinks.filter((row) => foldName(row.drink) === foldName(drink));
  if (drinks.length === 0) throw new InputError(`No drink with a spec is named "${drink}".`);
  return { ...report, drinks };
}
