import { eq } from "drizzle-orm";
import { ConflictError, NotFoundError } from "#db/errors.ts";
import type { Db } from "#db/open.ts";
import { ringNames } from "#db/schema/sales.ts";
import { about, writeChecked } from "#db/stored/checked-write.ts";
import { currentEntries, type EntryFacts, type EntryKind, storeOf } from "#db/stored/entries.ts";
import {
  type Correcting,
  writeCorrection,
  writeCountRows,
  writeEntries,
  writeWithdrawal,
} from "#db/stored/entry-writes.ts";
import { loadRegisters } from "#db/stored/register.ts";
import { writeRingName } from "#db/stored/ring-name-write.ts";
import { foldName } from "#engine/name.ts";
import type { RingName } from "#engine/sales/ring.ts";
import type { CountRow } from "#engine/stock/movement.ts";
import type { Correction } from "#engine/variance/causes/correction.ts";

type Entered = Exclude<Correction["sheet"], "ringNames">;

const KIND_OF = { deliveries: "delivery", counts: "count", batches: "batch", losses: "loss" } as const;

/**
 * Changes the book as a confirmed cause says, inside the transaction that keeps the settlement. Gives the number of the entry
 * it made; null for a ring name, which has none. Throws ConflictError when what it changes was changed meanwhile.
 */
export function writeCauseCorrection(db: Db, correction: Correction, doing: Correcting): number | null {
  if (correction.sheet === "ringNames") {
    if (correction.fact !== null) mapRing(db, correction.fact, doing);
    return null;
  }
  const { sheet, was, fact } = correction;
  const kind = KIND_OF[sheet];
  if (was === null) return fact === null ? null : enter(db, kind, fact, doing);
  const id = idOf(db, kind, was);
  return fact === null ? writeWithdrawal(db, kind, id, doing) : writeCorrection(db, kind, id, fact, doing);
}

/** Puts the book back to what it was before a correction. Throws ConflictError when it was changed since. */
export function undoCauseCorrection(
  db: Db,
  { correction, entryId }: { correction: Correction; entryId: number | null },
  doing: Correcting,
): void {
  if (correction.sheet === "ringNames") {
    if (correction.fact !== null) unmapRing(db, correction.fact.ringName);
    return;
  }
  const { sheet, was, fact } = correction;
  const kind = KIND_OF[sheet as Entered];
  if (fact === null) {
    if (was !== null) enter(db, kind, was, doing);
    return;
  }
  const id = idOf(db, kind, fact, entryId);
  if (was === null) writeWithdrawal(db, kind, id, doing);
  else writeCorrection(db, kind, id, was, doing);
}

function enter<Kind extends EntryKind>(
  db: Db,
  kind: Kind,
  fact: EntryFacts[Kind],
  { now, by }: Correcting,
): number | null {
  const doing = { now, by };
  const [id = null] =
    kind === "count" ? writeCountRows(db, [fact as CountRow], doing) : writeEntries(db, kind, [fact], doing);
  return id;
}

/** The entry that holds these very facts; of several alike the one of a known number, else the latest. */
function idOf<Kind extends EntryKind>(
  db: Db,
  kind: Kind,
  fact: EntryFacts[Kind],
  known: number | null = null,
): number {
  const alike = currentEntries(storeOf(kind).load(db, loadRegisters(db))).filter((entry) =>
    isSame(entry.fact, fact),
  );
  const found = alike.find(({ id }) => id === known) ?? alike.at(-1);
  if (found === undefined) {
    throw new ConflictError(
      "The entry that this would change was itself changed meanwhile; look at the report again.",
    );
  }
  return found.id;
}

function isSame(a: object, b: object): boolean {
  const sorted = (fact: object) =>
    JSON.stringify(Object.entries(fact).sort(([one], [other]) => (one < other ? -1 : 1)));
  return sorted(a) === sorted(b);
}

function mapRing(db: Db, ring: RingName, doing: Correcting): void {
  writeChecked(db, about("ring name changed", "ring name", ring.ringName), (registers, venue) =>
    writeRingName(db, registers, venue, ring, doing),
  );
}

function unmapRing(db: Db, ringName: string): void {
  writeChecked(db, about("ring name changed", "ring name", ringName), () => {
    const { changes } = db.orm
      .delete(ringNames)
      .where(eq(ringNames.folded, foldName(ringName)))
      .run();
    if (changes === 0) throw new NotFoundError(`The ring name "${ringName}" has no row.`);
  });
}
