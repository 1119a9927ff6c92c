import { mkdirSync, readdirSync, rmSync } from "node:fs";
import { join } from "node:path";
import { backupTo } from "#db/backup.ts";
import type { BackupProof } from "#db/backup-proof.ts";
import type { Db } from "#db/open.ts";
import type { BackupPlan } from "#server/backups/plan.ts";
import { giveProof } from "#server/backups/prove.ts";
import { backupName, backupTime, superfluous } from "#server/backups/rotation.ts";

/** Backs a database up into a new file that carries its own proof. Throws DatabaseFileError. */
export async function backUp(db: Db, file: string, now: Date): Promise<BackupProof> {
  let proof: BackupProof | undefined;
  await backupTo(db, file, async (copy) => {
    proof = await giveProof(copy, db, `${now.toISOString().slice(0, 19)}Z`);
  });
  if (proof === undefined) throw new Error("A backup was made without its proof.");
  return proof;
}

/** A scheduled backup: one more in the plan's folder, and only then those gone that are no longer wanted. Gives its file. */
export async function backUpByPlan(db: Db, { folder, bar, keep }: BackupPlan, now: Date): Promise<string> {
  mkdirSync(folder, { recursive: true });
  const file = join(folder, backupName(bar, now));
  await backUp(db, file, now);
  for (const name of superfluous(bar, readdirSync(folder), keep)) rmSync(join(folder, name), { force: true });
  return file;
}

/** When the newest scheduled backup was made; undefined when there is none yet. */
export function newestBackup({ folder, bar }: Pick<BackupPlan, "folder" | "bar">): Date | undefined {
  let names: string[];
  try {
    names = readdirSync(folder);
  } catch {
    return undefined;
  }
  const times = names
    .flatMap((name) => backupTime(bar, name) ?? [])
    .sort((a, b) => b.getTime() - a.getTime());
  return times[0];
}

/** Whether the next one is due. One from the future was made before the clock was set back, and says nothing. */
export function isDue(plan: BackupPlan, now: Date): boolean {
  const newest = newestBackup(plan);
  if (newest === undefined) return true;
  const ageMs = now.getTime() - newest.getTime();
  return ageMs < 0 || ageMs >= plan.everyMs;
}
