import { isCanonical } from "#engine/sales/read/canonical.ts";
import type { ColumnMap } from "#engine/sales/read/columns.ts";
import type { Encoding } from "#engine/sales/read/decode.ts";
import type { FlatLayout } from "#engine/sales/read/flat-layout.ts";
import { findDelimiter } from "#engine/sales/read/header.ts";
import { roleOf } from "#engine/sales/read/headings.ts";
import type { DateOrder } from "#engine/sales/read/moment.ts";
import type { CellStyles } from "#engine/sales/read/plan.ts";
import { agreesWithOthers, dateColumns } from "#engine/sales/read/plan-dates.ts";
import {
  type FileUnderstood,
  open,
  type ReadOptions,
  understandRows,
} from "#engine/sales/read/read-sales.ts";
import { HandOver, HeadTooShort, OtherEncoding } from "#engine/sales/read/regular/hand-over.ts";
import { cut, type SheetRows } from "#engine/sales/read/rows.ts";
import type { SalesShape } from "#engine/sales/read/shape.ts";
import type { DaysLayout } from "#engine/sales/read/summed.ts";

/** How a regular file is read, decided on a sample of it: with a sale a row, or with items in rows and days in columns. */
export type RegularPlan = RowsPlan | DaysPlan;

export type RowsPlan = PlanOfAny & {
  layout: FlatLayout;
  styles: CellStyles;
  /** Whether rows may belong to rows above them. */
  hasChildren: boolean;
};

export type DaysPlan = PlanOfAny & { days: DaysLayout };

type PlanOfAny = FileUnderstood & {
  delimiter: string;
  statedShape: SalesShape | undefined;
  /** Columns whose heading may name kinds of rows, though no kind was seen in them. */
  watched: number[];
  /** Whether the dates of the first rows agree in an order. */
  agrees: (order: DateOrder) => boolean;
};

/** The rows that columns are found by (see findColumns), and as many above them as headings are looked for in. */
const HEAD_ROWS_LEAST = 2_100;

/**
 * Plans the reading from the head of a file and some slices of the rest; `isWhole` says that the head is all of it, `turnedFrom`
 * that it was turned into UTF-8 from another encoding.
 *
 * Throws HandOver where only a reading of all rows can tell. Throws SalesFileError like readSales for what is no list.
 */
export function planRegular(
  head: Uint8Array,
  slices: readonly string[],
  isWhole: boolean,
  options: ReadOptions,
  turnedFrom?: Encoding,
): RegularPlan {
  const opened = open(head, options, turnedFrom);
  const { encoding, text } = opened.file;
  if (encoding !== "utf-8" && turnedFrom === undefined) throw new OtherEncoding(encoding);
  if (isCanonical(text)) throw new HandOver("The file is in our own form, which has its own reader.");
  const delimiter = findDelimiter(opened.file.text, opened.shape);
  if (delimiter === undefined || delimiter.charCodeAt(0) > 126 || delimiter === '"')
    throw new HandOver("The file has no plain delimiter.");
  const rows = rowsIn(opened.file.text, delimiter, options.fileName);
  if (rows === undefined) throw new HandOver("A quotation mark is open.");
  if (!isWhole && rows.length < HEAD_ROWS_LEAST) throw new HeadTooShort("The first rows are too long.");
  const width = (rows[rows.length - 1] ?? []).length;
  const more = slices.flatMap((slice) => rowsIn(slice, delimiter, options.fileName) ?? []);
  const sample = [...rows, ...more.filter((row) => row.length === width)];
  const file = understandRows(sample, delimiter, opened, options);
  const { layout, days, styles, question, map } = file.understood;
  const plan = {
    ...file,
    delimiter,
    statedShape: opened.shape,
    watched: watchedColumns(file),
    agrees: (order: DateOrder) => agreesWithOthers(rows, file.understood.firstRow, dateColumns(map), order),
  };
  if (question === null && days !== null) return { ...plan, days };
  if (question !== null || layout === null || styles === null)
    throw new HandOver("The file is asked about, or has no row for each sale.");
  refuseTogether(layout);
  return { ...plan, layout, styles, hasChildren: hasChildren(layout) };
}

/** Whether the first rows show that rows belong to rows above them. */
function hasChildren({ map, isIndentMeant, isMinusRemoval }: FlatLayout): boolean {
  return map.parent !== undefined || isIndentMeant || isMinusRemoval;
}

function rowsIn(text: string, delimiter: string, fileName: string): SheetRows | undefined {
  const plain = text.includes("\r") ? text.replace(/\r\n?/g, "\n") : text;
  const { rows, openQuoteRow } = cut(plain, { delimiter, newline: "\n", quoteChar: '"' }, fileName);
  return openQuoteRow === null ? rows : undefined;
}

/** Files where a part of the rows cannot speak for all. */
function refuseTogether(layout: FlatLayout): void {
  const { map } = layout;
  if (map.item === undefined || layout.day !== undefined || dateColumns(map).length === 0)
    throw new HandOver("The rows have no date or no item.");
  if (map.when !== undefined && (map.date !== undefined || map.time !== undefined))
    throw new HandOver("The file has two clocks.");
  if (map.unitPrice !== undefined && map.gross === undefined && map.net === undefined)
    throw new HandOver("The file has only a price.");
  if (layout.styles.isDateOnly) throw new HandOver("Every time is midnight.");
}

function watchedColumns({ understood: { findings, headings } }: FileUnderstood): number[] {
  return findings.flatMap(({ role }, column) =>
    role === "other" && roleOf(headings[column] ?? "")?.role === "kind" ? [column] : [],
  );
}

/** The columns of a file that a reading of regular rows looks at. */
export function columnsRead(map: ColumnMap): number[] {
  const { modifiers, ...single } = map;
  return [...Object.values(single), ...modifiers];
}
