import { type CostReport, costReport } from "#engine/costing/report.ts";
import { foldName } from "#engine/name.ts";
import { businessDateOf, localToInstant } from "#engine/sales/read/clock.ts";
import { alcoholInDrink, type DrinkAlcohol } from "#engine/specs/drink-alcohol.ts";
import { type DrinkStrength, drinkStrength } from "#engine/specs/drink-strength.ts";
import { type OddPour, oddPours } from "#engine/specs/glass-pours.ts";
import type { Instant } from "#engine/time.ts";
import { InputError } from "#server/input-error.ts";
import type { World } from "#server/world.ts";

/** What drinks and items cost, and, for information, the alcohol in one serve, its strength, and pours of no lawful measure. */
export type CostAnswer = Omit<CostReport, "drinks"> & {
  drinks: (CostReport["drinks"][number] & {
    alcohol: DrinkAlcohol | null;
    strength: DrinkStrength | null;
    oddPours: OddPour[];
  })[];
};

/** The cost report at the last moment of the book, of one drink where one is named. */
export function costFor(world: World, { drink }: { drink?: string | undefined }): CostAnswer {
  const { facts } = world;
  const at = world.lastMoment ?? newestFacts(world);
  const costs = costReport(facts, at);
  const date = businessDateOf(at, facts.catalogue.venue);
  const report = {
    ...costs,
    drinks: costs.drinks.map((row) => ({
      ...row,
      alcohol: alcoholInDrink(facts.catalogue, row.drink, date) ?? null,
      strength: drinkStrength(facts.catalogue, row.drink, date) ?? null,
      oddPours: oddPours(facts.catalogue, row.drink, date),
    })),
  };
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
