import { type CheckContext, refuseRepeats, wholeRows, wrong } from "#db/book/check/context.ts";
import { quote } from "#db/book/quote.ts";
import { SHEETS } from "#db/book/sheets/all.ts";
import { gtin14 } from "#engine/measure/gtin.ts";
import { kegCalled, kindOf, nearestLawfulSizes } from "#engine/measure/standard-sizes.ts";
import { foldName } from "#engine/name.ts";
import type { Pack } from "#engine/stock/item.ts";

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

/** A bottle of a size in which its kind may be sold nowhere is likelier a slip of the pen. */
function noticeOddSize({ units, findings, preps }: CheckContext, row: number, pack: Pack): void {
  const item = units.item(pack.item);
  const size = units.sizeOf(pack);
  if (item?.base !== "ml" || size === undefined || item.inHouse || preps.has(item.name)) return;
  const nearest = nearestLawfulSizes(item.category, size);
  if (nearest === undefined) return;
  const message =
    `${kindOf(item.category)} is sold in no bottle of ${Math.round(size)} ml in the US (27 CFR 4.72, 5.203), the EU or ` +
    `the UK (Directive 2007/45/EC); the nearest are ${nearest.join(" and ")} ml. Check the label`;
  findings.notice({ file: SHEETS.packs.file, row, column: "amount" }, message);
}

/** A sixth of a barrel is 19.56 l, not 20, and a half 58.67, not 50. */
function noticeOddKeg({ units, findings }: CheckContext, row: number, pack: Pack): void {
  const called = kegCalled(pack.pack);
  const size = units.sizeOf(pack);
  if (called === undefined || size === undefined || units.item(pack.item)?.base !== "ml") return;
  if (Math.abs(size / called.volumeMl - 1) < 0.01) return;
  const message = `a keg of ${called.keg} holds ${(called.volumeMl / 1000).toFixed(2)} l (27 CFR 25.156: a barrel is 31 US gallons), not ${size / 1000} l`;
  findings.notice({ file: SHEETS.packs.file, row, column: "amount" }, message);
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
    noticeOddSize(context, row.row, fact);
    noticeOddKeg(context, row.row, fact);
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
