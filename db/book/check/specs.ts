import { type CheckContext, refuseRepeats, wholeRows, wrong } from "#db/book/check/context.ts";
import { unknownName } from "#db/book/names.ts";
import { quote } from "#db/book/quote.ts";
import { takeOut } from "#db/book/resolve.ts";
import { SHEETS } from "#db/book/sheets/all.ts";
import { didYouMean } from "#db/book/suggest.ts";
import type { Unit } from "#engine/measure/units.ts";
import { priorYield } from "#engine/measure/yield.ts";
import { foldName } from "#engine/name.ts";
import type { Cut } from "#engine/specs/spec.ts";

/** Checks preps.csv, specs.csv and cuts.csv, cycles apart. */
export function checkSpecs(context: CheckContext): void {
  checkPreps(context);
  resolveMakes(context);
  checkLines(context);
  checkCuts(context);
}

function checkPreps(context: CheckContext): void {
  const { rows, names, findings, units } = context;
  const made = new Set(rows.specs.map(({ cells }) => foldName(cells.makes ?? "")));
  for (const { row, fact } of wholeRows(context, "preps")) {
    const trouble = units.trouble(fact.prep, fact.unit);
    if (trouble !== undefined) wrong(context, "preps", row, "unit", trouble);
    const folded = foldName(fact.prep);
    if (made.has(folded) && names.drink.has(folded)) {
      const message = `${quote(fact.prep)} is also a drink, so specs.csv cannot tell the two apart; rename one`;
      wrong(context, "preps", row, "prep", message);
    } else if (!made.has(folded) && !context.cuts.has(fact.prep)) {
      const message = `${quote(fact.prep)} has no lines in specs.csv and no cut, so its batches use nothing`;
      findings.notice({ file: SHEETS.preps.file, row: row.row, column: "prep" }, message);
    }
  }
  refuseRepeats(context, "preps", "from", ({ prep, from }) => [prep, from], "this prep from this day");
}

/** A drink, else a prep: an item with a row in preps.csv, which alone says what its lines yield. */
function resolveMakes(context: CheckContext): void {
  const { rows, names } = context;
  const told = new Set<string>();
  for (const row of rows.specs) {
    const { makes } = row.cells;
    if (makes === undefined) continue;
    const folded = foldName(makes);
    const drink = names.drink.get(folded);
    const item = names.item.get(folded);
    if (drink !== undefined) row.cells.makes = drink;
    else if (item !== undefined && context.preps.has(item)) row.cells.makes = item;
    else {
      if (!told.has(folded)) wrong(context, "specs", row, "makes", notMade(context, makes, item));
      told.add(folded);
      takeOut(row, "makes");
    }
  }
}

function notMade({ names }: CheckContext, makes: string, item: string | undefined): string {
  if (item !== undefined) {
    return `${quote(item)} has spec lines but no row in preps.csv; add one with what they yield`;
  }
  const near = didYouMean(makes, [...names.drink.values(), ...names.item.values()]);
  return `no drink or prep ${quote(makes)}${near}`;
}

function checkLines(context: CheckContext): void {
  const { names, units } = context;
  for (const { row, fact } of wholeRows(context, "specs")) {
    const isDrink = names.drink.has(foldName(fact.makes));
    if (fact.unit === "top" && !isDrink) {
      const message = "a prep's line needs an amount and a unit; only a drink can be topped up";
      wrong(context, "specs", row, "unit", message);
      continue;
    }
    if (fact.unit !== "top" && fact.amount === null) {
      wrong(
        context,
        "specs",
        row,
        "amount",
        "the cell is empty; only a line with the unit top has no amount",
      );
    }
    if (fact.unit === "top" && fact.amount !== null) {
      wrong(
        context,
        "specs",
        row,
        "amount",
        "a line with the unit top has no amount; empty the cell or write another unit",
      );
    }
    const unit: Unit = fact.unit === "top" ? "ml" : fact.unit;
    for (const item of [fact.item, ...fact.orItems]) {
      const trouble = units.trouble(item, unit);
      if (trouble !== undefined) wrong(context, "specs", row, "unit", trouble);
    }
  }
  refuseRepeats(
    context,
    "specs",
    "line",
    ({ makes, from, line }) => [makes, from, line],
    "this line of this version",
  );
}

function checkCuts(context: CheckContext): void {
  const { units } = context;
  const sources = new Map<string, { source: string; row: number }>();
  for (const { row, fact } of wholeRows(context, "cuts")) {
    const { source, gives, unit } = fact;
    const base = units.item(source)?.base;
    if (base !== undefined && base !== "each") {
      const message = `${quote(source)} is kept in ${base}; a fruit is cut by the piece, so keep it in each`;
      wrong(context, "cuts", row, "source", message);
    }
    const trouble = units.trouble(gives, unit);
    if (trouble !== undefined) wrong(context, "cuts", row, "unit", trouble);
    else noticeOddYield(context, row.row, fact);
    const held = sources.get(gives);
    if (held === undefined) sources.set(gives, { source, row: row.row });
    else if (held.source !== source) {
      const message = `${quote(gives)} is already given by ${quote(held.source)} (row ${held.row}); what a cut gives has one source`;
      wrong(context, "cuts", row, "source", message);
    }
  }
  refuseRepeats(context, "cuts", "gives", ({ gives, from }) => [gives, from], "this cut from this day");
}

/** Four times less than the published juice of one piece, or four spreads more, is likelier a slip of the unit. */
function noticeOddYield({ units, findings }: CheckContext, row: number, cut: Cut): void {
  const { source, gives, perPiece, unit } = cut;
  const fruit = units.item(source);
  const juice = units.item(gives);
  if (fruit === undefined || juice?.base !== "ml" || !/\bjuice\b/i.test(gives)) return;
  const prior = priorYield(source, fruit.pieceG);
  const givesMl = units.sizeOf({ item: gives, amount: perPiece, unit });
  if (prior === undefined || givesMl === undefined) return;
  if (givesMl >= prior.meanMl / 4 && givesMl <= prior.meanMl + 4 * prior.spreadMl) return;
  const message =
    `one ${quote(source)} is said to give ${Math.round(givesMl * 10) / 10} ml; published is about ` +
    `${Math.round(prior.meanMl)} ml (${prior.source}; bars report less). Check the unit`;
  findings.notice({ file: SHEETS.cuts.file, row, column: "per_piece" }, message);
}

/** The message for a name that should be an item or a drink. */
export function neitherItemNorDrink({ names }: CheckContext, name: string): string {
  const near = didYouMean(name, [...names.drink.values(), ...names.item.values()]);
  return near === ""
    ? `${unknownName("item", name, names)}, and no drink of that name`
    : `no item or drink ${quote(name)}${near}`;
}
