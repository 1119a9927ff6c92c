import { Hono } from "hono";
import type { Db } from "#db/open.ts";
import { about } from "#server/http.ts";
import { weekFor } from "#server/reports/week.ts";
import type { Warning } from "#server/warnings.ts";
import { openWorld } from "#server/world.ts";

export function weekRoutes(db: Db, warnings: () => Warning[]) {
  return new Hono().get("/week", about("What is due this week, and what is wrong"), async (c) =>
    c.json({ ...(await weekFor(await openWorld(db))), warnings: warnings() }),
  );
}
