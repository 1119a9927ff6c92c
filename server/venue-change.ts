import { z } from "zod";
import { VenueSettings } from "#engine/venue.ts";
import { regionsOf } from "#server/holidays.ts";

/** No dash, drop or splash is larger; a figure beyond it was meant in another unit. */
const HOUSE_MEASURE_MOST_ML = 100;

/** Settings as they were read and as they are to be. What the past was written in is not among what they change. */
export const VenueChange = z
  .strictObject({ was: VenueSettings, now: VenueSettings })
  .superRefine(async ({ was, now }, context) => {
    const refuse = (path: string[], message: string) =>
      context.addIssue({ code: "custom", path: ["now", ...path], message });
    if (now.currency !== was.currency)
      refuse(["currency"], "prices are not converted; export the book, put its money right, load it again");
    if (now.timeZone !== was.timeZone)
      refuse(
        ["timeZone"],
        "what was entered would move by hours; export the book, put it right, load it again",
      );
    for (const measure of ["dash", "barspoon", "drop", "splash"] as const) {
      if (now.houseMl[measure] > Math.max(HOUSE_MEASURE_MOST_ML, was.houseMl[measure]))
        refuse(["houseMl", measure], "a house measure is at most 100 ml");
    }
    if (now.thresholds !== undefined && now.thresholds.chaseRatio < now.thresholds.watchRatio)
      refuse(["thresholds", "chaseRatio"], "chasing begins where watching does, or later");
    const ofRegion = await regionProblem({ was, now });
    if (ofRegion !== null) refuse(["region"], ofRegion);
  });

/** What is wrong with the region a bar names; null where there is nothing to say, or it stands as it did. */
async function regionProblem({
  was,
  now,
}: {
  was: VenueSettings;
  now: VenueSettings;
}): Promise<string | null> {
  const { country, region } = now;
  if (region === undefined || (country === was.country && region === was.region)) return null;
  if (country === undefined) return "a region needs its country beside it; name the country too";
  const known = await regionsOf(country);
  if (known.includes(region)) return null;
  return known.length === 0
    ? "no regions of this country are known; leave it empty"
    : `no such region of this country; known are ${known.join(", ")}`;
}
