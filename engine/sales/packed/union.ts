import { correctedLines } from "#engine/sales/packed/corrections.ts";
import { compareRows, DayColumns } from "#engine/sales/packed/day-columns.ts";
import { isSums, replacedSums } from "#engine/sales/packed/sums.ts";

/** What one file has of a day, and whether its sums take the place of earlier sums. */
export type FileOfDay = { columns: DayColumns; replacesSums: boolean };

/** A day after one more file. Each line of the file is new, known, or a changed one in place of another. */
export type DayJoined = {
  columns: DayColumns;
  new: number;
  known: number;
  changed: number;
  /** Sums that the file, which replaces sums, took the place of; `dropped` are those of them that it has no sum for. */
  sumsReplaced: number;
  dropped: number;
};

/** The rows of a day and of a file that the other one does not have, and how many they have in common, all in order. */
export type Apart = { dayOnly: number[]; fileOnly: number[]; both: number[] };

/**
 * The lines that several files together show of a day, oldest file first: each as often as in the file that has it most, and
 * a line that a later file corrects as it is there.
 *
 * [a, a, b] and [a, c] → [a, a, b, c]. The files' columns are put in order; the answer is in order too.
 */
export function unionOf(files: readonly FileOfDay[]): DayColumns {
  const [first, ...others] = files;
  const columns = first?.columns ?? new DayColumns();
  columns.sort();
  return others.reduce((day, file) => joinFile(day, file).columns, columns);
}

/** Adds a later file to a day, as `unionOf` does, and says what became of its lines. */
export function joinFile(day: DayColumns, { columns: file, replacesSums }: FileOfDay): DayJoined {
  day.sort();
  file.sort();
  const apart = apartOf(day, file);
  const { fileOnly, both } = apart;
  const corrected = correctedLines(day, file, apart);
  const sums = replacesSums && isSums(file) ? replacedSums(day, file, apart) : { rows: [], changed: 0 };
  const gone = new Set([...corrected, ...sums.rows]);
  const changed = corrected.length + sums.changed;
  return {
    columns: gone.size === 0 && fileOnly.length === 0 ? day : merged(day, file, { fileOnly, gone }),
    new: fileOnly.length - changed,
    known: both.length,
    changed,
    sumsReplaced: sums.rows.length,
    dropped: gone.size - changed,
  };
}

function apartOf(day: DayColumns, file: DayColumns): Apart {
  const apart: Apart = { dayOnly: [], fileOnly: [], both: [] };
  let one = 0;
  let other = 0;
  while (one < day.count || other < file.count) {
    const order = one === day.count ? 1 : other === file.count ? -1 : compareRows(day, one, file, other);
    if (order < 0) apart.dayOnly.push(one);
    else if (order > 0) apart.fileOnly.push(other);
    else {
      apart.both.push(other);
      takeStaff(day, one, file, other);
    }
    if (order <= 0) one += 1;
    if (order >= 0) other += 1;
  }
  return apart;
}

/** A line that was known without who rang it says so from now on. */
function takeStaff(day: DayColumns, one: number, file: DayColumns, other: number): void {
  const staff = file.staff?.[other] ?? 0;
  if (staff === 0 || (day.staff?.[one] ?? 0) !== 0) return;
  day.staff ??= new Int32Array(day.at.length);
  day.staff[one] = staff;
}

/** The lines of a day without those that are gone, and those that only the file has, in order. */
function merged(
  day: DayColumns,
  file: DayColumns,
  { fileOnly, gone }: { fileOnly: readonly number[]; gone: ReadonlySet<number> },
): DayColumns {
  const union = new DayColumns();
  let next = 0;
  for (let row = 0; row <= day.count; row += 1) {
    for (; next < fileOnly.length; next += 1) {
      const other = fileOnly[next] as number;
      if (row < day.count && compareRows(day, row, file, other) <= 0) break;
      union.addFrom(file, other);
    }
    if (row < day.count && !gone.has(row)) union.addFrom(day, row);
  }
  return union;
}
