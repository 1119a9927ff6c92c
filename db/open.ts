import { existsSync, mkdirSync, readFileSync, rmSync } from "node:fs";
import { dirname, join, resolve } from "node:path";
import { fileURLToPath } from "node:url";
import Database from "better-sqlite3";
import { type BetterSQLite3Database, drizzle } from "drizzle-orm/better-sqlite3";
import { migrate } from "drizzle-orm/better-sqlite3/migrator";
import { DamagedFileError, DatabaseFileError } from "#db/errors.ts";
import { storageFaultOf } from "#db/storage-fault.ts";

/** An open database: one file, one venue. */
export type Db = { readonly sqlite: Database.Database; readonly orm: BetterSQLite3Database };

export const IN_MEMORY = ":memory:";
const BUSY_TIMEOUT_MS = 5000;

/**
 * Opens the database file, making it (and its folder) if there is none, and brings its tables up to date.
 *
 * Before an older file is changed it is copied to "FILE.before-NAME", NAME being the last step taken. Throws
 * DatabaseFileError for a file that is no database of ours, is in use, or was written by a newer version of the program.
 */
export function openDatabase(file: string): Db {
  if (file !== IN_MEMORY) makeFolderOf(file);
  const sqlite = connect(file);
  try {
    sqlite.pragma("journal_mode = WAL");
    // What a phone was told is kept must outlive a power cut.
    sqlite.pragma("synchronous = FULL");
    bringUpToDate(sqlite, file);
    sqlite.pragma("foreign_keys = ON");
    return { sqlite, orm: drizzle(sqlite) };
  } catch (error) {
    sqlite.close();
    throw asFileError(error, file);
  }
}

function makeFolderOf(file: string): void {
  const folder = dirname(resolve(file));
  try {
    mkdirSync(folder, { recursive: true });
  } catch (cause) {
    throw new DatabaseFileError(
      `${folder} is no folder and cannot be made one; see that its place may be written to, or name another file than ${file}.`,
      { cause },
    );
  }
}

/** Closes the file; the write-ahead log is folded into it. */
export function closeDatabase({ sqlite }: Db): void {
  sqlite.close();
}

function connect(file: string): Database.Database {
  try {
    return new Database(file, { timeout: BUSY_TIMEOUT_MS });
  } catch (error) {
    throw asFileError(error, file);
  }
}

function asFileError(error: unknown, file: string): unknown {
  if (!(error instanceof Database.SqliteError)) return error;
  if (error.code === "SQLITE_NOTADB")
    return new DamagedFileError(`${file} is no database; name another file.`);
  return (
    storageFaultOf(error, file) ??
    new DatabaseFileError(`${file} cannot be opened as a database: ${error.message}.`)
  );
}

type Step = { tag: string; when: number };

function bringUpToDate(sqlite: Database.Database, file: string): void {
  const migrationsFolder = findMigrations();
  const steps = stepsIn(migrationsFolder);
  const doneUntil = lastStepDone(sqlite, file);
  const newest = steps.at(-1);
  if (newest === undefined) throw new Error(`${migrationsFolder} holds no migrations.`);
  if (doneUntil !== undefined && doneUntil > newest.when) {
    throw new DatabaseFileError(
      `${file} was written by a newer version of ullage; update the program to open it.`,
    );
  }
  if (doneUntil === newest.when) return;
  if (doneUntil !== undefined) copyBefore(sqlite, file, newest);
  // SQLite ignores this pragma inside a transaction, and drizzle migrates inside one. With keys on, rebuilding a
  // table would delete every row that references it.
  sqlite.pragma("foreign_keys = OFF");
  migrate(drizzle(sqlite), { migrationsFolder });
  const broken = sqlite.pragma("foreign_key_check") as unknown[];
  if (broken.length > 0) {
    throw new DatabaseFileError(
      `Bringing ${file} up to date left ${broken.length} rows pointing at nothing; the copy beside it is as it was.`,
    );
  }
}

/** The migrations lie beside this file, or, when it was compiled into dist/, beside its source. */
function findMigrations(): string {
  const here = dirname(fileURLToPath(import.meta.url));
  const places = [join(here, "migrations"), join(here, "..", "..", "db", "migrations")];
  const found = places.find((place) => existsSync(join(place, "meta", "_journal.json")));
  if (found === undefined)
    throw new Error(`No migrations in ${places.join(" or ")}; install the program anew.`);
  return found;
}

function stepsIn(migrationsFolder: string): Step[] {
  const journal: { entries: Step[] } = JSON.parse(
    readFileSync(join(migrationsFolder, "meta", "_journal.json"), "utf8"),
  );
  return journal.entries;
}

/** When the last step taken was written; undefined for a new file. */
function lastStepDone(sqlite: Database.Database, file: string): number | undefined {
  const tables = sqlite
    .prepare("select name from sqlite_master where type = 'table'")
    .pluck()
    .all() as string[];
  if (tables.length === 0) return undefined;
  if (!tables.includes("__drizzle_migrations")) {
    throw new DatabaseFileError(`${file} is a database, but not one of ullage; name another file.`);
  }
  const last = sqlite.prepare("select max(created_at) from __drizzle_migrations").pluck().get();
  return last === null ? undefined : Number(last);
}

function copyBefore(sqlite: Database.Database, file: string, { tag }: Step): void {
  if (file === IN_MEMORY) return;
  const copy = `${file}.before-${tag}`;
  // A copy that an earlier, failed attempt left is of the same state.
  rmSync(copy, { force: true });
  sqlite.prepare("vacuum into ?").run(copy);
}
