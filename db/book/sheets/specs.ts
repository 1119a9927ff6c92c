import {
  ABOVE_ZERO,
  ANY_NUMBER,
  type Cell,
  longText,
  money,
  NOT_NEGATIVE,
  name,
  number,
  oneOf,
  optional,
  otherwise,
  shortText,
  textList,
  WrongCell,
} from "#db/book/cell.ts";
import { column, required, type Sheet } from "#db/book/sheet.ts";
import { date } from "#db/book/time-cell.ts";
import { unit, unitOrTop } from "#db/book/unit-cell.ts";
import type { Modifier, RingName } from "#engine/sales/ring.ts";
import { harmlessText, textOfCell } from "#engine/sheet-text.ts";
import {
  type Cut,
  type Drink,
  ICES,
  type PrepVersion,
  type SpecLine,
  TECHNIQUES,
} from "#engine/specs/spec.ts";

export const DRINKS: Sheet<Drink> = {
  file: "drinks.csv",
  columns: {
    name: required("drink", name()),
    priceMinor: column("price", optional(money)),
    glass: column("glass", shortText),
    glassMl: column("glass_ml", optional(number(ABOVE_ZERO))),
    ice: column("ice", optional(oneOf(ICES))),
    technique: column("technique", optional(oneOf(TECHNIQUES))),
    garnishNote: column("garnish_note", longText),
    method: column("method", longText),
    allergens: column("allergens", textList(";")),
    onMenuFrom: column("on_menu_from", optional(date)),
    onMenuUntil: column("on_menu_until", optional(date)),
  },
};

export const PREPS: Sheet<PrepVersion> = {
  file: "preps.csv",
  columns: {
    prep: required("prep", name("item")),
    from: required("from", date),
    yield: required("yield", number(ABOVE_ZERO)),
    unit: required("unit", unit),
    batchStep: column("batch_step", optional(number(ABOVE_ZERO))),
    vesselMax: column("vessel_max", optional(number(ABOVE_ZERO))),
    activeMinutes: column("active_minutes", optional(number(NOT_NEGATIVE))),
    standingHours: column("standing_hours", optional(number(NOT_NEGATIVE))),
    shelfLifeDays: column("shelf_life_days", optional(number(ABOVE_ZERO))),
    method: column("method", longText),
  },
};

/** Items with `;` between them, kept as one text: only who knows the names can tell where a name that holds a `;` ends. */
const itemList: Cell<string[]> = {
  read: (text) => [textOfCell(text.trim())],
  write: (items) => harmlessText(items.join(";")),
  empty: { value: [] },
  refers: "item",
};

export const SPECS: Sheet<SpecLine> = {
  file: "specs.csv",
  columns: {
    makes: required("makes", name()),
    from: required("from", date),
    line: required("line", number(ANY_NUMBER)),
    amount: required("amount", optional(number(ABOVE_ZERO))),
    unit: required("unit", unitOrTop),
    item: required("item", name("item")),
    orItems: column("or_items", itemList),
    note: column("note", longText),
  },
};

/** Parts of a fruit, joined by `+`; at least one. */
const partList: Cell<string[]> = {
  read: (text, context) => {
    const parts = textList("+").read(text, context);
    if (parts.length === 0) throw new WrongCell("no part is named; write it like skin+flesh");
    return parts;
  },
  write: textList("+").write,
};

export const CUTS: Sheet<Cut> = {
  file: "cuts.csv",
  columns: {
    source: required("source", name("item")),
    from: column("from", optional(date)),
    gives: required("gives", name("item")),
    perPiece: required("per_piece", number(ABOVE_ZERO)),
    unit: required("unit", unit),
    parts: required("parts", partList),
  },
};

/** A ring name's row, before it is known whether it is sold as a drink or an item. */
export type RingRow = Omit<RingName, "soldAs"> & { soldAs: string };

export const RING_NAMES: Sheet<RingRow> = {
  file: "ring-names.csv",
  columns: {
    ringName: required("ring_name", name()),
    soldAs: required("sold_as", name()),
    serves: column("serves", otherwise(number(ABOVE_ZERO), 1)),
    amount: column("amount", optional(number(ABOVE_ZERO))),
    unit: column("unit", optional(unit)),
  },
};

export const MODIFIERS: Sheet<Modifier> = {
  file: "modifiers.csv",
  columns: {
    modifier: required("modifier", name()),
    effect: required("effect", oneOf(["swap", "add", "remove", "times", "none"])),
    item: column("item", optional(name("item"))),
    with: column("with", optional(name("item"))),
    amount: column("amount", optional(number(ABOVE_ZERO))),
    unit: column("unit", optional(unit)),
    factor: column("factor", optional(number(NOT_NEGATIVE))),
  },
};
