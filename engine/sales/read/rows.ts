import Papa from "papaparse";
import { SalesFileError } from "#engine/sales/read/error.ts";

/** The rows of a file in order, blank ones included, so that row n of the file stands at index n − 1. */
export type SheetRows = string[][];

export const DELIMITERS = [",", ";", "\t", "|"] as const;

const CELLS_MOST = 40_000_000;
const CHUNK_CHARACTERS = 1 << 20;

/**
 * Cuts a decoded text into rows of cells (RFC 4180; any one of CRLF, LF, CR ends a row).
 *
 * A file whose names hold stray quotes is read again without quoting, if its rows are even then. Throws SalesFileError
 * for a quote that never closes and for more cells than a venue can have.
 */
export function rowsOf(text: string, delimiter: string, fileName: string): SheetRows {
  const plain = text.includes("\r") ? text.replace(/\r\n?/g, "\n") : text;
  const quoted = cut(plain, { delimiter, newline: "\n", quoteChar: '"' }, fileName);
  if (quoted.openQuoteRow === null) return quoted.rows;
  const bare = cut(plain, { delimiter, newline: "\n", quoteChar: "\u0000" }, fileName);
  if (isEven(bare.rows)) return bare.rows;
  throw new SalesFileError(
    fileName,
    `row ${quoted.openQuoteRow} opens a quotation mark that is never closed; close it (or write "" for a mark inside a name).`,
  );
}

/** The first rows only, to look at: as rowsOf, but nothing is thrown for an open quote. */
export function firstRowsOf(text: string, delimiter: string, count: number): SheetRows {
  const head = text.slice(0, 1 << 18).replace(/\r\n?/g, "\n");
  return Papa.parse<string[]>(head, { delimiter, newline: "\n", preview: count }).data;
}

/** The delimiter a spreadsheet program wrote into a first line "sep=;"; undefined without one. */
export function statedDelimiter(text: string): string | undefined {
  return /^"?sep=(.)"?(?:\r|\n)/i.exec(text)?.[1];
}

type CutStyle = { delimiter: string; newline: "\n" | "\r\n"; quoteChar: string };

/** Cuts exactly as told, line breaks inside quotes kept as they are. */
export function cut(
  text: string,
  style: CutStyle,
  fileName: string,
): { rows: SheetRows; openQuoteRow: number | null } {
  const rows: SheetRows = [];
  let cells = 0;
  let openQuoteRow: number | null = null;
  const take = (batch: Papa.ParseResult<string[]>, parser: Papa.Parser): void => {
    for (const row of batch.data) {
      rows.push(row);
      cells += row.length;
    }
    const open = batch.errors.find(({ code }) => code === "MissingQuotes");
    if (open !== undefined) openQuoteRow = rows.length;
    if (cells > CELLS_MOST || open !== undefined) parser.abort();
  };
  // chunkSize holds for texts too, though the types know it for files only.
  const config = { ...style, chunkSize: CHUNK_CHARACTERS, chunk: take };
  Papa.parse<string[]>(text, config);
  if (cells > CELLS_MOST)
    throw new SalesFileError(fileName, `the file has more than ${CELLS_MOST} cells; split it by month.`);
  if (rows.at(-1)?.length === 1 && rows.at(-1)?.[0] === "") rows.pop();
  return { rows, openQuoteRow };
}

function isEven(rows: SheetRows): boolean {
  const widths = new Map<number, number>();
  for (const row of rows) widths.set(row.length, (widths.get(row.length) ?? 0) + 1);
  const most = Math.max(0, ...widths.values());
  const [width] = [...widths].find(([, count]) => count === most) ?? [0];
  return width > 1 && most >= rows.length * 0.95;
}

export function isBlank(row: readonly string[]): boolean {
  return row.every((cell) => cell.trim() === "");
}
