import { ConflictError } from "#db/errors.ts";
import type { Db } from "#db/open.ts";
import { BlockKeeper, keepTexts, LiveBlocks, renumbered, storedTexts } from "#db/stored/sale-blocks.ts";
import { type Doing, momentOf } from "#db/stored/transaction.ts";
import { unpackBlock } from "#engine/sales/packed/block.ts";
import type { DayColumns } from "#engine/sales/packed/day-columns.ts";
import { linesOf, type PackedDay, SalesPacker, unionOfBlocks } from "#engine/sales/packed/packed-sales.ts";
import {
  type DayTally,
  NO_TALLY,
  packTally,
  quantityOf,
  tallyOf,
  unpackTally,
} from "#engine/sales/packed/tally.ts";
import type { TextTable } from "#engine/sales/packed/texts.ts";
import type { RefusedRow, SaleLine } from "#engine/sales/read/line.ts";
import type { SalesShape } from "#engine/sales/read/shape.ts";
import type { BusinessDate } from "#engine/time.ts";

/** A sales file that was read: its lines, packed or as they are, how it was read, and the rows that could not be. */
export type SalesFileRead = {
  file: string;
  shape: SalesShape;
  refused: readonly RefusedRow[];
  /** Of the file's bytes and all that its reading depends on; left out where nobody worked it out. */
  readDigest?: string;
} & ({ lines: readonly SaleLine[] } | { packer: SalesPacker } | { sameAs: SameImport });

/** An import that holds and read the very same bytes in the same way. */
export type SameImport = {
  importId: number;
  lines: number;
  shape: SalesShape;
  refused: RefusedRow[];
};

/** The latest import that holds with a digest; undefined when there is none. */
export function importWithDigest({ sqlite }: Db, readDigest: string): SameImport | undefined {
  const found = sqlite
    .prepare(
      `select id, lines, shape_json as shape, refused_json as refused from sale_imports
       where read_digest = ? and undone_at is null order by id desc limit 1`,
    )
    .get(readDigest) as { id: number; lines: number; shape: string; refused: string } | undefined;
  if (found === undefined) return undefined;
  const { id, lines, shape, refused } = found;
  return { importId: id, lines, shape: JSON.parse(shape), refused: JSON.parse(refused) };
}

/** What an import does to one business day. */
export type DayChange = {
  businessDate: BusinessDate;
  /** Lines the file has of the day, and how many of them were not known before. */
  lines: number;
  new: number;
  /** Lines of the day before the import and after it, from all files together. */
  linesBefore: number;
  linesAfter: number;
  before: DayTally;
  after: DayTally;
  /** The day's lines before and after, where they were asked for. */
  columns: { before: DayColumns; after: DayColumns } | null;
};

/** The lines of a file packed by business day. */
function packed(db: Db, read: Exclude<SalesFileRead, { sameAs: SameImport }>): SalesPacker {
  if ("packer" in read) return read.packer;
  const packer = new SalesPacker(storedTexts(db));
  for (const line of read.lines) packer.addLine(line);
  return packer;
}

/** Writes one import, its blocks and the tallies they change. */
export function insertImport(
  db: Db,
  read: SalesFileRead,
  doing: Doing,
  splitDates: ReadonlySet<BusinessDate> = new Set(),
): { importId: number; lines: number; changes: DayChange[] } {
  const { sqlite } = db;
  if ("sameAs" in read) return insertAgain(db, read, doing, splitDates);
  const packer = packed(db, read);
  const importId = insertHead(db, read, packer.lines, doing);
  const numberOf = keepTexts(db, packer.texts);
  const blocks = new BlockKeeper(db);
  const insertDay = sqlite.prepare(
    "insert into import_days (import_id, business_date, block_id) values (?, ?, ?)",
  );
  const changes = new DayChanges(db, splitDates);
  const tallies = new TallyKeeper(db);
  const done: DayChange[] = [];
  for (const read of packer.finish()) {
    const day = numberOf === undefined ? read : renumbered(read, numberOf);
    const change = changes.by(day);
    insertDay.run(importId, day.businessDate, blocks.keep(day));
    if (change.new > 0) tallies.keep(day.businessDate, change.linesAfter, change.after);
    done.push(change);
  }
  return { importId, lines: packer.lines, changes: done };
}

function insertHead({ sqlite }: Db, read: SalesFileRead, lines: number, doing: Doing): number {
  const { file, shape, refused, readDigest = null } = read;
  return Number(
    sqlite
      .prepare(
        "insert into sale_imports (file, imported_at, imported_by, shape_json, lines, refused_json, read_digest) values (?, ?, ?, ?, ?, ?, ?)",
      )
      .run(file, momentOf(doing), doing.by, JSON.stringify(shape), lines, JSON.stringify(refused), readDigest)
      .lastInsertRowid,
  );
}

/** An import of what another one holds already: it gets the same blocks, and no day changes. */
function insertAgain(
  db: Db,
  read: SalesFileRead & { sameAs: SameImport },
  doing: Doing,
  splitDates: ReadonlySet<BusinessDate>,
): { importId: number; lines: number; changes: DayChange[] } {
  const { sameAs } = read;
  const held = importWithDigest(db, read.readDigest ?? "");
  if (held?.importId !== sameAs.importId)
    throw new ConflictError(
      `Import ${sameAs.importId} of the same file changed meanwhile; import ${read.file} again.`,
    );
  const importId = insertHead(db, read, sameAs.lines, doing);
  db.sqlite
    .prepare("insert into import_days select ?, business_date, block_id from import_days where import_id = ?")
    .run(importId, sameAs.importId);
  const days = db.sqlite
    .prepare(
      `select import_days.business_date as businessDate, sale_blocks.lines, tallies.lines as linesOfDay, tallies.packed
       from import_days join sale_blocks on sale_blocks.id = import_days.block_id
       join tallies on tallies.business_date = import_days.business_date
       where import_id = ? order by import_days.business_date`,
    )
    .all(importId) as { businessDate: string; lines: number; linesOfDay: number; packed: Uint8Array }[];
  const changes = days.map(({ businessDate, lines, linesOfDay, packed }): DayChange => {
    const tally = unpackTally(packed);
    const columns = splitDates.has(businessDate) ? effectiveLines(db, businessDate) : null;
    return {
      businessDate,
      lines,
      new: 0,
      linesBefore: linesOfDay,
      linesAfter: linesOfDay,
      before: tally,
      after: tally,
      columns: columns === null ? null : { before: columns, after: columns },
    };
  });
  return { importId, lines: sameAs.lines, changes };
}

/** Works out what a day of a file changes, by the day as a whole: only a day that other files have too is looked into. */
export class DayChanges {
  readonly #blocks: BlockKeeper;
  readonly #live: LiveBlocks;
  readonly #tallies: TallyKeeper;
  readonly #splitDates: ReadonlySet<BusinessDate>;

  constructor(db: Db, splitDates: ReadonlySet<BusinessDate>) {
    this.#blocks = new BlockKeeper(db);
    this.#live = new LiveBlocks(db);
    this.#tallies = new TallyKeeper(db);
    this.#splitDates = splitDates;
  }

  by(day: PackedDay): DayChange {
    const { businessDate, lines } = day;
    const held = this.#tallies.of(businessDate);
    const live = held === undefined ? [] : this.#live.of(businessDate);
    const isSplit = this.#splitDates.has(businessDate);
    const before = held === undefined ? NO_TALLY : unpackTally(held.packed);
    const linesBefore = held?.lines ?? 0;
    const known = live.length === 0 ? undefined : this.#blocks.find(day);
    const isKnown = known !== undefined && live.some(({ id }) => id === known);
    if (isKnown || live.length === 0) {
      const after = isKnown ? before : day.tally;
      const linesAfter = isKnown ? linesBefore : lines;
      const columns = isSplit ? columnsOf(live, isKnown ? undefined : day) : null;
      return {
        businessDate,
        lines,
        new: linesAfter - linesBefore,
        linesBefore,
        linesAfter,
        before,
        after,
        columns,
      };
    }
    const columns = columnsOf(live, day);
    const linesAfter = columns.after.count;
    return {
      businessDate,
      lines,
      new: linesAfter - linesBefore,
      linesBefore,
      linesAfter,
      before,
      after: tallyOf(columns.after),
      columns: isSplit ? columns : null,
    };
  }
}

function columnsOf(live: readonly { packed: Uint8Array }[], day: PackedDay | undefined) {
  const blocks = live.map(({ packed }) => packed);
  const before = unionOfBlocks(blocks);
  return { before, after: day === undefined ? before : unionOfBlocks([...blocks, day.block]) };
}

/** Reads and writes the tallies of days. */
class TallyKeeper {
  readonly #of;
  readonly #clear;
  readonly #insert;

  constructor({ sqlite }: Db) {
    this.#of = sqlite.prepare("select lines, packed from tallies where business_date = ?");
    this.#clear = sqlite.prepare("delete from tallies where business_date = ?");
    this.#insert = sqlite.prepare(
      `insert into tallies (business_date, lines, quantity, net_minor, packed) values (?, ?, ?, ?, ?)
       on conflict (business_date) do update
       set lines = excluded.lines, quantity = excluded.quantity, net_minor = excluded.net_minor, packed = excluded.packed`,
    );
  }

  of(date: BusinessDate): { lines: number; packed: Uint8Array } | undefined {
    return this.#of.get(date) as { lines: number; packed: Uint8Array } | undefined;
  }

  keep(date: BusinessDate, lines: number, tally: DayTally): void {
    if (lines === 0) {
      this.#clear.run(date);
      return;
    }
    const netMinor = tally.netMinor.reduce((sum, of) => sum + of, 0);
    this.#insert.run(date, lines, quantityOf(tally), netMinor, packTally(tally));
  }
}

/** The lines of a day as they hold: of all live imports together, in their order. */
export function effectiveLines(db: Db, date: BusinessDate): DayColumns {
  return unionOfBlocks(new LiveBlocks(db).of(date).map(({ packed }) => packed));
}

/** The lines of one import, oldest day first. */
export function linesOfImport(db: Db, importId: number, texts: TextTable): SaleLine[] {
  const blocks = db.sqlite
    .prepare(
      `select sale_blocks.business_date as date, sale_blocks.packed from import_days
       join sale_blocks on sale_blocks.id = import_days.block_id
       where import_days.import_id = ? order by sale_blocks.business_date`,
    )
    .all(importId) as { date: string; packed: Uint8Array }[];
  return blocks.flatMap(({ date, packed }) => linesOf(date, unpackBlock(packed), texts));
}

/** Computes the tallies of some days anew from their lines. */
export function retally(db: Db, dates: readonly BusinessDate[]): void {
  const tallies = new TallyKeeper(db);
  for (const date of dates) {
    const lines = effectiveLines(db, date);
    tallies.keep(date, lines.count, tallyOf(lines));
  }
}

/** Empties the tables of sales; only while the whole book is being replaced. */
export function clearSales({ sqlite }: Db): void {
  sqlite.exec(
    "delete from tallies; delete from import_days; delete from sale_blocks; delete from sale_imports; delete from sale_names",
  );
}
