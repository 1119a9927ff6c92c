import { parentPort, workerData } from "node:worker_threads";
import { closeDatabase, openDatabase } from "#db/open.ts";
import { backUpByPlan } from "#server/backups/back-up.ts";
import type { BackupPlan } from "#server/backups/plan.ts";
import { problemsOf } from "#server/cli/fault.ts";
import { faultText } from "#server/fault-text.ts";

/** The thread in which a scheduled backup is made and proved, so that the server goes on answering meanwhile. */
const { databaseFile, plan, nowMs } = workerData as { databaseFile: string; plan: BackupPlan; nowMs: number };
try {
  const db = openDatabase(databaseFile);
  try {
    parentPort?.postMessage({ file: await backUpByPlan(db, plan, new Date(nowMs)) });
  } finally {
    closeDatabase(db);
  }
} catch (error) {
  parentPort?.postMessage({ problem: problemsOf(error)?.join(" ") ?? faultText(error) });
}
