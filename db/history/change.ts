import type { RowChange, TableRow } from "#db/history/acts.ts";
import type { Db } from "#db/open.ts";
import { readWithoutEntries } from "#db/stored/book.ts";
import { loadRegisters } from "#db/stored/register.ts";
import type { Book } from "#engine/book.ts";

/**
 * The tables of what can be changed (entries and sales are only ever added), those that are referred to before those that
 * refer. Areas and packs are names alone: they stay, as entries that were taken back still name them.
 */
export const CHANGEABLE = [
  "venues",
  "sales_shapes",
  "items",
  "drinks",
  "suppliers",
  "supplier_days",
  "closures",
  "pack_versions",
  "shelves",
  "prep_versions",
  "spec_lines",
  "spec_alternatives",
  "cuts",
  "ring_names",
  "modifiers",
  "events",
  "plans",
  "order_lines",
] as const;

/** The book without its entries, and the rows that hold it. */
export type Snapshot = { book: Book | undefined; rows: Map<string, Map<number, TableRow>> };

export function snapshotOf(db: Db): Snapshot {
  const rows = CHANGEABLE.map((table) => {
    const list = db.sqlite.prepare(`select * from ${table} order by id`).all() as (TableRow & {
      id: number;
    })[];
    return [table, new Map(list.map((row) => [row.id, row]))] as const;
  });
  return { book: readWithoutEntries(db, loadRegisters(db)), rows: new Map(rows) };
}

/** The facts of some sheets, as many as changed. */
export type SheetFacts = {
  [Sheet in keyof Book]?: Book[Sheet] extends (infer Fact)[] ? Fact[] : Book[Sheet][];
};

/** What an act changed: the facts taken away and those put there, sheet by sheet, and the same as rows. */
export type BookChange = { before: SheetFacts; after: SheetFacts; rows: RowChange[] };

export function changeBetween(earlier: Snapshot, after: Snapshot): BookChange {
  const before = { ...earlier, book: earlier.book && withNewNames(earlier.book, earlier, after) };
  const sheets = Object.keys(after.book ?? before.book ?? {}) as (keyof Book)[];
  const change: { before: Record<string, unknown[]>; after: Record<string, unknown[]> } = {
    before: {},
    after: {},
  };
  for (const sheet of sheets) {
    const [was, is] = [factsIn(before.book, sheet), factsIn(after.book, sheet)];
    const [gone, come] = [without(was, is), without(is, was)];
    if (gone.length > 0) change.before[sheet] = gone;
    if (come.length > 0) change.after[sheet] = come;
  }
  return { ...(change as Pick<BookChange, "before" | "after">), rows: rowChanges(earlier, after) };
}

/** Where a thing is defined by its name. */
const DEFINED = { items: "items", drinks: "drinks", suppliers: "suppliers" } as const;

/** A thing renamed is the same thing wherever it is named; only the sheet that defines it has changed. */
function withNewNames(book: Book, before: Snapshot, after: Snapshot): Book {
  const names = new Map<string, string>();
  for (const table of Object.values(DEFINED)) {
    for (const [id, { name }] of before.rows.get(table) ?? []) {
      const now = after.rows.get(table)?.get(id)?.name;
      if (now !== undefined && now !== name) names.set(String(name), String(now));
    }
  }
  if (names.size === 0) return book;
  const renamed = JSON.stringify(
    book,
    (_, value) => (typeof value === "string" && names.get(value)) || value,
  );
  const { items, drinks, suppliers } = book;
  return { ...JSON.parse(renamed), items, drinks, suppliers };
}

function factsIn(book: Book | undefined, sheet: keyof Book): unknown[] {
  const facts = book?.[sheet];
  return facts === undefined ? [] : [facts].flat();
}

/** The facts of one list that another does not have; of facts that stand in it twice, as many as are too many. */
function without(facts: readonly unknown[], others: readonly unknown[]): unknown[] {
  const left = new Map<string, number>();
  for (const fact of others) {
    const text = JSON.stringify(fact);
    left.set(text, (left.get(text) ?? 0) + 1);
  }
  return facts.filter((fact) => {
    const text = JSON.stringify(fact);
    const has = left.get(text) ?? 0;
    if (has > 0) left.set(text, has - 1);
    return has === 0;
  });
}

function rowChanges(before: Snapshot, after: Snapshot): RowChange[] {
  return CHANGEABLE.flatMap((table) => {
    const [was, is] = [before.rows.get(table) ?? new Map(), after.rows.get(table) ?? new Map()];
    const ids = [...new Set<number>([...was.keys(), ...is.keys()])].sort((a, b) => a - b);
    return ids.flatMap((id) => {
      const [old, now] = [was.get(id) ?? null, is.get(id) ?? null];
      return isSameRow(old, now) ? [] : [{ table, id, before: old, after: now }];
    });
  });
}

export function isSameRow(one: TableRow | null, other: TableRow | null): boolean {
  return JSON.stringify(one) === JSON.stringify(other);
}
