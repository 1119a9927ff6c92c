import { Hono } from "hono";
import { z } from "zod";
import { savePar } from "#db/catalogue-repository.ts";
import type { Db } from "#db/open.ts";
import { placeOrder } from "#db/orders-repository.ts";
import { checkOrder, lateLines } from "#engine/orders/check-delivery.ts";
import { openOrders } from "#engine/orders/open-orders.ts";
import { OrderLine } from "#engine/orders/supplier.ts";
import { refuseAhead } from "#server/far-off.ts";
import { about, checked } from "#server/http.ts";
import { InputError } from "#server/input-error.ts";
import { parEffectFor } from "#server/reports/par-effect.ts";
import type { Stamp } from "#server/stamp.ts";
import { momentOf, openWorld } from "#server/world.ts";

/** Orders placed and not yet wholly delivered. */
export function orderRoutes(db: Db, stamp: Stamp) {
  return new Hono()
    .get("/", about("Open order lines"), async (c) => {
      const world = await openWorld(db);
      return c.json(openOrders(world.facts, momentOf(world)));
    })
    .get(
      "/check",
      about("An order beside what came of it, line by line: short, late, priced otherwise, something else"),
      checked("query", z.object({ order: z.string() })),
      async (c) => {
        const world = await openWorld(db);
        const { order } = c.req.valid("query");
        const checks = checkOrder(world.facts, order, momentOf(world));
        if (checks.length === 0) throw new InputError(`order: no order "${order}" was placed.`);
        return c.json(checks);
      },
    )
    .get(
      "/late",
      about("Order lines whose day is over and of which something is still to come"),
      async (c) => {
        const world = await openWorld(db);
        return c.json(lateLines(world.facts, momentOf(world)));
      },
    )
    .get(
      "/par-effect",
      about("What a par set by hand would change: the chance of running out, and the money in stock"),
      checked("query", z.object({ item: z.string(), par: z.coerce.number().nonnegative() })),
      async (c) => c.json(await parEffectFor(await openWorld(db), c.req.valid("query"))),
    )
    .post(
      "/pars",
      about(
        "Sets an item's par by hand, in base units, with the reason; null gives it back to the computed one",
      ),
      checked(
        "json",
        z.strictObject({
          item: z.string().min(1),
          par: z.number().nonnegative().nullable(),
          reason: z.string().default(""),
        }),
      ),
      async (c) => {
        await savePar(db, c.req.valid("json"));
        return c.json({ saved: true });
      },
    )
    .post(
      "/",
      about("Places an order with one supplier: all its lines"),
      checked("json", z.array(OrderLine).min(1)),
      async (c) => {
        const lines = c.req.valid("json");
        for (const { placed } of lines) await refuseAhead(db, placed, stamp.now());
        await placeOrder(db, lines);
        return c.json({ placed: lines.length });
      },
    );
}
