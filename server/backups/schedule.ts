import type { Worker } from "node:worker_threads";
import type { Db } from "#db/open.ts";
import { type Instant, toInstant } from "#engine/time.ts";
import { isDue, newestBackup } from "#server/backups/back-up.ts";
import type { BackupPlan } from "#server/backups/plan.ts";
import { startThread } from "#server/thread.ts";

/** Looked at that often, so that a clock that jumps, or a machine that slept, delays a backup by no more. */
const LOOK_EVERY_MS = 60_000;

type Word = { file: string } | { problem: string };

/** That scheduled backups fail: since when, what the trouble is now, and how old the last good one is; null without any. */
export type BackupTrouble = { since: Instant; problem: string; lastBackupAt: Instant | null };

/** Backups that go on beside the server until told to stop. */
export type RunningBackups = {
  /** Null while all is well. */
  trouble: () => BackupTrouble | null;
  stop: () => Promise<void>;
};

/**
 * Backs a served database up by its plan, each time in a thread of its own. What goes wrong is said, and tried again at the
 * next look; the server goes on.
 */
export function keepBackingUp(
  db: Db,
  plan: BackupPlan,
  {
    now,
    say,
    lookEveryMs = LOOK_EVERY_MS,
  }: { now: () => Date; say: (line: string) => void; lookEveryMs?: number },
): RunningBackups {
  let running: Promise<void> = Promise.resolve();
  let isRunning = false;
  let failing: { since: Instant; problem: string } | null = null;
  const hear = (word: Word): void => {
    if ("file" in word) {
      failing = null;
      return;
    }
    // The same trouble once a minute would bury everything else.
    if (word.problem !== failing?.problem) say(`No backup was made: ${word.problem}`);
    failing = { since: failing?.since ?? toInstant(now().getTime()), problem: word.problem };
  };
  const look = (): void => {
    if (isRunning || !isDue(plan, now())) return;
    isRunning = true;
    running = inThread(db, plan, now(), hear).finally(() => {
      isRunning = false;
    });
  };
  const timer = setInterval(look, lookEveryMs);
  timer.unref();
  return {
    trouble: () => {
      if (failing === null) return null;
      const newest = newestBackup(plan);
      return { ...failing, lastBackupAt: newest === undefined ? null : toInstant(newest.getTime()) };
    },
    stop: async () => {
      clearInterval(timer);
      await running;
    },
  };
}

function inThread(db: Db, plan: BackupPlan, now: Date, hear: (word: Word) => void): Promise<void> {
  const workerData = { databaseFile: db.sqlite.name, plan, nowMs: now.getTime() };
  return new Promise((resolve) => {
    const worker: Worker = startThread(new URL("./backup-worker.js", import.meta.url), workerData);
    worker.on("message", hear);
    worker.on("error", (error) =>
      hear({ problem: error instanceof Error ? error.message : "the thread failed." }),
    );
    worker.on("exit", () => resolve());
  });
}
