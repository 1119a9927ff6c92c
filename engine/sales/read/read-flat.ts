import { attach, type ChildStyle, childText } from "#engine/sales/read/children.ts";
import type { RefusedRow, SaleLine } from "#engine/sales/read/line.ts";
import { type Money, type MoneyReading, readMoney } from "#engine/sales/read/money.ts";
import { readQuantity } from "#engine/sales/read/number.ts";
import { cut, type Placed, type Placing, placeRow } from "#engine/sales/read/place-in-time.ts";
import { isBlank, type SheetRows } from "#engine/sales/read/rows.ts";
import { isReportNote, isTotalLabel, kindOf, type RowKind } from "#engine/sales/read/words.ts";

export type Reading = {
  lines: SaleLine[];
  refused: RefusedRow[];
  linesRead: number;
  rowsSkipped: number;
  unknownKinds: Map<string, number>;
};

export type FlatLayout = Placing &
  MoneyReading &
  ChildStyle & {
    /** The business date of a file that has no date in its rows; undefined where the rows have one. */
    day: string | undefined;
    /** Each row is one sale: the file has no quantity column and is one row an item sold. */
    isRowOneSale: boolean;
  };

/**
 * Reads rows of one sale (or one child of a sale) each.
 *
 * A row that cannot be read is refused with its reason and never becomes a line; no quantity is made up. Blank rows,
 * repeated headings, totals and rows that say they are no sales are passed over and counted.
 */
export function readFlat(
  rows: SheetRows,
  firstRow: number,
  layout: FlatLayout,
  lastRow = rows.length,
): Reading {
  const reading: Reading = { lines: [], refused: [], linesRead: 0, rowsSkipped: 0, unknownKinds: new Map() };
  const checks = new Checks();
  for (let index = firstRow; index < lastRow; index += 1) {
    const outcome = readRow(rows[index] ?? [], layout, checks, reading.unknownKinds);
    if (outcome === "skip") reading.rowsSkipped += 1;
    else if (outcome === "child") reading.linesRead += 1;
    else if (typeof outcome === "string") {
      reading.refused.push({ row: index + 1, reason: outcome });
      checks.forgetLast();
    } else {
      reading.lines.push(outcome);
      reading.linesRead += 1;
      checks.add(outcome);
    }
  }
  return reading;
}

type Outcome = SaleLine | "skip" | "child" | (string & {});

function readRow(
  row: readonly string[],
  layout: FlatLayout,
  checks: Checks,
  unknownKinds: Map<string, number>,
): Outcome {
  if (isNothing(row, layout)) return "skip";
  const { map, headings } = layout;
  if (row.length > headings.length && row.slice(headings.length).some((cell) => cell.trim() !== ""))
    return `the row has ${row.length} cells where the headings have ${headings.length}; put names and amounts that hold the delimiter in quotation marks`;
  const kind = rowKind(row, layout, unknownKinds);
  if (kind === "not a sale") return "skip";
  const itemCell = cellOf(row, map.item);
  const quantityCell = cellOf(row, map.quantity).trim();
  const placed = layout.day === undefined ? placeRow(row, layout) : { businessDate: layout.day, at: null };
  if (isTotalRow(row, itemCell, placed, layout)) return "skip";
  const child = readChild(row, layout, { kind, itemCell, quantityCell, placed }, checks);
  if (child !== undefined) return child;
  if (itemCell.trim() === "")
    return quantityCell === "" ? "skip" : nothingIn(layout, map.item, "write what was sold");
  if (placed === "none")
    return nothingIn(layout, map.when ?? map.date ?? map.businessDate, "write the date of the sale");
  if ("wrong" in placed) return placed.wrong;
  return readLine(row, layout, { kind, itemCell, quantityCell, placed });
}

function isNothing(row: readonly string[], { map, headings }: FlatLayout): boolean {
  if (isBlank(row)) return true;
  const item = map.item ?? 0;
  const isHeaderAgain =
    row[item] === headings[item] &&
    row.every((cell, column) => cell.trim() === (headings[column] ?? "").trim());
  if (isHeaderAgain) return true;
  const filled = row.filter((cell) => cell.trim() !== "");
  return filled.length === 1 && row[0]?.trim() !== "" && isReportNote(filled[0] ?? "");
}

function rowKind(
  row: readonly string[],
  { map, headings }: FlatLayout,
  unknownKinds: Map<string, number>,
): RowKind {
  if (map.kind === undefined) return "sale";
  const cell = cellOf(row, map.kind);
  const kind = kindOf(cell, headings[map.kind] ?? "");
  if (kind === undefined) unknownKinds.set(cut(cell), (unknownKinds.get(cut(cell)) ?? 0) + 1);
  return kind ?? "sale";
}

function isTotalRow(row: readonly string[], itemCell: string, placed: Placed, layout: FlatLayout): boolean {
  const hasDate = layout.day === undefined && placed !== "none" && !("wrong" in placed);
  if (hasDate) return false;
  const first = row.find((cell) => cell.trim() !== "") ?? "";
  return (
    isTotalLabel(itemCell) ||
    (itemCell.trim() === "" && isTotalLabel(first)) ||
    (placed !== "none" && "wrong" in placed && isTotalLabel(first))
  );
}

type RowParts = { kind: RowKind; itemCell: string; quantityCell: string; placed: Placed };

function readLine(
  row: readonly string[],
  layout: FlatLayout,
  parts: RowParts & { placed: { businessDate: string; at: string | null } },
): Outcome {
  const { map } = layout;
  const written = layout.isRowOneSale ? impliedQuantity(row, layout) : quantityIn(parts.quantityCell, layout);
  if (typeof written === "string") return written;
  const quantity = parts.kind === "void" && written > 0 ? -written : written;
  const money = readMoney(row, quantity, layout);
  if (typeof money === "string") return money;
  const signed = quantity < 0 ? takenBack(money) : money;
  return {
    businessDate: parts.placed.businessDate,
    at: parts.placed.at,
    ringName: cleanName(parts.itemCell),
    modifiers: modifiersIn(row, map.modifiers),
    quantity,
    grossMinor: signed.grossMinor,
    netMinor: signed.netMinor,
    check: textOrNull(cellOf(row, map.check)),
    lineNo: textOrNull(cellOf(row, map.lineNo)),
  };
}

function quantityIn(cell: string, { map, headings, styles }: FlatLayout): number | string {
  const heading = headings[map.quantity ?? -1] ?? "quantity";
  if (cell === "") return `${heading}: nothing there; write how many were sold`;
  const quantity = readQuantity(cell, styles.decimals.get(map.quantity ?? -1) ?? styles.decimal);
  return quantity ?? `${heading}: "${cut(cell)}" is no quantity; write a number, as in 2`;
}

/** One sale a row; a row whose money is negative takes one sale back. */
function impliedQuantity(row: readonly string[], layout: FlatLayout): number | string {
  const money = readMoney(row, 1, layout);
  if (typeof money === "string") return money;
  return (money.netMinor ?? money.grossMinor ?? 0) < 0 ? -1 : 1;
}

/** What is taken back brings nothing in, however the till signs its money. */
function takenBack({ grossMinor, netMinor }: Money): Money {
  const back = (minor: number | null): number | null => (minor === null || minor <= 0 ? minor : -minor);
  return { grossMinor: back(grossMinor), netMinor: back(netMinor) };
}

/**
 * A row that belongs to a line above, where the file says so clearly: by its kind, a parent column, a mark or an indent
 * before its name, or because nothing but a name (and its price) stands in it below a dated line.
 */
function readChild(
  row: readonly string[],
  layout: FlatLayout,
  parts: RowParts,
  checks: Checks,
): Outcome | undefined {
  const { map, headings } = layout;
  const name = parts.itemCell.trim();
  const parentCell = cellOf(row, map.parent).trim();
  const marked = layout.isRowOneSale
    ? undefined
    : childText(parts.itemCell, parts.quantityCell !== "", layout);
  const isChild = parts.kind === "modifier" || parentCell !== "" || (marked !== undefined && name !== "");
  if (!isChild && !isBareName(row, layout, parts)) return undefined;
  const text = marked ?? (name === "" ? modifiersIn(row, map.modifiers) : name);
  if (text === "") return "skip";
  const check = textOrNull(cellOf(row, map.check));
  const parent = parentCell === "" ? checks.last(check) : checks.find(parentCell, check);
  if (parent === undefined)
    return parentCell === ""
      ? `${headings[map.item ?? 0]}: "${cut(text)}" looks like a modifier, but no line of its check stands above it; mend the row or leave it out`
      : `${headings[map.parent ?? 0]}: no line "${cut(parentCell)}" above; mend the row or leave it out`;
  const wrong = quantityMismatch(parts.quantityCell, parent, layout);
  if (wrong !== undefined && marked !== undefined && parts.kind !== "modifier" && parentCell === "")
    return wrong;
  const money = readMoney(row, 1, layout);
  if (typeof money === "string") return money;
  const signed = parent.quantity < 0 ? takenBack(money) : money;
  attach(parent, text, signed.grossMinor, signed.netMinor);
  return "child";
}

/** Only a name, no more cells than headings and no fewer, below a line: what a till prints under a drink. */
function isBareName(
  row: readonly string[],
  layout: FlatLayout,
  { itemCell, quantityCell, placed }: RowParts,
): boolean {
  const { map, headings } = layout;
  if (layout.day !== undefined || layout.isRowOneSale || placed !== "none") return false;
  if (quantityCell !== "" || itemCell.trim() === "" || row.length !== headings.length) return false;
  return (
    cellOf(row, map.check).trim() === "" && cellOf(row, map.lineNo).trim() === "" && !isReportNote(itemCell)
  );
}

function quantityMismatch(cell: string, parent: SaleLine, layout: FlatLayout): string | undefined {
  if (cell === "") return undefined;
  const quantity = quantityIn(cell, layout);
  if (typeof quantity === "string") return quantity;
  if (Math.abs(quantity) === Math.abs(parent.quantity) || quantity === 1 || quantity === 0) return undefined;
  return `the row looks like a modifier of "${cut(parent.ringName)}" but has another quantity (${quantity}); name a parent or kind column, or mend the row`;
}

/** The lines of the checks so far, to find the one that a child row belongs to. */
class Checks {
  #last: SaleLine | undefined;
  #byKey = new Map<string, SaleLine>();

  add(line: SaleLine): void {
    this.#last = line;
    // Only the checks around the current row are asked for; older ones may go.
    if (this.#byKey.size > 10_000) this.#byKey.clear();
    this.#byKey.set(`${line.check ?? ""}\u0000name\u0000${line.ringName}`, line);
    if (line.lineNo !== null) this.#byKey.set(`${line.check ?? ""}\u0000line\u0000${line.lineNo}`, line);
  }

  /** After a refused row nobody knows what the next child belongs to. */
  forgetLast(): void {
    this.#last = undefined;
  }

  last(check: string | null): SaleLine | undefined {
    return check === null || this.#last?.check === check ? this.#last : undefined;
  }

  find(parent: string, check: string | null): SaleLine | undefined {
    const checkKey = check ?? this.#last?.check ?? "";
    const name = parent.normalize("NFC");
    return (
      this.#byKey.get(`${checkKey}\u0000line\u0000${name}`) ??
      this.#byKey.get(`${checkKey}\u0000name\u0000${name}`)
    );
  }
}

function cellOf(row: readonly string[], column: number | undefined): string {
  return column === undefined ? "" : (row[column] ?? "");
}

function textOrNull(cell: string): string | null {
  const text = cell.trim();
  return text === "" ? null : text;
}

function cleanName(cell: string): string {
  return cell.trim().normalize("NFC");
}

function modifiersIn(row: readonly string[], columns: readonly number[]): string {
  if (columns.length === 1) return cellOf(row, columns[0]).trim();
  return columns
    .map((column) => cellOf(row, column).trim())
    .filter((text) => text !== "")
    .join("; ");
}

function nothingIn({ headings }: FlatLayout, column: number | undefined, remedy: string): string {
  return `${headings[column ?? -1] ?? "item"}: nothing there; ${remedy}`;
}
