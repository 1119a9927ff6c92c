import { forecast, itemForecast } from "#engine/demand/forecast.ts";
import { businessDateOf } from "#engine/sales/read/clock.ts";
import type { BusinessDate } from "#engine/time.ts";
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
  const sales = await world.salesBetween({});
  const choice = { facts, sales, asOf: known, from: from ?? known, days };
  return byItem ? itemForecast(choice) : forecast(choice);
}
