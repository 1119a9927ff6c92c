import { sql } from "drizzle-orm";
import {
  blob,
  check,
  index,
  integer,
  primaryKey,
  real,
  sqliteTable,
  text,
  unique,
} from "drizzle-orm/sqlite-core";
import {
  aboveZero,
  amount,
  dateCheck,
  id,
  instantCheck,
  json,
  notNegative,
  oneOfCheck,
} from "#db/schema/columns.ts";
import { drinks } from "#db/schema/specs.ts";
import { items } from "#db/schema/stock.ts";
import { UNITS, type Unit } from "#engine/measure/units.ts";
import type { RefusedRow } from "#engine/sales/read/line.ts";
import type { SalesShape } from "#engine/sales/read/shape.ts";
import type { Modifier, RingName } from "#engine/sales/ring.ts";

export const ringNames = sqliteTable(
  "ring_names",
  {
    id: id(),
    ringName: text("ring_name").notNull(),
    folded: text("folded").notNull(),
    soldAs: text("sold_as").$type<RingName["soldAs"]["kind"]>().notNull(),
    drinkId: integer("drink_id").references(() => drinks.id),
    itemId: integer("item_id").references(() => items.id),
    serves: real("serves").notNull(),
    amount: amount("amount"),
    unit: text("unit").$type<Unit>(),
    /** When a person gave the meaning, and who; null for one that came with a book. */
    enteredAt: text("entered_at"),
    enteredBy: text("entered_by"),
    /** What the name meant before, to go back to; null when it had no meaning of its own. */
    before: text("before_json", { mode: "json" }).$type<RingName>(),
  },
  (t) => [
    unique("ring_names_name").on(t.folded),
    check(
      "ring_names_sold_as",
      sql`(${t.drinkId} is not null) = (${t.soldAs} = 'drink') and (${t.itemId} is not null) = (${t.soldAs} = 'item') and ${t.soldAs} in ('drink', 'item', 'ignore')`,
    ),
    aboveZero("ring_names_serves", t.serves),
    aboveZero("ring_names_amount", t.amount),
    oneOfCheck("ring_names_unit", t.unit, UNITS),
  ],
);

/** What a till's modifier does; several rows of one modifier all apply, in their order. */
export const modifiers = sqliteTable(
  "modifiers",
  {
    id: id(),
    modifier: text("modifier").notNull(),
    folded: text("folded").notNull(),
    effect: text("effect").$type<Modifier["effect"]>().notNull(),
    itemId: integer("item_id").references(() => items.id),
    withId: integer("with_id").references(() => items.id),
    amount: amount("amount"),
    unit: text("unit").$type<Unit>(),
    factor: amount("factor"),
  },
  (t) => [
    index("modifiers_name").on(t.folded),
    oneOfCheck("modifiers_effect", t.effect, ["swap", "add", "remove", "times", "none"]),
    aboveZero("modifiers_amount", t.amount),
    oneOfCheck("modifiers_unit", t.unit, UNITS),
    notNegative("modifiers_factor", t.factor),
  ],
);

/** One reading-in of one sales file; undone imports stay, marked. */
export const saleImports = sqliteTable(
  "sale_imports",
  {
    id: id(),
    file: text("file").notNull(),
    importedAt: text("imported_at").notNull(),
    importedBy: text("imported_by").notNull(),
    shape: json<SalesShape>("shape_json"),
    lines: integer("lines").notNull(),
    refused: json<RefusedRow[]>("refused_json"),
    /** Of the file's bytes and all that its reading depends on: two imports with one digest have the same lines. */
    readDigest: text("read_digest"),
    /** Whether sums in the file take the place of sums that were there of the same days, or are added to them. */
    replacesSums: integer("replaces_sums", { mode: "boolean" }).notNull().default(false),
    undoneAt: text("undone_at"),
    undoneBy: text("undone_by"),
  },
  (t) => [
    instantCheck("sale_imports_imported_at", t.importedAt),
    instantCheck("sale_imports_undone_at", t.undoneAt),
  ],
);

/** Texts of the till, each kept once: ring names and modifiers. */
export const saleNames = sqliteTable("sale_names", { id: id(), text: text("text").notNull() }, (t) => [
  unique("sale_names_text").on(t.text),
]);

/**
 * The lines that one file has of one business day, packed column by column (engine/sales/packed/block.ts), texts by their
 * number in sale_names. Two files with the same lines of a day share a block.
 */
export const saleBlocks = sqliteTable(
  "sale_blocks",
  {
    id: id(),
    businessDate: text("business_date").notNull(),
    digest: text("digest").notNull(),
    lines: integer("lines").notNull(),
    packed: blob("packed", { mode: "buffer" }).notNull(),
  },
  (t) => [
    unique("sale_blocks_one").on(t.businessDate, t.digest),
    dateCheck("sale_blocks_date", t.businessDate),
  ],
);

/** Who rang lines, each name once; only while the venue keeps them. */
export const staffNames = sqliteTable("staff_names", { id: id(), name: text("name").notNull() }, (t) => [
  unique("staff_names_name").on(t.name),
]);

/**
 * Who rang the lines of a block, in their order, by number in staff_names (engine/sales/packed/staff.ts). Beside the block and no
 * part of it: whoever rang a line, it is the same line, and names can be erased without touching a sale.
 */
export const saleStaff = sqliteTable("sale_staff", {
  blockId: integer("block_id")
    .primaryKey()
    .references(() => saleBlocks.id),
  packed: blob("packed", { mode: "buffer" }).notNull(),
});

export const importDays = sqliteTable(
  "import_days",
  {
    importId: integer("import_id")
      .notNull()
      .references(() => saleImports.id),
    businessDate: text("business_date").notNull(),
    blockId: integer("block_id")
      .notNull()
      .references(() => saleBlocks.id),
  },
  (t) => [
    primaryKey({ name: "import_days_one", columns: [t.importId, t.businessDate] }),
    index("import_days_date").on(t.businessDate),
  ],
);

/**
 * Sales of a business day by ring name and modifiers, packed (engine/sales/packed/tally.ts), with their sums; kept beside the
 * lines and always computed from them.
 */
export const tallies = sqliteTable(
  "tallies",
  {
    businessDate: text("business_date").primaryKey(),
    lines: integer("lines").notNull(),
    quantity: real("quantity").notNull(),
    netMinor: integer("net_minor").notNull(),
    packed: blob("packed", { mode: "buffer" }).notNull(),
  },
  (t) => [dateCheck("tallies_date", t.businessDate)],
);
