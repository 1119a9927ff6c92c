import { NotFoundError } from "#db/errors.ts";
import type { Told } from "#db/history/acts.ts";
import { dayTouches, refuseInClosedPast } from "#db/history/past.ts";
import type { Db } from "#db/open.ts";
import { type DayChange, isMoved } from "#db/stored/day-changes.ts";
import { changedOf, daysWords, importWords, linesIn, planTurn, setUndone } from "#db/stored/import-undone.ts";
import { effectiveLines, linesOfImport } from "#db/stored/lines-of-import.ts";
import { storedTexts } from "#db/stored/sale-blocks.ts";
import {
  importWithDigest,
  insertImport,
  planImport,
  type SalesFileRead,
  type SameImport,
} from "#db/stored/sales.ts";
import { type Doing, inTransaction, momentOf, readingAlone } from "#db/stored/transaction.ts";
import { NOTHING } from "#engine/sales/packed/day-columns.ts";
import { linesOf } from "#engine/sales/packed/packed-sales.ts";
import { type DayTally, unpackTally } from "#engine/sales/packed/tally.ts";
import type { TextTable } from "#engine/sales/packed/texts.ts";
import type { RefusedRow, SaleLine } from "#engine/sales/read/line.ts";
import type { SalesShape } from "#engine/sales/read/shape.ts";
import type { SaleGroup } from "#engine/sales/tally.ts";
import { type BusinessDate, type Instant, toInstant } from "#engine/time.ts";

/** What an import brings (or would bring): lines new, known before, and those that take the place of an earlier line. */
export type ImportResult = {
  lines: number;
  new: number;
  known: number;
  changed: number;
  /** Business days on which the file has lines. */
  daysTouched: BusinessDate[];
};

/** The same with what it does to each day, and the texts that the days' numbers stand for. */
export type ImportDetails = ImportResult & { importId: number; changes: DayChange[]; texts: TextTable };

/** The texts of the till with their numbers, to read a file with; those it adds are kept when the file is imported. */
export async function salesTexts(db: Db): Promise<TextTable> {
  return storedTexts(db);
}

/** The import that holds and read the very same bytes in the same way, by their digest; undefined when there is none. */
export async function importReadAlike(db: Db, readDigest: string): Promise<SameImport | undefined> {
  return importWithDigest(db, readDigest);
}

/** Whether an import that holds has a digest that starts like this; it tells the length of the file. */
export async function isSizeKnown({ sqlite }: Db, sizePart: string): Promise<boolean> {
  const found = sqlite
    .prepare("select 1 from sale_imports where undone_at is null and substr(read_digest, 1, ?) = ? limit 1")
    .get(sizePart.length, sizePart);
  return found !== undefined;
}

/** Reads a sales file's lines in. The same file twice, or two that overlap, count once; the tallies keep in step. */
export async function importSales(
  db: Db,
  read: SalesFileRead & Doing,
): Promise<ImportResult & { importId: number }> {
  const { changes: _, texts: __, ...result } = await importInDetail(db, read);
  return result;
}

/** As importSales, and says what became of each day; with its lines on the dates that are to be split. */
export async function importInDetail(
  db: Db,
  { now, by, splitDates, ...read }: SalesFileRead & Doing & { splitDates?: ReadonlySet<BusinessDate> },
): Promise<ImportDetails> {
  // A million lines are compared before anything is locked, so that whoever counts meanwhile does not wait for it.
  const plan = readingAlone(db, () => planImport(db, read, splitDates));
  return inTransaction(db, () => {
    const written = insertImport(db, read, { now, by }, { splitDates, plan });
    const result = details(written, storedTexts(db));
    return { result, told: tellImport(read.file, result, now) };
  });
}

/** What `importSales` would bring; nothing is written. */
export async function previewImport(
  db: Db,
  { lines }: { lines: readonly SaleLine[] },
): Promise<ImportResult> {
  const read = { file: "", shape: { files: "" }, refused: [], lines };
  const { changes: _, texts: __, importId: ___, ...result } = await previewInDetail(db, read);
  return result;
}

/** What `importInDetail` would bring; nothing is written. */
export async function previewInDetail(
  db: Db,
  { splitDates, ...read }: SalesFileRead & { splitDates?: ReadonlySet<BusinessDate> },
): Promise<ImportDetails> {
  return readingAlone(db, () => {
    const { lines, days, texts } = planImport(db, read, splitDates);
    const changes = days.map(({ change }) => change);
    const seen = details({ importId: 0, lines, changes }, texts?.table ?? storedTexts(db));
    refuseInClosedPast(db, tellImport(read.file, seen, NEVER).touches);
    return seen;
  });
}

/** When a look was done: nobody will see it. */
const NEVER = "1970-01-01T00:00:00Z";

function details(
  { importId, lines, changes }: { importId: number; lines: number; changes: DayChange[] },
  texts: TextTable,
): ImportDetails {
  const fresh = changes.reduce((sum, change) => sum + change.new, 0);
  const changed = changes.reduce((sum, change) => sum + change.changed, 0);
  const daysTouched = changes.map(({ businessDate }) => businessDate);
  const counts = { lines, new: fresh, known: lines - fresh - changed, changed };
  return { importId, ...counts, daysTouched, changes, texts };
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
  const plan = readingAlone(db, () => planTurn(db, { importId, isUndone: true }));
  return inTransaction(db, () => {
    const { file, days } = setUndone(db, importId, { now, by }, plan);
    const told: Told = {
      act: "import undone",
      subjects: [{ kind: "import", name: file }],
      summary: importWords(file, days),
      at: momentOf({ now }),
      mend: { importId, isUndone: true },
      touches: dayTouches(`sales of ${file}`, changedOf(days)),
    };
    return { result: { daysTouched: days.map(({ businessDate }) => businessDate) }, told };
  });
}

/** How many lines an import has, whether it holds or not; 0 where there is none. */
export async function sizeOfImport(db: Db, importId: number): Promise<number> {
  return linesIn(db, importId);
}

/** A million lines are one act, told by how many they are. */
function tellImport(file: string, { importId, lines, changes, ...result }: ImportDetails, now: string): Told {
  const moved = changes.filter(isMoved).map(({ businessDate }) => businessDate);
  return {
    act: "sales imported",
    subjects: [{ kind: "import", name: file }],
    summary: `${file}: ${lines} lines, ${result.new} of them new, ${daysWords(result.daysTouched)}`,
    after: { lines, new: result.new, known: result.known, days: result.daysTouched.length },
    at: momentOf({ now }),
    mend: { importId, isUndone: false },
    touches: dayTouches(`sales of ${file}`, moved),
  };
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
  return linesOfImport(db, importId, storedTexts(db));
}

/**
 * The sales from one business date to another, both included: summed by day, ring name and modifiers, and line by line on
 * the dates that are to be split.
 */
export async function saleGroups(
  db: Db,
  { from, to, splitDates }: { from: BusinessDate; to: BusinessDate; splitDates: ReadonlySet<BusinessDate> },
): Promise<SaleGroup[]> {
  const texts = storedTexts(db);
  const days = talliesIn(db, from, to);
  const whole: SaleGroup[] = [];
  for (const [businessDate, packed] of days) {
    if (!splitDates.has(businessDate)) whole.push(...tallyGroups(businessDate, packed, texts));
  }
  const dates = [...splitDates].filter((date) => date >= from && date <= to).sort();
  return dates.length === 0 ? whole : [...whole, ...splitGroups(db, dates, texts)].sort(inOrder);
}

/** A day's groups by name, so that the answer does not depend on the order in which files came. */
function tallyGroups(businessDate: BusinessDate, packed: Uint8Array, texts: TextTable): SaleGroup[] {
  const { count, ringName, modifiers, isTimed, quantity, netMinor } = unpackTally(packed);
  return Array.from({ length: count }, (_, place) => ({
    businessDate,
    at: null,
    timed: isTimed[place] === 1,
    ringName: texts.textOf(ringName[place] ?? 0),
    modifiers: texts.textOf(modifiers[place] ?? 0),
    quantity: quantity[place] ?? 0,
    netMinor: netMinor[place] ?? 0,
  }));
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

function splitGroups(db: Db, dates: readonly BusinessDate[], texts: TextTable): SaleGroup[] {
  return dates.flatMap((date) =>
    linesOf(date, effectiveLines(db, date), texts).map((line): SaleGroup => {
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

/** The tallies of business days with sales, from one date to another, both included; texts by number. */
export async function talliesBetween(
  db: Db,
  { from, to }: { from: BusinessDate; to: BusinessDate },
): Promise<{ businessDate: BusinessDate; tally: DayTally }[]> {
  return talliesIn(db, from, to).map(([businessDate, packed]) => ({
    businessDate,
    tally: unpackTally(packed),
  }));
}

function talliesIn({ sqlite }: Db, from: BusinessDate, to: BusinessDate): [string, Uint8Array][] {
  return sqlite
    .prepare(
      "select business_date, packed from tallies where business_date between ? and ? order by business_date",
    )
    .raw()
    .all(from, to) as [string, Uint8Array][];
}

/** The first and the last business date with sales; undefined without any. */
export async function salesExtent(
  db: Db,
): Promise<{ from: BusinessDate; to: BusinessDate; lastAt: Instant | null } | undefined> {
  const row = db.sqlite
    .prepare('select min(business_date) as "from", max(business_date) as "to" from tallies')
    .get() as { from: string | null; to: string | null };
  if (row.from === null || row.to === null) return undefined;
  // Lines are in the order of their time, those without one first.
  const lines = effectiveLines(db, row.to);
  const lastS = lines.at[lines.count - 1] ?? NOTHING;
  return { from: row.from, to: row.to, lastAt: lastS === NOTHING ? null : toInstant(lastS * 1000) };
}

export type DaySales = { businessDate: BusinessDate; quantity: number; netMinor: number };

/** Totals of each business day with sales, from one date to another, both included. */
export async function daySales(
  db: Db,
  { from, to }: { from: BusinessDate; to: BusinessDate },
): Promise<DaySales[]> {
  return db.sqlite
    .prepare(
      `select business_date as businessDate, quantity, net_minor as netMinor from tallies
       where business_date between ? and ? order by business_date`,
    )
    .all(from, to) as DaySales[];
}
