import { type CostReport, costReport } from "#engine/costing/report.ts";
import { foldName } from "#engine/name.ts";
import { localToInstant } from "#engine/sales/read/clock.ts";
import type { Instant } from "#engine/time.ts";
import { InputError } from "#server/input-error.ts";
import type { World } from "#server/world.ts";

/** The cost report at the last moment of the book, of one drink where one is named. */
export function costFor(world: World, { drink }: { drink?: string | undefined }): CostReport {
  const report = costReport(world.facts, world.lastMoment ?? newestFacts(world));
  if (drink === undefined) return report;
  const drinks = report.drinks.filter((row) => foldName(row.drink) === foldName(drink));
  if (drinks.length === 0) throw new InputError(`No drink with a spec is named "${drink}".`);
  return { ...report, drinks };
}

/** In a book where nothing has happened yet, the day on which its last spec, yield or price begins. */
function newestFacts({ facts: { catalogue } }: World): Instant {
  const date = catalogue.changeDates.at(-1) ?? "2000-01-01";
  return localToInstant(`${date} ${catalogue.venue.dayEnds}`, catalogue.venue);
}
