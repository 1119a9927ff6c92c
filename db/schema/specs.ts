import { sql } from "drizzle-orm";
import { check, index, integer, real, sqliteTable, text, unique, uniqueIndex } from "drizzle-orm/sqlite-core";
import {
  aboveZero,
  amount,
  dateCheck,
  id,
  json,
  named,
  notNegative,
  oneOfCheck,
  orNone,
} from "#db/schema/columns.ts";
import { items } from "#db/schema/stock.ts";
import { UNITS, type Unit } from "#engine/measure/units.ts";
import { type Drink, ICES, type SpecLine, TECHNIQUES } from "#engine/specs/spec.ts";

export const drinks = sqliteTable(
  "drinks",
  {
    id: id(),
    ...named(),
    priceMinor: integer("price_minor"),
    glass: text("glass").notNull(),
    glassMl: amount("glass_ml"),
    ice: text("ice").$type<NonNullable<Drink["ice"]>>(),
    technique: text("technique").$type<NonNullable<Drink["technique"]>>(),
    garnishNote: text("garnish_note").notNull(),
    method: text("method").notNull(),
    allergens: json<string[]>("allergens_json"),
    onMenuFrom: text("on_menu_from"),
    onMenuUntil: text("on_menu_until"),
  },
  (t) => [
    unique("drinks_name").on(t.folded),
    notNegative("drinks_price", t.priceMinor),
    aboveZero("drinks_glass_ml", t.glassMl),
    oneOfCheck("drinks_ice", t.ice, ICES),
    oneOfCheck("drinks_technique", t.technique, TECHNIQUES),
    dateCheck("drinks_on_menu_from", t.onMenuFrom),
    dateCheck("drinks_on_menu_until", t.onMenuUntil),
  ],
);

export const prepVersions = sqliteTable(
  "prep_versions",
  {
    id: id(),
    prepId: integer("prep_id")
      .notNull()
      .references(() => items.id),
    from: text("from_date").notNull(),
    yield: real("yield").notNull(),
    unit: text("unit").$type<Unit>().notNull(),
    batchStep: amount("batch_step"),
    vesselMax: amount("vessel_max"),
    activeMinutes: amount("active_minutes"),
    standingHours: amount("standing_hours"),
    shelfLifeDays: amount("shelf_life_days"),
    method: text("method").notNull(),
  },
  (t) => [
    unique("prep_versions_one").on(t.prepId, t.from),
    dateCheck("prep_versions_from", t.from),
    aboveZero("prep_versions_yield", t.yield),
    oneOfCheck("prep_versions_unit", t.unit, UNITS),
  ],
);

/** One line of a version of a drink or of a prep. */
export const specLines = sqliteTable(
  "spec_lines",
  {
    id: id(),
    drinkId: integer("drink_id").references(() => drinks.id),
    prepId: integer("prep_id").references(() => items.id),
    from: text("from_date").notNull(),
    line: real("line").notNull(),
    amount: amount("amount"),
    unit: text("unit").$type<SpecLine["unit"]>().notNull(),
    itemId: integer("item_id")
      .notNull()
      .references(() => items.id),
    note: text("note").notNull(),
  },
  (t) => [
    uniqueIndex("spec_lines_one").on(orNone(t.drinkId), orNone(t.prepId), t.from, t.line),
    check("spec_lines_makes", sql`(${t.drinkId} is null) <> (${t.prepId} is null)`),
    dateCheck("spec_lines_from", t.from),
    check(
      "spec_lines_amount",
      sql`(${t.amount} is null) = (${t.unit} = 'top') and coalesce(${t.amount}, 1) > 0`,
    ),
    oneOfCheck("spec_lines_unit", t.unit, [...UNITS, "top"]),
  ],
);

/** The other items a line may be made with, in their order. */
export const specAlternatives = sqliteTable(
  "spec_alternatives",
  {
    id: id(),
    lineId: integer("line_id")
      .notNull()
      .references(() => specLines.id, { onDelete: "cascade" }),
    itemId: integer("item_id")
      .notNull()
      .references(() => items.id),
  },
  (t) => [index("spec_alternatives_line").on(t.lineId)],
);

export const cuts = sqliteTable(
  "cuts",
  {
    id: id(),
    sourceId: integer("source_id")
      .notNull()
      .references(() => items.id),
    from: text("from_date"),
    givesId: integer("gives_id")
      .notNull()
      .references(() => items.id),
    perPiece: real("per_piece").notNull(),
    unit: text("unit").$type<Unit>().notNull(),
    parts: json<string[]>("parts_json"),
  },
  (t) => [
    uniqueIndex("cuts_one").on(t.givesId, orNone(t.from)),
    dateCheck("cuts_from", t.from),
    aboveZero("cuts_per_piece", t.perPiece),
    oneOfCheck("cuts_unit", t.unit, UNITS),
  ],
);
