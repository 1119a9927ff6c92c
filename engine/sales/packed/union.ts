import { compareRows, DayColumns } from "#engine/sales/packed/day-columns.ts";

/**
 * The lines that several files together show of a day: each as often as in the file that has it most.
 *
 * [a, a, b] and [a, c] → [a, a, b, c]. The files' columns are put in order; the answer is in order too.
 */
export function unionOf(files: readonly DayColumns[]): DayColumns {
  const [first = new DayColumns(), ...others] = files;
  first.sort();
  return others.reduce(unionOfTwo, first);
}

function unionOfTwo(left: DayColumns, right: DayColumns): DayColumns {
  right.sort();
  const union = new DayColumns();
  let one = 0;
  let other = 0;
  while (one < left.count || other < right.count) {
    const order = one === left.count ? 1 : other === right.count ? -1 : compareRows(left, one, right, other);
    if (order <= 0) union.addFrom(left, one);
    else union.addFrom(right, other);
    if (order <= 0) one += 1;
    if (order >= 0) other += 1;
  }
  return union;
}
