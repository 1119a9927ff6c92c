import { isCanonical, readCanonical } from "#engine/sales/read/canonical.ts";
import type { VenueClock } from "#engine/sales/read/clock.ts";
import type { ColumnFinding } from "#engine/sales/read/columns.ts";
import { type DecodedFile, decodeFile, type Encoding } from "#engine/sales/read/decode.ts";
import { SalesFileError } from "#engine/sales/read/error.ts";
import type { Reading } from "#engine/sales/read/flat-layout.ts";
import { shapeOf } from "#engine/sales/read/found-shape.ts";
import { findDelimiter } from "#engine/sales/read/header.ts";
import { isVoidCount } from "#engine/sales/read/headings.ts";
import { type Understood, understand } from "#engine/sales/read/layout.ts";
import type { ReadSales, RefusedRow, SaleLine } from "#engine/sales/read/line.ts";
import { isBlank, rowsOf, type SheetRows } from "#engine/sales/read/rows.ts";
import { type SalesShape, shapeFor } from "#engine/sales/read/shape.ts";

export type ReadOptions = {
  /** As the person knows it; shapes are found by it and questions name it. */
  fileName: string;
  clock: VenueClock;
  /** Decimal places of the venue's currency: 2 for EUR, 0 for JPY. */
  currencyDigits: number;
  /** The rows of sales-shapes.json; the first whose glob fits the file is used. */
  shapes?: readonly SalesShape[];
  /** The shape to use whatever the file is called. */
  shape?: SalesShape;
  /** Whether the names of staff are read; left out, they are not. */
  keepsStaff?: boolean;
};

/**
 * The sale lines of a till's file of any shape.
 *
 * Our own form is known by its first line; else the given shape, else the shape for the file's name, else detection.
 * What can be read two ways is not read: `question` asks, and `lines` is empty. Rows that cannot be read stand in `refused`
 * with their reason, and the others are read. Equal lines are as many sales as there are lines.
 * Throws SalesFileError when the file is no list at all (a workbook, an endless line, an open quotation mark).
 */
export function readSales(bytes: Uint8Array, options: ReadOptions): ReadSales {
  const opened = open(bytes, options);
  if (isCanonical(opened.file.text)) {
    const read = readCanonical(opened.file.text, options);
    return { ...read, shape: { files: options.fileName, encoding: opened.file.encoding, delimiter: "," } };
  }
  const { understood, shape } = understandFile(opened, options);
  const skippedAbove = understood.firstRow;
  if (understood.question !== null) return asking(understood.question, shape, options.fileName);
  const reading = understood.read();
  const { lines, refused, linesRead, rowsSkipped } = reading;
  const notices = noticesOf(understood, reading);
  return {
    lines,
    refused,
    shape,
    question: null,
    linesRead,
    rowsSkipped: rowsSkipped + skippedAbove,
    notices,
  };
}

/** How a file would be read: its columns, how sure each is, and the first rows as understood. */
export type SalesPreview = {
  columns: ColumnFinding[];
  shape: SalesShape;
  question: string | null;
  lines: SaleLine[];
  refused: RefusedRow[];
  /** The first rows as they stand in the file, headings first. */
  rows: SheetRows;
};

const PREVIEW_ROWS = 20;

/**
 * A look at a file before it is imported: the role of each column with its confidence, and the first twenty rows as understood.
 *
 * Throws SalesFileError like readSales.
 */
export function previewSales(bytes: Uint8Array, options: ReadOptions): SalesPreview {
  const opened = open(bytes, options);
  if (isCanonical(opened.file.text)) {
    const read = readSales(bytes, options);
    const rows = rowsOf(opened.file.text.slice(0, 65_536), ",", options.fileName).slice(0, PREVIEW_ROWS + 1);
    const columns = (rows[0] ?? []).map(
      (heading): ColumnFinding => ({ heading, role: canonicalRole(heading), confidence: 1 }),
    );
    return {
      columns,
      shape: read.shape,
      question: null,
      lines: read.lines.slice(0, PREVIEW_ROWS),
      refused: read.refused,
      rows,
    };
  }
  const { understood, shape, rows } = understandFile(opened, options);
  const first = Math.max(0, understood.firstRow - 1);
  const read =
    understood.question === null
      ? understood.read(understood.firstRow + PREVIEW_ROWS)
      : { lines: [], refused: [] };
  return {
    columns: understood.findings,
    shape,
    question: understood.question === null ? null : `${options.fileName}: ${understood.question}`,
    lines: read.lines,
    refused: read.refused,
    rows: rows.slice(first, first + PREVIEW_ROWS + 1),
  };
}

function canonicalRole(heading: string): ColumnFinding["role"] {
  const roles: Record<string, ColumnFinding["role"]> = {
    business_date: "businessDate",
    sold_at: "when",
    ring_name: "item",
    line: "lineNo",
  };
  return roles[heading] ?? (heading as ColumnFinding["role"]);
}

export type Opened = { file: DecodedFile; shape: SalesShape | undefined };

/**
 * The file as text, and the shape that goes with its name. `turnedFrom` says that the bytes were turned into UTF-8 already, and
 * from what.
 */
export function open(
  bytes: Uint8Array,
  { fileName, shapes = [], shape }: ReadOptions,
  turnedFrom?: Encoding,
): Opened {
  const used = shape ?? shapeFor(fileName, shapes);
  const file =
    turnedFrom === undefined
      ? decodeFile(bytes, fileName, used?.encoding)
      : { ...decodeFile(bytes, fileName, "utf-8"), encoding: turnedFrom };
  if (file.text.trim() === "")
    throw new SalesFileError(fileName, "the file is empty; export the sales again.");
  return { file, shape: used };
}

function understandFile(opened: Opened, options: ReadOptions): FileUnderstood {
  const delimiter = findDelimiter(opened.file.text, opened.shape);
  const rows = rowsOf(opened.file.text, delimiter ?? ",", options.fileName);
  return understandRows(rows, delimiter, opened, options);
}

export type FileUnderstood = {
  understood: Understood;
  /** The given shape, or an empty one for the file, with the encoding found. */
  base: SalesShape;
  shape: SalesShape;
  rows: SheetRows;
};

/** How the rows of an opened file are to be read. */
export function understandRows(
  rows: SheetRows,
  delimiter: string | undefined,
  { file, shape }: Opened,
  options: ReadOptions,
): FileUnderstood {
  const base: SalesShape = { ...shape, files: shape?.files ?? options.fileName, encoding: file.encoding };
  // "sep=;" is a word to spreadsheet programs and no row of the list.
  if (/^sep=.?$/i.test(rows[0]?.join("") ?? "")) rows[0] = [""];
  const understood = understand(rows, {
    clock: options.clock,
    currencyDigits: options.currencyDigits,
    shape,
    keepsStaff: options.keepsStaff ?? false,
  });
  const isOneColumn = delimiter === undefined && rows.filter((row) => !isBlank(row)).length > 0;
  const question = isOneColumn
    ? 'what stands between the columns? The rows cannot be cut at commas, semicolons, tabs or "|"; state delimiter in sales-shapes.json.'
    : understood.question;
  return {
    understood: { ...understood, question },
    base,
    shape: shapeOf(base, delimiter, { ...understood, question }),
    rows,
  };
}

function asking(question: string, shape: SalesShape, fileName: string): ReadSales {
  return {
    lines: [],
    refused: [],
    shape,
    question: `${fileName}: ${question}`,
    linesRead: 0,
    rowsSkipped: 0,
    notices: [],
  };
}

const WORDS_NOTED = 20;

/** What was decided or left out, a sentence each. */
export function noticesOf(
  { findings, map, styles, headings }: Pick<Understood, "findings" | "map" | "styles" | "headings">,
  { unknownKinds, rowsNoSales }: Pick<Reading, "unknownKinds" | "rowsNoSales">,
): string[] {
  const notices: string[] = [];
  const staff = findings
    .filter(({ role }, column) => role === "staff" && column !== map.staff)
    .map(({ heading }) => `"${heading}"`);
  if (staff.length > 0) notices.push(`The columns of persons (${staff.join(", ")}) were not read.`);
  for (const [word, count] of [...unknownKinds].slice(0, WORDS_NOTED))
    notices.push(
      `${headings[map.kind ?? 0]}: "${word}" (${count} rows) is no known word for a void or refund; those rows were read as sales.`,
    );
  for (const { heading } of findings.filter(({ heading }) => isVoidCount(heading)))
    notices.push(
      `"${heading}" was not read; the quantity was taken as it stands in "${headings[map.quantity ?? -1] ?? "the rows"}".`,
    );
  if (rowsNoSales > 0)
    notices.push(
      `${rowsNoSales} rows say that they are payments, tips, taxes or discounts and were passed over.`,
    );
  if (styles?.isDateOnly)
    notices.push("Every time is midnight, so the dates were read as dates without a time.");
  if (styles?.isDateBusinessDate)
    notices.push(
      `${headings[map.date ?? 0]} stays on the evening before past midnight, so it was read as the business date.`,
    );
  return notices;
}
