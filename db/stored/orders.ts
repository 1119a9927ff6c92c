import { asc, eq } from "drizzle-orm";
import type { Db } from "#db/open.ts";
import { events, plans } from "#db/schema/demand.ts";
import { closures, orderLines, supplierDays, suppliers } from "#db/schema/orders.ts";
import type { Registers } from "#db/stored/register.ts";
import type { EventDay, Plan } from "#engine/demand/plan.ts";
import { foldName } from "#engine/name.ts";
import type { Closure, OrderLine, Supplier, SupplierDay } from "#engine/orders/supplier.ts";

/** Suppliers and their calendars, orders, events and plans as rows, and rows as facts again. */

export function supplierRow(supplier: Supplier) {
  return { ...supplier, folded: foldName(supplier.name) };
}

export function insertSupplier({ orm }: Db, registers: Registers, supplier: Supplier): number {
  const id = Number(orm.insert(suppliers).values(supplierRow(supplier)).run().lastInsertRowid);
  registers.suppliers.add(id, supplier.name);
  return id;
}

export function loadSuppliers({ orm }: Db): Supplier[] {
  const rows = orm.select().from(suppliers).orderBy(asc(suppliers.id)).all();
  return rows.map(({ id: _, folded: __, ...supplier }) => supplier);
}

export function insertSupplierDay({ orm }: Db, registers: Registers, day: SupplierDay): void {
  const { supplier, ...rest } = day;
  orm
    .insert(supplierDays)
    .values({ ...rest, supplierId: registers.suppliers.idOf(supplier) })
    .run();
}

/** Takes out a supplier's days. */
export function clearSupplierDays({ orm }: Db, registers: Registers, supplier: string): void {
  orm
    .delete(supplierDays)
    .where(eq(supplierDays.supplierId, registers.suppliers.idOf(supplier)))
    .run();
}

export function loadSupplierDays({ orm }: Db, registers: Registers): SupplierDay[] {
  const rows = orm.select().from(supplierDays).orderBy(asc(supplierDays.id)).all();
  return rows.map(({ id: _, supplierId, ...day }) => ({
    ...day,
    supplier: registers.suppliers.nameOf(supplierId),
  }));
}

export function insertClosure({ orm }: Db, registers: Registers, { supplier, from, to }: Closure): void {
  const supplierId = supplier === null ? null : registers.suppliers.idOf(supplier);
  orm.insert(closures).values({ supplierId, from, to }).run();
}

export function loadClosures({ orm }: Db, registers: Registers): Closure[] {
  const rows = orm.select().from(closures).orderBy(asc(closures.id)).all();
  return rows.map(({ supplierId, from, to }) => ({
    supplier: supplierId === null ? null : registers.suppliers.nameOf(supplierId),
    from,
    to,
  }));
}

export function insertOrderLine({ orm }: Db, registers: Registers, orderLine: OrderLine): void {
  const { supplier, item, pack, ...line } = orderLine;
  const packId = registers.packs.idOf(registers.items.idOf(item), item, pack);
  orm
    .insert(orderLines)
    .values({ ...line, supplierId: registers.suppliers.idOf(supplier), packId })
    .run();
}

export function loadOrderLines({ orm }: Db, registers: Registers): OrderLine[] {
  const rows = orm.select().from(orderLines).orderBy(asc(orderLines.id)).all();
  return rows.map(({ id: _, supplierId, packId, ...line }) => {
    const { itemId, name } = registers.packs.of(packId);
    return {
      ...line,
      supplier: registers.suppliers.nameOf(supplierId),
      item: registers.items.nameOf(itemId),
      pack: name,
    };
  });
}

export function insertEvent({ orm }: Db, event: EventDay): void {
  orm.insert(events).values(event).run();
}

export function loadEvents({ orm }: Db): EventDay[] {
  const rows = orm.select().from(events).orderBy(asc(events.id)).all();
  return rows.map(({ date, event, factor }) => ({ date, event, factor }));
}

export function insertPlan({ orm }: Db, registers: Registers, { date, drink, serves }: Plan): void {
  orm
    .insert(plans)
    .values({ date, drinkId: registers.drinks.idOf(drink), serves })
    .run();
}

export function loadPlans({ orm }: Db, registers: Registers): Plan[] {
  const rows = orm.select().from(plans).orderBy(asc(plans.id)).all();
  return rows.map(({ date, drinkId, serves }) => ({
    date,
    drink: registers.drinks.nameOf(drinkId),
    serves,
  }));
}
