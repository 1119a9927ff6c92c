import { ConflictError, NotFoundError } from "#db/errors.ts";
import type { EntryChange } from "#db/history/tell-entries.ts";
import type { Db } from "#db/open.ts";
import { asSheetHolds, writeCheckedEntries } from "#db/stored/checked-write.ts";
import {
  type CurrentEntry,
  currentCountRow,
  currentEntries,
  type EntryFacts,
  type EntryKind,
  idOfKey,
  type Stamp,
  storeOf,
  withInputs,
} from "#db/stored/entries.ts";
import { entriesOf, placeOf, refuseSamePlace, SHEET_OF } from "#db/stored/new-entries.ts";
import type { Registers } from "#db/stored/register.ts";
import { type Doing, momentOf } from "#db/stored/transaction.ts";
import { BatchEntry, CountRow, Delivery, Loss, Transfer } from "#engine/stock/movement.ts";
import type { Venue } from "#engine/venue.ts";

const SCHEMAS = { count: CountRow, delivery: Delivery, batch: BatchEntry, loss: Loss, transfer: Transfer };
const WORD_OF: Record<EntryKind, string> = {
  count: "count row",
  delivery: "delivery",
  batch: "batch",
  loss: "loss",
  transfer: "transfer",
};

/** With a key of the sender's own making, what is sent twice over a bad connection is entered once. */
export type Entering = Doing & { key?: string };

/** A correction says why. */
export type Correcting = Doing & { reason: string };

/** With the number of the row that stood there when someone counted; null when they saw none. */
export type Counting = Doing & { seenId?: number | null };

/** Why a row replaces one that its counter had not seen: two people counted one shelf. */
export const APART = "counted by someone else meanwhile";

/** Adds rows to a count, as `addCountRows` does; inside another transaction, a part of it. */
export function writeCountRows(db: Db, rows: readonly CountRow[], doing: Counting): number[] {
  return writeCheckedEntries(db, doing, (registers, venue) => {
    const entries: EntryChange[] = [];
    const facts = rows.map((row) => checked("count", row, venue));
    const result = facts.map((fact) => {
      const held = heldIn(db, registers, fact);
      const isChoice = held?.reason === APART && doing.seenId === held.id;
      if (held !== undefined && !isChoice && isSameEntry(held.fact, fact)) return held.id;
      const reason = held === undefined ? "" : reasonOf(held, fact, doing.seenId);
      const replacesId = held?.id ?? null;
      const id = insert(db, registers, "count", fact, doing, { reason, replacesId });
      entries.push({ kind: "count", id, replacesId, before: held?.fact ?? null, after: fact });
      return id;
    });
    // A row entered twice in one go is checked as the later one.
    const latest = new Map(facts.map((fact) => [placeOf(fact), fact]));
    return { result, added: { counts: [...latest.values()] }, entries };
  });
}

type Held = { id: number; fact: CountRow; reason: string };

/** Why a row takes the place of another. */
function reasonOf(held: Held, fact: CountRow, seenId: number | null | undefined): string {
  const isSeen = seenId === undefined || seenId === held.id;
  return isSeen || isSameFinding(held.fact, fact) ? "counted again" : APART;
}

/** What holds already where a row was counted. */
function heldIn(db: Db, registers: Registers, row: CountRow): Held | undefined {
  const held = currentCountRow(db, registers, row);
  return held && { id: held.id, fact: held.fact, reason: held.stamp.reason };
}

/** A phone that lost its signal sends again what had arrived. */
function isSameEntry(a: CountRow, b: CountRow): boolean {
  return a.at === b.at && a.by === b.by && isSameFinding(a, b);
}

function isSameFinding(a: CountRow, b: CountRow): boolean {
  const finding = ({ full, parts, grossG, amount, unit }: CountRow) =>
    JSON.stringify([full ?? 0, parts, grossG, amount, unit]);
  return finding(a) === finding(b);
}

/** Enters facts of one kind: all of them or, when one is wrong, none; inside another transaction, a part of it. */
export function writeEntries<Kind extends EntryKind>(
  db: Db,
  kind: Kind,
  facts: readonly EntryFacts[Kind][],
  doing: Entering,
): number[] {
  return writeCheckedEntries(db, doing, (registers, venue) => {
    const entries: EntryChange[] = [];
    const held = facts.map((fact) => checked(kind, fact, venue));
    const result = held.map((fact, at) => {
      const entryKey = doing.key === undefined ? null : `${doing.key} ${at + 1}`;
      const arrived = entryKey === null ? undefined : idOfKey(db, kind, entryKey);
      if (arrived !== undefined) return arrived;
      const id = insert(db, registers, kind, fact, doing, { reason: "", replacesId: null, entryKey });
      entries.push({ kind, id, replacesId: null, before: null, after: fact } as EntryChange);
      return id;
    });
    return { result, added: entriesOf(kind, held), entries };
  });
}

/** Enters the right facts in place of an entry, as `correctEntry` does; inside another transaction, a part of it. */
export function writeCorrection<Kind extends EntryKind>(
  db: Db,
  kind: Kind,
  id: number,
  fact: EntryFacts[Kind],
  { reason, ...doing }: Correcting,
): number {
  return writeCheckedEntries(db, { ...doing, reason }, (registers, venue) => {
    const { fact: before } = findCurrent(db, registers, kind, id);
    const held = checked(kind, fact, venue);
    const result = insert(db, registers, kind, held, doing, { reason, replacesId: id });
    if (kind === "count") refuseSamePlace(db, registers, held as CountRow);
    const change = { kind, id: result, replacesId: id, before, after: held } as EntryChange;
    return { result, added: entriesOf(kind, [held]), entries: [change] };
  });
}

/** Takes an entry back, as `withdrawEntry` does; inside another transaction, a part of it. */
export function writeWithdrawal(
  db: Db,
  kind: EntryKind,
  id: number,
  { reason, ...doing }: Correcting,
): number {
  return writeCheckedEntries(db, { ...doing, reason }, (registers) => {
    const { fact } = findCurrent(db, registers, kind, id);
    const correction = { reason, replacesId: id, isWithdrawn: true };
    const result = insert(db, registers, kind, fact, doing, correction);
    const change = { kind, id: result, replacesId: id, before: fact, after: null } as EntryChange;
    return { result, added: {}, entries: [change] };
  });
}

function findCurrent<Kind extends EntryKind>(
  db: Db,
  registers: Registers,
  kind: Kind,
  id: number,
): CurrentEntry<EntryFacts[Kind]> {
  const entries = storeOf(kind).load(db, registers);
  const found = currentEntries(entries).find((entry) => entry.id === id);
  if (found !== undefined) return found;
  if (entries.some((entry) => entry.id === id)) {
    throw new ConflictError(`This ${WORD_OF[kind]} was already corrected or taken back; look at it again.`);
  }
  throw new NotFoundError(`There is no ${WORD_OF[kind]} ${id}.`);
}

function insert<Kind extends EntryKind>(
  db: Db,
  registers: Registers,
  kind: Kind,
  fact: EntryFacts[Kind],
  doing: Doing,
  correction: Pick<Stamp, "reason" | "replacesId"> & Partial<Pick<Stamp, "isWithdrawn" | "entryKey">>,
): number {
  const stamp: Stamp = {
    isWithdrawn: false,
    entryKey: null,
    ...correction,
    enteredAt: momentOf(doing),
    enteredBy: doing.by,
  };
  return storeOf(kind).insert(db, registers, fact, stamp);
}

function checked<Kind extends EntryKind>(kind: Kind, fact: EntryFacts[Kind], venue: Venue): EntryFacts[Kind] {
  const parsed = SCHEMAS[kind].parse(fact);
  if (kind === "batch") return checkedBatch(parsed as BatchEntry, venue) as EntryFacts[Kind];
  return asSheetHolds(SHEET_OF[kind], parsed as never, venue) as EntryFacts[Kind];
}

function checkedBatch({ inputs = [], ...batch }: BatchEntry, venue: Venue): BatchEntry {
  const { at, prep } = batch;
  const held = inputs.map((used) => asSheetHolds("batchInputs", { at, prep, batchNo: 1, ...used }, venue));
  return withInputs(
    asSheetHolds("batches", batch, venue),
    held.map(({ item, amount, unit }) => ({ item, amount, unit })),
  );
}
