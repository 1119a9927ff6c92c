import { Hono } from "hono";
import { z } from "zod";
import { NotFoundError } from "#db/errors.ts";
import type { Db } from "#db/open.ts";
import { changeVenue, saveVenue } from "#db/venue-repository.ts";
import { DEFAULT_UNCERTAINTY } from "#engine/measure/uncertainty.ts";
import { DEFAULT_HOUSE_ML } from "#engine/measure/units.ts";
import { Venue } from "#engine/venue.ts";
import { about, checked } from "#server/http.ts";
import { InputError } from "#server/input-error.ts";
import { VenueChange } from "#server/venue-change.ts";
import { openWorld } from "#server/world.ts";

const CURRENCIES = new Set(Intl.supportedValuesOf("currency"));

const newVenue = Venue.pick({
  name: true,
  timeZone: true,
  dayEnds: true,
  oz: true,
  show: true,
  country: true,
}).extend({
  currency: z
    .string()
    .trim()
    .toUpperCase()
    .refine((code) => CURRENCIES.has(code), "no currency of ISO 4217; write three letters, as EUR"),
});

async function hasVenue(db: Db): Promise<boolean> {
  try {
    await openWorld(db);
    return true;
  } catch (error) {
    if (error instanceof NotFoundError) return false;
    throw error;
  }
}

/** How the venue is set up, and the first setting up of an empty database. */
export function venueRoutes(db: Db) {
  return new Hono()
    .get("/", about("How the venue is set up"), async (c) =>
      c.json((await openWorld(db)).facts.catalogue.venue),
    )
    .post(
      "/",
      about("Sets up the venue of an empty database; what is not asked has the stated defaults"),
      checked("json", newVenue),
      async (c) => {
        if (await hasVenue(db)) throw new InputError("This database has its venue already.");
        await saveVenue(db, {
          ...c.req.valid("json"),
          houseMl: DEFAULT_HOUSE_ML,
          serviceLevel: null,
          uncertainty: DEFAULT_UNCERTAINTY,
        });
        return c.json({ saved: true });
      },
    )
    .post(
      "/settings",
      about("Changes how the venue is set up, from what it was when it was read to what it is to be"),
      checked("json", VenueChange),
      async (c) => {
        await changeVenue(db, c.req.valid("json"));
        return c.json({ saved: true });
      },
    );
}
