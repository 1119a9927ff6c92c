import { createHash } from "node:crypto";
import type { Db } from "#db/open.ts";
import type { history } from "#db/schema/history.ts";
import { statement } from "#db/stored/statement.ts";

export type HistoryRow = typeof history.$inferSelect;
export type SubjectRow = { kind: string; name: string };

/** What stands before the first act. */
export const NO_HASH = "0".repeat(64);

/**
 * SHA-256 over all that an act's row holds and the hash of the row before it, written as one JSON array: every field has its
 * place, so that no two rows read alike.
 */
export function hashOf(row: Omit<HistoryRow, "hash">, subjects: readonly SubjectRow[]): string {
  const { seq, at, who, role, via, fromWhere, act, summary, before, after, reason, mend, undoes } = row;
  const about = subjects.map(({ kind, name }) => [kind, name]);
  const form = [seq, at, who, role, via, fromWhere, act, about, summary, before, after, reason, mend, undoes];
  return createHash("sha256")
    .update(JSON.stringify([...form, row.previousHash]))
    .digest("hex");
}

/** The last act's number and hash: whoever notes it elsewhere can tell later whether the acts up to it are as they were. */
export type Head = { seq: number; hash: string; at: string | null };

export function headOf(db: Db): Head {
  const last = statement(db, "select seq, hash, at from history order by seq desc limit 1").get();
  return (last as Head | undefined) ?? { seq: 0, hash: NO_HASH, at: null };
}

export type ChainReport = {
  acts: number;
  head: Head;
  /** The first act that is not as it was written; null in a whole chain. */
  broken: { seq: number; how: string } | null;
};

/** Goes through all acts and works out their hashes again. */
export function verifyChain(db: Db): ChainReport {
  const head = headOf(db);
  const subjects = db.sqlite.prepare("select kind, name from history_subjects where seq = ? order by place");
  let previous = NO_HASH;
  let acts = 0;
  for (const row of db.sqlite.prepare(ALL).iterate() as IterableIterator<HistoryRow>) {
    acts += 1;
    const how = faultOf(row, { seq: acts, previous }, subjects.all(row.seq) as SubjectRow[]);
    if (how !== undefined) return { acts, head, broken: { seq: how.seq, how: how.words } };
    previous = row.hash;
  }
  return { acts, head, broken: null };
}

const ALL = `select seq, at, who, role, via, from_where as fromWhere, act, summary, before_json as before, after_json as after,
  reason, mend_json as mend, undoes, previous_hash as previousHash, hash from history order by seq`;

function faultOf(
  row: HistoryRow,
  due: { seq: number; previous: string },
  subjects: readonly SubjectRow[],
): { seq: number; words: string } | undefined {
  if (row.seq !== due.seq) return { seq: due.seq, words: "it is missing" };
  if (row.previousHash !== due.previous)
    return { seq: row.seq, words: "it does not follow from the act before it" };
  if (row.hash !== hashOf(row, subjects))
    return { seq: row.seq, words: "it was changed after it was written" };
  return undefined;
}

/** What is wrong with the history, in words; empty when it is as it was written. */
export function chainProblems(db: Db): string[] {
  const { broken } = verifyChain(db);
  return broken === null ? [] : [`the history is broken at act ${broken.seq}: ${broken.how}`];
}

/** The number of the act with a hash that somebody noted; undefined when no act has it. */
export function seqOfHash({ sqlite }: Db, hash: string): number | undefined {
  return sqlite.prepare("select seq from history where hash = ?").pluck().get(hash) as number | undefined;
}
