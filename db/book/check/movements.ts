import { type CheckContext, wholeRows, wrong } from "#db/book/check/context.ts";
import { neitherItemNorDrink } from "#db/book/check/specs.ts";
import { quote } from "#db/book/quote.ts";
import { SHEETS } from "#db/book/sheets/all.ts";
import { foldName } from "#engine/name.ts";

/** Checks deliveries, batches, losses and transfers. */
export function checkMovements(context: CheckContext): void {
  noticeSameInvoice(context);
  checkBatches(context);
  checkLosses(context);
  for (const { row, fact } of wholeRows(context, "transfers")) {
    const trouble = context.units.trouble(fact.item, fact.unit);
    if (trouble !== undefined) wrong(context, "transfers", row, "unit", trouble);
  }
}

function noticeSameInvoice(context: CheckContext): void {
  const first = new Map<string, number>();
  for (const { row, fact } of wholeRows(context, "deliveries")) {
    if (fact.invoice === "") continue;
    const identity = JSON.stringify([fact.supplier, foldName(fact.invoice), fact.item]);
    const held = first.get(identity);
    if (held === undefined) first.set(identity, row.row);
    else {
      const message = `${quote(fact.item)} is on invoice ${quote(fact.invoice)} in row ${held} too; both were taken`;
      context.findings.notice({ file: SHEETS.deliveries.file, row: row.row, column: "invoice" }, message);
    }
  }
}

function checkBatches(context: CheckContext): void {
  for (const { row, fact } of wholeRows(context, "batches")) {
    const { prep, unit } = fact;
    if (!context.preps.has(prep) && !context.cuts.has(prep)) {
      const message = `${quote(prep)} is no prep; add it to preps.csv, or to cuts.csv if it is cut or pressed`;
      wrong(context, "batches", row, "prep", message);
      continue;
    }
    const trouble = context.units.trouble(prep, unit);
    if (trouble !== undefined) wrong(context, "batches", row, "unit", trouble);
    if (context.units.item(prep)?.stocked === false) {
      const message = `${quote(prep)} is made to order, so drinks already use what it is made of; a batch of it counts twice`;
      context.findings.notice({ file: SHEETS.batches.file, row: row.row, column: "prep" }, message);
    }
  }
}

/** With the unit `serve` what was lost is a drink, with any other an item. */
function checkLosses(context: CheckContext): void {
  const { names } = context;
  for (const row of context.rows.losses) {
    const { what, unit } = row.cells;
    if (what === undefined || unit === undefined) continue;
    const drink = names.drink.get(foldName(what));
    const item = names.item.get(foldName(what));
    const found = unit === "serve" ? drink : item;
    if (found !== undefined) row.cells.what = found;
    else if (drink === undefined && item === undefined) {
      wrong(context, "losses", row, "what", neitherItemNorDrink(context, what));
    } else if (unit === "serve") {
      wrong(
        context,
        "losses",
        row,
        "unit",
        `${quote(item ?? what)} is an item, not a drink; write its amount in another unit`,
      );
    } else {
      wrong(context, "losses", row, "unit", `${quote(drink ?? what)} is a drink; its unit is serve`);
    }
  }
  for (const { row, fact } of wholeRows(context, "losses")) {
    if (fact.unit === "serve") continue;
    const trouble = context.units.trouble(fact.what, fact.unit);
    if (trouble !== undefined) wrong(context, "losses", row, "unit", trouble);
  }
}
