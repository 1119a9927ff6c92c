import type { Db } from "#db/open.ts";
import {
  blockText,
  digestOf,
  linesOfBlock,
  type PackedLine,
  packByDay,
  SaleNames,
  unionOf,
  unpacked,
} from "#db/stored/sale-blocks.ts";
import { type Doing, momentOf } from "#db/stored/transaction.ts";
import type { RefusedRow, SaleLine } from "#engine/sales/read/line.ts";
import type { SalesShape } from "#engine/sales/read/shape.ts";
import type { BusinessDate } from "#engine/time.ts";

/** A sales file that was read: its lines, how it was read, and the rows that could not be. */
export type SalesFileRead = {
  file: string;
  lines: readonly SaleLine[];
  shape: SalesShape;
  refused: readonly RefusedRow[];
};

/** Writes one import and its blocks; gives its number and the days it touches. The tallies are then out of date. */
export function insertImport(
  db: Db,
  read: SalesFileRead,
  doing: Doing,
): { importId: number; days: BusinessDate[] } {
  const { sqlite } = db;
  const importId = Number(
    sqlite
      .prepare(
        "insert into sale_imports (file, imported_at, imported_by, shape_json, lines, refused_json) values (?, ?, ?, ?, ?, ?)",
      )
      .run(
        read.file,
        momentOf(doing),
        doing.by,
        JSON.stringify(read.shape),
        read.lines.length,
        JSON.stringify(read.refused),
      ).lastInsertRowid,
  );
  const byDay = packByDay(read.lines, new SaleNames(db));
  const insertBlock = sqlite.prepare(
    "insert into sale_blocks (business_date, digest, lines_json) values (?, ?, ?) on conflict do nothing",
  );
  const insertDay = sqlite.prepare(
    `insert into import_days (import_id, business_date, block_id)
     select ?, business_date, id from sale_blocks where business_date = ? and digest = ?`,
  );
  for (const [date, lines] of byDay) {
    const text = blockText(lines);
    const digest = digestOf(text);
    insertBlock.run(date, digest, text);
    insertDay.run(importId, date, digest);
  }
  return { importId, days: [...byDay.keys()].sort() };
}

/** The lines of a day as they hold: of all live imports together, each as its JSON, sorted. */
export function effectiveLines({ sqlite }: Db, date: BusinessDate, exceptImport = 0): string[] {
  const blocks = sqlite
    .prepare(
      `select distinct sale_blocks.lines_json from import_days
       join sale_imports on sale_imports.id = import_days.import_id
       join sale_blocks on sale_blocks.id = import_days.block_id
       where import_days.business_date = ? and sale_imports.undone_at is null and sale_imports.id <> ?
       order by sale_blocks.id`,
    )
    .pluck()
    .all(date, exceptImport) as string[];
  return unionOf(blocks.map(linesOfBlock));
}

/** The lines of one import, oldest day first. */
export function linesOfImport(db: Db, importId: number, names: SaleNames): SaleLine[] {
  const blocks = db.sqlite
    .prepare(
      `select sale_blocks.business_date as date, sale_blocks.lines_json as text from import_days
       join sale_blocks on sale_blocks.id = import_days.block_id
       where import_days.import_id = ? order by sale_blocks.business_date`,
    )
    .all(importId) as { date: string; text: string }[];
  return blocks.flatMap(({ date, text }) =>
    (JSON.parse(text) as PackedLine[]).map((line) => unpacked(date, line, names)),
  );
}

/** Computes the tallies of some days anew from their lines. */
export function retally(db: Db, dates: readonly BusinessDate[]): void {
  const { sqlite } = db;
  const clear = sqlite.prepare("delete from tallies where business_date = ?");
  const insert = sqlite.prepare(
    "insert into tallies (business_date, ring_name_id, modifiers_id, is_timed, quantity, net_minor) values (?, ?, ?, ?, ?, ?)",
  );
  for (const date of dates) {
    clear.run(date);
    for (const group of tallied(effectiveLines(db, date))) {
      insert.run(date, group.ringName, group.modifiers, group.timed ? 1 : 0, group.quantity, group.netMinor);
    }
  }
}

type TalliedGroup = {
  ringName: number;
  modifiers: number;
  timed: boolean;
  quantity: number;
  netMinor: number;
};

function tallied(lines: readonly string[]): TalliedGroup[] {
  const groups = new Map<string, TalliedGroup>();
  for (const text of lines) {
    const [at, ringName, modifiers, quantity, grossMinor, netMinor] = JSON.parse(text) as PackedLine;
    const timed = at !== null;
    const key = `${ringName} ${modifiers} ${timed}`;
    const held = groups.get(key) ?? { ringName, modifiers, timed, quantity: 0, netMinor: 0 };
    held.quantity += quantity;
    held.netMinor += netMinor ?? grossMinor ?? 0;
    groups.set(key, held);
  }
  return [...groups.values()];
}

/** Empties the tables of sales; only while the whole book is being replaced. */
export function clearSales({ sqlite }: Db): void {
  sqlite.exec(
    "delete from tallies; delete from import_days; delete from sale_blocks; delete from sale_imports; delete from sale_names",
  );
}
