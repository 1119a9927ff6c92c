import { type Cell, money, NOT_NEGATIVE, name, number, oneOf, optional, shortText } from "#db/book/cell.ts";
import { column, required, type Sheet } from "#db/book/sheet.ts";
import { clockTime, date, momentOrDate, weekday } from "#db/book/time-cell.ts";
import type { EventDay, Plan } from "#engine/demand/plan.ts";
import { foldName } from "#engine/name.ts";
import type { Closure, OrderLine, Supplier, SupplierDay } from "#engine/orders/supplier.ts";
import { harmlessText, textOfCell } from "#engine/sheet-text.ts";

export const SUPPLIERS: Sheet<Supplier> = {
  file: "suppliers.csv",
  columns: {
    name: required("supplier", name()),
    email: column("email", shortText),
    minimumValueMinor: column("minimum_value", optional(money)),
    minimumCases: column("minimum_cases", optional(number(NOT_NEGATIVE))),
  },
};

export const SUPPLIER_DAYS: Sheet<SupplierDay> = {
  file: "supplier-days.csv",
  columns: {
    supplier: required("supplier", name("supplier")),
    orderDay: required("order_day", weekday),
    orderBy: required("order_by", clockTime),
    deliveryDay: required("delivery_day", weekday),
    deliveryAt: required("delivery_at", clockTime),
  },
};

/** A supplier, or `all` for every one. */
const supplierOrAll: Cell<string | null> = {
  ...name("supplier"),
  read: (text) => (foldName(text) === "all" ? null : textOfCell(text.trim())),
  write: (supplier) => (supplier === null ? "all" : harmlessText(supplier)),
};

export const CLOSURES: Sheet<Closure> = {
  file: "closures.csv",
  columns: {
    supplier: required("supplier", supplierOrAll),
    from: required("from", date),
    to: required("to", date),
  },
};

export const ORDERS: Sheet<OrderLine> = {
  file: "orders.csv",
  columns: {
    order: required("order", name()),
    placed: required("placed", momentOrDate),
    supplier: required("supplier", name("supplier")),
    item: required("item", name("item")),
    pack: required("pack", name()),
    quantity: required("quantity", number(NOT_NEGATIVE)),
    of: required("of", oneOf(["container", "case"])),
    expected: required("expected", date),
  },
};

export const EVENTS: Sheet<EventDay> = {
  file: "events.csv",
  columns: {
    date: required("date", date),
    event: required("event", name()),
    factor: required("factor", number(NOT_NEGATIVE)),
  },
};

export const PLANS: Sheet<Plan> = {
  file: "plans.csv",
  columns: {
    date: required("date", date),
    drink: required("drink", name("drink")),
    serves: required("serves", number(NOT_NEGATIVE)),
  },
};
