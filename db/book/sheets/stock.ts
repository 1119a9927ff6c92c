import {
  ABOVE_ZERO,
  ANY_NUMBER,
  CHANCE,
  longText,
  money,
  NOT_NEGATIVE,
  name,
  number,
  oneOf,
  optional,
  otherwise,
  PERCENT,
  shortText,
  textList,
  WHOLE_ABOVE_ZERO,
  yesNo,
} from "#db/book/cell.ts";
import { column, required, type Sheet } from "#db/book/sheet.ts";
import { date } from "#db/book/time-cell.ts";
import { unit } from "#db/book/unit-cell.ts";
import type { Item, Pack, Shelf } from "#engine/stock/item.ts";

export const ITEMS: Sheet<Item> = {
  file: "items.csv",
  columns: {
    name: required("item", name()),
    category: required("category", name()),
    base: required("base", oneOf(["ml", "g", "each"])),
    abv: column("abv", optional(number(PERCENT))),
    brix: column("brix", optional(number(PERCENT))),
    densityGPerMl: column("density_g_per_ml", optional(number(ABOVE_ZERO))),
    pieceG: column("piece_g", optional(number(ABOVE_ZERO))),
    shelfLifeDays: column("shelf_life_days", optional(number(ABOVE_ZERO))),
    allergens: column("allergens", textList(";")),
    inHouse: column("in_house", otherwise(yesNo, false)),
    stocked: column("stocked", otherwise(yesNo, true)),
    pour: column("pour", otherwise(oneOf(["jigger", "free", "measured"]), "jigger")),
    serviceLevel: column("service_level", optional(number(CHANCE))),
    par: column("par", optional(number(NOT_NEGATIVE))),
    parReason: column("par_reason", longText),
    note: column("note", longText),
  },
};

export const PACKS: Sheet<Pack> = {
  file: "packs.csv",
  columns: {
    item: required("item", name("item")),
    pack: required("pack", name()),
    amount: required("amount", number(ABOVE_ZERO)),
    unit: required("unit", unit),
    from: column("from", optional(date)),
    perCase: column("per_case", otherwise(number(WHOLE_ABOVE_ZERO), 1)),
    supplier: column("supplier", optional(name("supplier"))),
    code: column("code", shortText),
    gtin: column("gtin", shortText),
    price: column("price", optional(number(NOT_NEGATIVE))),
    pricePer: column("price_per", otherwise(oneOf(["container", "case"]), "container")),
    split: column("split", otherwise(yesNo, false)),
    emptyG: column("empty_g", optional(number(NOT_NEGATIVE))),
    fullG: column("full_g", optional(number(ABOVE_ZERO))),
    depositMinor: column("deposit", optional(money)),
  },
};

export const AREAS: Sheet<Shelf> = {
  file: "areas.csv",
  columns: {
    area: required("area", name()),
    item: required("item", name("item")),
    shelf: required("shelf", number(ANY_NUMBER)),
  },
};
