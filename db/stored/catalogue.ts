import { and, asc, eq, isNull, type SQL } from "drizzle-orm";
import type { Db } from "#db/open.ts";
import { drinks } from "#db/schema/specs.ts";
import { areas, items, packs, packVersions, shelves } from "#db/schema/stock.ts";
import { idOrAdd, type Registers } from "#db/stored/register.ts";
import { foldName } from "#engine/name.ts";
import type { Drink } from "#engine/specs/spec.ts";
import type { Item, Pack, Shelf } from "#engine/stock/item.ts";
import type { BusinessDate } from "#engine/time.ts";

/** Items, packs, areas and drinks as rows, and rows as facts again. */

export function insertItem({ orm }: Db, registers: Registers, item: Item): number {
  const id = Number(orm.insert(items).values(itemRow(item)).run().lastInsertRowid);
  registers.items.add(id, item.name);
  return id;
}

export function itemRow(item: Item) {
  return { ...item, folded: foldName(item.name) };
}

export function loadItems({ orm }: Db): Item[] {
  const rows = orm.select().from(items).orderBy(asc(items.id)).all();
  return rows.map(({ id: _, folded: __, ...item }) => item);
}

export function insertDrink({ orm }: Db, registers: Registers, drink: Drink): number {
  const id = Number(orm.insert(drinks).values(drinkRow(drink)).run().lastInsertRowid);
  registers.drinks.add(id, drink.name);
  return id;
}

export function drinkRow(drink: Drink) {
  return { ...drink, folded: foldName(drink.name) };
}

export function loadDrinks({ orm }: Db): Drink[] {
  const rows = orm.select().from(drinks).orderBy(asc(drinks.id)).all();
  return rows.map(({ id: _, folded: __, ...drink }) => drink);
}

export function insertPack(db: Db, registers: Registers, pack: Pack): void {
  db.orm
    .insert(packVersions)
    .values(packRow(db, registers, pack))
    .run();
}

/** The row of a pack's version; the pack itself is added when first named. */
export function packRow(db: Db, registers: Registers, pack: Pack) {
  const { item, pack: name, supplier, ...version } = pack;
  const itemId = registers.items.idOf(item);
  let packId = registers.packs.find(itemId, name);
  if (packId === undefined) {
    const row = { itemId, name, folded: foldName(name) };
    packId = Number(db.orm.insert(packs).values(row).run().lastInsertRowid);
    registers.packs.add(packId, itemId, name);
  }
  return { ...version, packId, supplierId: supplier === null ? null : registers.suppliers.idOf(supplier) };
}

/** Writes a row of a pack, in place of the one of the same supplier and first day. */
export function putPack(db: Db, registers: Registers, pack: Pack): void {
  const row = packRow(db, registers, pack);
  const replaced = db.orm.update(packVersions).set(row).where(packWhere(row)).run().changes;
  if (replaced === 0) insertPack(db, registers, pack);
}

/** Which row of a pack: from whom and from which day. */
export function packWhere(row: {
  packId: number;
  supplierId: number | null;
  from: BusinessDate | null;
}): SQL | undefined {
  return and(
    eq(packVersions.packId, row.packId),
    row.supplierId === null ? isNull(packVersions.supplierId) : eq(packVersions.supplierId, row.supplierId),
    row.from === null ? isNull(packVersions.from) : eq(packVersions.from, row.from),
  );
}

export function loadPacks({ orm }: Db, registers: Registers): Pack[] {
  const rows = orm.select().from(packVersions).orderBy(asc(packVersions.id)).all();
  return rows.map(({ id: _, packId, supplierId, ...version }) => {
    const { itemId, name } = registers.packs.of(packId);
    return {
      ...version,
      item: registers.items.nameOf(itemId),
      pack: name,
      supplier: supplierId === null ? null : registers.suppliers.nameOf(supplierId),
    };
  });
}

export function insertShelf(db: Db, registers: Registers, { area, item, shelf }: Shelf): void {
  const areaId = idOrAdd(db, areas, registers.areas, area);
  db.orm
    .insert(shelves)
    .values({ areaId, itemId: registers.items.idOf(item), shelf })
    .run();
}

export function loadShelves({ orm }: Db, registers: Registers): Shelf[] {
  const rows = orm.select().from(shelves).orderBy(asc(shelves.id)).all();
  return rows.map(({ areaId, itemId, shelf }) => ({
    area: registers.areas.nameOf(areaId),
    item: registers.items.nameOf(itemId),
    shelf,
  }));
}
