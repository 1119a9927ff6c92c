import { Hono } from "hono";
import { z } from "zod";
import { closePast, reopenPast } from "#db/closings-repository.ts";
import { acting } from "#db/history/acting.ts";
import { ACTS } from "#db/history/acts.ts";
import type { Db } from "#db/open.ts";
import { BusinessDate } from "#engine/time.ts";
import { about, checked } from "#server/http.ts";
import { closingFor } from "#server/reports/closing.ts";
import { historyFor } from "#server/reports/history.ts";
import type { Stamp } from "#server/stamp.ts";
import { undoActBeside } from "#server/undo-beside.ts";
import { openWorld } from "#server/world.ts";

const wanted = z.object({
  subject: z.string().optional(),
  act: z.enum(ACTS).optional(),
  from: BusinessDate.optional(),
  to: BusinessDate.optional(),
  before: z.coerce.number().int().positive().optional(),
  limit: z.coerce.number().int().min(1).max(500).optional(),
});
const seq = z.object({ seq: z.coerce.number().int().positive() });

/** What was done by whom and why, undone where that is still possible; and the past, closed and reopened. */
export function historyRoutes(db: Db, stamp: Stamp) {
  return new Hono()
    .get(
      "/history",
      about("What was done, newest first: by subject, act or day"),
      checked("query", wanted),
      async (c) => c.json(await historyFor(db, c.req.valid("query"))),
    )
    .post(
      "/history/:seq/undo",
      about("Takes an act back, or, of what was undone, does it again"),
      checked("param", seq),
      checked("json", z.object({ reason: z.string().max(500).default("") })),
      async (c) => {
        const doing = { now: stamp.now(), by: acting().who, reason: c.req.valid("json").reason };
        return c.json(await undoActBeside(db, c.req.valid("param").seq, doing));
      },
    )
    .get("/closing", about("Up to when the past is closed, and which week comes next"), async (c) =>
      c.json(await closingFor(await openWorld(db))),
    )
    .post(
      "/closing",
      about("Closes the past up to a business date; nothing in it can be changed then"),
      checked("json", z.object({ through: BusinessDate })),
      async (c) => c.json(await closePast(db, c.req.valid("json").through, { now: stamp.now() })),
    )
    .post(
      "/closing/reopen",
      about("Reopens the week that was closed last, or all days after one; the owner alone, with a reason"),
      checked(
        "json",
        z.object({
          reason: z.string().trim().min(1, "Say why; it stays in the history."),
          to: BusinessDate.optional(),
        }),
      ),
      async (c) => {
        const left = await reopenPast(db, c.req.valid("json"), { now: stamp.now() });
        return c.json({ closed: left ?? null });
      },
    );
}
