import { ConflictError, InvalidError } from "#db/errors.ts";
import type { EntryAdded, Mend, RowChange, TableRow, Told } from "#db/history/acts.ts";
import { CHANGEABLE, isSameRow, snapshotOf } from "#db/history/change.ts";
import { laterActOn } from "#db/history/later-act.ts";
import { dayTouches } from "#db/history/past.ts";
import { tellBookChange } from "#db/history/tell-book-change.ts";
import { undoEntries } from "#db/history/undo-entries.ts";
import type { Db } from "#db/open.ts";
import { readStoredBook } from "#db/stored/book.ts";
import { refuseProblems } from "#db/stored/checked-write.ts";
import { changedOf, planTurn, setUndone, type TurnPlan } from "#db/stored/import-undone.ts";
import { type Doing, momentOf } from "#db/stored/transaction.ts";

/** What undoing leaves for the history to tell; the words are those of the act that is undone. */
export type Undone = Pick<Told, "before" | "after" | "mend" | "touches">;

export type ActToUndo = { seq: number; summary: string; mend: Mend };

/**
 * Puts things back to what they were before an act, inside a transaction. Throws ConflictError when something that came later
 * depends on it, InvalidError when the book would no longer hold together.
 */
export function undoMend(db: Db, act: ActToUndo, doing: Doing & { reason: string }, plan?: TurnPlan): Undone {
  const { mend } = act;
  if ("rows" in mend) return undoRows(db, act, mend.rows);
  if ("entries" in mend) return undoEntries(db, mend.entries as EntryAdded[], doing);
  return turnImport(db, mend, doing, plan);
}

/** What undoing an import will write, worked out beforehand by reading alone; undefined for any other act. */
export function planUndo(db: Db, mend: Mend): TurnPlan | undefined {
  if (!("importId" in mend)) return undefined;
  const { importId, isUndone } = mend;
  return planTurn(db, { importId, isUndone: !isUndone });
}

function undoRows(db: Db, act: ActToUndo, rows: readonly RowChange[]): Undone {
  const before = snapshotOf(db);
  for (const { table, id, after } of rows) {
    if (isSameRow(before.rows.get(table)?.get(id) ?? null, after)) continue;
    throw new ConflictError(`${laterActOn(db, act.seq, { table, id })} Undo that first.`);
  }
  putBack(db, rows);
  refuseProblems(readStoredBook(db));
  const told = tellBookChange(
    db,
    { act: "undone", subjects: [{ kind: "book", name: "" }] },
    { before, after: snapshotOf(db) },
  );
  if (told === null) throw new ConflictError("There is nothing to undo in it: it changed nothing.");
  return told;
}

/** What was added goes first and what was taken out comes last, each after what it refers to. */
function putBack(db: Db, rows: readonly RowChange[]): void {
  const inOrder = [...rows].sort((a, b) => place(a.table) - place(b.table));
  try {
    for (const { table, id, before } of [...inOrder].reverse()) if (before === null) takeOut(db, table, id);
    for (const { table, before, after } of inOrder)
      if (before !== null && after !== null) putRow(db, table, before);
    for (const { table, before, after } of inOrder)
      if (before !== null && after === null) putRow(db, table, before);
  } catch (error) {
    if (!isStillNamed(error)) throw error;
    throw new ConflictError(
      "Something entered later still names it (an entry that was taken back keeps its names too), so it stays.",
    );
  }
}

function place(table: string): number {
  return (CHANGEABLE as readonly string[]).indexOf(table);
}

function takeOut({ sqlite }: Db, table: string, id: number): void {
  // A pack's name alone holds nothing; with its item it goes.
  if (table === "items") sqlite.prepare("delete from packs where item_id = ?").run(id);
  sqlite.prepare(`delete from ${known(table)} where id = ?`).run(id);
}

function putRow({ sqlite }: Db, table: string, row: TableRow): void {
  const columns = Object.keys(row).map((column) => `"${column.replaceAll('"', "")}"`);
  const places = columns.map(() => "?").join(", ");
  const set = columns.map((column) => `${column} = excluded.${column}`).join(", ");
  sqlite
    .prepare(
      `insert into ${known(table)} (${columns.join(", ")}) values (${places}) on conflict (id) do update set ${set}`,
    )
    .run(Object.values(row));
}

/** The name comes from the history, which a file from elsewhere may have brought. */
function known(table: string): string {
  if (place(table) === -1)
    throw new InvalidError(`The history names a table "${table}" that cannot be changed.`);
  return table;
}

function isStillNamed(error: unknown): boolean {
  return (
    error instanceof Error && "code" in error && String(error.code).startsWith("SQLITE_CONSTRAINT_FOREIGNKEY")
  );
}

function turnImport(
  db: Db,
  { importId, isUndone }: { importId: number; isUndone: boolean },
  doing: Doing,
  plan: TurnPlan | undefined,
): Undone {
  const undone = isUndone ? null : { ...doing, now: momentOf(doing) };
  const { file, days } = setUndone(db, importId, undone, plan);
  return {
    after: { days: days.length, changed: changedOf(days).length },
    mend: { importId, isUndone: !isUndone },
    touches: dayTouches(`sales of ${file}`, changedOf(days)),
  };
}
