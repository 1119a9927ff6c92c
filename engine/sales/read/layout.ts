import { childStyleOf } from "#engine/sales/read/child-marks.ts";
import { type ColumnFinding, type ColumnMap, findColumns } from "#engine/sales/read/columns.ts";
import { type FlatLayout, nothingRead, type Reading } from "#engine/sales/read/flat-layout.ts";
import { findHeader, namedHeadings } from "#engine/sales/read/header.ts";
import { roleOf } from "#engine/sales/read/headings.ts";
import { offsetInHeading, readMoment, readTimeOfDay } from "#engine/sales/read/moment.ts";
import { readMoneyMinor } from "#engine/sales/read/number.ts";
import { cut } from "#engine/sales/read/place-in-time.ts";
import { type CellStyles, planStyles, type Reckoning } from "#engine/sales/read/plan.ts";
import { priceMeaning } from "#engine/sales/read/price.ts";
import { readFlat } from "#engine/sales/read/read-flat.ts";
import { remembering } from "#engine/sales/read/remember.ts";
import type { SheetRows } from "#engine/sales/read/rows.ts";
import type { SalesShape } from "#engine/sales/read/shape.ts";
import {
  type DaysLayout,
  dayColumns,
  dayInTitles,
  decimalOfDays,
  orderOfHeads,
  readDays,
} from "#engine/sales/read/summed.ts";
import { kindOf } from "#engine/sales/read/words.ts";

/** A file understood: how its columns are taken, and how its rows are to be read; or a question instead. */
export type Understood = {
  headings: readonly string[];
  firstRow: number;
  findings: ColumnFinding[];
  map: ColumnMap;
  styles: CellStyles | null;
  question: string | null;
  /** How the rows are read, in a file of one sale a row. */
  layout: FlatLayout | null;
  /** The same in a file with items in rows and days in columns. */
  days: DaysLayout | null;
  read: (lastRow?: number) => Reading;
};

/** Finds the headings, the columns and the styles of a sheet, and which of three layouts it has. */
export function understand(rows: SheetRows, reckoning: Reckoning): Understood {
  const { shape } = reckoning;
  const header = findHeader(rows, shape);
  const isByNumber = namedHeadings(shape?.columns).length === 0 && shape?.columns !== undefined;
  if (header === undefined && !isByNumber) return unknown([], 0, askForHeadings(shape));
  const headerRow = header === undefined ? unnamed(rows) : (rows[header.index] ?? []);
  const headings = headerRow.map((heading) => heading.trim());
  const firstRow = header === undefined ? 0 : header.index + 1;
  const body = rows.slice(firstRow);
  const columns = findColumns(headings, body, shape, reckoning.keepsStaff);
  const found = { headings, firstRow, findings: columns.findings, map: columns.map };
  if (columns.question !== null) return { ...unknown(headings, firstRow, columns.question), ...found };
  const hasDates = ["when", "date", "businessDate"].some((role) => columns.map[role as "when"] !== undefined);
  const days = hasDates ? [] : dayColumns(headings);
  if (days.length > 0 && columns.map.item !== undefined)
    return {
      ...unknown(headings, firstRow, null),
      ...found,
      ...ofDays(rows, found, days, columns.map.item, shape),
    };
  return { ...unknown(headings, firstRow, null), ...found, ...ofRows(rows, found, hasDates, reckoning) };
}

type Found = Pick<Understood, "headings" | "firstRow" | "findings" | "map">;

function ofDays(
  rows: SheetRows,
  { headings, firstRow }: Found,
  days: ReturnType<typeof dayColumns>,
  item: number,
  shape: SalesShape | undefined,
) {
  const heads = orderOfHeads(days, headings, shape);
  const cells = decimalOfDays(rows, firstRow, days, shape);
  const layout: DaysLayout = { item, days, order: heads.order, decimal: cells.decimal, headings };
  return {
    question: heads.question ?? cells.question,
    days: layout,
    read: (lastRow?: number) =>
      readDays(lastRow === undefined ? rows : rows.slice(0, lastRow), firstRow, layout),
  };
}

function ofRows(rows: SheetRows, found: Found, hasDates: boolean, reckoning: Reckoning) {
  const { headings, firstRow, findings, map } = found;
  const { clock, currencyDigits, shape } = reckoning;
  const { styles, question } = planStyles(rows, firstRow, map, findings, reckoning);
  const titled = hasDates
    ? { day: null, question: null }
    : dayInTitles(rows.slice(0, Math.max(0, firstRow - 1)), shape);
  const quantityQuestion =
    map.quantity === undefined && shape?.columns?.quantity !== ""
      ? askForQuantity(rows, found, hasDates)
      : null;
  const items = function* (): Generator<string> {
    for (let index = firstRow; index < rows.length; index += 1) yield rows[index]?.[map.item ?? 0] ?? "";
  };
  const layout: FlatLayout = {
    map,
    styles,
    clock,
    headings,
    minorUnits: {
      ".": remembering((cell: string) => readMoneyMinor(cell, ".", currencyDigits)),
      ",": remembering((cell: string) => readMoneyMinor(cell, ",", currencyDigits)),
    },
    readKind: remembering((cell: string) => kindOf(cell, headings[map.kind ?? -1] ?? "")),
    readDay: remembering(readMoment),
    readTime: remembering(readTimeOfDay),
    headingOffsetS: offsetInHeading(headings[map.when ?? map.time ?? map.date ?? -1] ?? ""),
    ...childStyleOf(items()),
    priceIs: priceMeaning(rows, firstRow, map, styles, {
      currencyDigits,
      heading: headings[map.unitPrice ?? -1] ?? "",
    }),
    day: titled.day ?? undefined,
    isRowOneSale: map.quantity === undefined,
  };
  return {
    styles,
    layout,
    question: question ?? askForDates(found, rows, hasDates, shape) ?? titled.question ?? quantityQuestion,
    read: (lastRow?: number) => readFlat(rows, firstRow, layout, lastRow),
  };
}

const COLUMNS_MOST = 400;

/** Numbers for the columns of a sheet without headings, as shapes name them. */
function unnamed(rows: SheetRows): string[] {
  const width = Math.min(COLUMNS_MOST, Math.max(0, ...rows.slice(0, 200).map((row) => row.length)));
  return Array.from({ length: width }, (_, column) => `#${column + 1}`);
}

function unknown(headings: readonly string[], firstRow: number, question: string | null): Understood {
  return {
    headings,
    firstRow,
    findings: [],
    map: { modifiers: [] },
    styles: null,
    layout: null,
    days: null,
    question,
    read: nothingRead,
  };
}

function askForHeadings(shape: SalesShape | undefined): string {
  const named = namedHeadings(shape?.columns);
  if (named.length > 0)
    return `the shape names the headings ${named.map((heading) => `"${heading}"`).join(", ")}, and no row of the file has any of them. Is it the right shape?`;
  return 'which row holds the headings? None of the first rows names columns such as date, item and quantity. Add a row of headings, or name the columns by number ("#1", "#2", …) in sales-shapes.json.';
}

/** A column headed as dates that holds none must not give way to a date above the headings. */
function askForDates(
  { headings, findings, firstRow }: Found,
  rows: SheetRows,
  hasDates: boolean,
  shape: SalesShape | undefined,
): string | null {
  if (hasDates || shape?.day !== undefined) return null;
  const column = findings.findIndex(
    ({ heading, role }) => role === "unknown" && DATE_ROLES.has(roleOf(heading)?.role ?? "unknown"),
  );
  const example = rows.slice(firstRow).find((row) => (row[column] ?? "").trim() !== "")?.[column];
  if (column < 0 || example === undefined) return null;
  return `how are the dates in the column "${headings[column]}" written? "${cut(example)}" cannot be read as one. Export them as YYYY-MM-DD, or name the column of dates in sales-shapes.json.`;
}

const DATE_ROLES: ReadonlySet<string> = new Set(["when", "date", "businessDate"]);

/** Without a quantity column a row is one sale, if it is dated and nothing else could be the quantity. */
function askForQuantity(
  rows: SheetRows,
  { headings, firstRow, findings, map }: Found,
  hasDates: boolean,
): string | null {
  if (!hasDates)
    return "which column holds the quantity sold? No heading names one, and a file without dates is a sum. Name it as quantity in sales-shapes.json.";
  const candidates = findings.flatMap(({ role }, column) =>
    role === "unknown" && isWholeNumbers(rows, firstRow, column) ? [column] : [],
  );
  const candidate =
    candidates.find((column) => /qty|quant|count|menge|anzahl|cant/i.test(headings[column] ?? "")) ??
    candidates[0];
  if (candidate !== undefined)
    return `does the column "${headings[candidate]}" hold the quantity sold? Name the quantity column in sales-shapes.json ("" as quantity says that each row is one sale).`;
  if (map.gross !== undefined && map.net === undefined && isWholeNumbers(rows, firstRow, map.gross))
    return `is the column "${headings[map.gross]}" money, or how many were sold? Name it as gross or as quantity in sales-shapes.json.`;
  const isTimed = map.when !== undefined || map.time !== undefined || map.check !== undefined;
  return isTimed
    ? null
    : 'is each row one sale? There is no quantity column, and no time or check either. Name the quantity column in sales-shapes.json ("" as quantity says that each row is one sale).';
}

function isWholeNumbers(rows: SheetRows, firstRow: number, column: number): boolean {
  let filled = 0;
  for (const row of rows.slice(firstRow, firstRow + 1000)) {
    const cell = (row[column] ?? "").trim();
    if (cell === "") continue;
    if (!/^-?\d{1,4}$/.test(cell)) return false;
    filled += 1;
  }
  return filled > 0;
}
