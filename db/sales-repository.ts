import { ConflictError, NotFoundError } from "#db/errors.ts";
import type { Db } from "#db/open.ts";
import { type PackedLine, packByDay, SaleNames, timesEach, unpacked } from "#db/stored/sale-blocks.ts";
import {
  effectiveLines,
  insertImport,
  linesOfImport,
  retally,
  type SalesFileRead,
} from "#db/stored/sales.ts";
import { type Doing, inTransaction, momentOf } from "#db/stored/transaction.ts";
import type { RefusedRow, SaleLine } from "#engine/sales/read/line.ts";
import type { SalesShape } from "#engine/sales/read/shape.ts";
import type { SaleGroup } from "#engine/sales/tally.ts";
import type { BusinessDate, Instant } from "#engine/time.ts";

/** What an import brings (or would bring): lines that were not known before, and lines that were. */
export type ImportResult = {
  lines: number;
  new: number;
  known: number;
  /** Business days on which the file has lines. */
  daysTouched: BusinessDate[];
};

/** Reads a sales file's lines in. The same file twice, or two that overlap, count once; the tallies keep in step. */
export async function importSales(
  db: Db,
  { now, by, ...read }: SalesFileRead & Doing,
): Promise<ImportResult & { importId: number }> {
  return inTransaction(db, () => {
    const { importId, days } = insertImport(db, read, { now, by });
    const fresh = days.reduce((sum, date) => {
      return sum + effectiveLines(db, date).length - effectiveLines(db, date, importId).length;
    }, 0);
    retally(db, days);
    return { importId, ...resultOf(read.lines.length, fresh, days) };
  });
}

/** What `importSales` would bring; nothing is written. */
export async function previewImport(
  db: Db,
  { lines }: { lines: readonly SaleLine[] },
): Promise<ImportResult> {
  const rollback = new Error("A look is not an import.");
  let result: ImportResult | undefined;
  try {
    // Texts are numbered while lines are packed; undone, nothing of it stays.
    db.sqlite.transaction(() => {
      result = resultIfRead(db, lines);
      throw rollback;
    })();
  } catch (error) {
    if (error !== rollback) throw error;
  }
  return result ?? resultOf(lines.length, 0, []);
}

function resultIfRead(db: Db, lines: readonly SaleLine[]): ImportResult {
  const byDay = packByDay(lines, new SaleNames(db));
  let fresh = 0;
  for (const [date, own] of byDay) {
    const held = timesEach(effectiveLines(db, date));
    for (const [line, times] of timesEach(own)) fresh += Math.max(0, times - (held.get(line) ?? 0));
  }
  return resultOf(lines.length, fresh, [...byDay.keys()].sort());
}

function resultOf(lines: number, fresh: number, daysTouched: BusinessDate[]): ImportResult {
  return { lines, new: fresh, known: lines - fresh, daysTouched };
}

/**
 * Takes an import back: its days are as if it had never been. Throws NotFoundError and, when it is undone already,
 * ConflictError.
 */
export async function undoImport(
  db: Db,
  importId: number,
  { now, by }: Doing,
): Promise<{ daysTouched: BusinessDate[] }> {
  return inTransaction(db, () => {
    const found = db.sqlite.prepare("select file, undone_at from sale_imports where id = ?").get(importId) as
      | { file: string; undone_at: string | null }
      | undefined;
    if (found === undefined)
      throw new NotFoundError(`There is no import ${importId}; list the imports to see their numbers.`);
    if (found.undone_at !== null) {
      throw new ConflictError(`Import ${importId} (${found.file}) was already undone at ${found.undone_at}.`);
    }
    db.sqlite
      .prepare("update sale_imports set undone_at = ?, undone_by = ? where id = ?")
      .run(momentOf({ now }), by, importId);
    const days = db.sqlite
      .prepare("select business_date from import_days where import_id = ? order by business_date")
      .pluck()
      .all(importId) as string[];
    retally(db, days);
    return { daysTouched: days };
  });
}

export type SaleImport = {
  importId: number;
  file: string;
  importedAt: Instant;
  importedBy: string;
  lines: number;
  from: BusinessDate | null;
  to: BusinessDate | null;
  shape: SalesShape;
  refused: RefusedRow[];
  undoneAt: Instant | null;
  undoneBy: string | null;
};

/** All imports, newest first, undone ones too. */
export async function listImports(db: Db): Promise<SaleImport[]> {
  const rows = db.sqlite
    .prepare(
      `select sale_imports.id as importId, file, imported_at as importedAt, imported_by as importedBy, lines,
         min(business_date) as "from", max(business_date) as "to", shape_json as shape, refused_json as refused,
         undone_at as undoneAt, undone_by as undoneBy
       from sale_imports left join import_days on import_days.import_id = sale_imports.id
       group by sale_imports.id order by sale_imports.id desc`,
    )
    .all() as (Omit<SaleImport, "shape" | "refused"> & { shape: string; refused: string })[];
  return rows.map((row) => ({ ...row, shape: JSON.parse(row.shape), refused: JSON.parse(row.refused) }));
}

/** The lines of an import as they were read. Throws NotFoundError. */
export async function importLines(db: Db, importId: number): Promise<SaleLine[]> {
  const found = db.sqlite.prepare("select 1 from sale_imports where id = ?").get(importId);
  if (found === undefined) throw new NotFoundError(`There is no import ${importId}.`);
  return linesOfImport(db, importId, new SaleNames(db));
}

/**
 * The sales from one business date to another, both included: summed by day, ring name and modifiers, and line by line on
 * the dates that are to be split.
 */
export async function saleGroups(
  db: Db,
  { from, to, splitDates }: { from: BusinessDate; to: BusinessDate; splitDates: ReadonlySet<BusinessDate> },
): Promise<SaleGroup[]> {
  const rows = db.sqlite
    .prepare(
      `select tallies.business_date, ring.text, modifiers.text, is_timed, quantity, net_minor from tallies
       join sale_names as ring on ring.id = ring_name_id
       join sale_names as modifiers on modifiers.id = modifiers_id
       where business_date between ? and ?
       order by business_date, ring.text, modifiers.text, is_timed`,
    )
    .raw()
    .all(from, to) as [string, string, string, number, number, number][];
  const whole = rows
    .filter(([date]) => !splitDates.has(date))
    .map(
      ([businessDate, ringName, modifiers, isTimed, quantity, netMinor]): SaleGroup => ({
        businessDate,
        at: null,
        timed: isTimed === 1,
        ringName,
        modifiers,
        quantity,
        netMinor,
      }),
    );
  const dates = [...splitDates].filter((date) => date >= from && date <= to).sort();
  return dates.length === 0 ? whole : [...whole, ...splitGroups(db, dates)].sort(inOrder);
}

/** By day, moment and name, so that the answer does not depend on the order in which files came. */
function inOrder(a: SaleGroup, b: SaleGroup): number {
  return (
    compare(a.businessDate, b.businessDate) ||
    compare(a.at ?? "", b.at ?? "") ||
    compare(a.ringName, b.ringName) ||
    compare(a.modifiers, b.modifiers) ||
    a.quantity - b.quantity ||
    a.netMinor - b.netMinor
  );
}

function compare(a: string, b: string): number {
  return a < b ? -1 : a > b ? 1 : 0;
}

function splitGroups(db: Db, dates: readonly BusinessDate[]): SaleGroup[] {
  const names = new SaleNames(db);
  return dates.flatMap((date) =>
    effectiveLines(db, date).map((text): SaleGroup => {
      const line = unpacked(date, JSON.parse(text) as PackedLine, names);
      const { businessDate, at, ringName, modifiers, quantity, grossMinor, netMinor } = line;
      const timed = at !== null;
      return {
        businessDate,
        at,
        timed,
        ringName,
        modifiers,
        quantity,
        netMinor: netMinor ?? grossMinor ?? 0,
      };
    }),
  );
}

/** The first and the last business date with sales; undefined without any. */
export async function salesExtent(
  db: Db,
): Promise<{ from: BusinessDate; to: BusinessDate; lastAt: Instant | null } | undefined> {
  const row = db.sqlite
    .prepare('select min(business_date) as "from", max(business_date) as "to" from tallies')
    .get() as { from: string | null; to: string | null };
  if (row.from === null || row.to === null) return undefined;
  const names = new SaleNames(db);
  const times = effectiveLines(db, row.to).map(
    (text) => unpacked(row.to ?? "", JSON.parse(text) as PackedLine, names).at ?? "",
  );
  const lastAt = times.sort().at(-1) ?? "";
  return { from: row.from, to: row.to, lastAt: lastAt === "" ? null : lastAt };
}

export type DaySales = { businessDate: BusinessDate; quantity: number; netMinor: number };

/** Totals of each business day with sales, from one date to another, both included. */
export async function daySales(
  db: Db,
  { from, to }: { from: BusinessDate; to: BusinessDate },
): Promise<DaySales[]> {
  return db.sqlite
    .prepare(
      `select business_date as businessDate, sum(quantity) as quantity, sum(net_minor) as netMinor from tallies
       where business_date between ? and ? group by business_date order by business_date`,
    )
    .all(from, to) as DaySales[];
}
