import { z } from "zod";
import { Uncertainty } from "#engine/measure/stated-uncertainty.ts";
import { HouseMl } from "#engine/measure/units.ts";
import { ClockTime } from "#engine/time.ts";

/** How a venue is set up: its money, its clock, its measures and how sure it wants to be. */
export const Venue = z.strictObject({
  name: z.string().min(1),
  /** ISO 4217. */
  currency: z.string().regex(/^[A-Z]{3}$/, "a currency is three capital letters, as EUR"),
  /** IANA zone, as "Europe/Lisbon". */
  timeZone: z.string().refine(isTimeZone, "no such time zone"),
  dayEnds: ClockTime,
  oz: z.enum(["us", "imperial"]),
  show: z.enum(["oz", "ml", "cl"]),
  houseMl: HouseMl,
  /** Chance of lasting to the next delivery that an item should have when it names none of its own. */
  serviceLevel: z.number().gt(0).lt(1),
  uncertainty: Uncertainty,
});
export type Venue = z.infer<typeof Venue>;

function isTimeZone(name: string): boolean {
  try {
    new Intl.DateTimeFormat("en", { timeZone: name });
    return true;
  } catch {
    return false;
  }
}

/** Common practice for spirits and juice that guests expect to find: 95 times in 100. */
export const DEFAULT_SERVICE_LEVEL = 0.95;
