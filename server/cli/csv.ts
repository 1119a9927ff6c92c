import Papa from "papaparse";
import { harmlessText } from "#engine/sheet-text.ts";
import type { Column } from "#server/cli/table.ts";

/**
 * Rows as RFC 4180 text with unrounded numbers. Texts that a spreadsheet would run are led by an
 * apostrophe; numbers, negative ones too, are left as they are.
 */
export function csvTable<Row>(columns: readonly Column<Row>[], rows: readonly Row[]): string {
  const heads = columns.map(({ head }) => safeCell(head));
  const data = rows.map((row) => columns.map(({ cell }) => safeCell(cell(row))));
  return Papa.unparse([heads, ...data], { newline: "\r\n" });
}

export function safeCell(value: string | number | null | undefined): string | number {
  if (value === null || value === undefined) return "";
  return typeof value === "string" ? harmlessText(value) : value;
}
