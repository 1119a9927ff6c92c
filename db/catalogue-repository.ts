import { eq, type SQL } from "drizzle-orm";
import type { SQLiteTable } from "drizzle-orm/sqlite-core";
import { ConflictError, InvalidError, NotFoundError } from "#db/errors.ts";
import type { Db } from "#db/open.ts";
import { closures, suppliers } from "#db/schema/orders.ts";
import { drinks } from "#db/schema/specs.ts";
import { areas, items, packVersions, shelves } from "#db/schema/stock.ts";
import { salesShapes } from "#db/schema/venue.ts";
import {
  drinkRow,
  insertDrink,
  insertItem,
  insertShelf,
  itemRow,
  loadItems,
  packWhere,
  putPack,
} from "#db/stored/catalogue.ts";
import { about, asSheetHolds, writeChecked } from "#db/stored/checked-write.ts";
import {
  clearSupplierDays,
  insertClosure,
  insertSupplier,
  insertSupplierDay,
  supplierRow,
} from "#db/stored/orders.ts";
import { idOrAdd, type Register, type Registers, refuseTaken } from "#db/stored/register.ts";
import { foldName } from "#engine/name.ts";
import { Closure, Supplier, SupplierDay } from "#engine/orders/supplier.ts";
import { SalesShape } from "#engine/sales/read/shape.ts";
import { Drink } from "#engine/specs/spec.ts";
import { Item, Pack, Shelf } from "#engine/stock/item.ts";

type OrderDay = Omit<SupplierDay, "supplier">;

/** Under which name it was known, where a save renames it. */
export type Renaming = { was?: string };

/** Adds an item, or changes the one of its name (or of the name it had). */
export async function saveItem(db: Db, item: Item, { was }: Renaming = {}): Promise<void> {
  writeChecked(db, about("item changed", "item", item.name), (registers, venue) => {
    const held = asSheetHolds("items", Item.parse(item), venue);
    const id = known(registers.items, "item", held.name, was);
    if (id === undefined) insertItem(db, registers, held);
    else db.orm.update(items).set(itemRow(held)).where(eq(items.id, id)).run();
  });
}

/**
 * Sets an item's par by hand, in base units, with the reason; null gives it back to the computed one. Throws NotFoundError for
 * an item that is not there, InvalidError for a par set without a reason.
 */
export async function savePar(
  db: Db,
  { item, par, reason }: { item: string; par: number | null; reason: string },
): Promise<void> {
  writeChecked(db, { ...about("item changed", "item", item), reason }, (registers, venue) => {
    if (par !== null && reason.trim() === "")
      throw new InvalidError("Say why the par is set by hand, for whoever wonders in three months.");
    const id = registers.items.idOf(item);
    const known = loadItems(db).find((one) => foldName(one.name) === foldName(item));
    if (known === undefined) throw new NotFoundError(`There is no item "${item}".`);
    const held = asSheetHolds("items", { ...known, par, parReason: par === null ? "" : reason }, venue);
    db.orm.update(items).set(itemRow(held)).where(eq(items.id, id)).run();
  });
}

/** Adds a drink, or changes the one of its name (or of the name it had). */
export async function saveDrink(db: Db, drink: Drink, { was }: Renaming = {}): Promise<void> {
  writeChecked(db, about("drink changed", "drink", drink.name), (registers, venue) => {
    const held = asSheetHolds("drinks", Drink.parse(drink), venue);
    const id = known(registers.drinks, "drink", held.name, was);
    if (id === undefined) insertDrink(db, registers, held);
    else db.orm.update(drinks).set(drinkRow(held)).where(eq(drinks.id, id)).run();
  });
}

/** Adds a supplier, or changes the one of its name (or of the name it had); days that are given stand in place of those it had. */
export async function saveSupplier(
  db: Db,
  supplier: Supplier,
  { was, days }: Renaming & { days?: readonly OrderDay[] } = {},
): Promise<void> {
  writeChecked(db, about("supplier changed", "supplier", supplier.name), (registers, venue) => {
    const held = asSheetHolds("suppliers", Supplier.parse(supplier), venue);
    const id = known(registers.suppliers, "supplier", held.name, was);
    if (id === undefined) insertSupplier(db, registers, held);
    else db.orm.update(suppliers).set(supplierRow(held)).where(eq(suppliers.id, id)).run();
    if (days !== undefined) putSupplierDays(db, registers, held.name, days);
  });
}

/** The number of what is to be changed, if it is there; its new name must not be another's. */
function known(register: Register, kind: string, name: string, was: string | undefined): number | undefined {
  const id = was === undefined ? register.find(name) : register.idOf(was);
  refuseTaken(register, kind, name, id);
  return id;
}

/** Which row of a pack: from whom and from which day. */
export type PackKey = Pick<Pack, "item" | "pack" | "supplier" | "from">;

/** Adds a pack with its price, or changes the row of the same supplier and first day. */
export async function savePack(db: Db, pack: Pack): Promise<void> {
  writeChecked(db, about("price changed", "item", pack.item), (registers, venue) => {
    const held = asSheetHolds("packs", Pack.parse(pack), venue);
    if (held.emptyG !== null && held.fullG !== null && held.fullG <= held.emptyG) {
      throw new InvalidError(
        `A full container cannot weigh ${held.fullG} g and an empty one ${held.emptyG} g; weigh both again.`,
      );
    }
    putPack(db, registers, held);
  });
}

/** Takes one row of a pack out. Throws NotFoundError; InvalidError when an entry still needs the pack. */
export async function removePack(db: Db, key: PackKey): Promise<void> {
  writeChecked(db, about("price changed", "item", key.item), (registers) => {
    const itemId = registers.items.idOf(key.item);
    const row = {
      packId: registers.packs.idOf(itemId, key.item, key.pack),
      supplierId: key.supplier === null ? null : registers.suppliers.idOf(key.supplier),
      from: key.from,
    };
    const removed = db.orm.delete(packVersions).where(packWhere(row)).run().changes;
    if (removed === 0)
      throw new NotFoundError(`There is no such row of the pack "${key.pack}" of "${key.item}".`);
  });
}

/** Puts an area's items in shelf order, in place of those it had. */
export async function saveArea(db: Db, area: string, order: readonly Omit<Shelf, "area">[]): Promise<void> {
  writeChecked(db, about("shelf order changed", "area", area), (registers, venue) => {
    const rows = order.map((shelf) => asSheetHolds("areas", Shelf.parse({ area, ...shelf }), venue));
    const areaId = idOrAdd(db, areas, registers.areas, rows[0]?.area ?? area.trim());
    db.orm.delete(shelves).where(eq(shelves.areaId, areaId)).run();
    for (const row of rows) insertShelf(db, registers, row);
  });
}

/** Puts a supplier's order and delivery days in place of those it had. */
export async function saveSupplierDays(db: Db, supplier: string, days: readonly OrderDay[]): Promise<void> {
  writeChecked(db, about("supplier days changed", "supplier", supplier), (registers) =>
    putSupplierDays(db, registers, supplier, days),
  );
}

function putSupplierDays(db: Db, registers: Registers, supplier: string, days: readonly OrderDay[]): void {
  clearSupplierDays(db, registers, supplier);
  for (const day of days) insertSupplierDay(db, registers, SupplierDay.parse({ supplier, ...day }));
}

/** Puts the closed days of suppliers in place of all there were. */
export async function saveClosures(db: Db, list: readonly Closure[]): Promise<void> {
  writeChecked(db, about("closed days changed", "venue", "deliveries"), (registers) => {
    db.orm.delete(closures).run();
    for (const closure of list.map((each) => Closure.parse(each))) {
      if (closure.to < closure.from) {
        throw new InvalidError(`A closure ends on ${closure.to}, before it begins on ${closure.from}.`);
      }
      insertClosure(db, registers, closure);
    }
  });
}

/** Puts the shapes of sales files in place of all there were. */
export async function saveSalesShapes(db: Db, shapes: readonly SalesShape[]): Promise<void> {
  writeChecked(db, about("sales shapes changed", "venue", "sales files"), () => {
    db.orm.delete(salesShapes).run();
    for (const shape of shapes)
      db.orm
        .insert(salesShapes)
        .values({ shape: SalesShape.parse(shape) })
        .run();
  });
}

/** Takes an item out. Throws NotFoundError, and ConflictError while anything still names it. */
export async function removeItem(db: Db, name: string): Promise<void> {
  writeChecked(db, about("item changed", "item", name), (registers) =>
    removeNamed(db, items, eq(items.id, registers.items.idOf(name)), name),
  );
}

/** Takes a drink out. Throws NotFoundError, and ConflictError while anything still names it. */
export async function removeDrink(db: Db, name: string): Promise<void> {
  writeChecked(db, about("drink changed", "drink", name), (registers) =>
    removeNamed(db, drinks, eq(drinks.id, registers.drinks.idOf(name)), name),
  );
}

/** Takes a supplier out. Throws NotFoundError, and ConflictError while anything still names it. */
export async function removeSupplier(db: Db, name: string): Promise<void> {
  writeChecked(db, about("supplier changed", "supplier", name), (registers) =>
    removeNamed(db, suppliers, eq(suppliers.id, registers.suppliers.idOf(name)), name),
  );
}

function removeNamed(db: Db, table: SQLiteTable, where: SQL, name: string): void {
  try {
    db.orm.delete(table).where(where).run();
  } catch (error) {
    if (!isStillNamed(error)) throw error;
    throw new ConflictError(`"${name}" is still named elsewhere in the book; take it out there first.`);
  }
}

function isStillNamed(error: unknown): boolean {
  const cause = error instanceof Error && error.cause !== undefined ? error.cause : error;
  return (cause as { code?: string }).code === "SQLITE_CONSTRAINT_FOREIGNKEY";
}
