import { backupTo, checkDatabase, restoreFrom } from "#db/backup.ts";
import { isDamage } from "#db/errors.ts";
import { closeDatabase } from "#db/open.ts";
import type { CommonOptions } from "#server/cli/program.ts";
import { databaseFile, openExisting } from "#server/cli/session.ts";

export async function backupCommand(options: CommonOptions, file: string): Promise<undefined> {
  const db = openExisting(options);
  try {
    await backupTo(db, file);
    process.stdout.write(`Backed up ${databaseFile(options)} to ${file}.\n`);
  } finally {
    closeDatabase(db);
  }
  return undefined;
}

export async function restoreCommand(options: CommonOptions, file: string): Promise<undefined> {
  const target = databaseFile(options);
  const kept = await restoreFrom(file, target, new Date().toISOString());
  process.stdout.write(`Restored ${target} from ${file}.\n`);
  if (kept !== undefined) process.stdout.write(`What was there before is kept in ${kept}.\n`);
  return undefined;
}

/** Exit status 1 when the database is not whole: the answer is "no". */
export async function checkCommand(options: CommonOptions): Promise<number> {
  const problems = await troubleWith(options);
  if (problems.length === 0) {
    process.stdout.write(`${databaseFile(options)} is whole.\n`);
    return 0;
  }
  process.stdout.write(
    `${databaseFile(options)} is not whole:\n${problems.join("\n")}\nBring back a backup with: ullage restore FILE\n`,
  );
  return 1;
}

/** A file too damaged to be opened is an answer too; one that is not there, or is in use, is none. */
async function troubleWith(options: CommonOptions): Promise<readonly string[]> {
  try {
    const db = openExisting(options);
    try {
      return await checkDatabase(db);
    } finally {
      closeDatabase(db);
    }
  } catch (error) {
    if (isDamage(error)) return [(error as Error).message];
    throw error;
  }
}
