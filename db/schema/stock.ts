import { sql } from "drizzle-orm";
import {
  type AnySQLiteColumn,
  check,
  index,
  integer,
  real,
  sqliteTable,
  text,
  unique,
  uniqueIndex,
} from "drizzle-orm/sqlite-core";
import {
  aboveZero,
  amount,
  dateCheck,
  entry,
  entryChecks,
  id,
  instantCheck,
  json,
  named,
  notNegative,
  oneOfCheck,
  orNone,
  yesNo,
} from "#db/schema/columns.ts";
import { suppliers } from "#db/schema/orders.ts";
import { drinks } from "#db/schema/specs.ts";
import { UNITS, type Unit } from "#engine/measure/units.ts";
import type { Item, Pack } from "#engine/stock/item.ts";
import { LOSS_KINDS, type Loss, type Of, type Transfer } from "#engine/stock/movement.ts";

export const items = sqliteTable(
  "items",
  {
    id: id(),
    ...named(),
    category: text("category").notNull(),
    base: text("base").$type<Item["base"]>().notNull(),
    abv: amount("abv"),
    brix: amount("brix"),
    densityGPerMl: amount("density_g_per_ml"),
    pieceG: amount("piece_g"),
    shelfLifeDays: amount("shelf_life_days"),
    allergens: json<string[]>("allergens_json"),
    inHouse: yesNo("in_house"),
    stocked: yesNo("stocked"),
    pour: text("pour").$type<Item["pour"]>().notNull(),
    serviceLevel: amount("service_level"),
    par: amount("par"),
    parReason: text("par_reason").notNull().default(""),
    note: text("note").notNull(),
  },
  (t) => [
    unique("items_name").on(t.folded),
    oneOfCheck("items_base", t.base, ["ml", "g", "each"]),
    oneOfCheck("items_pour", t.pour, ["jigger", "free", "measured"]),
    check("items_abv", sql`${t.abv} between 0 and 100`),
    check("items_brix", sql`${t.brix} between 0 and 100`),
    aboveZero("items_density", t.densityGPerMl),
    aboveZero("items_piece", t.pieceG),
  ],
);

/** A form in which an item is bought. */
export const packs = sqliteTable(
  "packs",
  {
    id: id(),
    itemId: integer("item_id")
      .notNull()
      .references(() => items.id),
    ...named(),
  },
  (t) => [unique("packs_name").on(t.itemId, t.folded)],
);

/** What a pack holds and costs, from one supplier, from one day on. */
export const packVersions = sqliteTable(
  "pack_versions",
  {
    id: id(),
    packId: integer("pack_id")
      .notNull()
      .references(() => packs.id),
    amount: real("amount").notNull(),
    unit: text("unit").$type<Unit>().notNull(),
    from: text("from_date"),
    perCase: integer("per_case").notNull(),
    supplierId: integer("supplier_id").references(() => suppliers.id),
    code: text("code").notNull(),
    gtin: text("gtin").notNull(),
    price: real("price"),
    pricePer: text("price_per").$type<Pack["pricePer"]>().notNull(),
    split: yesNo("split"),
    emptyG: real("empty_g"),
    fullG: real("full_g"),
    depositMinor: integer("deposit_minor"),
  },
  (t) => [
    uniqueIndex("pack_versions_one").on(t.packId, orNone(t.supplierId), orNone(t.from)),
    aboveZero("pack_versions_amount", t.amount),
    oneOfCheck("pack_versions_unit", t.unit, UNITS),
    dateCheck("pack_versions_from", t.from),
    aboveZero("pack_versions_per_case", t.perCase),
    notNegative("pack_versions_price", t.price),
    oneOfCheck("pack_versions_price_per", t.pricePer, ["container", "case"]),
    check("pack_versions_weights", sql`${t.fullG} > ${t.emptyG}`),
  ],
);

export const areas = sqliteTable("areas", { id: id(), ...named() }, (t) => [
  unique("areas_name").on(t.folded),
]);

export const shelves = sqliteTable(
  "shelves",
  {
    id: id(),
    areaId: integer("area_id")
      .notNull()
      .references(() => areas.id),
    itemId: integer("item_id")
      .notNull()
      .references(() => items.id),
    shelf: real("shelf").notNull(),
  },
  (t) => [unique("shelves_one").on(t.areaId, t.itemId)],
);

export const counts = sqliteTable("counts", { id: id(), ...named() }, (t) => [
  unique("counts_name").on(t.folded),
]);

export const countEntries = sqliteTable(
  "count_entries",
  {
    id: id(),
    countId: integer("count_id")
      .notNull()
      .references(() => counts.id),
    at: text("at").notNull(),
    areaId: integer("area_id")
      .notNull()
      .references(() => areas.id),
    itemId: integer("item_id")
      .notNull()
      .references(() => items.id),
    packId: integer("pack_id").references(() => packs.id),
    full: real("full"),
    parts: json<number[]>("parts_json"),
    grossG: json<number[]>("gross_g_json"),
    amount: real("amount"),
    unit: text("unit").$type<Unit>(),
    by: text("by").notNull(),
    ...entry(),
    replacesId: integer("replaces_id")
      .unique("count_entries_replaces")
      .references((): AnySQLiteColumn => countEntries.id),
  },
  (t) => [
    index("count_entries_count").on(t.countId),
    instantCheck("count_entries_at", t.at),
    notNegative("count_entries_full", t.full),
    notNegative("count_entries_amount", t.amount),
    oneOfCheck("count_entries_unit", t.unit, UNITS),
    ...entryChecks("count_entries", t),
  ],
);

export const deliveries = sqliteTable(
  "deliveries",
  {
    id: id(),
    at: text("at").notNull(),
    supplierId: integer("supplier_id")
      .notNull()
      .references(() => suppliers.id),
    invoice: text("invoice").notNull(),
    packId: integer("pack_id")
      .notNull()
      .references(() => packs.id),
    quantity: real("quantity").notNull(),
    of: text("of").$type<Of>().notNull(),
    priceTotalMinor: integer("price_total_minor"),
    depositMinor: integer("deposit_minor"),
    empties: real("empties"),
    by: text("by").notNull(),
    ...entry(),
    replacesId: integer("replaces_id")
      .unique("deliveries_replaces")
      .references((): AnySQLiteColumn => deliveries.id),
  },
  (t) => [
    index("deliveries_by_at").on(t.at),
    instantCheck("deliveries_at", t.at),
    notNegative("deliveries_quantity", t.quantity),
    oneOfCheck("deliveries_of", t.of, ["container", "case"]),
    notNegative("deliveries_price", t.priceTotalMinor),
    ...entryChecks("deliveries", t),
  ],
);

export const batches = sqliteTable(
  "batches",
  {
    id: id(),
    at: text("at").notNull(),
    prepId: integer("prep_id")
      .notNull()
      .references(() => items.id),
    made: real("made").notNull(),
    unit: text("unit").$type<Unit>().notNull(),
    by: text("by").notNull(),
    note: text("note").notNull(),
    ...entry(),
    replacesId: integer("replaces_id")
      .unique("batches_replaces")
      .references((): AnySQLiteColumn => batches.id),
  },
  (t) => [
    index("batches_by_at").on(t.at),
    instantCheck("batches_at", t.at),
    aboveZero("batches_made", t.made),
    oneOfCheck("batches_unit", t.unit, UNITS),
    ...entryChecks("batches", t),
  ],
);

/** What a batch really used in place of what its spec says; part of the batch's entry, corrected and taken back with it. */
export const batchInputs = sqliteTable(
  "batch_inputs",
  {
    id: id(),
    batchId: integer("batch_id")
      .notNull()
      .references(() => batches.id),
    itemId: integer("item_id")
      .notNull()
      .references(() => items.id),
    amount: real("amount").notNull(),
    unit: text("unit").$type<Unit>().notNull(),
  },
  (t) => [
    unique("batch_inputs_one").on(t.batchId, t.itemId),
    notNegative("batch_inputs_amount", t.amount),
    oneOfCheck("batch_inputs_unit", t.unit, UNITS),
  ],
);

export const losses = sqliteTable(
  "losses",
  {
    id: id(),
    at: text("at").notNull(),
    kind: text("kind").$type<Loss["kind"]>().notNull(),
    itemId: integer("item_id").references(() => items.id),
    drinkId: integer("drink_id").references(() => drinks.id),
    amount: real("amount").notNull(),
    unit: text("unit").$type<Loss["unit"]>().notNull(),
    by: text("by").notNull(),
    note: text("note").notNull(),
    ...entry(),
    replacesId: integer("replaces_id")
      .unique("losses_replaces")
      .references((): AnySQLiteColumn => losses.id),
  },
  (t) => [
    index("losses_by_at").on(t.at),
    instantCheck("losses_at", t.at),
    oneOfCheck("losses_kind", t.kind, LOSS_KINDS),
    check(
      "losses_what",
      sql`(${t.itemId} is null) = (${t.unit} = 'serve') and (${t.drinkId} is null) = (${t.unit} <> 'serve')`,
    ),
    aboveZero("losses_amount", t.amount),
    oneOfCheck("losses_unit", t.unit, [...UNITS, "serve"]),
    ...entryChecks("losses", t),
  ],
);

export const transfers = sqliteTable(
  "transfers",
  {
    id: id(),
    at: text("at").notNull(),
    direction: text("direction").$type<Transfer["direction"]>().notNull(),
    place: text("place").notNull(),
    itemId: integer("item_id")
      .notNull()
      .references(() => items.id),
    amount: real("amount").notNull(),
    unit: text("unit").$type<Unit>().notNull(),
    ...entry(),
    replacesId: integer("replaces_id")
      .unique("transfers_replaces")
      .references((): AnySQLiteColumn => transfers.id),
  },
  (t) => [
    index("transfers_by_at").on(t.at),
    instantCheck("transfers_at", t.at),
    oneOfCheck("transfers_direction", t.direction, ["in", "out"]),
    aboveZero("transfers_amount", t.amount),
    oneOfCheck("transfers_unit", t.unit, UNITS),
    ...entryChecks("transfers", t),
  ],
);
