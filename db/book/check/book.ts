import { type CheckContext, wholeRows, wrong } from "#db/book/check/context.ts";
import { checkCounts } from "#db/book/check/counts.ts";
import { refuseCycles } from "#db/book/check/cycles.ts";
import { checkMovements } from "#db/book/check/movements.ts";
import { checkModifiers, checkRingNames } from "#db/book/check/sales.ts";
import { checkSpecs } from "#db/book/check/specs.ts";
import { checkStock } from "#db/book/check/stock.ts";
import { unitsOf } from "#db/book/check/units.ts";
import type { Names } from "#db/book/names.ts";
import type { Findings } from "#db/book/problem.ts";
import { type Rows, SHEET_KEYS } from "#db/book/sheets/all.ts";
import type { Book } from "#engine/book.ts";
import type { RingName } from "#engine/sales/ring.ts";
import type { Venue } from "#engine/venue.ts";

/** Checks what no cell shows alone, once names are spelled alike, and gives the facts of the rows without a fault. */
export function checkBook(
  rows: Rows,
  names: Names,
  venue: Venue | undefined,
  findings: Findings,
): Omit<Book, "venue" | "salesShapes"> {
  const context = contextOf(rows, names, venue, findings);
  const ringNames = checkCatalogue(context);
  checkEntries(context);
  const facts = SHEET_KEYS.map((key) => [key, wholeRows(context, key).map(({ fact }) => fact)]);
  return { ...Object.fromEntries(facts), ringNames };
}

/** What the checks look at, of rows whose names are spelled alike. */
export function contextOf(
  rows: Rows,
  names: Names,
  venue: Venue | undefined,
  findings: Findings,
): CheckContext {
  return {
    rows,
    names,
    findings,
    units: unitsOf(rows, venue),
    venue,
    preps: new Set(rows.preps.flatMap(({ cells }) => cells.prep ?? [])),
    cuts: new Set(rows.cuts.flatMap(({ cells }) => cells.gives ?? [])),
  };
}

/** Checks all but the entries, and gives the ring names with their meanings. */
export function checkCatalogue(context: CheckContext): RingName[] {
  checkStock(context);
  checkClosures(context);
  checkSpecs(context);
  refuseCycles(context);
  const ringNames = checkRingNames(context);
  checkModifiers(context);
  return ringNames;
}

/** Checks counts, deliveries, batches, losses and transfers against the rest of the book. */
export function checkEntries(context: CheckContext): void {
  checkCounts(context);
  checkMovements(context);
}

function checkClosures(context: CheckContext): void {
  for (const { row, fact } of wholeRows(context, "closures")) {
    if (fact.to >= fact.from) continue;
    wrong(context, "closures", row, "to", `it ends on ${fact.to}, before it begins on ${fact.from}`);
  }
}
