import { and, eq } from "drizzle-orm";
import { ConflictError, InvalidError, NotFoundError } from "#db/errors.ts";
import type { Db } from "#db/open.ts";
import { events, plans } from "#db/schema/demand.ts";
import { orderLines } from "#db/schema/orders.ts";
import { about, asSheetHolds, writeChecked } from "#db/stored/checked-write.ts";
import { insertEvent, insertOrderLine, insertPlan, loadOrderLines } from "#db/stored/orders.ts";
import { loadRegisters } from "#db/stored/register.ts";
import { EventDay, Plan } from "#engine/demand/plan.ts";
import { foldName } from "#engine/name.ts";
import { OrderLine } from "#engine/orders/supplier.ts";
import type { BusinessDate } from "#engine/time.ts";

/**
 * Enters an order as placed: its lines, all under one name and to one supplier. Throws ConflictError when there is an order
 * of this name, so that one sent twice by a bad connection is not on order twice.
 */
export async function placeOrder(db: Db, lines: readonly OrderLine[]): Promise<void> {
  writeChecked(db, about("order placed", "order", lines[0]?.order ?? ""), (registers, venue) => {
    const held = lines.map((line) => asSheetHolds("orders", OrderLine.parse(line), venue));
    const [first] = held;
    if (first === undefined) throw new InvalidError("An order needs at least one line.");
    if (held.some(({ order, supplier }) => order !== first.order || supplier !== first.supplier)) {
      throw new InvalidError(
        "The lines of an order have one name and one supplier; place one order for each.",
      );
    }
    const taken = loadOrderLines(db, registers).some(
      ({ order }) => foldName(order) === foldName(first.order),
    );
    if (taken) throw new ConflictError(`There is already an order "${first.order}"; it was placed before.`);
    for (const line of held) insertOrderLine(db, registers, line);
  });
}

/** Takes an order that will not come out again. Throws NotFoundError. */
export async function removeOrder(db: Db, order: string): Promise<void> {
  writeChecked(db, about("order taken out", "order", order), (registers) => {
    const found = loadOrderLines(db, registers).find((line) => foldName(line.order) === foldName(order));
    if (found === undefined) throw new NotFoundError(`There is no order "${order}".`);
    db.orm.delete(orderLines).where(eq(orderLines.order, found.order)).run();
  });
}

/** The lines of all orders, as placed. */
export async function listOrders(db: Db): Promise<OrderLine[]> {
  return loadOrderLines(db, loadRegisters(db));
}

/** Writes a busy or quiet day, in place of the event of that name on it. */
export async function saveEvent(db: Db, event: EventDay): Promise<void> {
  writeChecked(db, about("event changed", "event", event.event), (_, venue) => {
    const held = asSheetHolds("events", EventDay.parse(event), venue);
    const same = and(eq(events.date, held.date), eq(events.event, held.event));
    if (db.orm.update(events).set(held).where(same).run().changes === 0) insertEvent(db, held);
  });
}

/** Takes an event out. Throws NotFoundError. */
export async function removeEvent(db: Db, { date, event }: Pick<EventDay, "date" | "event">): Promise<void> {
  writeChecked(db, about("event changed", "event", event), () => {
    const same = and(eq(events.date, date), eq(events.event, event));
    if (db.orm.delete(events).where(same).run().changes === 0) {
      throw new NotFoundError(`There is no event "${event}" on ${date}.`);
    }
  });
}

/** Writes how many serves of a drink are planned beyond the usual on a day, in place of what was; 0 takes it out. */
export async function savePlan(db: Db, plan: Plan): Promise<void> {
  writeChecked(db, about("plan changed", "drink", plan.drink), (registers, venue) => {
    const held = asSheetHolds("plans", Plan.parse(plan), venue);
    clearPlan(db, registers.drinks.idOf(held.drink), held.date);
    if (held.serves > 0) insertPlan(db, registers, held);
  });
}

function clearPlan({ orm }: Db, drinkId: number, date: BusinessDate): void {
  orm
    .delete(plans)
    .where(and(eq(plans.drinkId, drinkId), eq(plans.date, date)))
    .run();
}
