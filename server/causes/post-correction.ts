import { ConflictError } from "#db/errors.ts";
import type { Db } from "#db/open.ts";
import { removeRingName, saveRingName } from "#db/specs-repository.ts";
import {
  addBatch,
  addCountRows,
  addDelivery,
  addLoss,
  correctEntry,
  listEntries,
  withdrawEntry,
} from "#db/stock-repository.ts";
import type { EntryFacts, EntryKind } from "#db/stored/entries.ts";
import type { Correction } from "#engine/variance/causes/correction.ts";

type Doing = { now: string; by: string };
type Entries = Exclude<Correction["sheet"], "ringNames">;

const KIND_OF = { deliveries: "delivery", counts: "count", batches: "batch", losses: "loss" } as const;

/**
 * Posts a correction and gives the number of the entry it made; null for a ring name, which has none.
 * Throws ConflictError when what it corrects has changed meanwhile.
 */
export async function postCorrection(
  db: Db,
  correction: Correction,
  doing: Doing & { reason: string },
): Promise<number | null> {
  if (correction.sheet === "ringNames") {
    if (correction.fact !== null) await saveRingName(db, correction.fact);
    return null;
  }
  const { sheet, was, fact } = correction;
  if (was === null) return fact === null ? null : add(db, correction, doing);
  const id = await idOf(db, sheet, was);
  if (fact === null) return withdrawEntry(db, KIND_OF[sheet], id, doing);
  return correctEntry(db, KIND_OF[sheet], id, fact, doing);
}

/** Puts the book back to what it was before a correction. Throws ConflictError when it was changed since. */
export async function reverseCorrection(
  db: Db,
  { correction, entryId }: { correction: Correction; entryId: number | null },
  doing: Doing & { reason: string },
): Promise<void> {
  if (correction.sheet === "ringNames") {
    if (correction.fact !== null) await removeRingName(db, correction.fact.ringName);
    return;
  }
  const { sheet, was, fact } = correction;
  if (fact === null) {
    await add(db, { ...correction, was: null, fact: was } as Correction, doing);
    return;
  }
  const id = await idOf(db, sheet, fact, entryId);
  if (was === null) await withdrawEntry(db, KIND_OF[sheet], id, doing);
  else await correctEntry(db, KIND_OF[sheet], id, was, doing);
}

async function add(db: Db, correction: Correction, doing: Doing): Promise<number | null> {
  const { sheet, fact } = correction;
  if (fact === null) return null;
  switch (sheet) {
    case "deliveries":
      return addDelivery(db, fact, doing);
    case "batches":
      return addBatch(db, fact, doing);
    case "losses":
      return addLoss(db, fact, doing);
    case "counts":
      return (await addCountRows(db, [fact], doing))[0] ?? null;
    case "ringNames":
      return null;
  }
}

/** The entry that holds these very facts; of several alike the one of a known number, else the latest. */
async function idOf<Sheet extends Entries>(
  db: Db,
  sheet: Sheet,
  fact: EntryFacts[(typeof KIND_OF)[Sheet]],
  known: number | null = null,
): Promise<number> {
  const kind: EntryKind = KIND_OF[sheet];
  const alike = (await listEntries(db, kind)).filter((entry) => isSame(entry.fact, fact));
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
