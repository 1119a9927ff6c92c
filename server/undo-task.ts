import { type Acting, actingAs } from "#db/history/acting.ts";
import { linesTurnedBy, undoAct } from "#db/history-repository.ts";
import type { Db } from "#db/open.ts";
import { sizeOfImport, undoImport } from "#db/sales-repository.ts";
import type { Doing } from "#db/stored/transaction.ts";

/** What is to be undone: an import, or an act of the history. */
export type Undo = { importId: number } | { seq: number; reason: string };

/** With on whose behalf: a thread does not know by itself. */
export type UndoTask = Doing & { acting: Acting; undo: Undo };

/** How many sales lines that will turn. */
export async function linesTurned(db: Db, undo: Undo): Promise<number> {
  return "importId" in undo ? sizeOfImport(db, undo.importId) : linesTurnedBy(db, undo.seq);
}

/** Undoes it and gives what undoImport or undoAct gives. Throws as they do. */
export function runUndo(db: Db, { acting, undo, ...doing }: UndoTask): Promise<unknown> {
  return actingAs(acting, () =>
    "importId" in undo
      ? undoImport(db, undo.importId, doing)
      : undoAct(db, undo.seq, { ...doing, reason: undo.reason }),
  );
}
