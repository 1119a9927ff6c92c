import { closeSync, openSync, readSync } from "node:fs";
import type { Db } from "#db/open.ts";
import { currencyDigits } from "#engine/currency.ts";
import { previewSales, type SalesPreview } from "#engine/sales/read/read-sales.ts";
import type { SalesShape } from "#engine/sales/read/shape.ts";
import { type Unmapped, withMeanings } from "#server/reports/unmapped.ts";
import type { ReadHow } from "#server/sales-bytes.ts";
import { SalesQuestion } from "#server/sales-files.ts";
import {
  type FileReading,
  type ImportOptions,
  type ImportReport,
  importReading,
  readForImport,
  type SalesSource,
} from "#server/sales-import.ts";
import type { World } from "#server/world.ts";

/** A file as it would be read and what that would change; without a report while it leaves a question. */
export type SalesLook = Pick<SalesPreview, "columns" | "shape" | "question" | "lines" | "rows"> & {
  report: (Omit<ImportReport, "unmapped"> & { unmapped: Unmapped[] }) | null;
};

/** Enough for the columns and the first rows; the rest of a long file is read for what it holds. */
const HEAD_BYTES = 3 << 17;

/** Looks at a file of any length; nothing is written. Throws SalesFileError for what is no sales file. */
export async function lookAtSales(
  db: Db,
  world: World,
  source: SalesSource,
  how: ReadHow,
  options: ImportOptions = {},
): Promise<SalesLook> {
  const head = headOf(source);
  const { venue, salesShapes } = world.facts.book;
  const preview = (shape: SalesShape | undefined): SalesPreview =>
    previewSales(head, {
      fileName: source.name,
      clock: venue,
      currencyDigits: currencyDigits(venue.currency),
      shapes: salesShapes,
      keepsStaff: venue.keepStaff ?? false,
      ...(shape === undefined ? {} : { shape }),
    });
  const read = await readOrAsk(db, source, how);
  if (typeof read === "string") return { ...shown(preview(how.shape)), question: read, report: null };
  const report = await importReading(db, world, read, null, options);
  const { shape } = "sameAs" in read ? read.sameAs : read.reading;
  // What the whole file says about its dates and numbers holds for its first rows too.
  return {
    ...shown(preview(shape)),
    shape,
    question: null,
    report: { ...report, unmapped: withMeanings(world.facts, report.unmapped) },
  };
}

function shown({ columns, shape, question, lines, rows }: SalesPreview) {
  return { columns, shape, question, lines, rows };
}

async function readOrAsk(db: Db, source: SalesSource, how: ReadHow): Promise<FileReading | string> {
  try {
    return await readForImport(db, source, how);
  } catch (error) {
    if (error instanceof SalesQuestion) return error.message;
    throw error;
  }
}

function headOf(source: SalesSource): Uint8Array {
  if ("bytes" in source) return wholeRows(source.bytes.subarray(0, HEAD_BYTES), source.bytes.length);
  const file = openSync(source.path, "r");
  try {
    const bytes = new Uint8Array(HEAD_BYTES + 1);
    const read = readSync(file, bytes, 0, bytes.length, 0);
    return wholeRows(bytes.subarray(0, Math.min(read, HEAD_BYTES)), read);
  } finally {
    closeSync(file);
  }
}

const LF = 10;

/** The head up to the end of its last row; in UTF-16 a line feed is two bytes, of which the zero may stand behind it. */
function wholeRows(head: Uint8Array, size: number): Uint8Array {
  if (head.length >= size) return head;
  const end = head.lastIndexOf(LF) + 1;
  if (end === 0) return head;
  return head.subarray(0, head[end] === 0 && end % 2 === 1 ? end + 1 : end);
}
