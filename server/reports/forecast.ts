import { forecast, itemForecast } from "#engine/demand/forecast.ts";
import { pastForecast } from "#engine/demand/past-forecast.ts";
import { foldName } from "#engine/name.ts";
import { businessDateOf } from "#engine/sales/read/clock.ts";
import type { BusinessDate } from "#engine/time.ts";
import { refuseFarOff } from "#server/far-off.ts";
import { InputError } from "#server/input-error.ts";
import { momentOf, type World } from "#server/world.ts";

export type ForecastChoice = {
  from?: BusinessDate | undefined;
  days?: number | undefined;
  asOf?: BusinessDate | undefined;
  byItem?: boolean;
};

/** The days to come; by default the week from the last business date of the book on, as known before it. */
export async function forecastFor(world: World, { from, days = 7, asOf, byItem = false }: ForecastChoice) {
  const { facts } = world;
  const known = asOf ?? businessDateOf(momentOf(world), facts.catalogue.venue);
  refuseFarOff(world, from ?? known, "from");
  refuseFarOff(world, known, "asOf");
  const sales = await world.salesBetween({});
  const choice = { facts, sales, asOf: known, from: from ?? known, days };
  return byItem ? itemForecast(choice) : forecast(choice);
}

/** Forecast against fact over the last weeks: of all drinks, or of the one named. */
export async function pastForecastFor(
  world: World,
  { asOf, what }: { asOf?: BusinessDate | undefined; what?: string | undefined },
) {
  const { facts } = world;
  const known = asOf ?? businessDateOf(momentOf(world), facts.catalogue.venue);
  refuseFarOff(world, known, "asOf");
  const sales = await world.salesBetween({});
  const named = what === undefined ? {} : { what: soldKnown(world, what) };
  return { asOf: known, ...named, days: pastForecast({ facts, sales, asOf: known, ...named }) };
}

function soldKnown({ facts: { catalogue } }: World, name: string): string {
  const known = [...catalogue.drinks.keys(), ...catalogue.items.keys()];
  const found = known.find((one) => foldName(one) === foldName(name));
  if (found === undefined) throw new InputError(`what: no drink or item is named "${name}".`);
  return found;
}
