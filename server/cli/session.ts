import { existsSync } from "node:fs";
import { closeDatabase, type Db, openDatabase } from "#db/open.ts";
import { printReport, type Report } from "#server/cli/output.ts";
import { type CommonOptions, formatOf } from "#server/cli/program.ts";
import { InputError } from "#server/input-error.ts";
import { openWorld, type World } from "#server/world.ts";

/** The database file a command works on. */
export function databaseFile({ db }: CommonOptions): string {
  return db ?? process.env.ULLAGE_DB ?? "data/ullage.db";
}

/** Opens the database that a report reads. Throws InputError when there is none: reading must not make one. */
export function openExisting(options: CommonOptions): Db {
  const file = databaseFile(options);
  if (!existsSync(file)) {
    throw new InputError(
      `${file}: there is no database here yet. Make one with: ullage load DIR (or try: ullage demo).`,
    );
  }
  return openDatabase(file);
}

/** Opens the database, lets a report be made of it, prints it and closes it again. */
export async function withWorld(
  options: CommonOptions,
  report: (world: World) => Promise<Report>,
): Promise<undefined> {
  const db = openExisting(options);
  try {
    printReport(await report(await openWorld(db)), formatOf(options));
  } finally {
    closeDatabase(db);
  }
  return undefined;
}
