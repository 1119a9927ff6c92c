import { ConflictError, NotFoundError } from "#db/errors.ts";
import type { ActName, Mend, Subject } from "#db/history/acts.ts";
import { lastLoad } from "#db/history/later-act.ts";
import { planUndo, undoMend } from "#db/history/undo.ts";
import type { Db } from "#db/open.ts";
import { linesIn } from "#db/stored/import-undone.ts";
import { type Doing, inTransaction, momentOf, readingAlone } from "#db/stored/transaction.ts";
import { foldName } from "#engine/name.ts";
import type { Instant } from "#engine/time.ts";

/** One act as it is listed. */
export type Act = {
  seq: number;
  at: Instant;
  who: string;
  role: string;
  via: string;
  from: string;
  act: ActName;
  subjects: Subject[];
  summary: string;
  before: unknown;
  after: unknown;
  reason: string;
  /** The act that this one took back, and the one that took this back. */
  undoes: number | null;
  undoneBy: number | null;
  /** Whether undoing it may be tried: it has what that takes, was not undone, and the book was not loaded anew since. */
  canUndo: boolean;
};

export type Wanted = {
  /** A thing of the bar by its name, of whatever kind. */
  subject?: string | undefined;
  act?: ActName | undefined;
  /** From a moment on, and before another. */
  from?: Instant | undefined;
  to?: Instant | undefined;
  /** Only acts before this one, to go on in a long list. */
  before?: number | undefined;
  limit?: number | undefined;
};

const LIMIT = 100;

/** The acts that were done, newest first. */
export async function listHistory(db: Db, wanted: Wanted = {}): Promise<Act[]> {
  const { subject, act, from, to, before, limit = LIMIT } = wanted;
  const rows = db.sqlite
    .prepare(
      `${SELECT} where (@folded is null or h.seq in (select seq from history_subjects where folded = @folded))
         and (@act is null or h.act = @act) and (@from is null or h.at >= @from) and (@to is null or h.at < @to)
         and (@before is null or h.seq < @before)
       order by h.seq desc limit @limit`,
    )
    .all({
      folded: subject === undefined ? null : foldName(subject),
      act: act ?? null,
      from: from ?? null,
      to: to ?? null,
      before: before ?? null,
      limit,
    }) as StoredAct[];
  return asActs(db, rows);
}

const SELECT = `select h.seq, h.at, h.who, h.role, h.via, h.from_where as "from", h.act, h.summary, h.before_json as before,
  h.after_json as after, h.reason, h.undoes, later.seq as undoneBy, h.mend_json as mend
  from history h left join history later on later.undoes = h.seq`;

type StoredAct = Omit<Act, "subjects" | "before" | "after" | "canUndo"> & {
  before: string | null;
  after: string | null;
  mend: string | null;
};

function asActs(db: Db, rows: readonly StoredAct[]): Act[] {
  const subjectsOf = db.sqlite.prepare(
    "select kind, name from history_subjects where seq = ? order by place",
  );
  const loaded = lastLoad(db);
  return rows.map(({ mend, before, after, ...row }) => ({
    ...row,
    subjects: subjectsOf.all(row.seq) as Subject[],
    before: before === null ? null : JSON.parse(before),
    after: after === null ? null : JSON.parse(after),
    canUndo: mend !== null && row.undoneBy === null && row.seq > loaded,
  }));
}

/**
 * Takes an act back, by whatever that takes; what was undone may be undone in turn. Gives the number of the act that does so.
 *
 * Throws NotFoundError; ConflictError, with the reason, when it cannot be taken back (any more) or something that came later
 * depends on it; ClosedPastError when it lies in the closed past.
 */
export async function undoAct(
  db: Db,
  seq: number,
  { reason = "", ...doing }: Doing & { reason?: string },
): Promise<{ seq: number; summary: string }> {
  // A million lines are gone through before anything is locked, so that whoever counts meanwhile does not wait for it.
  const plan = readingAlone(db, () => {
    const mend = storedAct(db, seq)?.mend ?? null;
    return mend === null ? undefined : planUndo(db, JSON.parse(mend) as Mend);
  });
  return inTransaction(db, () => {
    const stored = storedAct(db, seq);
    if (stored === undefined) throw new NotFoundError(`The history has no act ${seq}.`);
    const [act] = asActs(db, [stored]);
    const [first, ...others] = act?.subjects ?? [];
    if (act === undefined || first === undefined) throw new Error(`Act ${seq} is about nothing.`);
    refuseUndo(act, stored.mend === null);
    const summary = undoneWords(act);
    const why = reason === "" ? summary : reason;
    const mend = JSON.parse(stored.mend ?? "null") as Mend;
    const {
      before,
      after,
      mend: back = null,
      touches,
    } = undoMend(db, { seq, summary: act.summary, mend }, { ...doing, reason: why }, plan);
    const told = {
      act: "undone" as const,
      subjects: [first, ...others] as const,
      summary,
      before,
      after,
      mend: back,
      touches,
      reason,
      undoes: seq,
      at: momentOf(doing),
    };
    return { result: { seq: nextSeq(db), summary }, told };
  });
}

function storedAct({ sqlite }: Db, seq: number): StoredAct | undefined {
  return sqlite.prepare(`${SELECT} where h.seq = ?`).get(seq) as StoredAct | undefined;
}

/** How many sales lines undoing an act turns, so that whoever serves others can tell a long undoing; 0 for what is no import. */
export async function linesTurnedBy(db: Db, seq: number): Promise<number> {
  const mend = storedAct(db, seq)?.mend ?? null;
  const { importId } = (mend === null ? {} : JSON.parse(mend)) as { importId?: number };
  return importId === undefined ? 0 : linesIn(db, importId);
}

function refuseUndo(act: Act, hasNoMend: boolean): void {
  if (act.undoneBy !== null) {
    throw new ConflictError(`This was undone already (no. ${act.undoneBy}).`);
  }
  if (hasNoMend) {
    throw new ConflictError(`This cannot be undone here. ${INSTEAD[act.act] ?? ""}`.trim());
  }
  if (!act.canUndo) {
    throw new ConflictError(
      "The whole book was loaded since, so this cannot be undone; bring back the copy that was kept.",
    );
  }
}

const INSTEAD: Partial<Record<ActName, string>> = {
  "book loaded": "Bring back the copy that was kept with: ullage restore FILE",
  "week closed": "The owner can reopen the week, with a reason.",
  "week reopened": "Close the week again.",
  "cause settled": "Take it back on the variance screen.",
};

const UNDONE = "Undone: ";
const AGAIN = "Done again: ";

/** Undoing what was undone is doing it again. */
function undoneWords({ act, summary }: Act): string {
  if (act !== "undone") return UNDONE + summary;
  return summary.startsWith(UNDONE)
    ? AGAIN + summary.slice(UNDONE.length)
    : UNDONE + summary.slice(AGAIN.length);
}

function nextSeq({ sqlite }: Db): number {
  return Number(sqlite.prepare("select coalesce(max(seq), 0) + 1 from history").pluck().get());
}
