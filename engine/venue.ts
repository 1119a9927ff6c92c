import { z } from "zod";
import { Uncertainty } from "#engine/measure/stated-uncertainty.ts";
import { HouseMl } from "#engine/measure/units.ts";
import { ClockTime } from "#engine/time.ts";
import { Share, Thresholds } from "#engine/variance/thresholds.ts";

const SENSIBLE_C = "a temperature is at least −40 °C and at most 60 °C";

/** How a venue is set up: its money, its clock, its measures and how sure it wants to be. */
export const Venue = z.strictObject({
  name: z.string().min(1, "the bar needs a name"),
  /** ISO 4217. */
  currency: z.string().regex(/^[A-Z]{3}$/, "a currency is three capital letters, as EUR"),
  /** IANA zone, as "Europe/Lisbon". */
  timeZone: z.string().refine(isTimeZone, "no such time zone"),
  dayEnds: ClockTime,
  oz: z.enum(["us", "imperial"]),
  show: z.enum(["oz", "ml", "cl"]),
  houseMl: HouseMl,
  /**
   * Chance of lasting to the next delivery that an item should have when it names none of its own; null weighs what a
   * run-out of each would cost.
   */
  serviceLevel: Share.nullable(),
  uncertainty: Uncertainty,
  /** From where on a variance is watched and chased; without it by the usual limits. */
  thresholds: Thresholds.optional(),
  /** How cold an area is kept, in °C, by its name; where none is stated, levels are read at 20 °C. */
  areaTemperatureC: z
    .record(z.string().min(1), z.number().min(-40, SENSIBLE_C).max(60, SENSIBLE_C))
    .optional(),
  /** ISO 3166-1 alpha-2, for the public holidays; without it none are known. */
  country: z.string().refine(isCountry, 'a country is two capital letters of ISO 3166-1, as "PT"').optional(),
  /** State or province with holidays of its own, as ISO 3166-2 ends: "BY" in Germany. */
  region: z.string().min(1).optional(),
  /** Whether the names of staff in till files are kept with the lines they rang; without it they are not even read. */
  keepStaff: z.boolean().optional(),
});
export type Venue = z.infer<typeof Venue>;

/** What whoever runs the bar may set of it: all but whether names of staff are kept, which is the owner's to say. */
export const VenueSettings = Venue.omit({ keepStaff: true });
export type VenueSettings = z.infer<typeof VenueSettings>;

const COUNTRIES = new Intl.DisplayNames("en", { type: "region", fallback: "none" });

function isCountry(code: string): boolean {
  return /^[A-Z]{2}$/.test(code) && COUNTRIES.of(code) !== undefined;
}

function isTimeZone(name: string): boolean {
  try {
    new Intl.DateTimeFormat("en", { timeZone: name });
    return true;
  } catch {
    return false;
  }
}

/** Common practice for what is made in house and cut for the day, where nothing else is stated: 95 times in 100. */
export const DEFAULT_SERVICE_LEVEL = 0.95;
