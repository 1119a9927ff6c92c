import type { Units } from "#db/book/check/units.ts";
import type { Names } from "#db/book/names.ts";
import type { Findings } from "#db/book/problem.ts";
import type { Row } from "#db/book/sheet.ts";
import { type FactOf, type Rows, SHEETS, type SheetKey } from "#db/book/sheets/all.ts";
import type { Venue } from "#engine/venue.ts";

/** What the checks of a book look at, names already spelled alike. */
export type CheckContext = {
  rows: Rows;
  names: Names;
  units: Units;
  /** Undefined when venue.json could not be read. */
  venue: Venue | undefined;
  findings: Findings;
  /** Items with a row in preps.csv. */
  preps: ReadonlySet<string>;
  /** Items that some cut gives. */
  cuts: ReadonlySet<string>;
};

/** Notes that a row's cell is wrong. */
export function wrong<Key extends SheetKey>(
  { findings }: CheckContext,
  key: Key,
  row: Row<FactOf<Key>>,
  heading: string,
  message: string,
): void {
  findings.problem({ file: SHEETS[key].file, row: row.row, column: heading }, message);
  row.isWhole = false;
}

/** Notes that two rows say the same thing twice; rows without a key are passed over. */
export function refuseRepeats<Key extends SheetKey>(
  context: CheckContext,
  key: Key,
  heading: string,
  keyOf: (cells: FactOf<Key>) => readonly unknown[],
  what: string,
): void {
  const first = new Map<string, number>();
  for (const row of context.rows[key] as Row<FactOf<Key>>[]) {
    if (!row.isWhole) continue;
    const identity = JSON.stringify(keyOf(row.cells as FactOf<Key>));
    const held = first.get(identity);
    if (held === undefined) first.set(identity, row.row);
    else wrong(context, key, row, heading, `${what} is already in row ${held}; keep one`);
  }
}

/** The rows of a sheet in which no cell is wrong, with their facts. */
export function wholeRows<Key extends SheetKey>(
  { rows }: CheckContext,
  key: Key,
): { row: Row<FactOf<Key>>; fact: FactOf<Key> }[] {
  return (rows[key] as Row<FactOf<Key>>[])
    .filter(({ isWhole }) => isWhole)
    .map((row) => ({ row, fact: row.cells as FactOf<Key> }));
}
