import { Hono } from "hono";
import type { Db } from "#db/open.ts";
import { about } from "#server/http.ts";
import { stockFor } from "#server/reports/stock.ts";
import { openWorld } from "#server/world.ts";

export function stockRoutes(db: Db) {
  return new Hono().get("/", about("On hand by item, with its uncertainty, value and par"), async (c) =>
    c.json(await stockFor(await openWorld(db))),
  );
}
