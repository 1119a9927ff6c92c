import { foldName } from "#engine/name.ts";
import type { Venue } from "#engine/venue.ts";

/** The temperature that a venue states for an area, in °C; undefined where it states none. */
export function temperatureOfC(venue: Pick<Venue, "areaTemperatureC">, area: string): number | undefined {
  return Object.entries(venue.areaTemperatureC ?? {}).find(
    ([name]) => foldName(name) === foldName(area),
  )?.[1];
}
