import { acting } from "#db/history/acting.ts";
import type { Mend, Subject, Told } from "#db/history/acts.ts";
import { hashOf, headOf } from "#db/history/chain.ts";
import type { Db } from "#db/open.ts";
import { statement } from "#db/stored/statement.ts";
import { foldName } from "#engine/name.ts";
import { toInstant } from "#engine/time.ts";

const FACTS_CHARS_MOST = 16_000;
const MEND_CHARS_MOST = 256_000;
const SUBJECTS_MOST = 200;

/** Adds an act to the history, inside the transaction of the act itself. Gives its number. */
export function appendToHistory(db: Db, told: Told): number {
  const { who, role, via, from, reason = "" } = acting();
  const head = headOf(db);
  const subjects = distinct(told.subjects);
  const row = {
    seq: head.seq + 1,
    at: told.at ?? toInstant(Date.now()),
    who,
    role,
    via,
    fromWhere: from,
    act: told.act,
    summary: told.summary,
    before: factsText(told.before),
    after: factsText(told.after),
    reason: told.reason || reason,
    mend: mendText(told.mend),
    undoes: told.undoes ?? null,
    previousHash: head.hash,
  };
  statement(db, INSERT).run({ ...row, hash: hashOf(row, subjects) });
  const insert = statement(
    db,
    "insert into history_subjects (seq, place, kind, name, folded) values (?, ?, ?, ?, ?)",
  );
  for (const [place, { kind, name }] of subjects.entries())
    insert.run(row.seq, place, kind, name, foldName(name));
  return row.seq;
}

const INSERT = `insert into history (seq, at, who, role, via, from_where, act, summary, before_json, after_json, reason, mend_json,
  undoes, previous_hash, hash) values (@seq, @at, @who, @role, @via, @fromWhere, @act, @summary, @before, @after, @reason, @mend,
  @undoes, @previousHash, @hash)`;

function distinct(subjects: readonly Subject[]): Subject[] {
  const seen = new Map(subjects.map((subject) => [`${subject.kind} ${foldName(subject.name)}`, subject]));
  return [...seen.values()].slice(0, SUBJECTS_MOST);
}

/** Facts beyond any screen are told by how many they are. */
function factsText(facts: unknown): string | null {
  if (facts === undefined || facts === null) return null;
  const text = JSON.stringify(facts);
  return text.length <= FACTS_CHARS_MOST ? text : JSON.stringify({ tooLongToShow: sizesOf(facts) });
}

function sizesOf(facts: unknown): unknown {
  if (Array.isArray(facts)) return facts.length;
  if (typeof facts !== "object" || facts === null) return 1;
  return Object.fromEntries(
    Object.entries(facts).map(([name, list]) => [name, Array.isArray(list) ? list.length : 1]),
  );
}

/** What is beyond taking back in one act is not offered for it. */
function mendText(mend: Mend | null | undefined): string | null {
  if (mend === undefined || mend === null) return null;
  const text = JSON.stringify(mend);
  return text.length <= MEND_CHARS_MOST ? text : null;
}
