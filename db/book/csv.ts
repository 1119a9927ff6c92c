import Papa from "papaparse";
import type { Findings } from "#db/book/problem.ts";

/** The cells of a sheet row by row; row n of the spreadsheet stands at index n − 1, and the headings at `top`. */
export type Grid = { rows: string[][]; top: number; delimiter: string };

const CHARACTERS_MOST = 32 * 1024 * 1024;
const LINE_MOST = 256 * 1024;
/** A bar of 300 items in five areas, counted weekly, fills that in six years; a year of them is a sheet. */
const LINES_MOST = 500_000;
const DELIMITERS = [",", ";", "\t"] as const;

/**
 * Cuts the text of a sheet into cells (RFC 4180; CRLF, LF or CR end a row; a byte order mark is passed over).
 *
 * Commas part the cells, or semicolons or tabs where the headings show them. Undefined, with the problem noted, for
 * text that is no sheet: a quote that never closes, a line no person wrote.
 */
export function readCsv(file: string, text: string, findings: Findings): Grid | undefined {
  const trouble = unreadable(text);
  if (trouble !== undefined) {
    findings.problem({ file }, trouble);
    return undefined;
  }
  const plain = withPlainRowEnds(text.charCodeAt(0) === 0xfeff ? text.slice(1) : text);
  const delimiter = delimiterOf(plain);
  const { data, errors } = Papa.parse<string[]>(plain, { delimiter, newline: "\n" });
  for (const { code, row } of errors) {
    if (code === "MissingQuotes" || code === "InvalidQuotes") {
      const place = row === undefined ? { file } : { file, row: row + 1 };
      findings.problem(place, 'a quotation mark is not closed; close it, and write "" for one inside a text');
      return undefined;
    }
  }
  const top = data.findIndex(
    (cells, at) => !isBlank(cells) && !(at === 0 && STATED.test(cells.join(delimiter))),
  );
  return { rows: data, top: Math.max(0, top), delimiter };
}

/** Rows as RFC 4180 text, rows ended by CRLF. */
export function writeCsv(rows: readonly (readonly string[])[]): string {
  return `${Papa.unparse(rows as string[][], { newline: "\r\n" })}\r\n`;
}

function unreadable(text: string): string | undefined {
  if (text.includes("\u0000")) return "this is no text; save the sheet as CSV in UTF-8";
  let line = 1;
  let start = 0;
  const ends = /\r\n?|\n/g;
  while (start < text.length) {
    const end = ends.exec(text)?.index ?? text.length;
    if (end - start > LINE_MOST) {
      return `line ${line} is ${end - start} characters long, which no sheet has; check that the file is whole`;
    }
    if (end === text.length) break;
    start = ends.lastIndex;
    line += 1;
    if (line > LINES_MOST)
      return `the sheet has more than ${LINES_MOST} lines; check that it is the right file`;
  }
  if (text.length <= CHARACTERS_MOST) return undefined;
  return `the sheet is larger than ${CHARACTERS_MOST / 1024 / 1024} MB; check that it is the right file`;
}

/** Every row end as LF; line breaks inside quoted cells stay as they are. */
function withPlainRowEnds(text: string): string {
  if (!text.includes("\r")) return text;
  return text.replace(/"[^"]*"|\r\n?/g, (found) => (found.startsWith('"') ? found : "\n"));
}

/** A first line by which a spreadsheet program says what parts the cells. */
const STATED = /^sep=(.)$/i;

export function isBlank(cells: readonly string[]): boolean {
  return cells.every((cell) => cell.trim() === "");
}

function delimiterOf(text: string): string {
  const [headings = ""] = /[^\n]*\S[^\n]*/.exec(text) ?? [];
  const stated = STATED.exec(headings.trim())?.[1];
  if (stated !== undefined) return stated;
  const bare = headings.replace(/"[^"]*"/g, "");
  const counts = DELIMITERS.map((delimiter) => bare.split(delimiter).length);
  return DELIMITERS[counts.indexOf(Math.max(...counts))] ?? ",";
}
