import { copyFileSync, existsSync, mkdirSync, renameSync, rmSync } from "node:fs";
import { dirname, resolve } from "node:path";
import Database from "better-sqlite3";
import { DatabaseFileError, isDamage } from "#db/errors.ts";
import { closeDatabase, type Db, openDatabase } from "#db/open.ts";

/**
 * Copies an open database to a file, by SQLite's own online backup: safe while others write.
 * The copy is written beside its place and moved in when whole. Throws DatabaseFileError when the file exists.
 */
export async function backupTo(db: Db, file: string): Promise<void> {
  if (existsSync(file))
    throw new DatabaseFileError(`${file} is there already; name a new file for the backup.`);
  mkdirSync(dirname(resolve(file)), { recursive: true });
  const part = `${file}.part`;
  rmSync(part, { force: true });
  await db.sqlite.backup(part);
  renameSync(part, file);
}

/** Keeps a copy of the database beside it before something replaces it, and gives the copy's name. */
export async function keepCopy(db: Db, file: string, why: string, now: string): Promise<string> {
  const copy = `${file}.${why}-${now.replace(/[-:]/g, "").slice(0, 15)}`;
  rmSync(copy, { force: true });
  await backupTo(db, copy);
  return copy;
}

/**
 * Puts a backup in a database's place; what was there is kept beside it and its name given.
 * Throws DatabaseFileError when the backup is damaged or is none of ours; then nothing is touched.
 */
export async function restoreFrom(backup: string, file: string, now: string): Promise<string | undefined> {
  if (!existsSync(backup)) throw new DatabaseFileError(`${backup}: there is no such file.`);
  mkdirSync(dirname(resolve(file)), { recursive: true });
  const part = `${file}.restoring`;
  removeWithLogs(part);
  copyFileSync(backup, part);
  try {
    await proveWhole(part, backup);
    const kept = existsSync(file) ? await setAside(file, now) : undefined;
    removeWithLogs(file);
    renameSync(part, file);
    return kept;
  } finally {
    removeWithLogs(part);
  }
}

/** What is wrong with a database: broken pages, rows that point at nothing. Empty when it is whole. */
export async function checkDatabase({ sqlite }: Db): Promise<string[]> {
  const pages = sqlite.pragma("integrity_check") as { integrity_check: string }[];
  const orphans = sqlite.pragma("foreign_key_check") as { table: string; rowid: number; parent: string }[];
  return [
    ...pages.map((row) => row.integrity_check).filter((text) => text !== "ok"),
    ...orphans.map(
      ({ table, rowid, parent }) => `${table} row ${rowid} points at a ${parent} that is not there`,
    ),
  ];
}

async function proveWhole(part: string, backup: string): Promise<void> {
  const db = openedCopy(part, backup);
  try {
    const problems = await checkDatabase(db);
    if (problems.length > 0) throw damaged(backup, problems[0]);
    db.sqlite.pragma("wal_checkpoint(TRUNCATE)");
  } catch (error) {
    throw isDamage(error) ? damaged(backup, (error as Error).message) : error;
  } finally {
    closeDatabase(db);
  }
}

function damaged(backup: string, how = "broken"): DatabaseFileError {
  return new DatabaseFileError(`${backup} is damaged: ${how}. Nothing was changed; name another backup.`);
}

/** Opens the copy of a backup; what is wrong with it is said of the file that was named. */
function openedCopy(part: string, backup: string): Db {
  try {
    return openDatabase(part);
  } catch (error) {
    if (!(error instanceof DatabaseFileError)) throw error;
    throw new DatabaseFileError(error.message.replace(part, backup));
  }
}

async function setAside(file: string, now: string): Promise<string> {
  const sqlite = new Database(file);
  try {
    const kept = `${file}.before-restore-${now.replace(/[-:]/g, "").slice(0, 15)}`;
    rmSync(kept, { force: true });
    await sqlite.backup(kept);
    return kept;
  } finally {
    sqlite.close();
  }
}

function removeWithLogs(file: string): void {
  for (const name of [file, `${file}-wal`, `${file}-shm`]) rmSync(name, { force: true });
}
