import { Hono } from "hono";
import { z } from "zod";
import type { Db } from "#db/open.ts";
import { addCountRows, listEntries } from "#db/stock-repository.ts";
import { foldName } from "#engine/name.ts";
import { CountRow } from "#engine/stock/movement.ts";
import { about, checked } from "#server/http.ts";
import { countSheetFor } from "#server/reports/count-sheet.ts";
import type { Stamp } from "#server/stamp.ts";
import { openWorld } from "#server/world.ts";

/** Counts: the sheet in shelf order, what was found so far, and each entry as it is made. */
export function countRoutes(db: Db, stamp: Stamp) {
  return new Hono()
    .get("/", about("Counts, newest first"), async (c) => {
      const { counts } = (await openWorld(db)).facts;
      return c.json(counts.map(({ name, at, holdings }) => ({ name, at, items: holdings.size })).reverse());
    })
    .get("/sheet", about("What stands where, in shelf order, with what is expected there"), async (c) =>
      c.json(await countSheetFor(await openWorld(db))),
    )
    .get(
      "/rows/:name",
      about("The rows of one count, with their numbers"),
      checked("param", z.object({ name: z.string() })),
      async (c) => {
        const name = foldName(c.req.valid("param").name);
        const rows = await listEntries(db, "count");
        return c.json(
          rows.filter(({ fact }) => foldName(fact.count) === name).map(({ id, fact }) => ({ id, ...fact })),
        );
      },
    )
    .post(
      "/entries",
      about(
        "Enters what was found; a later entry for the same count, area, item and pack replaces the earlier",
      ),
      checked("json", CountRow),
      async (c) => {
        const [id = 0] = await addCountRows(db, [c.req.valid("json")], {
          now: stamp.now(),
          by: c.req.valid("json").by,
        });
        return c.json({ id });
      },
    );
}
