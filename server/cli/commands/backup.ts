import { checkDatabase, restoreFrom } from "#db/backup.ts";
import { isDamage } from "#db/errors.ts";
import { headOf, seqOfHash } from "#db/history/chain.ts";
import { closeDatabase, type Db } from "#db/open.ts";
import { backUp } from "#server/backups/back-up.ts";
import { compareWithProof, type Restored } from "#server/backups/prove.ts";
import type { CommonOptions } from "#server/cli/program.ts";
import { databaseFile, openExisting } from "#server/cli/session.ts";
import { clockWarning } from "#server/clock-set-back.ts";

export async function backupCommand(options: CommonOptions, file: string): Promise<undefined> {
  const db = openExisting(options);
  try {
    const { rows } = await backUp(db, file, new Date());
    const count = Object.values(rows).reduce((sum, of) => sum + of, 0);
    process.stdout.write(
      `Backed up ${databaseFile(options)} to ${file}: ${count} rows, whole.\n${headWords(db)}\n`,
    );
  } finally {
    closeDatabase(db);
  }
  return undefined;
}

export async function restoreCommand(
  options: CommonOptions & { anyway?: boolean },
  file: string,
): Promise<undefined> {
  const target = databaseFile(options);
  let restored: Restored | undefined;
  const kept = await restoreFrom(file, target, new Date().toISOString(), async (copy) => {
    restored = await compareWithProof(copy, file, options);
  });
  process.stdout.write(`Restored ${target} from ${file}.\n`);
  if (restored !== undefined) process.stdout.write(`${restoredWords(restored)}\n`);
  if (kept !== undefined) process.stdout.write(`What was there before is kept in ${kept}.\n`);
  return undefined;
}

function restoredWords({ rows, tables, acts, variance, proof }: Restored): string {
  const found = `Pages, keys and the history of ${acts} acts are whole; ${rows} rows in ${tables} tables`;
  const of =
    variance === null ? "no variance yet" : `the variance ${variance.of} is ${variance.unexplainedCost}`;
  const compared =
    proof === null
      ? `${found}; ${of}. The file carries no proof of its own to compare that with.`
      : `${found}, as when it was made on ${proof.madeAt.slice(0, 10)}; ${of}, ${
          proof.variance?.digest === variance?.digest ? "as then" : "and was reckoned otherwise then"
        }.`;
  return `${compared}\nWhoever was signed in has to sign in again; tokens revoked since then are to be revoked again.`;
}

/** The history's head, to be noted where whoever has the file cannot change it. */
function headWords(db: Db): string {
  const { seq, hash } = headOf(db);
  return seq === 0 ? "Its history is empty." : `Head of its history, after ${seq} acts: ${hash}`;
}

/** Exit status 1 when the database is not whole, or a noted head is no part of its history: the answer is "no". */
export async function checkCommand(options: CommonOptions & { head?: string }): Promise<number> {
  const { problems, head } = await troubleWith(options);
  if (problems.length === 0) {
    process.stdout.write(`${databaseFile(options)} is whole.\n${head}\n`);
    return 0;
  }
  process.stdout.write(
    `${databaseFile(options)} is not whole:\n${problems.join("\n")}\nBring back a backup with: ullage restore FILE\n`,
  );
  return 1;
}

/** A file too damaged to be opened is an answer too; one that is not there, or is in use, is none. */
async function troubleWith(
  options: CommonOptions & { head?: string },
): Promise<{ problems: readonly string[]; head: string }> {
  try {
    const db = openExisting(options);
    try {
      const problems = [...(await checkDatabase(db)), ...notedProblems(db, options.head)];
      const late = clockWarning(db, new Date());
      if (late !== undefined) process.stderr.write(`${late}\n`);
      return { problems, head: headWords(db) };
    } finally {
      closeDatabase(db);
    }
  } catch (error) {
    if (isDamage(error)) return { problems: [(error as Error).message], head: "" };
    throw error;
  }
}

function notedProblems(db: Db, noted: string | undefined): string[] {
  if (noted === undefined || seqOfHash(db, noted.trim().toLowerCase()) !== undefined) return [];
  return [`the history has no act with the head ${noted}: it is shorter than it was, or was written anew`];
}
