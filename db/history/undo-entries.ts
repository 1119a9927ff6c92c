import { isNull } from "drizzle-orm";
import { ConflictError } from "#db/errors.ts";
import type { EntryAdded } from "#db/history/acts.ts";
import { lastLoad } from "#db/history/later-act.ts";
import { type EntryChange, tellEntries } from "#db/history/tell-entries.ts";
import type { Undone } from "#db/history/undo.ts";
import type { Db } from "#db/open.ts";
import { settlements } from "#db/schema/settlements.ts";
import { loadVenue, readWithoutEntries } from "#db/stored/book.ts";
import { refuseProblems } from "#db/stored/checked-write.ts";
import { type EntryFacts, type EntryKind, storeOf } from "#db/stored/entries.ts";
import { entriesOf, refuseSamePlace } from "#db/stored/new-entries.ts";
import { loadRegisters, type Registers } from "#db/stored/register.ts";
import { type Doing, momentOf } from "#db/stored/transaction.ts";
import type { CountRow } from "#engine/stock/movement.ts";

/**
 * Puts entries back to what held before they were added: an added one is taken back, a corrected one gets its former facts, one
 * that was taken back holds again. All of it by further entries, as nothing is ever erased.
 */
export function undoEntries(db: Db, added: readonly EntryAdded[], doing: Doing & { reason: string }): Undone {
  const registers = loadRegisters(db);
  const replacedHere = new Set(added.map(({ kind, replacesId }) => `${kind} ${replacesId}`));
  // What one act entered twice for one shelf goes back as one.
  const last = added.filter(({ kind, id }) => !replacedHere.has(`${kind} ${id}`));
  const lines = new Lines(db, registers, added);
  const changes = last.map(({ kind, id }) => undoEntry(db, lines, { kind, id }, doing));
  refuseNew(db, registers, changes);
  const venue = loadVenue(db);
  const told = venue === undefined ? null : tellEntries(changes, { ...doing, venue });
  if (told === null) throw new ConflictError("There is nothing to undo in it: it added nothing.");
  return told;
}

function undoEntry<Kind extends EntryKind>(
  db: Db,
  lines: Lines,
  { kind, id }: { kind: Kind; id: number },
  doing: Doing & { reason: string },
): EntryChange {
  const latest = lines.latestAfter(kind, id);
  if (lines.stateOf(kind, latest) !== lines.stateOf(kind, id)) {
    throw new ConflictError("The entry was corrected or taken back later; undo that first.");
  }
  refuseSettled(db, kind, id);
  const state = lines.stateBefore(kind, id);
  const held = lines.entry(kind, latest);
  const { fact, isWithdrawn } = state === null ? { ...held, isWithdrawn: true } : lines.entry(kind, state);
  const newId = storeOf(kind).insert(db, lines.registers, fact, {
    enteredAt: momentOf(doing),
    enteredBy: doing.by,
    reason: doing.reason,
    replacesId: latest,
    isWithdrawn,
    entryKey: null,
  });
  if (kind === "count" && !isWithdrawn) refuseSamePlace(db, lines.registers, fact as CountRow);
  return {
    kind,
    id: newId,
    replacesId: latest,
    restores: state,
    before: held.isWithdrawn ? null : held.fact,
    after: isWithdrawn ? null : fact,
  } as EntryChange;
}

type Held<Kind extends EntryKind> = {
  fact: EntryFacts[Kind];
  isWithdrawn: boolean;
  replacesId: number | null;
};

/** Entries with those that replaced them, and which of them only brought an earlier state back. */
class Lines {
  readonly registers: Registers;
  readonly #entries = new Map<string, Held<EntryKind>>();
  readonly #next = new Map<string, number>();
  readonly #restores = new Map<string, number | null>();
  readonly #inAct: ReadonlySet<string>;

  constructor(db: Db, registers: Registers, added: readonly EntryAdded[]) {
    this.registers = registers;
    this.#inAct = new Set(added.map(({ kind, id }) => `${kind} ${id}`));
    for (const kind of new Set(added.map((entry) => entry.kind))) {
      for (const { id, fact, stamp } of storeOf(kind).load(db, registers)) {
        const { isWithdrawn, replacesId } = stamp;
        this.#entries.set(`${kind} ${id}`, { fact, isWithdrawn, replacesId });
        if (replacesId !== null) this.#next.set(`${kind} ${replacesId}`, id);
      }
    }
    for (const { kind, id, restores } of restoredIn(db)) this.#restores.set(`${kind} ${id}`, restores);
  }

  entry<Kind extends EntryKind>(kind: Kind, id: number): Held<Kind> {
    const held = this.#entries.get(`${kind} ${id}`);
    if (held === undefined)
      throw new ConflictError("The entry is no longer there: the book was loaded anew.");
    return held as Held<Kind>;
  }

  latestAfter(kind: EntryKind, id: number): number {
    const next = this.#next.get(`${kind} ${id}`);
    return next === undefined ? id : this.latestAfter(kind, next);
  }

  /** The entry that an entry stands for: itself, or the one it brought back; null where it brought back that there was none. */
  stateOf(kind: EntryKind, id: number): number | null {
    const restored = this.#restores.get(`${kind} ${id}`);
    return restored === undefined ? id : restored;
  }

  /** What held before the act that added an entry, past what the same act added before it. */
  stateBefore(kind: EntryKind, id: number): number | null {
    const { replacesId } = this.entry(kind, id);
    if (replacesId === null) return null;
    return this.#inAct.has(`${kind} ${replacesId}`)
      ? this.stateBefore(kind, replacesId)
      : this.stateOf(kind, replacesId);
  }
}

/** The numbers of entries begin anew with every book that is loaded. */
function restoredIn(db: Db): { kind: EntryKind; id: number; restores: number | null }[] {
  const mends = db.sqlite
    .prepare(
      "select mend_json from history where act = 'undone' and mend_json like '{\"entries\"%' and seq > ?",
    )
    .pluck()
    .all(lastLoad(db)) as string[];
  return mends
    .flatMap((mend) => (JSON.parse(mend) as { entries: EntryAdded[] }).entries)
    .map(({ kind, id, restores = null }) => ({ kind, id, restores }));
}

const KIND_OF: Record<string, EntryKind> = {
  deliveries: "delivery",
  counts: "count",
  batches: "batch",
  losses: "loss",
};

/** What a settled cause entered goes with the settlement, so that the two never disagree. */
function refuseSettled({ orm }: Db, kind: EntryKind, id: number): void {
  const held = orm.select().from(settlements).where(isNull(settlements.takenBackAt)).all();
  const isSettled = held.some(
    ({ entryId, correction }) => entryId === id && correction !== null && KIND_OF[correction.sheet] === kind,
  );
  if (isSettled) {
    throw new ConflictError(
      "A settled cause of the variance made this entry; take that back on the variance screen instead.",
    );
  }
}

/** The facts that hold again are checked as new ones are: what they name may have been taken out. */
function refuseNew(db: Db, registers: Registers, changes: readonly EntryChange[]): void {
  const book = readWithoutEntries(db, registers);
  if (book === undefined) return;
  for (const { kind, after } of changes) {
    if (after !== null) refuseProblems({ ...book, ...entriesOf(kind, [after]) });
  }
}
