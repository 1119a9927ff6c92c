import type { CellValue, Column } from "./table-column.ts";

export type Sort = { key: string; isDescending: boolean };

const byName = new Intl.Collator(undefined, { numeric: true, sensitivity: "base" });

/** Rows in the order of one column; equal rows keep their order and missing values come last either way. */
export function sortRows<Row>(
  rows: readonly Row[],
  columns: readonly Column<Row>[],
  sort: Sort | null,
): Row[] {
  const column = columns.find(({ key }) => key === sort?.key);
  if (sort === null || column === undefined) return [...rows];
  const sign = sort.isDescending ? -1 : 1;
  return [...rows].sort((a, b) => compare(column.value(a), column.value(b), sign));
}

function compare(a: CellValue, b: CellValue, sign: 1 | -1): number {
  if (a === null || b === null) return a === b ? 0 : a === null ? 1 : -1;
  if (typeof a === "number" && typeof b === "number") return sign * (a - b);
  return sign * byName.compare(String(a), String(b));
}

/** Rows in which some text cell holds every word typed. */
export function filterRows<Row>(rows: readonly Row[], columns: readonly Column<Row>[], typed: string): Row[] {
  const words = typed.toLocaleLowerCase().split(/\s+/).filter(Boolean);
  if (words.length === 0) return [...rows];
  const texts = columns.filter(({ kind }) => kind === "text");
  return rows.filter((row) => {
    const line = texts
      .map(({ value }) => value(row) ?? "")
      .join(" ")
      .toLocaleLowerCase();
    return words.every((word) => line.includes(word));
  });
}
