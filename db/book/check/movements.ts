import { type CheckContext, refuseRepeats, wholeRows, wrong } from "#db/book/check/context.ts";
import { neitherItemNorDrink } from "#db/book/check/specs.ts";
import { quote } from "#db/book/quote.ts";
import { SHEETS } from "#db/book/sheets/all.ts";
import { foldName } from "#engine/name.ts";
import { numbered } from "#engine/stock/batch-inputs.ts";
import type { BatchInput } from "#engine/stock/movement.ts";

/** Checks deliveries, batches, losses and transfers. */
export function checkMovements(context: CheckContext): void {
  noticeSameInvoice(context);
  checkBatches(context);
  checkBatchInputs(context);
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

/** Each row belongs to a batch, names an item once, and names what is taken off a shelf. */
function checkBatchInputs(context: CheckContext): void {
  const made = wholeRows(context, "batches").map(({ fact }) => fact);
  const known = new Set(numbered(made).map(({ batch, batchNo }) => batchKey({ ...batch, batchNo })));
  // Where a batch's own row is wrong, that is said there, and not again at each of its inputs.
  const isSure = context.rows.batches.every(({ isWhole }) => isWhole);
  refuseRepeats(
    context,
    "batchInputs",
    "item",
    (cells) => [batchKey(cells), cells.item],
    "what this batch used of this item",
  );
  for (const { row, fact } of wholeRows(context, "batchInputs")) {
    const { prep, item, unit } = fact;
    if (isSure && !known.has(batchKey(fact))) {
      const message = `no batch of ${quote(prep)} at that time${fact.batchNo > 1 ? ` numbered ${fact.batchNo}` : ""}; batches.csv must have it`;
      wrong(context, "batchInputs", row, "prep", message);
    }
    if (item === prep) wrong(context, "batchInputs", row, "item", "a batch does not use what it makes");
    if (context.units.item(item)?.stocked === false) {
      const message = `${quote(item)} is made to order; write what was used to make it`;
      wrong(context, "batchInputs", row, "item", message);
    }
    const trouble = context.units.trouble(item, unit);
    if (trouble !== undefined) wrong(context, "batchInputs", row, "unit", trouble);
  }
}

function batchKey({ at, prep, batchNo }: Pick<BatchInput, "at" | "prep" | "batchNo">): string {
  return JSON.stringify([at, prep, batchNo]);
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
