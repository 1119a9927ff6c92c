import { sql } from "drizzle-orm";
import { check, integer, real, sqliteTable, text } from "drizzle-orm/sqlite-core";
import { clockCheck, id, json, oneOfCheck, yesNo } from "#db/schema/columns.ts";
import type { SalesShape } from "#engine/sales/read/shape.ts";
import type { Venue } from "#engine/venue.ts";

/** The one venue of a database. */
export const venues = sqliteTable(
  "venues",
  {
    id: id(),
    name: text("name").notNull(),
    currency: text("currency").notNull(),
    timeZone: text("time_zone").notNull(),
    dayEnds: text("day_ends").notNull(),
    oz: text("oz").$type<Venue["oz"]>().notNull(),
    show: text("show").$type<Venue["show"]>().notNull(),
    houseMl: json<Venue["houseMl"]>("house_ml_json"),
    serviceLevel: real("service_level").notNull(),
    uncertainty: json<Venue["uncertainty"]>("uncertainty_json"),
    thresholds: text("thresholds_json", { mode: "json" }).$type<NonNullable<Venue["thresholds"]>>(),
    areaTemperatureC: text("area_temperature_c_json", { mode: "json" }).$type<
      NonNullable<Venue["areaTemperatureC"]>
    >(),
    country: text("country"),
    region: text("region"),
    /** Null as long as the owner has not decided: then the names of staff are not kept. */
    keepStaff: integer("keep_staff", { mode: "boolean" }),
  },
  (t) => [
    check("venues_one", sql`${t.id} = 1`),
    clockCheck("venues_day_ends", t.dayEnds),
    oneOfCheck("venues_oz", t.oz, ["us", "imperial"]),
    oneOfCheck("venues_show", t.show, ["oz", "ml", "cl"]),
  ],
);

/** How the till's files are read; one row a shape, in order. */
export const salesShapes = sqliteTable("sales_shapes", { id: id(), shape: json<SalesShape>("shape_json") });

/**
 * One row: how often the database was written, so that what was read can be known to be old; whether the whole book is
 * being replaced, the only time at which entries may be deleted; and a random text that triggers renew with every row of the
 * book's catalogue that is written, by whatever program: what was read of it under the same text is still true.
 */
export const ledgerState = sqliteTable(
  "ledger_state",
  {
    id: id(),
    changes: integer("changes").notNull(),
    isReplacing: yesNo("is_replacing"),
    catalogueStamp: text("catalogue_stamp").notNull().default(""),
  },
  (t) => [check("ledger_state_one", sql`${t.id} = 1`)],
);
