import { Hono } from "hono";
import type { Db } from "#db/open.ts";
import { about } from "#server/http.ts";
import { openWorld } from "#server/world.ts";

export function catalogueRoutes(db: Db) {
  return new Hono().get("/", about("Items, packs, drinks, preps, specs, cuts and names"), async (c) => {
    const { book, catalogue } = (await openWorld(db)).facts;
    const { venue, packs, drinks, preps, specs, cuts, areas, suppliers, supplierDays, ringNames, modifiers } =
      book;
    return c.json({
      venue,
      items: [...catalogue.items.values()],
      packs,
      drinks,
      preps,
      specs,
      cuts,
      areas,
      suppliers,
      supplierDays,
      ringNames,
      modifiers,
    });
  });
}
