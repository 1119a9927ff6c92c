import { ConflictError } from "#db/errors.ts";
import { lastLoad } from "#db/history/later-act.ts";
import type { Db } from "#db/open.ts";
import { type DayChange, DayChanges, isMoved, NO_CHANGE } from "#db/stored/day-changes.ts";
import { effectiveLines } from "#db/stored/lines-of-import.ts";
import {
  BlockKeeper,
  keepTexts,
  renumbered,
  type SettledTexts,
  settleTexts,
  storedTexts,
} from "#db/stored/sale-blocks.ts";
import { clearStaff, StaffKeeper } from "#db/stored/sale-staff.ts";
import { TallyKeeper } from "#db/stored/tally-keeper.ts";
import { type Doing, momentOf } from "#db/stored/transaction.ts";
import { type PackedDay, SalesPacker } from "#engine/sales/packed/packed-sales.ts";
import { unpackTally } from "#engine/sales/packed/tally.ts";
import { TextTable } from "#engine/sales/packed/texts.ts";
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

/** Empties the tables of sales; only while the whole book is being replaced. */
export function clearSales(db: Db): void {
  clearStaff(db);
  db.sqlite.exec(
    "delete from tallies; delete from import_days; delete from sale_blocks; delete from sale_imports; delete from sale_names",
  );
}
