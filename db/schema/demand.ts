import { integer, real, sqliteTable, text } from "drizzle-orm/sqlite-core";
import { dateCheck, id, notNegative } from "#db/schema/columns.ts";
import { drinks } from "#db/schema/specs.ts";

export const events = sqliteTable(
  "events",
  {
    id: id(),
    date: text("date").notNull(),
    event: text("event").notNull(),
    factor: real("factor").notNull(),
  },
  (t) => [dateCheck("events_date", t.date), notNegative("events_factor", t.factor)],
);

export const plans = sqliteTable(
  "plans",
  {
    id: id(),
    date: text("date").notNull(),
    drinkId: integer("drink_id")
      .notNull()
      .references(() => drinks.id),
    serves: real("serves").notNull(),
  },
  (t) => [dateCheck("plans_date", t.date), notNegative("plans_serves", t.serves)],
);
