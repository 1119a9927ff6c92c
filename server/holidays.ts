import type { Holiday } from "#engine/demand/holiday.ts";
import { addDays, type BusinessDate } from "#engine/time.ts";
import type { Venue } from "#engine/venue.ts";

type Place = Pick<Venue, "country" | "region">;

/** Days off that people know beforehand; school holidays and days merely observed are none. */
const KINDS: readonly string[] = ["public", "bank"];

/** A year ahead is as far as anything is planned. */
const DAYS_AHEAD = 400;

/**
 * The public holidays of a venue's country and region from a date until a year after another, by the tables of
 * date-holidays. None where the venue names no country; throws nothing for a place that the tables do not know.
 */
export async function holidaysOf(
  { country, region }: Place,
  { from, to }: { from: BusinessDate; to: BusinessDate },
): Promise<Holiday[]> {
  if (country === undefined) return [];
  const tables = await tablesOf(country, region);
  const until = addDays(to, DAYS_AHEAD);
  const [first, last] = [Number(from.slice(0, 4)), Number(until.slice(0, 4))];
  const years = Array.from({ length: last - first + 1 }, (_, year) => first + year);
  const days = years
    .flatMap((year) => tables.getHolidays(year, "en"))
    .filter(({ type }) => KINDS.includes(type))
    .map(({ date, name }) => ({ date: date.slice(0, 10), name }));
  const byDate = new Map(days.reverse().map((day) => [day.date, day]));
  return [...byDate.values()]
    .filter(({ date }) => date >= from && date <= until)
    .sort((a, b) => (a.date < b.date ? -1 : 1));
}

/** What is wrong with the place a venue names, in words for its owner; null where holidays are known or not asked for. */
export async function unknownPlace({ country, region }: Place): Promise<string | null> {
  if (country === undefined) {
    return region === undefined
      ? null
      : `venue.json, region: a region needs its country beside it, as "country": "DE"; no holidays are known without`;
  }
  const { default: Holidays } = await import("date-holidays");
  const all = new Holidays();
  if (all.getCountries()[country] === undefined)
    return `venue.json, country: no public holidays are known of ${country}; enter them as events`;
  const regions = await regionsOf(country);
  if (region === undefined || regions.includes(region)) return null;
  const known = regions.length === 0 ? "it has none" : `known are ${regions.join(", ")}`;
  return `venue.json, region: no public holidays are known of "${region}" in ${country} (${known}); those of the whole country are used`;
}

/** The codes of a country's regions with public holidays of their own; none where the tables know none. regionsOf("PT") → "20", "30". */
export async function regionsOf(country: string): Promise<string[]> {
  const { default: Holidays } = await import("date-holidays");
  return Object.keys(new Holidays().getStates(country) ?? {});
}

async function tablesOf(country: string, region: string | undefined) {
  // Big, and of no use to a venue that names no country.
  const { default: Holidays } = await import("date-holidays");
  const all = new Holidays();
  const isRegion = region !== undefined && Object.keys(all.getStates(country) ?? {}).includes(region);
  return isRegion ? new Holidays(country, region) : new Holidays(country);
}
