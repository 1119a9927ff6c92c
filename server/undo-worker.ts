import { parentPort, workerData } from "node:worker_threads";
import { closeDatabase, openDatabase } from "#db/open.ts";
import { problemsOf, statusOf } from "#server/cli/fault.ts";
import { runUndo, type UndoTask } from "#server/undo-task.ts";

/** What the thread says at its end. */
export type UndoWord =
  | { done: unknown }
  | { problems: readonly string[]; status: ReturnType<typeof statusOf> };

/** The thread in which a long import is taken back, so that the server goes on answering meanwhile. */
const { databaseFile, ...task } = workerData as UndoTask & { databaseFile: string };
const say = (word: UndoWord): void => parentPort?.postMessage(word);
const db = openDatabase(databaseFile);
try {
  say({ done: await runUndo(db, task) });
} catch (error) {
  const problems = problemsOf(error);
  if (problems === undefined) throw error;
  say({ problems, status: statusOf(error) });
} finally {
  closeDatabase(db);
}
