import type { NewEntries } from "#db/book/check-facts.ts";
import { ConflictError } from "#db/errors.ts";
import type { Db } from "#db/open.ts";
import {
  asBatchSheets,
  currentEntries,
  type EntryFacts,
  type EntryKind,
  storeOf,
} from "#db/stored/entries.ts";
import type { Registers } from "#db/stored/register.ts";
import { foldName } from "#engine/name.ts";
import type { BatchEntry, CountRow } from "#engine/stock/movement.ts";

/** The sheet that holds each kind of entry. */
export const SHEET_OF = {
  count: "counts",
  delivery: "deliveries",
  batch: "batches",
  loss: "losses",
  transfer: "transfers",
} as const;

/** Facts of one kind under the names of the sheets that hold them. */
export function entriesOf<Kind extends EntryKind>(kind: Kind, facts: EntryFacts[Kind][]): NewEntries {
  return kind === "batch" ? asBatchSheets(facts as BatchEntry[]) : { [SHEET_OF[kind]]: facts };
}

/** A corrected count row must not come to stand where another row of the count stands. */
export function refuseSamePlace(db: Db, registers: Registers, row: CountRow): void {
  const entries = storeOf("count").load(db, registers, registers.counts.idOf(row.count));
  const same = currentEntries(entries).filter(({ fact }) => placeOf(fact) === placeOf(row));
  if (same.length > 1) {
    throw new ConflictError(
      `"${row.item}" in "${row.area}" has a row in "${row.count}" already; correct that one.`,
    );
  }
}

/** What a row counts, so that two of one place are seen as such. */
export function placeOf({ count, area, item, pack }: CountRow): string {
  return JSON.stringify([
    foldName(count),
    foldName(area),
    foldName(item),
    pack === null ? null : foldName(pack),
  ]);
}
