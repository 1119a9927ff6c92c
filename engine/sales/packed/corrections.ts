import { type DayColumns, NOTHING } from "#engine/sales/packed/day-columns.ts";
import type { Apart } from "#engine/sales/packed/union.ts";

/**
 * The lines of a day that a later file has corrected: rows of `day` that a row of `file` takes the place of.
 *
 * A line is known again by its check and line number where it has both and both occur once on either side. But tills may count
 * alike: two files with the same numbers are of one till only if the moment and the name of the line are the same too, or if of
 * the numbers they share at least as many lines are wholly equal as differ. A line that comes back with the opposite sign is no
 * correction but takes the first one back, so both stay.
 *
 * Check 7 line 1: 1 Gimlet, and in a later file check 7 line 1: 2 Gimlets at the same moment → the first is corrected. With
 * −1 Gimlet later, both stay: nothing was sold.
 */
export function correctedLines(day: DayColumns, file: DayColumns, apart: Apart): number[] {
  const { dayOnly, fileOnly, both } = apart;
  if (dayOnly.length === 0 || fileOnly.length === 0) return [];
  const later = onceEach(file, fileOnly, both);
  const earlier = onceEach(day, dayOnly, []);
  const differing = [...earlier].flatMap(([key, row]) => {
    const other = later.get(key);
    return other === undefined ? [] : [{ row, other }];
  });
  if (differing.length === 0) return [];
  const equal = both.filter((row) => numberOf(file, row) !== undefined).length;
  const isOneTill = equal >= differing.length;
  return differing
    .filter(({ row, other }) => isOneTill || isSameSale(day, row, file, other))
    .filter(({ row, other }) => (day.quantity[row] ?? 0) * (file.quantity[other] ?? 0) >= 0)
    .map(({ row }) => row);
}

/** Check and line number together; undefined for a line that lacks one. */
function numberOf(day: DayColumns, row: number): string | undefined {
  const [check = NOTHING, lineNo = NOTHING] = [day.check[row], day.lineNo[row]];
  if (check === NOTHING || lineNo === NOTHING) return undefined;
  return `${day.codeText(check)}\n${day.codeText(lineNo)}`;
}

/** Rows by their number, without those whose number occurs again. */
function onceEach(day: DayColumns, rows: readonly number[], others: readonly number[]): Map<string, number> {
  const once = new Map<string, number>();
  const seen = new Set(others.map((row) => numberOf(day, row)));
  for (const row of rows) {
    const key = numberOf(day, row);
    if (key === undefined) continue;
    if (seen.has(key)) once.delete(key);
    else once.set(key, row);
    seen.add(key);
  }
  return once;
}

function isSameSale(day: DayColumns, row: number, file: DayColumns, other: number): boolean {
  return (
    day.at[row] !== NOTHING && day.at[row] === file.at[other] && day.ringName[row] === file.ringName[other]
  );
}
