import { Hono } from "hono";
import { z } from "zod";
import { saveArea } from "#db/catalogue-repository.ts";
import type { Db } from "#db/open.ts";
import { about, checked } from "#server/http.ts";

const shelves = z.object({
  area: z.string().trim().min(1, "Name the area."),
  /** From the first of the shelf to the last. */
  items: z
    .array(z.string().min(1))
    .refine((items) => new Set(items).size === items.length, "An item stands in an area once."),
});

/** Where things stand: the shelf order that counting follows. */
export function areaRoutes(db: Db) {
  return new Hono().post(
    "/",
    about("Puts an area's items in shelf order, in place of those it had"),
    checked("json", shelves),
    async (c) => {
      const { area, items } = c.req.valid("json");
      await saveArea(
        db,
        area,
        items.map((item, index) => ({ item, shelf: index + 1 })),
      );
      return c.json({ saved: true });
    },
  );
}
