import { type DayColumns, NOTHING } from "#engine/sales/packed/day-columns.ts";
import type { Apart } from "#engine/sales/packed/union.ts";

/** Whether a line stands for all of a name on a day, as far as a line can tell: no time, no check, no number. */
export function isSum(day: DayColumns, row: number): boolean {
  return day.at[row] === NOTHING && day.check[row] === NOTHING && day.lineNo[row] === NOTHING;
}

/** Whether a file has a day as sums: no time, check or number anywhere, and each name with its modifiers once. */
export function isSums(day: DayColumns): boolean {
  const names = new Set<string>();
  for (let row = 0; row < day.count; row += 1) {
    if (!isSum(day, row)) return false;
    names.add(nameOf(day, row));
  }
  return day.count > 0 && names.size === day.count;
}

/** The sums of a day that a later file of sums replaces, and how many of its own lines stand in place of one of them. */
export function replacedSums(
  day: DayColumns,
  file: DayColumns,
  { dayOnly, fileOnly }: Apart,
): { rows: number[]; changed: number } {
  const rows = dayOnly.filter((row) => isSum(day, row));
  const names = new Set(rows.map((row) => nameOf(day, row)));
  return { rows, changed: fileOnly.filter((row) => names.has(nameOf(file, row))).length };
}

function nameOf(day: DayColumns, row: number): string {
  return `${day.ringName[row]} ${day.modifiers[row]}`;
}
