import { type CheckContext, refuseRepeats, wholeRows, wrong } from "#db/book/check/context.ts";
import { quote } from "#db/book/quote.ts";
import { SHEETS } from "#db/book/sheets/all.ts";
import { gtin14 } from "#engine/measure/gtin.ts";
import { foldName } from "#engine/name.ts";

/** Checks packs.csv and areas.csv, and that what is made in house says how. */
export function checkStock(context: CheckContext): void {
  checkPacks(context);
  refuseRepeats(
    context,
    "areas",
    "item",
    ({ area, item }) => [foldName(area), item],
    "this item in this area",
  );
  for (const { row, fact } of wholeRows(context, "items")) {
    if (!fact.inHouse || context.preps.has(fact.name) || context.cuts.has(fact.name)) continue;
    context.findings.notice(
      { file: SHEETS.items.file, row: row.row, column: "in_house" },
      `${quote(fact.name)} is made in house, but neither preps.csv nor cuts.csv says how`,
    );
  }
}

function checkPacks(context: CheckContext): void {
  for (const { row, fact } of wholeRows(context, "packs")) {
    const place = { file: SHEETS.packs.file, row: row.row };
    const trouble = context.units.trouble(fact.item, fact.unit);
    if (trouble !== undefined) wrong(context, "packs", row, "unit", trouble);
    if (fact.emptyG !== null && fact.fullG !== null && fact.fullG <= fact.emptyG) {
      const message = `a full container cannot weigh ${fact.fullG} g and an empty one ${fact.emptyG} g; weigh both again`;
      wrong(context, "packs", row, "full_g", message);
    }
    if (fact.price !== null && fact.perCase > 1 && row.blank?.has("pricePer")) {
      const message = "the cell is empty; the price was taken as that of one container, not of the case";
      context.findings.notice({ ...place, column: "price_per" }, message);
    }
    if (fact.gtin !== "" && gtin14(fact.gtin) === undefined) {
      const message = `${quote(fact.gtin)} is no GTIN (its check digit or length is wrong); scan it again`;
      context.findings.notice({ ...place, column: "gtin" }, message);
    }
  }
  refuseRepeats(
    context,
    "packs",
    "pack",
    ({ item, pack, supplier, from }) => [item, foldName(pack), supplier, from],
    "this pack, from this supplier and day,",
  );
}
