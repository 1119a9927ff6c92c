import { parentPort, workerData } from "node:worker_threads";
import { closeDatabase, openDatabase } from "#db/open.ts";
import { problemsOf } from "#server/cli/fault.ts";
import { type ImportTask, type ImportWord, runImport } from "#server/import-task.ts";

/** The thread in which a long file is read, so that the server goes on answering meanwhile. */
const task = workerData as ImportTask & { databaseFile: string };
const say = (word: ImportWord): void => parentPort?.postMessage(word);
const db = openDatabase(task.databaseFile);
try {
  say(await runImport(db, task, say));
} catch (error) {
  const problems = problemsOf(error);
  if (problems === undefined) throw error;
  say({ state: "failed", problems });
} finally {
  closeDatabase(db);
}
