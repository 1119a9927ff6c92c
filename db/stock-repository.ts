import { ConflictError, NotFoundError } from "#db/errors.ts";
import type { Db } from "#db/open.ts";
import { asSheetHolds, type NewEntries, writeCheckedEntries } from "#db/stored/checked-write.ts";
import {
  type CurrentEntry,
  currentEntries,
  type EntryFacts,
  type EntryKind,
  idOfKey,
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

/** With a key of the sender's own making, what is sent twice over a bad connection is entered once. */
export type Entering = Doing & { key?: string };

/** A correction says why. */
export type Correcting = Doing & { reason: string };

/** With the number of the row that stood there when someone counted; null when they saw none. */
export type Counting = Doing & { seenId?: number | null };

/** Why a row replaces one that its counter had not seen: two people counted one shelf. */
export const COUNTED_APART = "counted by someone else meanwhile";

/**
 * Adds rows to a count that is being taken. A row for an item, area and pack that the count has already replaces it, and
 * the old one stays in its history; a row sent twice is one. One that replaces another finding without having seen it
 * (`seenId`) carries COUNTED_APART as its reason. Gives the numbers of the entries. Throws NotFoundError, InvalidError.
 */
export async function addCountRows(db: Db, rows: readonly CountRow[], doing: Counting): Promise<number[]> {
  return writeCheckedEntries(db, (registers, venue) => {
    const facts = rows.map((row) => checked("count", row, venue));
    const current = currentPlaces(db, registers, facts);
    const result = facts.map((fact) => {
      const place = placeOf(fact);
      const held = current.get(place);
      const isChoice = held?.reason === COUNTED_APART && doing.seenId === held.id;
      if (held !== undefined && !isChoice && isSameEntry(held.fact, fact)) return held.id;
      const reason = held === undefined ? "" : reasonOf(held, fact, doing.seenId);
      const id = insert(db, registers, "count", fact, doing, { reason, replacesId: held?.id ?? null });
      current.set(place, { id, fact, reason });
      return id;
    });
    // A row entered twice in one go is checked as the later one.
    const latest = new Map(facts.map((fact) => [placeOf(fact), fact]));
    return { result, added: { counts: [...latest.values()] } };
  });
}

type Held = { id: number; fact: CountRow; reason: string };

/** Why a row takes the place of another. */
function reasonOf(held: Held, fact: CountRow, seenId: number | null | undefined): string {
  const isSeen = seenId === undefined || seenId === held.id;
  return isSeen || isSameFinding(held.fact, fact) ? "counted again" : COUNTED_APART;
}

/** The current entries of the counts that some rows belong to, by what they count. */
function currentPlaces(db: Db, registers: Registers, rows: readonly CountRow[]): Map<string, Held> {
  const countIds = new Set(rows.flatMap(({ count }) => registers.counts.find(count) ?? []));
  const entries = [...countIds].flatMap((countId) => storeOf("count").load(db, registers, countId));
  return new Map(
    currentEntries(entries).map(({ id, fact, stamp }) => [placeOf(fact), { id, fact, reason: stamp.reason }]),
  );
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

function placeOf({ count, area, item, pack }: CountRow): string {
  return JSON.stringify([
    foldName(count),
    foldName(area),
    foldName(item),
    pack === null ? null : foldName(pack),
  ]);
}

/** Enters a delivery's lines: all of them, or, when one is wrong, none. Gives their numbers. */
export async function addDeliveries(db: Db, facts: readonly Delivery[], doing: Entering): Promise<number[]> {
  return addEntries(db, "delivery", facts, doing);
}

/** Enters one line of a delivery and gives its number. */
export async function addDelivery(db: Db, fact: Delivery, doing: Entering): Promise<number> {
  return addEntry(db, "delivery", fact, doing);
}

/** Enters one making of a prep and gives its number. */
export async function addBatch(db: Db, fact: Batch, doing: Entering): Promise<number> {
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
  const [id = 0] = await addEntries(db, kind, [fact], doing);
  return id;
}

async function addEntries<Kind extends EntryKind>(
  db: Db,
  kind: Kind,
  facts: readonly EntryFacts[Kind][],
  doing: Entering,
): Promise<number[]> {
  return writeCheckedEntries(db, (registers, venue) => {
    const held = facts.map((fact) => checked(kind, fact, venue));
    const result = held.map((fact, at) => {
      const entryKey = doing.key === undefined ? null : `${doing.key} ${at + 1}`;
      const arrived = entryKey === null ? undefined : idOfKey(db, kind, entryKey);
      return arrived ?? insert(db, registers, kind, fact, doing, { reason: "", replacesId: null, entryKey });
    });
    return { result, added: entriesOf(kind, held) };
  });
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
  return writeCheckedEntries(db, (registers, venue) => {
    findCurrent(db, registers, kind, id);
    const held = checked(kind, fact, venue);
    const result = insert(db, registers, kind, held, doing, { reason, replacesId: id });
    if (kind === "count") refuseSamePlace(db, registers, held as CountRow);
    return { result, added: entriesOf(kind, [held]) };
  });
}

/** Takes an entry back; it stays in the history with who did so and why. Throws as correctEntry does. */
export async function withdrawEntry(
  db: Db,
  kind: EntryKind,
  id: number,
  { reason, ...doing }: Correcting,
): Promise<number> {
  return writeCheckedEntries(db, (registers) => {
    const { fact } = findCurrent(db, registers, kind, id);
    const correction = { reason, replacesId: id, isWithdrawn: true };
    return { result: insert(db, registers, kind, fact, doing, correction), added: {} };
  });
}

function entriesOf<Kind extends EntryKind>(kind: Kind, facts: EntryFacts[Kind][]): NewEntries {
  return { [SHEET_OF[kind]]: facts };
}

/** A corrected count row must not come to stand where another row of the count stands. */
function refuseSamePlace(db: Db, registers: Registers, row: CountRow): void {
  const entries = storeOf("count").load(db, registers, registers.counts.idOf(row.count));
  const same = currentEntries(entries).filter(({ fact }) => placeOf(fact) === placeOf(row));
  if (same.length > 1) {
    throw new ConflictError(
      `"${row.item}" in "${row.area}" has a row in "${row.count}" already; correct that one.`,
    );
  }
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
