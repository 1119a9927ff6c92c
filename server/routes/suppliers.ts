import { Hono } from "hono";
import { z } from "zod";
import { saveSupplier } from "#db/catalogue-repository.ts";
import type { Db } from "#db/open.ts";
import { Supplier, SupplierDay } from "#engine/orders/supplier.ts";
import { about, checked } from "#server/http.ts";

const supplierWithDays = Supplier.extend({
  name: z.string().trim().min(1, "Name the supplier."),
  /** Its ordering chances of a week, all of them. */
  days: z.array(SupplierDay.omit({ supplier: true })),
});

/** Who is bought from, and when. */
export function supplierRoutes(db: Db) {
  return new Hono().post(
    "/",
    about("Writes a supplier, with its order and delivery days in place of those it had"),
    checked("json", supplierWithDays),
    async (c) => {
      const { days, ...supplier } = c.req.valid("json");
      await saveSupplier(db, supplier, { days });
      return c.json({ saved: true });
    },
  );
}
