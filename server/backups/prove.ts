import { createHash } from "node:crypto";
import { checkDatabase } from "#db/backup.ts";
import { type BackupProof, differences, rowCounts, takeProof, writeProof } from "#db/backup-proof.ts";
import { DatabaseFileError, NotFoundError } from "#db/errors.ts";
import { headOf } from "#db/history/chain.ts";
import type { Db } from "#db/open.ts";
import { endAllSessions } from "#db/sessions-repository.ts";
import { changeToken } from "#db/stored/transaction.ts";
import { InputError } from "#server/input-error.ts";
import { varianceFor } from "#server/reports/variance.ts";
import { PROGRAM_VERSION } from "#server/version.ts";
import { openWorld } from "#server/world.ts";

/** Digits of a number that two computations of one report have in common, whatever machine they run on. */
const DIGITS = 9;

type Variance = BackupProof["variance"];

/** The latest variance in so few words that two can be compared; null where there is none to tell yet. */
export async function varianceWords(db: Db): Promise<Variance> {
  try {
    const report = await varianceFor(await openWorld(db), {});
    const rounded = JSON.stringify(report, (_, value) =>
      typeof value === "number" && Number.isFinite(value) ? Number(value.toPrecision(DIGITS)) : value,
    );
    return {
      of: `${report.opening} to ${report.closing}`,
      unexplainedCost: Number(report.totals.unexplainedCost.toPrecision(DIGITS)),
      digest: createHash("sha256").update(rounded).digest("hex"),
    };
  } catch (error) {
    // A new book has no two counts, or no venue at all; both are as they should be.
    if (error instanceof InputError || error instanceof NotFoundError) return null;
    throw error;
  }
}

/**
 * Gives a fresh copy of a database its proof: that it is whole, how many rows it has, where its history ends, and what its
 * latest variance says, which must be what the database itself says unless it has been written to since.
 * Throws DatabaseFileError when the copy is not whole or says something else.
 */
export async function giveProof(copy: Db, original: Db, now: string): Promise<BackupProof> {
  const problems = await checkDatabase(copy);
  if (problems.length > 0)
    throw new DatabaseFileError(
      `${original.sqlite.name} is damaged: ${problems[0]}. No backup was made of it.`,
    );
  const variance = await varianceWords(copy);
  if ((await changeToken(copy)) === (await changeToken(original))) {
    const own = await varianceWords(original);
    if (own?.digest !== variance?.digest)
      throw new DatabaseFileError(
        `The copy of ${original.sqlite.name} gives another variance than it does itself. No backup was made.`,
      );
  }
  const { seq, hash } = headOf(copy);
  const proof = {
    madeAt: now,
    program: PROGRAM_VERSION,
    rows: rowCounts(copy),
    historyHead: { seq, hash },
    variance,
  };
  writeProof(copy, proof);
  return proof;
}

/** What was compared when a backup was brought back. */
export type Restored = {
  rows: number;
  tables: number;
  acts: number;
  variance: Variance;
  proof: BackupProof | null;
};

/**
 * Compares a copy of a backup with the proof in it, and makes it ready to be put in place: nobody is signed in any more, as
 * sessions that ended since the backup would be back otherwise. Its pages, keys and history were checked before.
 *
 * Throws DatabaseFileError where it differs. With `anyway`, a variance may be another one: a newer program may reckon otherwise.
 */
export async function compareWithProof(copy: Db, backup: string, { anyway = false } = {}): Promise<Restored> {
  const proof = takeProof(copy) ?? null;
  const variance = await varianceWords(copy);
  if (proof !== null) {
    const [difference] = differences(copy, proof);
    if (difference !== undefined)
      throw new DatabaseFileError(
        `${backup} is not what was backed up: ${difference}. Nothing was changed; name another backup.`,
      );
    if (proof.variance?.digest !== variance?.digest && !anyway) throw otherVariance(backup, proof, variance);
  }
  await endAllSessions(copy);
  const counts = Object.values(rowCounts(copy));
  const rows = counts.reduce((sum, count) => sum + count, 0);
  return { rows, tables: counts.length, acts: headOf(copy).seq, variance, proof };
}

function otherVariance(
  backup: string,
  { variance: then, program }: BackupProof,
  now: Variance,
): DatabaseFileError {
  const told = (one: Variance) => (one === null ? "none" : `${one.unexplainedCost} (${one.of})`);
  return new DatabaseFileError(
    `${backup} gives another variance than when it was made: ${told(now)}, then ${told(then)}. Nothing was changed. ` +
      `It was made by ullage ${program}, this is ${PROGRAM_VERSION}; where the newer one reckons otherwise, bring it back with --anyway.`,
  );
}
