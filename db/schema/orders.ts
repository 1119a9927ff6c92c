import { sql } from "drizzle-orm";
import { check, index, integer, real, sqliteTable, text, unique } from "drizzle-orm/sqlite-core";
import {
  clockCheck,
  dateCheck,
  id,
  instantCheck,
  named,
  notNegative,
  oneOfCheck,
} from "#db/schema/columns.ts";
import { packs } from "#db/schema/stock.ts";
import type { Of } from "#engine/stock/movement.ts";
import { WEEKDAYS, type Weekday } from "#engine/time.ts";

export const suppliers = sqliteTable(
  "suppliers",
  {
    id: id(),
    ...named(),
    email: text("email").notNull(),
    minimumValueMinor: integer("minimum_value_minor"),
    minimumCases: real("minimum_cases"),
  },
  (t) => [
    unique("suppliers_name").on(t.folded),
    notNegative("suppliers_minimum_value", t.minimumValueMinor),
    notNegative("suppliers_minimum_cases", t.minimumCases),
  ],
);

export const supplierDays = sqliteTable(
  "supplier_days",
  {
    id: id(),
    supplierId: integer("supplier_id")
      .notNull()
      .references(() => suppliers.id),
    orderDay: text("order_day").$type<Weekday>().notNull(),
    orderBy: text("order_by").notNull(),
    deliveryDay: text("delivery_day").$type<Weekday>().notNull(),
    deliveryAt: text("delivery_at").notNull(),
  },
  (t) => [
    oneOfCheck("supplier_days_order_day", t.orderDay, WEEKDAYS),
    clockCheck("supplier_days_order_by", t.orderBy),
    oneOfCheck("supplier_days_delivery_day", t.deliveryDay, WEEKDAYS),
    clockCheck("supplier_days_delivery_at", t.deliveryAt),
  ],
);

/** Days without orders or deliveries; without a supplier, of all. */
export const closures = sqliteTable(
  "closures",
  {
    id: id(),
    supplierId: integer("supplier_id").references(() => suppliers.id),
    from: text("from_date").notNull(),
    to: text("to_date").notNull(),
  },
  (t) => [
    dateCheck("closures_from", t.from),
    dateCheck("closures_to", t.to),
    check("closures_days", sql`${t.to} >= ${t.from}`),
  ],
);

export const orderLines = sqliteTable(
  "order_lines",
  {
    id: id(),
    order: text("order_name").notNull(),
    placed: text("placed").notNull(),
    supplierId: integer("supplier_id")
      .notNull()
      .references(() => suppliers.id),
    packId: integer("pack_id")
      .notNull()
      .references(() => packs.id),
    quantity: real("quantity").notNull(),
    of: text("of").$type<Of>().notNull(),
    expected: text("expected").notNull(),
  },
  (t) => [
    index("order_lines_placed").on(t.placed),
    instantCheck("order_lines_placed_at", t.placed),
    notNegative("order_lines_quantity", t.quantity),
    oneOfCheck("order_lines_of", t.of, ["container", "case"]),
    dateCheck("order_lines_expected", t.expected),
  ],
);
