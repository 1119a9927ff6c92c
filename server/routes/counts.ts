import { Hono } from "hono";
import { z } from "zod";
import type { Db } from "#db/open.ts";
import { addCountRows, COUNTED_APART, listCountRows } from "#db/stock-repository.ts";
import { CountRow } from "#engine/stock/movement.ts";
import { wholeCounts } from "#engine/stock/whole-counts.ts";
import { refuseAhead } from "#server/far-off.ts";
import { about, checked } from "#server/http.ts";
import { enteredBy } from "#server/people/actor.ts";
import { countSheetFor } from "#server/reports/count-sheet.ts";
import type { Stamp } from "#server/stamp.ts";
import { openWorld } from "#server/world.ts";

/** The row that stood there when someone counted, by its number; "none" when there was none. */
const seenId = z
  .union([z.literal("none").transform(() => null), z.coerce.number().int().positive()])
  .optional();

type Kept = { fact: CountRow; stamp: { reason: string } };

/** What others had found in the same place, unseen by whoever counted last; nobody has chosen between them yet. */
function foundApart({ fact, stamp, history }: Kept & { history: Kept[] }): CountRow[] {
  const chain: Kept[] = [{ fact, stamp }, ...history];
  const agreed = chain.findIndex(({ stamp: { reason } }) => reason !== COUNTED_APART);
  return chain.slice(1, agreed + 1).map((kept) => kept.fact);
}

/** Counts: the sheet in shelf order, what was found so far, and each entry as it is made. */
export function countRoutes(db: Db, stamp: Stamp) {
  return new Hono()
    .get("/", about("Counts, newest first"), async (c) => {
      const { counts } = (await openWorld(db)).facts;
      const whole = new Set(wholeCounts(counts));
      const listed = counts.map((count) => ({
        name: count.name,
        at: count.at,
        items: count.holdings.size,
        isSpot: !whole.has(count),
      }));
      return c.json(listed.reverse());
    })
    .get("/sheet", about("What stands where, in shelf order, with what is expected there"), async (c) =>
      c.json(await countSheetFor(await openWorld(db))),
    )
    .get(
      "/rows/:name",
      about("The rows of one count, with their numbers and what others found there meanwhile"),
      checked("param", z.object({ name: z.string() })),
      async (c) => {
        const rows = await listCountRows(db, c.req.valid("param").name);
        return c.json(rows.map((entry) => ({ id: entry.id, ...entry.fact, apart: foundApart(entry) })));
      },
    )
    .post(
      "/entries",
      about(
        "Enters what was found; a later entry for the same count, area, item and pack replaces the earlier",
      ),
      checked("query", z.object({ seen: seenId })),
      checked("json", CountRow),
      async (c) => {
        const { seen } = c.req.valid("query");
        const row = c.req.valid("json");
        await refuseAhead(db, row.at, stamp.now());
        // Sent by whoever is signed in when the signal is back; counted by whom the row names.
        const by = enteredBy(c.get("actor"), row.by);
        const [id = 0] = await addCountRows(db, [{ ...row, by }], {
          now: stamp.now(),
          by,
          ...(seen === undefined ? {} : { seenId: seen }),
        });
        return c.json({ id });
      },
    );
}
