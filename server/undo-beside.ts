import { HTTPException } from "hono/http-exception";
import { acting } from "#db/history/acting.ts";
import type { undoAct } from "#db/history-repository.ts";
import type { Db } from "#db/open.ts";
import type { undoImport } from "#db/sales-repository.ts";
import type { Doing } from "#db/stored/transaction.ts";
import { startThread } from "#server/thread.ts";
import { linesTurned, runUndo, type Undo, type UndoTask } from "#server/undo-task.ts";
import type { UndoWord } from "#server/undo-worker.ts";

/** An import as short as that is turned at once; to start a thread would take longer. */
const SHORT_LINES = 20_000;

/** Takes an import back, a long one in a thread of its own, so that others are answered meanwhile. Throws as undoImport does. */
export function undoImportBeside(
  db: Db,
  importId: number,
  doing: Doing,
): Promise<Awaited<ReturnType<typeof undoImport>>> {
  return undoBeside(db, { importId }, doing) as ReturnType<typeof undoImport>;
}

/** The same for an act of the history, of which one may be such an import. Throws as undoAct does. */
export function undoActBeside(
  db: Db,
  seq: number,
  { reason, ...doing }: Doing & { reason: string },
): ReturnType<typeof undoAct> {
  return undoBeside(db, { seq, reason }, doing) as ReturnType<typeof undoAct>;
}

/** Long ones wait for each other: pressed ten times, it is still one thread. */
const waiting = new WeakMap<Db, Promise<unknown>>();

async function undoBeside(db: Db, undo: Undo, doing: Doing): Promise<unknown> {
  const task: UndoTask = { ...doing, acting: acting(), undo };
  // A database in memory can be seen by its own thread only.
  if (db.sqlite.memory || (await linesTurned(db, undo)) <= SHORT_LINES) return runUndo(db, task);
  const before = waiting.get(db) ?? Promise.resolve();
  const own = before.then(() => inThread(db.sqlite.name, task));
  waiting.set(
    db,
    own.catch(() => undefined),
  );
  return own;
}

function inThread(databaseFile: string, task: UndoTask): Promise<unknown> {
  const worker = startThread(new URL("./undo-worker.js", import.meta.url), { ...task, databaseFile });
  return new Promise((resolve, reject) => {
    worker.on("message", (word: UndoWord) => {
      if ("done" in word) resolve(word.done);
      else reject(new HTTPException(word.status, { message: word.problems.join("\n") }));
    });
    worker.on("error", reject);
    worker.on("exit", () => reject(new Error("The thread that undoes ended without a word.")));
  });
}
