import type { ChildStyle } from "#engine/sales/read/child-marks.ts";
import type { RefusedRow, SaleLine } from "#engine/sales/read/line.ts";
import type { MoneyReading } from "#engine/sales/read/money.ts";
import { readQuantity } from "#engine/sales/read/number.ts";
import { cut, type Placed, type Placing } from "#engine/sales/read/place-in-time.ts";
import type { RowKind } from "#engine/sales/read/words.ts";

/** What became of the rows of a file. */
export type Reading = {
  lines: SaleLine[];
  refused: RefusedRow[];
  linesRead: number;
  rowsSkipped: number;
  unknownKinds: Map<string, number>;
  /** Rows whose kind says that they are no sales: payments, tips, discounts. */
  rowsNoSales: number;
};

/** A reading before its first row. */
export function nothingRead(): Reading {
  return { lines: [], refused: [], linesRead: 0, rowsSkipped: 0, unknownKinds: new Map(), rowsNoSales: 0 };
}

/** How the rows of a file with one sale a row are read. */
export type FlatLayout = Placing &
  MoneyReading &
  ChildStyle & {
    /** The kind a row's own word says; undefined for an unknown word. */
    readKind: (cell: string) => RowKind | undefined;
    /** Each row is one sale: the file has no quantity column and is one row an item sold. */
    isRowOneSale: boolean;
  };

/** What one row gave: a line, part of the line above, nothing to read, or the reason why it is refused. */
export type Outcome = SaleLine | "skip" | "child" | (string & {});

/** The cells of a row that decide what it is. */
export type RowParts = { kind: RowKind; itemCell: string; quantityCell: string; placed: Placed };

/** The quantity in a cell, or why there is none. */
export function quantityIn(cell: string, { map, headings, styles }: FlatLayout): number | string {
  const heading = headings[map.quantity ?? -1] ?? "quantity";
  if (cell === "") return `${heading}: nothing there; write how many were sold`;
  const quantity = readQuantity(cell, styles.decimals.get(map.quantity ?? -1) ?? styles.decimal);
  return quantity ?? `${heading}: "${cut(cell)}" is no quantity; write a number, as in 2`;
}

export function cellOf(row: readonly string[], column: number | undefined): string {
  return column === undefined ? "" : (row[column] ?? "");
}

export function textOrNull(cell: string): string | null {
  const text = cell.trim();
  return text === "" ? null : text;
}

/** Who rang a row, where that is read and the row says it. */
export function staffIn(row: readonly string[], { map }: FlatLayout): Pick<SaleLine, "staff"> {
  if (map.staff === undefined) return {};
  const staff = modifierText(cellOf(row, map.staff)).normalize("NFC");
  return staff === "" ? {} : { staff };
}

/** What programs write where a till has nothing. */
const NOTHING_WRITTEN = new Set(["null", "nan", "n/a", "none", "-", "--"]);

/** The modifiers in a cell, "" for none. "NULL" → "" */
export function modifierText(cell: string): string {
  const text = cell.trim();
  return NOTHING_WRITTEN.has(text.toLowerCase()) ? "" : text;
}

/** The modifiers of a row, from one cell or several. */
export function modifiersIn(row: readonly string[], columns: readonly number[]): string {
  if (columns.length === 1) return modifierText(cellOf(row, columns[0]));
  return columns
    .map((column) => modifierText(cellOf(row, column)))
    .filter((text) => text !== "")
    .join("; ");
}
