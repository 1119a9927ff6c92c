import { ConflictError } from "#db/errors.ts";
import type { Db } from "#db/open.ts";
import { insertItem, putPack } from "#db/stored/catalogue.ts";
import { about, asSheetHolds, writeChecked } from "#db/stored/checked-write.ts";
import { insertSupplier } from "#db/stored/orders.ts";
import { Item, Pack } from "#engine/stock/item.ts";

/** What is taken over of a supplier's list: items that are new, and rows of packs with their price from a day on. */
export type TakenPrices = { supplier: string; items: readonly Item[]; packs: readonly Pack[] };

/**
 * Takes a supplier's prices over, all or none: the supplier where it is new, new items, and a row a pack; a row of the same first
 * day is replaced. Throws ConflictError for an item that is there already, InvalidError where the book would not hold together.
 */
export async function takePrices(db: Db, { supplier, items, packs }: TakenPrices): Promise<void> {
  writeChecked(db, about("price changed", "supplier", supplier), (registers, venue) => {
    if (registers.suppliers.find(supplier) === undefined) {
      const facts = { name: supplier, email: "", minimumValueMinor: null, minimumCases: null };
      insertSupplier(db, registers, asSheetHolds("suppliers", facts, venue));
    }
    for (const item of items) {
      const held = asSheetHolds("items", Item.parse(item), venue);
      if (registers.items.find(held.name) !== undefined) {
        throw new ConflictError(
          `There is an item "${held.name}" already: choose it for its line, or another name.`,
        );
      }
      insertItem(db, registers, held);
    }
    for (const pack of packs) putPack(db, registers, asSheetHolds("packs", Pack.parse(pack), venue));
  });
}
