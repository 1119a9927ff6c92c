import { harmlessText } from "#engine/sheet-text.ts";
import type { CellValue, Column } from "./table-column.ts";

/** Spaces at which a screen breaks no line; a file has plain ones. */
const UNBROKEN = /[\u00a0\u202f]/g;

/** A cell as it goes into a file: numbers bare, whatever their sign; text made harmless; nothing as empty. */
export function fileCell(kind: Column<never>["kind"], value: CellValue): string {
  if (value === null) return "";
  if (kind === "number" && typeof value === "number") return String(value);
  return harmlessText(String(value).replace(UNBROKEN, " "));
}

/** Head and rows of a table as file cells, the unit in the head as "On hand (ml)". */
export function fileRows<Row>(columns: readonly Column<Row>[], rows: readonly Row[]): string[][] {
  const written = columns.filter(({ isDrawn }) => !isDrawn);
  const head = written.map(({ head: name, unit }) => harmlessText(unit ? `${name} (${unit})` : name));
  return [head, ...rows.map((row) => written.map(({ kind, value }) => fileCell(kind, value(row))))];
}

/** Tab-separated text for pasting into a sheet; tabs and line breaks inside a cell become spaces. */
export function tabText(cells: readonly string[][]): string {
  return cells.map((row) => row.map((cell) => cell.replace(/[\t\r\n]+/g, " ")).join("\t")).join("\n");
}
