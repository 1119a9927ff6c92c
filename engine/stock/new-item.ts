import type { Item } from "#engine/stock/item.ts";

/** An item of which nothing more is known yet than is given: bought in, kept in stock, poured with a jigger. */
export function newItem(facts: Pick<Item, "name" | "category" | "base"> & Partial<Item>): Item {
  return {
    abv: null,
    brix: null,
    densityGPerMl: null,
    pieceG: null,
    shelfLifeDays: null,
    allergens: [],
    inHouse: false,
    stocked: true,
    pour: "jigger",
    serviceLevel: null,
    par: null,
    parReason: "",
    note: "",
    ...facts,
  };
}
