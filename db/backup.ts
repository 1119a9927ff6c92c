import { copyFileSync, existsSync, mkdirSync, renameSync, rmSync } from "node:fs";
import { dirname, resolve } from "node:path";
import Database from "better-sqlite3";
import { DatabaseFileError, isDamage } from "#db/errors.ts";
import { flush } from "#db/flush.ts";
import { chainProblems } from "#db/history/chain.ts";
import { closeDatabase, type Db, openDatabase } from "#db/open.ts";
import { StorageError, storageFaultOf } from "#db/storage-fault.ts";

/** All pages in one step: a copy that pauses begins again each time that somebody else writes. */
const ALL_PAGES = 0x7fffffff;

/**
 * Copies an open database to a file, by SQLite's own online backup: safe while others write, and of one moment.
 * The copy is written beside its place and moved in when whole; `prove` may look at it and add to it before.
 * Throws DatabaseFileError when the file exists.
 */
export async function backupTo(
  db: Db,
  file: string,
  prove: (copy: Db) => Promise<void> = async () => undefined,
): Promise<void> {
  if (existsSync(file))
    throw new DatabaseFileError(`${file} is there already; name a new file for the backup.`);
  mkdirSync(dirname(resolve(file)), { recursive: true });
  const part = `${file}.part`;
  removeWithLogs(part);
  try {
    await db.sqlite.backup(part, { progress: () => ALL_PAGES });
    const copy = openDatabase(part);
    try {
      await prove(copy);
    } finally {
      closeDatabase(copy);
    }
    flush(part);
    renameSync(part, file);
    flush(file);
  } catch (error) {
    throw storageFaultOf(error, file) ?? error;
  } finally {
    removeWithLogs(part);
  }
}

/** Keeps a copy of the database beside it before something replaces it, and gives the copy's name. */
export async function keepCopy(db: Db, file: string, why: string, now: string): Promise<string> {
  const copy = `${file}.${why}-${stampOf(now)}`;
  rmSync(copy, { force: true });
  await backupTo(db, copy);
  return copy;
}

/**
 * Puts a backup in a database's place; what was there is kept beside it and its name given. `prove` looks at the copy that
 * will be put there, and throws when it must not be.
 *
 * Throws DatabaseFileError when the backup is damaged or is none of ours, or when the database is in use; then nothing is
 * touched. Whenever it is stopped, the file is either the old database or the new one.
 */
export async function restoreFrom(
  backup: string,
  file: string,
  now: string,
  prove: (copy: Db) => Promise<void> = async () => undefined,
): Promise<string | undefined> {
  if (!existsSync(backup)) throw new DatabaseFileError(`${backup}: there is no such file.`);
  mkdirSync(dirname(resolve(file)), { recursive: true });
  const part = `${file}.restoring`;
  removeWithLogs(part);
  try {
    copyFileSync(backup, part);
    await proveWhole(part, backup, prove);
    flush(part);
    const kept = existsSync(file) ? await setAside(file, now) : undefined;
    renameSync(part, file);
    flush(file);
    return kept;
  } finally {
    removeWithLogs(part);
  }
}

/** What is wrong with a database: broken pages, rows that point at nothing, a history that was changed. Empty when it is whole. */
export async function checkDatabase(db: Db): Promise<string[]> {
  const { sqlite } = db;
  const pages = sqlite.pragma("integrity_check") as { integrity_check: string }[];
  const orphans = sqlite.pragma("foreign_key_check") as { table: string; rowid: number; parent: string }[];
  const broken = pages.map((row) => row.integrity_check).filter((text) => text !== "ok");
  return [
    ...broken,
    // Broken pages come first: what stands on them cannot be read as it was written.
    ...(broken.length === 0 ? chainProblems(db) : []),
    ...orphans.map(
      ({ table, rowid, parent }) => `${table} row ${rowid} points at a ${parent} that is not there`,
    ),
  ];
}

async function proveWhole(part: string, backup: string, prove: (copy: Db) => Promise<void>): Promise<void> {
  const db = openedCopy(part, backup);
  try {
    const problems = await checkDatabase(db);
    if (problems.length > 0) throw damaged(backup, problems[0]);
    await prove(db);
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

/** Keeps what is there; its log is folded into it, as it would be taken for that of the file put in its place. */
async function setAside(file: string, now: string): Promise<string> {
  const kept = `${file}.before-restore-${stampOf(now)}`;
  removeWithLogs(kept);
  let sqlite: Database.Database | undefined;
  try {
    sqlite = new Database(file, { timeout: 0 });
    // Only who has it alone may leave the write-ahead log: with a server on it, this fails.
    if (sqlite.pragma("journal_mode = DELETE", { simple: true }) !== "delete") throw inUse(file);
    await sqlite.backup(kept, { progress: () => ALL_PAGES });
    sqlite.close();
    flush(kept);
  } catch (error) {
    sqlite?.close();
    if (!isDamage(error)) throw busyOf(error, file);
    // What cannot be opened is kept as it is, for whoever can mend it.
    for (const end of ["-wal", "-shm"]) if (existsSync(file + end)) renameSync(file + end, kept + end);
    renameSync(file, kept);
  }
  return kept;
}

function busyOf(error: unknown, file: string): unknown {
  const fault = storageFaultOf(error, file);
  return fault instanceof StorageError && fault.trouble === "busy" ? inUse(file) : (fault ?? error);
}

function inUse(file: string): StorageError {
  return new StorageError(
    "busy",
    `${file} is in use by another program, such as ullage serve. Nothing was changed; stop that program first.`,
  );
}

/** A moment as part of a file's name. "2026-11-23T10:00:00Z" → "20261123T100000" */
export function stampOf(now: string): string {
  return now.replace(/[-:]/g, "").slice(0, 15);
}

function removeWithLogs(file: string): void {
  for (const name of [file, `${file}-wal`, `${file}-shm`]) rmSync(name, { force: true });
}
