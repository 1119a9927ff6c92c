import { ConflictError } from "#db/errors.ts";
import { lastLoad } from "#db/history/later-act.ts";
import type { Db } from "#db/open.ts";
import {
  BlockKeeper,
  keepTexts,
  LiveBlocks,
  renumbered,
  type SettledTexts,
  settleTexts,
  storedTexts,
  type Turned,
} from "#db/stored/sale-blocks.ts";
import { clearStaff, StaffKeeper, staffOfBlock, storedStaff } from "#db/stored/sale-staff.ts";
import { type Doing, momentOf } from "#db/stored/transaction.ts";
import { unpackBlock } from "#engine/sales/packed/block.ts";
import { DayColumns } from "#engine/sales/packed/day-columns.ts";
import {
  fileOfDay,
  linesOf,
  type PackedDay,
  SalesPacker,
  unionOfBlocks,
  unpackDay,
} from "#engine/sales/packed/packed-sales.ts";
import { isSum, isSums } from "#engine/sales/packed/sums.ts";
import {
  type DayTally,
  NO_TALLY,
  packTally,
  quantityOf,
  tallyOf,
  unpackTally,
} from "#engine/sales/packed/tally.ts";
import { TextTable } from "#engine/sales/packed/texts.ts";
import { joinFile } from "#engine/sales/packed/union.ts";
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
  /** Whether sums in the file take the place of earlier sums of the same days; else they are added. Left out: added. */
  replacesSums?: boolean;
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
  /** Lines the file has of the day; how many were not known before, and how many take the place of a line that was. */
  lines: number;
  new: number;
  changed: number;
  /** Earlier sums that the file's took the place of; `dropped` are those of them that it has no sum for. */
  sumsReplaced: number;
  dropped: number;
  /** Lines of the day before the import and after it, from all files together. */
  linesBefore: number;
  linesAfter: number;
  before: DayTally;
  after: DayTally;
  /** The day's lines before and after, where they were asked for. */
  columns: { before: DayColumns; after: DayColumns } | null;
};

const NO_CHANGE = { changed: 0, sumsReplaced: 0, dropped: 0 } as const;

/** The lines of a file packed by business day. */
function packed(db: Db, read: Exclude<SalesFileRead, { sameAs: SameImport }>): SalesPacker {
  if ("packer" in read) return read.packer;
  const packer = new SalesPacker(storedTexts(db));
  for (const line of read.lines) packer.addLine(line);
  return packer;
}

/** What an import will write, worked out by reading alone, so that others can write meanwhile. */
export type ImportPlan = {
  /** Of the sales it was worked out from; written to them only while they are the same. */
  state: string;
  lines: number;
  texts: SettledTexts | null;
  /** Who rang the lines, by the numbers that the packed days have for them. */
  staff: TextTable;
  days: readonly { day: PackedDay | null; change: DayChange }[];
};

/** A text that changes whenever another import holds than before, the till has more texts, or the whole book was loaded. */
export function salesState(db: Db): string {
  const imports = db.sqlite
    .prepare(
      `select (select coalesce(max(id), 0) from sale_names) || ':'
       || coalesce(group_concat(id || iif(undone_at is null, '', 'u') order by id), '') from sale_imports`,
    )
    .pluck()
    .get();
  // A loaded book numbers its imports anew.
  return `${lastLoad(db)}:${imports}`;
}

/** Works out what an import does, day by day. Nothing is written. */
export function planImport(
  db: Db,
  read: SalesFileRead,
  splitDates: ReadonlySet<BusinessDate> = new Set(),
): ImportPlan {
  const state = salesState(db);
  if ("sameAs" in read) {
    const days = daysAgain(db, read, splitDates).map((change) => ({ day: null, change }));
    return { state, lines: read.sameAs.lines, texts: null, staff: new TextTable(), days };
  }
  const packer = packed(db, read);
  const texts = settleTexts(db, packer.texts);
  const changes = new DayChanges(db, splitDates);
  const days = [...packer.finish()].map((packedDay) => {
    const day = texts.numberOf === undefined ? packedDay : renumbered(packedDay, texts.numberOf);
    return { day, change: changes.by(day, read.replacesSums ?? false) };
  });
  return { state, lines: packer.lines, texts, staff: packer.staff, days };
}

/** Writes one import, its blocks and the tallies they change; by a plan, or, where the sales are no longer those of it, by a new one. */
export function insertImport(
  db: Db,
  read: SalesFileRead,
  doing: Doing,
  {
    splitDates = new Set(),
    plan,
  }: { splitDates?: ReadonlySet<BusinessDate> | undefined; plan?: ImportPlan | undefined } = {},
): { importId: number; lines: number; changes: DayChange[] } {
  const { sqlite } = db;
  const { lines, texts, staff, days } =
    plan !== undefined && plan.state === salesState(db) ? plan : planImport(db, read, splitDates);
  const importId = insertHead(db, read, lines, doing);
  if (texts !== null) keepTexts(db, texts);
  const blocks = new BlockKeeper(db);
  const staffKeeper = new StaffKeeper(db, staff);
  const insertDay = sqlite.prepare(
    "insert into import_days (import_id, business_date, block_id) values (?, ?, ?)",
  );
  const tallies = new TallyKeeper(db);
  for (const { day, change } of days) {
    if (day === null) continue;
    const blockId = blocks.keep(day);
    insertDay.run(importId, day.businessDate, blockId);
    if (day.staff !== null) staffKeeper.keep(blockId, day.lines, day.staff);
    if (isMoved(change)) tallies.keep(day.businessDate, change.linesAfter, change.after);
  }
  if ("sameAs" in read) insertDaysAgain(db, read.sameAs, importId);
  return { importId, lines, changes: days.map(({ change }) => change) };
}

/** Whether an import changes what a day sold. */
export function isMoved({ new: fresh, changed, dropped }: DayChange): boolean {
  return fresh + changed + dropped > 0;
}

function insertHead({ sqlite }: Db, read: SalesFileRead, lines: number, doing: Doing): number {
  const { file, shape, refused, readDigest = null, replacesSums = false } = read;
  return Number(
    sqlite
      .prepare(
        `insert into sale_imports
         (file, imported_at, imported_by, shape_json, lines, refused_json, read_digest, replaces_sums)
         values (?, ?, ?, ?, ?, ?, ?, ?)`,
      )
      .run(
        file,
        momentOf(doing),
        doing.by,
        JSON.stringify(shape),
        lines,
        JSON.stringify(refused),
        readDigest,
        replacesSums ? 1 : 0,
      ).lastInsertRowid,
  );
}

/** An import of what another one holds already gets the same blocks. */
function insertDaysAgain({ sqlite }: Db, { importId: first }: SameImport, importId: number): void {
  sqlite
    .prepare("insert into import_days select ?, business_date, block_id from import_days where import_id = ?")
    .run(importId, first);
}

/** The days of an import that holds, of which another one of the same changes none. Throws ConflictError when it no longer holds. */
function daysAgain(
  db: Db,
  { file, readDigest = "", sameAs }: SalesFileRead & { sameAs: SameImport },
  splitDates: ReadonlySet<BusinessDate>,
): DayChange[] {
  if (importWithDigest(db, readDigest)?.importId !== sameAs.importId)
    throw new ConflictError(
      `Import ${sameAs.importId} of the same file changed meanwhile; import ${file} again.`,
    );
  const days = db.sqlite
    .prepare(
      `select import_days.business_date as businessDate, sale_blocks.lines, tallies.lines as linesOfDay, tallies.packed
       from import_days join sale_blocks on sale_blocks.id = import_days.block_id
       join tallies on tallies.business_date = import_days.business_date
       where import_id = ? order by import_days.business_date`,
    )
    .all(sameAs.importId) as {
    businessDate: string;
    lines: number;
    linesOfDay: number;
    packed: Uint8Array;
  }[];
  return days.map(({ businessDate, lines, linesOfDay, packed }): DayChange => {
    const tally = unpackTally(packed);
    const columns = splitDates.has(businessDate) ? effectiveLines(db, businessDate) : null;
    return {
      businessDate,
      lines,
      new: 0,
      ...NO_CHANGE,
      linesBefore: linesOfDay,
      linesAfter: linesOfDay,
      before: tally,
      after: tally,
      columns: columns === null ? null : { before: columns, after: columns },
    };
  });
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

  by(day: PackedDay, replacesSums: boolean): DayChange {
    const { businessDate, lines } = day;
    const held = this.#tallies.of(businessDate);
    const live = held === undefined ? [] : this.#live.of(businessDate);
    const isSplit = this.#splitDates.has(businessDate);
    const known = live.length === 0 ? undefined : this.#blocks.find(day);
    const isKnown = known !== undefined && live.some(({ id }) => id === known);
    const before = held === undefined ? NO_TALLY : unpackTally(held.packed);
    const linesBefore = held?.lines ?? 0;
    const of = { businessDate, lines, linesBefore, before };
    if (isKnown) {
      const columns = isSplit ? unionOfBlocks(live) : null;
      const whole = columns && { before: columns, after: columns };
      return {
        ...of,
        new: 0,
        ...NO_CHANGE,
        linesAfter: linesBefore,
        after: before,
        columns: whole,
      };
    }
    if (live.length === 0) {
      const columns = isSplit ? { before: new DayColumns(), after: unpackBlock(day.block) } : null;
      return { ...of, new: lines, ...NO_CHANGE, linesAfter: lines, after: day.tally, columns };
    }
    const heldLines = unionOfBlocks(live);
    const {
      columns: after,
      known: _,
      ...counts
    } = joinFile(heldLines, fileOfDay({ packed: day.block, replacesSums }));
    return {
      ...of,
      ...counts,
      linesAfter: after.count,
      after: tallyOf(after),
      columns: isSplit ? { before: heldLines, after } : null,
    };
  }
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
  return unionOfBlocks(new LiveBlocks(db).of(date));
}

/** The lines of one import, oldest day first; with who rang them where that is kept. */
export function linesOfImport(db: Db, importId: number, texts: TextTable): SaleLine[] {
  const names = storedStaff(db);
  return blocksOfImport(db, importId).flatMap(({ id, date, packed }) =>
    linesOf(date, unpackDay({ block: packed, staff: staffOfBlock(db, id) }), texts, names),
  );
}

/** The same without sums that a later import replaced: read again in order, they add up to what counts. */
export function countingLinesOfImport(db: Db, importId: number, texts: TextTable): SaleLine[] {
  const live = new LiveBlocks(db);
  const names = storedStaff(db);
  return blocksOfImport(db, importId).flatMap(({ id, date, packed }) => {
    const columns = unpackDay({ block: packed, staff: staffOfBlock(db, id) });
    const blocks = live.of(date);
    const later = blocks.slice(blocks.findIndex((block) => block.id === id) + 1);
    const isReplaced = later.some((block) => block.replacesSums && isSums(unpackBlock(block.packed)));
    if (!isReplaced) return linesOf(date, columns, texts, names);
    const rest = new DayColumns();
    for (let row = 0; row < columns.count; row += 1) if (!isSum(columns, row)) rest.addFrom(columns, row);
    return linesOf(date, rest, texts, names);
  });
}

function blocksOfImport({ sqlite }: Db, importId: number) {
  return sqlite
    .prepare(
      `select sale_blocks.id, sale_blocks.business_date as date, sale_blocks.packed from import_days
       join sale_blocks on sale_blocks.id = import_days.block_id
       where import_days.import_id = ? order by sale_blocks.business_date`,
    )
    .all(importId) as { id: number; date: string; packed: Uint8Array }[];
}

/** A day's tally as it will be, and whether it is another than it was. */
export type NewTally = { businessDate: BusinessDate; lines: number; tally: DayTally; isChanged: boolean };

/** The tallies of some days as if an import were taken back or held again; nothing is written. */
export function talliesWith(db: Db, dates: readonly BusinessDate[], turned: Turned): NewTally[] {
  const live = new LiveBlocks(db);
  const tallies = new TallyKeeper(db);
  return dates.map((businessDate) => {
    const columns = unionOfBlocks(live.of(businessDate, turned));
    const [tally, lines] = [tallyOf(columns), columns.count];
    const held = tallies.of(businessDate);
    const isSame =
      held === undefined
        ? lines === 0
        : held.lines === lines && Buffer.compare(held.packed, packTally(tally)) === 0;
    return { businessDate, lines, tally, isChanged: !isSame };
  });
}

export function keepTallies(db: Db, days: readonly NewTally[]): void {
  const tallies = new TallyKeeper(db);
  for (const { businessDate, lines, tally, isChanged } of days) {
    if (isChanged) tallies.keep(businessDate, lines, tally);
  }
}

/** Empties the tables of sales; only while the whole book is being replaced. */
export function clearSales(db: Db): void {
  clearStaff(db);
  db.sqlite.exec(
    "delete from tallies; delete from import_days; delete from sale_blocks; delete from sale_imports; delete from sale_names",
  );
}
