import { asc, eq, type SQL } from "drizzle-orm";
import type { Db } from "#db/open.ts";
import {
  areas,
  batches,
  batchInputs,
  countEntries,
  counts,
  deliveries,
  losses,
  transfers,
} from "#db/schema/stock.ts";
import { idOrAdd, type Registers } from "#db/stored/register.ts";
import { statement } from "#db/stored/statement.ts";
import { numbered } from "#engine/stock/batch-inputs.ts";
import type {
  Batch,
  BatchEntry,
  BatchInput,
  CountRow,
  Delivery,
  Loss,
  Transfer,
  UsedInput,
} from "#engine/stock/movement.ts";
import type { Instant } from "#engine/time.ts";

/** What is only ever added, by kind. */
export type EntryFacts = {
  count: CountRow;
  delivery: Delivery;
  batch: BatchEntry;
  loss: Loss;
  transfer: Transfer;
};
export type EntryKind = keyof EntryFacts;
export const ENTRY_KINDS: readonly EntryKind[] = ["count", "delivery", "batch", "loss", "transfer"];

/** Who entered it and when; of a correction, which entry it replaces and why. */
export type Stamp = {
  enteredAt: Instant;
  enteredBy: string;
  reason: string;
  replacesId: number | null;
  /** That it takes the replaced entry back. */
  isWithdrawn: boolean;
  /** What the sender calls it, so that one sent twice is one; null for what was not sent. */
  entryKey: string | null;
};

export type StoredEntry<Fact> = { id: number; fact: Fact; stamp: Stamp };

type Store<Fact> = {
  insert(db: Db, registers: Registers, fact: Fact, stamp: Stamp): number;
  /** Every entry ever made (of one count, where it is named), oldest first. */
  load(db: Db, registers: Registers, countId?: number): StoredEntry<Fact>[];
};

const countStore: Store<CountRow> = {
  insert(db, registers, { count, area, item, pack, ...found }, stamp) {
    const itemId = registers.items.idOf(item);
    const row = {
      ...found,
      ...stamp,
      countId: idOrAdd(db, counts, registers.counts, count),
      areaId: idOrAdd(db, areas, registers.areas, area),
      itemId,
      packId: pack === null ? null : registers.packs.idOf(itemId, item, pack),
    };
    return Number(db.orm.insert(countEntries).values(row).run().lastInsertRowid);
  },
  load(db, registers, countId) {
    return countRows(db, registers, countId === undefined ? undefined : eq(countEntries.countId, countId));
  },
};

function countRows({ orm }: Db, registers: Registers, which: SQL | undefined): StoredEntry<CountRow>[] {
  const rows = orm.select().from(countEntries).where(which).orderBy(asc(countEntries.id)).all();
  return rows.map((row) => {
    const { at, full, parts, grossG, amount, unit, by } = row;
    const count = registers.counts.nameOf(row.countId);
    const area = registers.areas.nameOf(row.areaId);
    const item = registers.items.nameOf(row.itemId);
    const pack = row.packId === null ? null : registers.packs.of(row.packId).name;
    return stored(row, { count, at, area, item, pack, full, parts, grossG, amount, unit, by });
  });
}

/** The row of a count that holds for a place on the shelves; undefined while nothing was found there, or nothing holds. */
export function currentCountRow(
  db: Db,
  registers: Registers,
  { count, area, item, pack }: Pick<CountRow, "count" | "area" | "item" | "pack">,
): StoredEntry<CountRow> | undefined {
  const [countId, areaId, itemId] = [
    registers.counts.find(count),
    registers.areas.find(area),
    registers.items.find(item),
  ];
  if (countId === undefined || areaId === undefined || itemId === undefined) return undefined;
  const packId = pack === null ? null : registers.packs.find(itemId, pack);
  if (packId === undefined) return undefined;
  const id = statement(db, CURRENT_IN_PLACE).pluck().get({ countId, areaId, itemId, packId });
  return id === undefined ? undefined : countRows(db, registers, eq(countEntries.id, Number(id)))[0];
}

const CURRENT_IN_PLACE = `select id from count_entries held
  where count_id = @countId and area_id = @areaId and item_id = @itemId and pack_id is @packId and is_withdrawn = 0
    and not exists (select 1 from count_entries later where later.replaces_id = held.id)
  order by id desc limit 1`;

const deliveryStore: Store<Delivery> = {
  insert({ orm }, registers, { supplier, item, pack, ...rest }, stamp) {
    const packId = registers.packs.idOf(registers.items.idOf(item), item, pack);
    const row = { ...rest, ...stamp, supplierId: registers.suppliers.idOf(supplier), packId };
    return Number(orm.insert(deliveries).values(row).run().lastInsertRowid);
  },
  load({ orm }, registers) {
    const rows = orm.select().from(deliveries).orderBy(asc(deliveries.id)).all();
    return rows.map((row) => {
      const { at, invoice, quantity, of, priceTotalMinor, depositMinor, empties, by } = row;
      const { itemId, name: pack } = registers.packs.of(row.packId);
      const supplier = registers.suppliers.nameOf(row.supplierId);
      const item = registers.items.nameOf(itemId);
      const paid = { priceTotalMinor, depositMinor, empties };
      return stored(row, { at, supplier, invoice, item, pack, quantity, of, ...paid, by });
    });
  },
};

const batchStore: Store<BatchEntry> = {
  insert(db, registers, { prep, inputs, ...rest }, stamp) {
    const row = { ...rest, ...stamp, prepId: registers.items.idOf(prep) };
    const batchId = Number(db.orm.insert(batches).values(row).run().lastInsertRowid);
    for (const { item, amount, unit } of inputs ?? []) {
      const itemId = registers.items.idOf(item);
      db.orm.insert(batchInputs).values({ batchId, itemId, amount, unit }).run();
    }
    return batchId;
  },
  load({ orm }, registers) {
    const used = new Map<number, UsedInput[]>();
    for (const row of orm.select().from(batchInputs).orderBy(asc(batchInputs.id)).all()) {
      const { batchId, amount, unit } = row;
      const input = { item: registers.items.nameOf(row.itemId), amount, unit };
      used.set(batchId, [...(used.get(batchId) ?? []), input]);
    }
    const rows = orm.select().from(batches).orderBy(asc(batches.id)).all();
    return rows.map((row) => {
      const { id, at, made, unit, by, note } = row;
      const prep = registers.items.nameOf(row.prepId);
      return stored(row, withInputs({ at, prep, made, unit, by, note }, used.get(id)));
    });
  },
};

const lossStore: Store<Loss> = {
  insert({ orm }, registers, { what, ...rest }, stamp) {
    const isDrink = rest.unit === "serve";
    const row = {
      ...rest,
      ...stamp,
      drinkId: isDrink ? registers.drinks.idOf(what) : null,
      itemId: isDrink ? null : registers.items.idOf(what),
    };
    return Number(orm.insert(losses).values(row).run().lastInsertRowid);
  },
  load({ orm }, registers) {
    const rows = orm.select().from(losses).orderBy(asc(losses.id)).all();
    return rows.map((row) => {
      const { at, kind, amount, unit, by, note } = row;
      const what =
        row.drinkId !== null ? registers.drinks.nameOf(row.drinkId) : registers.items.nameOf(row.itemId ?? 0);
      return stored(row, { at, kind, what, amount, unit, by, note });
    });
  },
};

const transferStore: Store<Transfer> = {
  insert({ orm }, registers, { item, ...rest }, stamp) {
    const row = { ...rest, ...stamp, itemId: registers.items.idOf(item) };
    return Number(orm.insert(transfers).values(row).run().lastInsertRowid);
  },
  load({ orm }, registers) {
    const rows = orm.select().from(transfers).orderBy(asc(transfers.id)).all();
    return rows.map((row) => {
      const { at, direction, place, amount, unit } = row;
      return stored(row, { at, direction, place, item: registers.items.nameOf(row.itemId), amount, unit });
    });
  },
};

const STORES: { [Kind in EntryKind]: Store<EntryFacts[Kind]> } = {
  count: countStore,
  delivery: deliveryStore,
  batch: batchStore,
  loss: lossStore,
  transfer: transferStore,
};

/** The table of one kind of entry. */
export function storeOf<Kind extends EntryKind>(kind: Kind): Store<EntryFacts[Kind]> {
  return STORES[kind];
}

const TABLES = {
  count: countEntries,
  delivery: deliveries,
  batch: batches,
  loss: losses,
  transfer: transfers,
};

/** The entry that a sender's key stands for; undefined when it has not arrived before. */
export function idOfKey({ orm }: Db, kind: EntryKind, key: string): number | undefined {
  const table = TABLES[kind];
  return orm.select({ id: table.id }).from(table).where(eq(table.entryKey, key)).get()?.id;
}

function stored<Fact>(row: Stamp & { id: number }, fact: Fact): StoredEntry<Fact> {
  const { id, enteredAt, enteredBy, reason, replacesId, isWithdrawn, entryKey } = row;
  return { id, fact, stamp: { enteredAt, enteredBy, reason, replacesId, isWithdrawn, entryKey } };
}

/** An entry as it now stands, with the ones it replaced, newest first. */
export type CurrentEntry<Fact> = StoredEntry<Fact> & { history: StoredEntry<Fact>[] };

/**
 * The entries that hold: neither replaced nor taken back. A correction keeps the place of the first entry it goes back to.
 *
 * `entries` are all there are, oldest first.
 */
export function currentEntries<Fact>(entries: readonly StoredEntry<Fact>[]): CurrentEntry<Fact>[] {
  const lines = new Map<number, StoredEntry<Fact>[]>();
  const firstOf = new Map<number, number>();
  for (const entry of entries) {
    const { replacesId } = entry.stamp;
    const first = replacesId === null ? entry.id : (firstOf.get(replacesId) ?? replacesId);
    firstOf.set(entry.id, first);
    lines.set(first, [entry, ...(lines.get(first) ?? [])]);
  }
  return [...lines.values()].flatMap(([latest, ...history]) =>
    latest === undefined || latest.stamp.isWithdrawn ? [] : [{ ...latest, history }],
  );
}

/** The facts that hold of one kind. */
export function loadCurrent<Kind extends EntryKind>(
  db: Db,
  registers: Registers,
  kind: Kind,
): EntryFacts[Kind][] {
  return currentEntries(storeOf(kind).load(db, registers)).map(({ fact }) => fact);
}

/** A batch as it is entered, out of the book's two sheets. */
export function withInputs(batch: Batch, inputs: readonly UsedInput[] = []): BatchEntry {
  return inputs.length === 0 ? batch : { ...batch, inputs: [...inputs] };
}

/** Entered batches as the book's two sheets hold them: each batch, and what batches used otherwise than their spec says. */
export function asBatchSheets(entries: readonly BatchEntry[]): {
  batches: Batch[];
  batchInputs: BatchInput[];
} {
  return {
    batches: entries.map(({ inputs: _, ...batch }) => batch),
    batchInputs: numbered(entries).flatMap(({ batch: { at, prep, inputs }, batchNo }) =>
      (inputs ?? []).map((used) => ({ at, prep, batchNo, ...used })),
    ),
  };
}
