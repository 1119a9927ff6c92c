import type { Db } from "#db/open.ts";
import {
  type CurrentEntry,
  currentEntries,
  type EntryFacts,
  type EntryKind,
  type Stamp,
  storeOf,
} from "#db/stored/entries.ts";
import {
  APART,
  type Correcting,
  type Counting,
  type Entering,
  writeCorrection,
  writeCountRows,
  writeEntries,
  writeWithdrawal,
} from "#db/stored/entry-writes.ts";
import { loadRegisters } from "#db/stored/register.ts";
import type { BatchEntry, CountRow, Delivery, Loss, Transfer } from "#engine/stock/movement.ts";
import type { Instant } from "#engine/time.ts";

/** Why a row replaces one that its counter had not seen: two people counted one shelf. */
export const COUNTED_APART = APART;

/**
 * Adds rows to a count that is being taken. A row for an item, area and pack that the count has already replaces it, and
 * the old one stays in its history; a row sent twice is one. One that replaces another finding without having seen it
 * (`seenId`) carries COUNTED_APART as its reason. Gives the numbers of the entries. Throws NotFoundError, InvalidError.
 */
export async function addCountRows(db: Db, rows: readonly CountRow[], doing: Counting): Promise<number[]> {
  return writeCountRows(db, rows, doing);
}

/** Enters a delivery's lines: all of them, or, when one is wrong, none. Gives their numbers. */
export async function addDeliveries(db: Db, facts: readonly Delivery[], doing: Entering): Promise<number[]> {
  return writeEntries(db, "delivery", facts, doing);
}

/** Enters one line of a delivery and gives its number. */
export async function addDelivery(db: Db, fact: Delivery, doing: Entering): Promise<number> {
  return addEntry(db, "delivery", fact, doing);
}

/** Enters one making of a prep, with what it really used if not as its spec says; gives its number. */
export async function addBatch(db: Db, fact: BatchEntry, doing: Entering): Promise<number> {
  return addEntry(db, "batch", fact, doing);
}

/** Enters stock gone without a sale and gives its number. */
export async function addLoss(db: Db, fact: Loss, doing: Entering): Promise<number> {
  return addEntry(db, "loss", fact, doing);
}

/** Enters stock that came from or went to another place and gives its number. */
export async function addTransfer(db: Db, fact: Transfer, doing: Entering): Promise<number> {
  return addEntry(db, "transfer", fact, doing);
}

async function addEntry<Kind extends EntryKind>(
  db: Db,
  kind: Kind,
  fact: EntryFacts[Kind],
  doing: Entering,
): Promise<number> {
  const [id = 0] = writeEntries(db, kind, [fact], doing);
  return id;
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
  correcting: Correcting,
): Promise<number> {
  return writeCorrection(db, kind, id, fact, correcting);
}

/** Takes an entry back; it stays in the history with who did so and why. Throws as correctEntry does. */
export async function withdrawEntry(
  db: Db,
  kind: EntryKind,
  id: number,
  correcting: Correcting,
): Promise<number> {
  return writeWithdrawal(db, kind, id, correcting);
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
  return byMoment(currentEntries(entries).filter(({ fact }) => fact.at >= from && fact.at < to));
}

/** The rows of one count that hold, by their moment, each with the ones it replaced; none where no count is called so. */
export async function listCountRows(db: Db, count: string): Promise<CurrentEntry<CountRow>[]> {
  const registers = loadRegisters(db);
  const countId = registers.counts.find(count);
  if (countId === undefined) return [];
  return byMoment(currentEntries(storeOf("count").load(db, registers, countId)));
}

function byMoment<Fact extends { at: Instant }>(entries: CurrentEntry<Fact>[]): CurrentEntry<Fact>[] {
  return entries.sort((a, b) => (a.fact.at < b.fact.at ? -1 : a.fact.at > b.fact.at ? 1 : a.id - b.id));
}

/** Entries that were taken back and still are, newest first. */
export async function listWithdrawn<Kind extends EntryKind>(
  db: Db,
  kind: Kind,
): Promise<{ id: number; fact: EntryFacts[Kind]; stamp: Stamp }[]> {
  const entries = storeOf(kind).load(db, loadRegisters(db));
  const replaced = new Set(entries.map(({ stamp }) => stamp.replacesId));
  return entries.filter(({ id, stamp }) => stamp.isWithdrawn && !replaced.has(id)).reverse();
}
