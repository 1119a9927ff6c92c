import type { Row, Sheet } from "#db/book/sheet.ts";
import { BATCH_INPUTS, BATCHES, COUNTS, DELIVERIES, LOSSES, TRANSFERS } from "#db/book/sheets/movements.ts";
import { CLOSURES, EVENTS, ORDERS, PLANS, SUPPLIER_DAYS, SUPPLIERS } from "#db/book/sheets/orders.ts";
import { CUTS, DRINKS, MODIFIERS, PREPS, RING_NAMES, SPECS } from "#db/book/sheets/specs.ts";
import { AREAS, ITEMS, PACKS } from "#db/book/sheets/stock.ts";

/** Every CSV sheet of the book by the key of its list, in the order in which problems are listed. */
export const SHEETS = {
  items: ITEMS,
  packs: PACKS,
  suppliers: SUPPLIERS,
  supplierDays: SUPPLIER_DAYS,
  closures: CLOSURES,
  areas: AREAS,
  drinks: DRINKS,
  preps: PREPS,
  specs: SPECS,
  cuts: CUTS,
  ringNames: RING_NAMES,
  modifiers: MODIFIERS,
  counts: COUNTS,
  deliveries: DELIVERIES,
  batches: BATCHES,
  batchInputs: BATCH_INPUTS,
  losses: LOSSES,
  transfers: TRANSFERS,
  events: EVENTS,
  plans: PLANS,
  orders: ORDERS,
};

export type SheetKey = keyof typeof SHEETS;
export const SHEET_KEYS = Object.keys(SHEETS) as SheetKey[];

/** The sheets of what happened, whose rows are only ever added. */
export const ENTRY_SHEETS = [
  "counts",
  "deliveries",
  "batches",
  "batchInputs",
  "losses",
  "transfers",
] as const satisfies readonly SheetKey[];

/** What one row of a sheet holds. */
export type FactOf<Key extends SheetKey> = (typeof SHEETS)[Key] extends Sheet<infer Fact> ? Fact : never;

/** The rows of all sheets, as read. */
export type Rows = { [Key in SheetKey]: Row<FactOf<Key>>[] };

export const VENUE_FILE = "venue.json";
export const SHAPES_FILE = "sales-shapes.json";
export const REQUIRED_FILES: readonly string[] = [VENUE_FILE, ITEMS.file, PACKS.file];

/** The files of a book beside its sales, in the order in which problems are listed. */
export const BOOK_FILES: readonly string[] = [
  VENUE_FILE,
  ...Object.values(SHEETS).map(({ file }) => file),
  SHAPES_FILE,
];
