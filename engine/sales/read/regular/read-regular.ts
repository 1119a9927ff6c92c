import { SalesPacker } from "#engine/sales/packed/packed-sales.ts";
import type { TextTable } from "#engine/sales/packed/texts.ts";
import type { ColumnMap } from "#engine/sales/read/columns.ts";
import type { Encoding } from "#engine/sales/read/decode.ts";
import type { Reading } from "#engine/sales/read/flat-layout.ts";
import { shapeOf } from "#engine/sales/read/found-shape.ts";
import type { ReadSales } from "#engine/sales/read/line.ts";
import type { CellStyles } from "#engine/sales/read/plan.ts";
import { decideDates } from "#engine/sales/read/plan-dates.ts";
import { decideNumbers } from "#engine/sales/read/plan-numbers.ts";
import { noticesOf, type ReadOptions } from "#engine/sales/read/read-sales.ts";
import type { ByteSource } from "#engine/sales/read/regular/byte-source.ts";
import { ChildReader } from "#engine/sales/read/regular/child-reader.ts";
import { DaysReader } from "#engine/sales/read/regular/days-reader.ts";
import type { RunningEvidence } from "#engine/sales/read/regular/evidence.ts";
import { HandOver, HeadTooShort, OtherEncoding, RowsBelong } from "#engine/sales/read/regular/hand-over.ts";
import { planRegular, type RegularPlan, type RowsPlan } from "#engine/sales/read/regular/plan.ts";
import { RegularReader } from "#engine/sales/read/regular/reader.ts";
import type { PieceReader } from "#engine/sales/read/regular/text-reader.ts";
import { inUtf8, isMostlyUtf8 } from "#engine/sales/read/regular/turned.ts";
import { shapeFor } from "#engine/sales/read/shape.ts";

export type { ByteSource };

export type RegularOptions = ReadOptions & {
  texts: TextTable;
  /** Told after each piece how many bytes are read; may throw to stop. */
  onProgress?: (bytesRead: number) => void;
  /** Bytes held at a time. */
  pieceBytes?: number;
};

/** What a file said, its lines packed. */
export type PackedReading = Omit<ReadSales, "lines"> & { packer: SalesPacker };

const LF = 10;
const PIECE_BYTES = 1 << 20;
const HEAD_BYTES = 5 << 16;
const HEAD_BYTES_MOST = 32 * HEAD_BYTES;
const SLICES = 16;
const SLICE_BYTES = 1 << 13;
const LINE_BYTES_MOST = 256 * 1024;

/**
 * Reads a regular file of any length piece by piece; what comes out is what readSales gives, packed by business day.
 *
 * Gives the reason, as a text for programmers, where the file is not regular: then readSales has to take it. Throws
 * SalesFileError like readSales.
 */
export function readRegular(source: ByteSource, options: RegularOptions): PackedReading | string {
  try {
    try {
      return readOrHandOver(source, options);
    } catch (error) {
      if (error instanceof OtherEncoding) return readTurned(source, error.encoding, options);
      throw error;
    }
  } catch (error) {
    if (error instanceof HandOver) return error.message;
    throw error;
  }
}

/** Reads a file in another encoding by turning it into UTF-8; `encoding` is what its first bytes say. */
function readTurned(source: ByteSource, encoding: Encoding, options: RegularOptions): PackedReading {
  const pieceBytes = pieceOf(options);
  const isStated =
    (options.shape ?? shapeFor(options.fileName, options.shapes ?? []))?.encoding !== undefined;
  // Without a mark and a word about it, all bytes decide between the two that differ in a few letters.
  if (encoding === "windows-1252" && !isStated && isMostlyUtf8(source, pieceBytes))
    throw new HandOver("The file has damaged letters.");
  const turned = inUtf8(source, encoding, pieceBytes);
  const { onProgress } = options;
  const share = source.size / Math.max(1, turned.size);
  return readOrHandOver(
    turned,
    onProgress === undefined ? options : { ...options, onProgress: (bytes) => onProgress(bytes * share) },
    encoding,
  );
}

function readOrHandOver(source: ByteSource, options: RegularOptions, turnedFrom?: Encoding): PackedReading {
  let { plan, isUtf8 } = planFrom(source, options, turnedFrom);
  for (;;) {
    try {
      return readPlanned(source, plan, options, isUtf8);
    } catch (error) {
      // Once a row is seen to belong to another, the file is read anew by the reader that knows such rows.
      if (!(error instanceof RowsBelong) || !("layout" in plan)) throw error;
      plan = { ...plan, hasChildren: true, layout: { ...plan.layout, ...error.style } };
    }
  }
}

/** Plans on the head of the file: on more of it where its rows are long. */
function planFrom(
  source: ByteSource,
  options: RegularOptions,
  turnedFrom?: Encoding,
): { plan: RegularPlan; isUtf8: boolean } {
  for (let headBytes = HEAD_BYTES; ; headBytes *= 2) {
    const head = headOf(source, headBytes);
    const isWhole = head.length === source.size;
    try {
      const plan = planRegular(head, slicesOf(source, head.length), isWhole, options, turnedFrom);
      const isUtf8 = turnedFrom !== undefined || plan.statedShape?.encoding !== undefined || hasMark(head);
      return { plan, isUtf8 };
    } catch (error) {
      if (!(error instanceof HeadTooShort) || 2 * headBytes > HEAD_BYTES_MOST) throw error;
    }
  }
}

function readPlanned(
  source: ByteSource,
  plan: RegularPlan,
  options: RegularOptions,
  isUtf8: boolean,
): PackedReading {
  const packer = new SalesPacker(options.texts);
  const { reading, styles } = readAs(plan, source, packer, options, isUtf8);
  const understood = { ...plan.understood, styles };
  return {
    packer,
    refused: reading.refused,
    shape: shapeOf(plan.base, plan.delimiter, understood),
    question: null,
    linesRead: reading.linesRead,
    rowsSkipped: reading.rowsSkipped + plan.understood.firstRow,
    notices: noticesOf(understood, reading),
  };
}

/** What the rows said, and how its cells turned out to be written (null where days are in columns). */
function readAs(
  plan: RegularPlan,
  source: ByteSource,
  packer: SalesPacker,
  options: RegularOptions,
  isUtf8: boolean,
): { reading: Reading; styles: CellStyles | null } {
  if ("days" in plan) {
    const reader = new DaysReader(plan, packer);
    readPieces(source, reader, options, isUtf8);
    reader.finish();
    return { reading: reader.reading, styles: null };
  }
  const reader = plan.hasChildren
    ? new ChildReader(plan, packer)
    : new RegularReader(plan, packer, options.currencyDigits);
  readPieces(source, reader, options, isUtf8);
  reader.finish();
  return { reading: reader.reading, styles: decidedAgain(plan, reader.evidence, options) };
}

/** The head of the file up to the end of a row. */
function headOf(source: ByteSource, headBytes: number): Uint8Array {
  const bytes = new Uint8Array(Math.min(headBytes, source.size));
  const length = source.read(bytes, 0, 0);
  if (length === source.size) return bytes;
  let quotes = 0;
  let end = 0;
  for (let at = 0; at < length; at += 1) {
    if (bytes[at] === 34) quotes += 1;
    else if (bytes[at] === LF && quotes % 2 === 0) end = at + 1;
  }
  if (end === 0) throw new HandOver("The first rows do not end.");
  return bytes.subarray(0, end);
}

/** Some rows from all over the rest of the file, so that a day after the twelfth shows which part of a date is the month. */
function slicesOf(source: ByteSource, from: number): string[] {
  const rest = source.size - from;
  if (rest <= 0) return [];
  const step = Math.max(SLICE_BYTES, Math.floor(rest / SLICES));
  const slices: string[] = [];
  for (let position = from; position < source.size; position += step) {
    const start = Math.max(from, Math.min(position, source.size - SLICE_BYTES));
    const bytes = new Uint8Array(Math.min(SLICE_BYTES, source.size - start));
    const length = source.read(bytes, 0, start);
    const first = start === from ? 0 : bytes.indexOf(LF) + 1;
    const last = start + length === source.size ? length : bytes.lastIndexOf(LF) + 1;
    if (last > first) slices.push(new TextDecoder().decode(bytes.subarray(first, last)));
  }
  return slices;
}

function pieceOf({ pieceBytes = PIECE_BYTES }: RegularOptions): number {
  return Math.max(pieceBytes, 64);
}

function hasMark(bytes: Uint8Array): boolean {
  return bytes[0] === 0xef && bytes[1] === 0xbb && bytes[2] === 0xbf;
}

/** `isUtf8` says that the file is meant as UTF-8, whatever letters of it are damaged. */
function readPieces(source: ByteSource, reader: PieceReader, options: RegularOptions, isUtf8: boolean): void {
  const pieceBytes = pieceOf(options);
  const bytes = new Uint8Array(pieceBytes + LINE_BYTES_MOST + 2);
  let kept = 0;
  let position = 0;
  while (position < source.size) {
    const window = bytes.subarray(0, kept + pieceBytes);
    const read = source.read(window, kept, position);
    if (read === 0) throw new HandOver("The file ended before its size.");
    const isFirst = position === 0;
    position += read;
    let length = kept + read;
    if (position >= source.size && bytes[length - 1] !== LF) {
      bytes[length] = LF;
      length += 1;
    }
    bytes[length] = LF;
    const from = isFirst && hasMark(bytes) ? 3 : 0;
    const done = reader.take(bytes, from, length);
    if (!source.isUtf8(bytes.subarray(from, done)))
      throw isUtf8 ? new HandOver("The file has damaged letters.") : new OtherEncoding("windows-1252");
    kept = length - done;
    if (kept > LINE_BYTES_MOST) throw new HandOver("A row is too long.");
    bytes.copyWithin(0, done, length);
    options.onProgress?.(position);
  }
  if (kept > 0) throw new HandOver("A quotation mark is never closed.");
}

/** What all rows together say about dates and numbers, which has to be what the rows were read by. */
function decidedAgain(plan: RowsPlan, evidence: RunningEvidence, options: RegularOptions): CellStyles {
  const { map, findings } = plan.understood;
  const heading = (column: number): string => findings[column]?.heading ?? `#${column + 1}`;
  const shape = plan.statedShape;
  const dates = decideDates(evidence.dates(plan.agrees), map, { shape, heading });
  const { currencyDigits } = options;
  const numbers = decideNumbers(evidence.numbers, map, { shape, heading, currencyDigits });
  if (dates.question !== null || numbers.question !== null)
    throw new HandOver("All rows together leave a question.");
  const styles = { ...dates.styles, ...numbers.styles };
  if (!isReadAlike(styles, plan.styles, map)) throw new HandOver("The sample was not like the file.");
  return styles;
}

function isReadAlike(decided: CellStyles, planned: CellStyles, map: ColumnMap): boolean {
  const marks = [...decided.decimals].every(([column, mark]) => planned.decimals.get(column) === mark);
  const isOrderAlike = !decided.isOrderUsed || decided.dateOrder === planned.dateOrder;
  return (
    marks &&
    isOrderAlike &&
    decided.isDateOnly === planned.isDateOnly &&
    (map.date === undefined || decided.isDateBusinessDate === planned.isDateBusinessDate)
  );
}

/** The lines of a file that was read as a whole, packed. Throws ClockError for a clock that cannot be used. */
export function packReading({ lines, ...read }: ReadSales, texts: TextTable): PackedReading {
  const packer = new SalesPacker(texts);
  for (const line of lines) packer.addLine(line);
  return { ...read, packer };
}
