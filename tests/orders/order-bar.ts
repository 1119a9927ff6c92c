import type { Book } from "#engine/book.ts";
import type { OrderLine } from "#engine/orders/supplier.ts";
import type { SaleGroup } from "#engine/sales/tally.ts";
import type { Item, Pack } from "#engine/stock/item.ts";
import type { CountRow, Delivery } from "#engine/stock/movement.ts";
import { alikeWeeks } from "../demand/sold-days.ts";
import { handBook } from "../support/hand-bar.ts";

/** Monday morning, an hour after the count. */
export const AT = "2026-03-02T10:00:00Z";
export const COUNTED = "2026-03-02T09:00:00Z";
export const SOURS = [0, 20, 24, 30, 44, 60, 28];

export function aPack(item: string, facts: Partial<Pack> = {}): Pack {
  return {
    item,
    pack: "700 ml",
    amount: 700,
    unit: "ml",
    from: null,
    perCase: 6,
    supplier: "Quay Spirits",
    code: "",
    gtin: "",
    price: 21,
    pricePer: "container",
    split: true,
    emptyG: null,
    fullG: null,
    depositMinor: null,
    ...facts,
  };
}

export function aCount(item: string, amount: number, unit: CountRow["unit"] = "ml"): CountRow {
  return {
    count: "Monday",
    at: COUNTED,
    area: "Back bar",
    item,
    pack: null,
    full: null,
    parts: [],
    grossG: [],
    amount,
    unit,
    by: "",
  };
}

export function anOrder(facts: Partial<OrderLine> = {}): OrderLine {
  return {
    order: "A1",
    placed: "2026-02-26T12:00:00Z",
    supplier: "Quay Spirits",
    item: "Gin",
    pack: "700 ml",
    quantity: 2,
    of: "container",
    expected: "2026-03-03",
    ...facts,
  };
}

export function aDelivery(facts: Partial<Delivery> = {}): Delivery {
  return {
    at: "2026-02-27T12:30:00Z",
    supplier: "Quay Spirits",
    invoice: "Q-1",
    item: "Gin",
    pack: "700 ml",
    quantity: 2,
    of: "container",
    priceTotalMinor: null,
    depositMinor: null,
    empties: null,
    by: "",
    ...facts,
  };
}

/**
 * The hand bar with two suppliers. Quay Spirits: order Monday by 15:00 for Wednesday 11:00, Thursday by 15:00 for
 * Friday 12:30. Green Cart: order any Monday and Wednesday by 20:00 for the next day at 08:00.
 */
export function orderBook(facts: Partial<Book> = {}, change: (item: Item) => Item = (item) => item): Book {
  const book = handBook();
  const quay = { supplier: "Quay Spirits" };
  const cart = { supplier: "Green Cart", orderBy: "20:00", deliveryAt: "08:00" };
  return {
    ...book,
    items: book.items.map(change),
    batches: [],
    batchInputs: [],
    packs: [
      aPack("Gin"),
      aPack("Rum", { split: false }),
      aPack("Soda", { pack: "1 L", amount: 1000, perCase: 12, price: null, supplier: null }),
      aPack("Lime", {
        pack: "piece",
        amount: 1,
        unit: "each",
        perCase: 1,
        price: 0.4,
        supplier: "Green Cart",
      }),
      aPack("Ginger", {
        pack: "kilo",
        amount: 1000,
        unit: "g",
        perCase: 1,
        price: 6,
        supplier: "Green Cart",
      }),
    ],
    suppliers: [
      { name: "Quay Spirits", email: "", minimumValueMinor: 10000, minimumCases: null },
      { name: "Green Cart", email: "", minimumValueMinor: null, minimumCases: null },
    ],
    supplierDays: [
      { ...quay, orderDay: "Mon", orderBy: "15:00", deliveryDay: "Wed", deliveryAt: "11:00" },
      { ...quay, orderDay: "Thu", orderBy: "15:00", deliveryDay: "Fri", deliveryAt: "12:30" },
      { ...cart, orderDay: "Mon", deliveryDay: "Tue" },
      { ...cart, orderDay: "Wed", deliveryDay: "Thu" },
    ],
    counts: [
      aCount("Gin", 2000),
      aCount("Rum", 900),
      aCount("Soda", 3000),
      aCount("Lime", 30, "each"),
      aCount("Ginger", 100, "g"),
    ],
    ...facts,
  };
}

/** Eight weeks that are all alike, the last one ending the day before the count. */
export const EIGHT_WEEKS: SaleGroup[] = [
  ...alikeWeeks({ monday: "2026-01-05", weeks: 8, ringName: "House sour", week: SOURS }),
  ...alikeWeeks({ monday: "2026-01-05", weeks: 8, ringName: "Old hand", week: [0, 5, 6, 8, 11, 15, 7] }),
];
