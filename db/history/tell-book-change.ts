import type { Told } from "#db/history/acts.ts";
import { bookTouches } from "#db/history/book-touches.ts";
import { changeBetween, type SheetFacts, type Snapshot } from "#db/history/change.ts";
import { changedWords } from "#db/history/change-words.ts";
import type { Db } from "#db/open.ts";

/** A change to what the book says (not to its entries) as the history tells it; null when nothing changed. */
export function tellBookChange(
  db: Db,
  { act, subjects, reason = "" }: Pick<Told, "act" | "subjects" | "reason">,
  { before, after }: { before: Snapshot; after: Snapshot },
): Told | null {
  const change = changeBetween(before, after);
  if (change.rows.length === 0) return null;
  return {
    act,
    subjects,
    summary: `${subjects[0].name}: ${changedWords(change)}`,
    before: orNull(change.before),
    after: orNull(change.after),
    reason,
    mend: { rows: change.rows },
    touches: (closed) => bookTouches(db, change, closed),
  };
}

function orNull(facts: SheetFacts): SheetFacts | null {
  return Object.keys(facts).length === 0 ? null : facts;
}
