import { Hono } from "hono";
import { z } from "zod";
import type { Db } from "#db/open.ts";
import { placeOrder } from "#db/orders-repository.ts";
import { checkOrder, lateLines } from "#engine/orders/check-delivery.ts";
import { openOrders } from "#engine/orders/open-orders.ts";
import { OrderLine } from "#engine/orders/supplier.ts";
import { about, checked } from "#server/http.ts";
import { InputError } from "#server/input-error.ts";
import { momentOf, openWorld } from "#server/world.ts";

/** Orders placed and not yet wholly delivered. */
export function orderRoutes(db: Db) {
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
    .post(
      "/",
      about("Places an order with one supplier: all its lines"),
      checked("json", z.array(OrderLine).min(1)),
      async (c) => {
        await placeOrder(db, c.req.valid("json"));
        return c.json({ placed: c.req.valid("json").length });
      },
    );
}
