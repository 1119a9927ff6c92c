import { Hono } from "hono";
import { z } from "zod";
import type { Db } from "#db/open.ts";
import { Change } from "#engine/demand/changed-book.ts";
import { BusinessDate } from "#engine/time.ts";
import { about, checked } from "#server/http.ts";
import { pastForecastFor } from "#server/reports/forecast.ts";
import { replayFor } from "#server/reports/replay.ts";
import { whatIfFor } from "#server/reports/what-if.ts";
import { openWorld } from "#server/world.ts";

const weeks = z.number().int().min(1).max(52);

/** Looking back to see what the planning is worth, and ahead to see what a change would do. */
export function planningRoutes(db: Db) {
  return new Hono()
    .get(
      "/forecast/past",
      about("Forecast against fact over the last weeks: of all drinks together, or of one"),
      checked("query", z.object({ asOf: BusinessDate.optional(), what: z.string().optional() })),
      async (c) => c.json(await pastForecastFor(await openWorld(db), c.req.valid("query"))),
    )
    .get(
      "/replay",
      about("The settings, pars of two weeks' use and other service levels tried on the last weeks"),
      checked("query", z.object({ weeks: z.coerce.number().pipe(weeks).optional() })),
      async (c) => c.json(await replayFor(await openWorld(db), c.req.valid("query"))),
    )
    .post(
      "/replay",
      about("The same against pars set by hand, in base units by item"),
      checked(
        "json",
        z.object({
          weeks: weeks.optional(),
          pars: z.record(z.string(), z.number().nonnegative()).optional(),
        }),
      ),
      async (c) => c.json(await replayFor(await openWorld(db), c.req.valid("json"))),
    )
    .post(
      "/what-if",
      about("What a menu, a price, a party or a closed day would change; nothing is stored"),
      checked(
        "json",
        z.object({
          changes: z.array(Change).min(1).max(50),
          days: z.number().int().min(1).max(92).optional(),
        }),
      ),
      async (c) => {
        const { changes, days = 14 } = c.req.valid("json");
        return c.json(await whatIfFor(await openWorld(db), { changes, days }));
      },
    );
}
