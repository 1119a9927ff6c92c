import { type Cell, type CellContext, WrongCell } from "#db/book/cell.ts";
import { isBlank, readCsv, writeCsv } from "#db/book/csv.ts";
import { decimalMarkOf } from "#db/book/decimal.ts";
import type { Findings } from "#db/book/problem.ts";
import { quote } from "#db/book/quote.ts";
import { didYouMean } from "#db/book/suggest.ts";
import { foldName } from "#engine/name.ts";

/** One column: its heading, whether a sheet must have it, and how its cells are read and written. */
export type Column<T> = { heading: string; isRequired: boolean; cell: Cell<T> };

/** A sheet of the book: the columns by the fact's own keys, in the order in which they are written. */
export type Sheet<T> = { file: string; columns: { [Key in keyof T]-?: Column<T[Key]> } };

/** One row as read: a key is missing where its cell was wrong. `blank` are the keys of cells that were left empty. */
export type Row<T> = { row: number; cells: Partial<T>; isWhole: boolean; blank?: ReadonlySet<string> };

/** A column that a sheet must have. */
export function required<T>(heading: string, cell: Cell<T>): Column<T> {
  return { heading, isRequired: true, cell };
}

/** A column that a sheet may leave out: its cells are then empty. */
export function column<T>(heading: string, cell: Cell<T> & { empty: { value: T } }): Column<T>;
export function column<T>(heading: string, cell: Cell<T>): Column<T>;
export function column<T>(heading: string, cell: Cell<T>): Column<T> {
  return { heading, isRequired: false, cell };
}

type Field = { key: string; column: Column<unknown>; at: number | undefined };

/**
 * The rows of a sheet's text; undefined when it cannot be told apart into columns. Wrong cells, missing columns and cells beyond the headings are noted as problems; unknown
 * columns as notices. Blank rows are passed over.
 */
export function readSheet<T>(
  sheet: Sheet<T>,
  text: string,
  context: Omit<CellContext, "decimalComma">,
  findings: Findings,
): Row<T>[] | undefined {
  const { file } = sheet;
  const grid = readCsv(file, text, findings);
  if (grid === undefined) return undefined;
  const headings = grid.rows[grid.top] ?? [];
  const body = grid.rows.slice(grid.top + 1);
  const fields = placeFields(sheet, headings, body, findings);
  if (fields === undefined) return undefined;
  const mark = decimalMarkOf(numbersIn(fields, body));
  const decimalComma = mark === "comma" || (mark === "unclear" && grid.delimiter === ";");
  const rows: Row<T>[] = [];
  body.forEach((cells, at) => {
    if (isBlank(cells)) return;
    const row = grid.top + at + 2;
    const surplus = cells.slice(headings.length).find((cell) => cell.trim() !== "");
    if (surplus !== undefined) {
      findings.problem(
        { file, row },
        `the row has more cells than there are headings (${quote(surplus)}); a text or number with a comma needs quotation marks`,
      );
    }
    const read = readRow(file, row, cells, fields, { ...context, decimalComma }, findings);
    const isWhole = read.isWhole && surplus === undefined;
    rows.push({ row, cells: read.cells as Partial<T>, isWhole, blank: read.blank });
  });
  return rows;
}

/** The sheet's text: all its columns, one row a fact. */
export function writeSheet<T>(sheet: Sheet<T>, facts: readonly T[], context: CellContext): string {
  const columns = Object.entries(sheet.columns) as [keyof T, Column<T[keyof T]>][];
  const rows = facts.map((fact) => columns.map(([key, { cell }]) => cell.write(fact[key], context)));
  return writeCsv([columns.map(([, { heading }]) => heading), ...rows]);
}

function headingKey(heading: string): string {
  return foldName(heading).replace(/[\s_-]+/g, "_");
}

function placeFields<T>(
  sheet: Sheet<T>,
  headings: readonly string[],
  body: readonly string[][],
  findings: Findings,
): Field[] | undefined {
  const { file } = sheet;
  const known = Object.entries(sheet.columns) as [string, Column<unknown>][];
  const headingOf = new Map(known.map(([, { heading }]) => [headingKey(heading), heading]));
  const places = new Map<string, number>();
  headings.forEach((written, at) => {
    const key = headingKey(written);
    if (!headingOf.has(key)) {
      if (key === "" && body.every((cells) => (cells[at] ?? "").trim() === "")) return;
      const said =
        key === "" ? `column ${at + 1} has no heading` : `the column ${quote(written)} is not known`;
      const near = key === "" ? "" : didYouMean(key, headingOf.values());
      findings.notice({ file }, `${said} and was not read${near}`);
    } else if (places.has(key)) {
      findings.problem({ file, column: written.trim() }, "there are two columns of this name; keep one");
    } else places.set(key, at);
  });
  const missing = known.filter(
    ([, { isRequired, heading }]) => isRequired && !places.has(headingKey(heading)),
  );
  // A sheet without a single cell is a sheet not kept.
  if (isBlank(headings) && body.length === 0) return [];
  for (const [, { heading }] of missing) {
    const near = didYouMean(
      heading,
      headings.filter((each) => !headingOf.has(headingKey(each)) && each.trim() !== ""),
    );
    findings.problem({ file, column: heading }, `the column is missing${near}`);
  }
  if (missing.length > 0) return undefined;
  return known.map(([key, column]) => ({ key, column, at: places.get(headingKey(column.heading)) }));
}

function* numbersIn(fields: readonly Field[], body: readonly string[][]): Generator<string> {
  const numeric = fields.filter(({ column, at }) => column.cell.numbers !== undefined && at !== undefined);
  for (const cells of body) {
    for (const { column, at } of numeric) {
      yield* column.cell.numbers?.(cells[at ?? 0] ?? "") ?? [];
    }
  }
}

function readRow(
  file: string,
  row: number,
  cells: readonly string[],
  fields: readonly Field[],
  context: CellContext,
  findings: Findings,
): { cells: Record<string, unknown>; isWhole: boolean; blank: Set<string> } {
  const read: Record<string, unknown> = {};
  const blank = new Set<string>();
  let isWhole = true;
  for (const { key, column, at } of fields) {
    const text = at === undefined ? "" : (cells[at] ?? "");
    if (text.trim() === "") blank.add(key);
    try {
      read[key] = readCell(text, column.cell, context);
    } catch (error) {
      if (!(error instanceof WrongCell)) throw error;
      findings.problem({ file, row, column: column.heading }, error.message);
      isWhole = false;
    }
  }
  return { cells: read, isWhole, blank };
}

function readCell(text: string, cell: Cell<unknown>, context: CellContext): unknown {
  if (text.trim() !== "") return cell.read(text, context);
  if (cell.empty === undefined) throw new WrongCell("the cell is empty; fill it in");
  return cell.empty.value;
}
