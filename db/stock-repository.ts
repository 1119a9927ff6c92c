import { ConflictError, NotFoundError } from "#db/errors.ts";
import type { Db } from "#db/open.ts";
import { asSheetHolds, writeChecked } from "#db/stored/checked-write.ts";
import {
  type CurrentEntry,
  currentEntries,
  type EntryFacts,
  type EntryKind,
  type Stamp,
  storeOf,
} from "#db/stored/entries.ts";
import { loadRegisters, type Registers } from "#db/stored/register.ts";
import { type Doing, momentOf } from "#db/stored/transaction.ts";
import { foldName } from "#engine/name.ts";
import { Batch, CountRow, Delivery, Loss, Transfer } from "#engine/stock/movement.ts";
import type { Instant } from "#engine/time.ts";
import type { Venue } from "#engine/venue.ts";

const SCHEMAS = { count: CountRow, delivery: Delivery, batch: Batch, loss: Loss, transfer: Transfer };
const SHEET_OF = {
  count: "counts",
  delivery: "deliveries",
  batch: "batches",
  loss: "losses",
  transfer: "transfers",
} as const;
const WORD_OF: Record<EntryKind, string> = {
  count: "count row",
  delivery: "delivery",
  batch: "batch",
  loss: "loss",
  transfer: "transfer",
};

/** A correction says why. */
export type Correcting = Doing & { reason: string };

/**
 * Adds rows to a count that is being taken. A row for an item, area and pack that the count has already replaces it, and
 * the old one stays in its history. Gives the numbers of the entries. Throws NotFoundError, InvalidError.
 */
export async function addCountRows(db: Db, rows: readonly CountRow[], doing: Doing): Promise<number[]> {
  return writeChecked(db, (registers, venue) => {
    const current = new Map(
      currentEntries(storeOf("count").load(db, registers)).map((entry) => [placeOf(entry.fact), entry.id]),
    );
    return rows.map((row) => {
      const fact = checked("count", row, venue);
      const place = placeOf(spelledAsKnown(fact, registers));
      const replacesId = current.get(place) ?? null;
      const reason = replacesId === null ? "" : "counted again";
      const id = insert(db, registers, "count", fact, doing, { reason, replacesId });
      current.set(place, id);
      return id;
    });
  });
}

function placeOf({ count, area, item, pack }: CountRow): string {
  return JSON.stringify([
    foldName(count),
    foldName(area),
    foldName(item),
    pack === null ? null : foldName(pack),
  ]);
}

function spelledAsKnown(row: CountRow, registers: Registers): CountRow {
  return { ...row, item: registers.items.nameOf(registers.items.idOf(row.item)) };
}

/** Enters a delivery's lines: all of them, or, when one is wrong, none. Gives their numbers. */
export async function addDeliveries(db: Db, facts: readonly Delivery[], doing: Doing): Promise<number[]> {
  return addEntries(db, "delivery", facts, doing);
}

/** Enters one line of a delivery and gives its number. */
export async function addDelivery(db: Db, fact: Delivery, doing: Doing): Promise<number> {
  return addEntry(db, "delivery", fact, doing);
}

/** Enters one making of a prep and gives its number. */
export async function addBatch(db: Db, fact: Batch, doing: Doing): Promise<number> {
  return addEntry(db, "batch", fact, doing);
}

/** Enters stock gone without a sale and gives its number. */
export async function addLoss(db: Db, fact: Loss, doing: Doing): Promise<number> {
  return addEntry(db, "loss", fact, doing);
}

/** Enters stock that came from or went to another place and gives its number. */
export async function addTransfer(db: Db, fact: Transfer, doing: Doing): Promise<number> {
  return addEntry(db, "transfer", fact, doing);
}

async function addEntry<Kind extends EntryKind>(
  db: Db,
  kind: Kind,
  fact: EntryFacts[Kind],
  doing: Doing,
): Promise<number> {
  const [id = 0] = await addEntries(db, kind, [fact], doing);
  return id;
}

async function addEntries<Kind extends EntryKind>(
  db: Db,
  kind: Kind,
  facts: readonly EntryFacts[Kind][],
  doing: Doing,
): Promise<number[]> {
  return writeChecked(db, (registers, venue) =>
    facts.map((fact) =>
      insert(db, registers, kind, checked(kind, fact, venue), doing, { reason: "", replacesId: null }),
    ),
  );
}

/**
 * Enters the right facts in place of an entry; the wrong one stays in its history. Gives the new entry's number.
 *
 * Throws NotFoundError, and ConflictError when the entry has been replaced or taken back meanwhile.
 */
export async function correctEntry<Kind extends EntryKind>(
  db: Db,
  kind: Kind,
  id: number,
  fact: EntryFacts[Kind],
  { reason, ...doing }: Correcting,
): Promise<number> {
  return writeChecked(db, (registers, venue) => {
    findCurrent(db, registers, kind, id);
    return insert(db, registers, kind, checked(kind, fact, venue), doing, { reason, replacesId: id });
  });
}

/** Takes an entry back; it stays in the history with who did so and why. Throws as correctEntry does. */
export async function withdrawEntry(
  db: Db,
  kind: EntryKind,
  id: number,
  { reason, ...doing }: Correcting,
): Promise<number> {
  return writeChecked(db, (registers) => {
    const { fact } = findCurrent(db, registers, kind, id);
    return insert(db, registers, kind, fact, doing, { reason, replacesId: id, isWithdrawn: true });
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
  correction: Pick<Stamp, "reason" | "replacesId"> & Partial<Pick<Stamp, "isWithdrawn">>,
): number {
  const stamp: Stamp = {
    isWithdrawn: false,
    ...correction,
    enteredAt: momentOf(doing),
    enteredBy: doing.by,
  };
  return storeOf(kind).insert(db, registers, fact, stamp);
}

function checked<Kind extends EntryKind>(kind: Kind, fact: EntryFacts[Kind], venue: Venue): EntryFacts[Kind] {
  const parsed = SCHEMAS[kind].parse(fact);
  return asSheetHolds(SHEET_OF[kind], parsed as never, venue) as EntryFacts[Kind];
}

/** Which moments to list: from one on, and before another. */
export type Between = { from?: Instant; to?: Instant };

/** The entries that hold, by their moment, each with the ones it replaced. */
export async function listEntries<Kind extends EntryKind>(
  db: Db,
  kind: Kind,
  { from = "", to = "9999" }: Between = {},
): Promise<CurrentEntry<EntryFacts[Kind]>[]> {
  const entries = storeOf(kind).load(db, loadRegisters(db));
  return currentEntries(entries)
    .filter(({ fact }) => fact.at >= from && fact.at < to)
    .sort((a, b) => (a.fact.at < b.fact.at ? -1 : a.fact.at > b.fact.at ? 1 : a.id - b.id));
}

/** Entries that were taken back, newest first. */
export async function listWithdrawn<Kind extends EntryKind>(
  db: Db,
  kind: Kind,
): Promise<{ id: number; fact: EntryFacts[Kind]; stamp: Stamp }[]> {
  const entries = storeOf(kind).load(db, loadRegisters(db));
  return entries.filter(({ stamp }) => stamp.isWithdrawn).reverse();
}
