import { asc } from "drizzle-orm";
import type { Db } from "#db/open.ts";
import { events, plans } from "#db/schema/demand.ts";
import { closures, orderLines, supplierDays, suppliers } from "#db/schema/orders.ts";
import { modifiers, ringNames } from "#db/schema/sales.ts";
import { cuts, drinks, prepVersions, specAlternatives, specLines } from "#db/schema/specs.ts";
import {
  areas,
  batches,
  batchInputs,
  countEntries,
  counts,
  deliveries,
  items,
  losses,
  packs,
  packVersions,
  shelves,
  transfers,
} from "#db/schema/stock.ts";
import { salesShapes, venues } from "#db/schema/venue.ts";
import {
  insertDrink,
  insertItem,
  insertPack,
  insertShelf,
  loadDrinks,
  loadItems,
  loadPacks,
  loadShelves,
} from "#db/stored/catalogue.ts";
import { asBatchSheets, loadCurrent, type Stamp, storeOf, withInputs } from "#db/stored/entries.ts";
import {
  insertClosure,
  insertEvent,
  insertOrderLine,
  insertPlan,
  insertSupplier,
  insertSupplierDay,
  loadClosures,
  loadEvents,
  loadOrderLines,
  loadPlans,
  loadSupplierDays,
  loadSuppliers,
} from "#db/stored/orders.ts";
import { loadRegisters, type Registers } from "#db/stored/register.ts";
import { insertModifier, insertRingName, loadModifiers, loadRingNames } from "#db/stored/sales-names.ts";
import {
  insertCut,
  insertPrep,
  insertSpecLine,
  loadCuts,
  loadPreps,
  loadSpecLines,
} from "#db/stored/specs.ts";
import type { Book } from "#engine/book.ts";
import { inputsByBatch } from "#engine/stock/batch-inputs.ts";
import type { BatchEntry } from "#engine/stock/movement.ts";
import type { Venue } from "#engine/venue.ts";

/** Every table of the book, those that refer before those that are referred to. */
const TABLES = [
  countEntries,
  counts,
  deliveries,
  batchInputs,
  batches,
  losses,
  transfers,
  orderLines,
  plans,
  events,
  ringNames,
  modifiers,
  specAlternatives,
  specLines,
  prepVersions,
  cuts,
  shelves,
  areas,
  packVersions,
  packs,
  closures,
  supplierDays,
  suppliers,
  drinks,
  items,
  salesShapes,
  venues,
];

/** Empties the tables of the book; only while the whole book is being replaced. */
export function clearBook({ orm, sqlite }: Db): void {
  // An entry refers to the one it replaces, in its own table.
  sqlite.pragma("defer_foreign_keys = ON");
  for (const table of TABLES) orm.delete(table).run();
}

/** Writes a book into empty tables. */
export function insertBook(db: Db, book: Book, stamp: Pick<Stamp, "enteredAt" | "enteredBy">): void {
  db.orm
    .insert(venues)
    .values({ id: 1, ...venueRow(book.venue) })
    .run();
  for (const shape of book.salesShapes) db.orm.insert(salesShapes).values({ shape }).run();
  const registers = loadRegisters(db);
  for (const item of book.items) insertItem(db, registers, item);
  for (const drink of book.drinks) insertDrink(db, registers, drink);
  for (const supplier of book.suppliers) insertSupplier(db, registers, supplier);
  for (const day of book.supplierDays) insertSupplierDay(db, registers, day);
  for (const closure of book.closures) insertClosure(db, registers, closure);
  for (const pack of book.packs) insertPack(db, registers, pack);
  for (const shelf of book.areas) insertShelf(db, registers, shelf);
  for (const prep of book.preps) insertPrep(db, registers, prep);
  for (const line of book.specs) insertSpecLine(db, registers, line);
  for (const cut of book.cuts) insertCut(db, registers, cut);
  for (const ring of book.ringNames) insertRingName(db, registers, ring);
  for (const modifier of book.modifiers) insertModifier(db, registers, modifier);
  for (const event of book.events) insertEvent(db, event);
  for (const plan of book.plans) insertPlan(db, registers, plan);
  for (const line of book.orders) insertOrderLine(db, registers, line);
  const first: Stamp = { ...stamp, reason: "", replacesId: null, isWithdrawn: false, entryKey: null };
  for (const row of book.counts) storeOf("count").insert(db, registers, row, first);
  for (const row of book.deliveries) storeOf("delivery").insert(db, registers, row, first);
  for (const row of asBatchEntries(book)) storeOf("batch").insert(db, registers, row, first);
  for (const row of book.losses) storeOf("loss").insert(db, registers, row, first);
  for (const row of book.transfers) storeOf("transfer").insert(db, registers, row, first);
}

/** The batches of a book as they are entered: each with what it used. */
function asBatchEntries(book: Book): BatchEntry[] {
  const used = inputsByBatch(book);
  return book.batches.map((batch) => withInputs(batch, used.get(batch)));
}

const NO_ENTRIES = { counts: [], deliveries: [], batches: [], batchInputs: [], losses: [], transfers: [] };

/** The book as it now stands; undefined while there is no venue. */
export function readStoredBook(db: Db): Book | undefined {
  const registers = loadRegisters(db);
  const catalogue = readWithoutEntries(db, registers);
  return (
    catalogue && {
      ...catalogue,
      counts: loadCurrent(db, registers, "count"),
      deliveries: loadCurrent(db, registers, "delivery"),
      ...asBatchSheets(loadCurrent(db, registers, "batch")),
      losses: loadCurrent(db, registers, "loss"),
      transfers: loadCurrent(db, registers, "transfer"),
    }
  );
}

/** The book with none of its entries; undefined while there is no venue. */
export function readWithoutEntries(db: Db, registers: Registers): Book | undefined {
  const venue = loadVenue(db);
  if (venue === undefined) return undefined;
  const shapes = db.orm.select().from(salesShapes).orderBy(asc(salesShapes.id)).all();
  return {
    venue,
    ...NO_ENTRIES,
    items: loadItems(db),
    packs: loadPacks(db, registers),
    suppliers: loadSuppliers(db),
    supplierDays: loadSupplierDays(db, registers),
    closures: loadClosures(db, registers),
    areas: loadShelves(db, registers),
    drinks: loadDrinks(db),
    preps: loadPreps(db, registers),
    specs: loadSpecLines(db, registers),
    cuts: loadCuts(db, registers),
    ringNames: loadRingNames(db, registers),
    modifiers: loadModifiers(db, registers),
    events: loadEvents(db),
    plans: loadPlans(db, registers),
    orders: loadOrderLines(db, registers),
    salesShapes: shapes.map(({ shape }) => shape),
  };
}

/** Stands in the column for a level that is not stated: no level is 0, and the column has never been empty. */
const NO_LEVEL = 0;

/** What a venue does not state has an empty cell. */
export function venueRow(venue: Venue) {
  return {
    ...venue,
    serviceLevel: venue.serviceLevel ?? NO_LEVEL,
    thresholds: venue.thresholds ?? null,
    areaTemperatureC: venue.areaTemperatureC ?? null,
    country: venue.country ?? null,
    region: venue.region ?? null,
    keepStaff: venue.keepStaff ?? null,
  };
}

export function loadVenue({ orm }: Db): Venue | undefined {
  const row = orm.select().from(venues).get();
  if (row === undefined) return undefined;
  const { id: _, thresholds, areaTemperatureC, country, region, keepStaff, serviceLevel, ...venue } = row;
  return {
    ...venue,
    serviceLevel: serviceLevel === NO_LEVEL ? null : serviceLevel,
    ...(thresholds === null ? {} : { thresholds }),
    ...(areaTemperatureC === null ? {} : { areaTemperatureC }),
    ...(country === null ? {} : { country }),
    ...(region === null ? {} : { region }),
    ...(keepStaff === null ? {} : { keepStaff }),
  };
}
