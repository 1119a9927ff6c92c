import { HandOver } from "#engine/sales/read/regular/hand-over.ts";
import { kindOf } from "#engine/sales/read/words.ts";

/** A column taken for a mere category must not turn out to say which rows are voids. Throws HandOver where it does. */
export function watchKind(cell: string, heading: string): number {
  if (cell.trim() !== "" && kindOf(cell, heading) !== undefined)
    throw new HandOver("A column of categories holds a kind of row after all.");
  return 0;
}
