import {
  ABOVE_ZERO,
  longText,
  money,
  NOT_NEGATIVE,
  name,
  number,
  numberList,
  oneOf,
  optional,
  otherwise,
  SHARE,
  shortText,
  WHOLE_ABOVE_ZERO,
} from "#db/book/cell.ts";
import { column, required, type Sheet } from "#db/book/sheet.ts";
import { moment } from "#db/book/time-cell.ts";
import { unit, unitOrServe } from "#db/book/unit-cell.ts";
import {
  type Batch,
  type BatchInput,
  type CountRow,
  type Delivery,
  LOSS_KINDS,
  type Loss,
  type Transfer,
} from "#engine/stock/movement.ts";

export const COUNTS: Sheet<CountRow> = {
  file: "counts.csv",
  columns: {
    count: required("count", name()),
    at: required("at", moment),
    area: required("area", name()),
    item: required("item", name("item")),
    pack: column("pack", optional(name())),
    full: column("full", optional(number(NOT_NEGATIVE))),
    parts: column("part", numberList(SHARE)),
    grossG: column("gross_g", numberList(NOT_NEGATIVE)),
    amount: column("amount", optional(number(NOT_NEGATIVE))),
    unit: column("unit", optional(unit)),
    by: column("by", shortText),
  },
};

export const DELIVERIES: Sheet<Delivery> = {
  file: "deliveries.csv",
  columns: {
    at: required("at", moment),
    supplier: required("supplier", name("supplier")),
    invoice: required("invoice", shortText),
    item: required("item", name("item")),
    pack: required("pack", name()),
    quantity: required("quantity", number(NOT_NEGATIVE)),
    of: required("of", oneOf(["container", "case"])),
    priceTotalMinor: column("price_total", optional(money)),
    depositMinor: column("deposit", optional(money)),
    empties: column("empties", optional(number(NOT_NEGATIVE))),
    by: column("by", shortText),
  },
};

export const BATCHES: Sheet<Batch> = {
  file: "batches.csv",
  columns: {
    at: required("at", moment),
    prep: required("prep", name("item")),
    made: required("made", number(ABOVE_ZERO)),
    unit: required("unit", unit),
    by: column("by", shortText),
    note: column("note", longText),
  },
};

/** Optional: what batches used otherwise than their spec says. A bar that records none needs no such sheet. */
export const BATCH_INPUTS: Sheet<BatchInput> = {
  file: "batch-inputs.csv",
  columns: {
    at: required("at", moment),
    prep: required("prep", name("item")),
    batchNo: column("batch", otherwise(number(WHOLE_ABOVE_ZERO), 1)),
    item: required("item", name("item")),
    amount: required("amount", number(NOT_NEGATIVE)),
    unit: required("unit", unit),
  },
};

export const LOSSES: Sheet<Loss> = {
  file: "losses.csv",
  columns: {
    at: required("at", moment),
    kind: required("kind", oneOf(LOSS_KINDS)),
    what: required("what", name()),
    amount: required("amount", number(ABOVE_ZERO)),
    unit: required("unit", unitOrServe),
    by: column("by", shortText),
    note: column("note", longText),
  },
};

export const TRANSFERS: Sheet<Transfer> = {
  file: "transfers.csv",
  columns: {
    at: required("at", moment),
    direction: required("direction", oneOf(["in", "out"])),
    place: required("place", name()),
    item: required("item", name("item")),
    amount: required("amount", number(ABOVE_ZERO)),
    unit: required("unit", unit),
  },
};
