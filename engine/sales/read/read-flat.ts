import { Checks, readChild } from "#engine/sales/read/child-rows.ts";
import {
  cellOf,
  type FlatLayout,
  modifiersIn,
  nothingRead,
  type Outcome,
  quantityIn,
  type Reading,
  type RowParts,
  staffIn,
  textOrNull,
} from "#engine/sales/read/flat-layout.ts";
import { readMoney, takenBack } from "#engine/sales/read/money.ts";
import { cut, type Placed, placeRow } from "#engine/sales/read/place-in-time.ts";
import { isBlank, type SheetRows } from "#engine/sales/read/rows.ts";
import { isReportNote, isTotalLabel, type RowKind } from "#engine/sales/read/words.ts";

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
  const reading = nothingRead();
  const checks = new Checks(layout.map.parent !== undefined);
  for (let index = firstRow; index < lastRow; index += 1) {
    const outcome = readRow(rows[index] ?? [], layout, checks, reading);
    if (outcome === "skip") reading.rowsSkipped += 1;
    else if (outcome === "child") reading.linesRead += 1;
    else if (typeof outcome === "string") {
      reading.refused.push({ row: index + 1, reason: outcome });
    } else {
      reading.lines.push(outcome);
      reading.linesRead += 1;
      checks.add(outcome);
    }
  }
  return reading;
}

/** What one row gives, counting in `reading` what is no sale and which kinds are unknown. */
export function readRow(
  row: readonly string[],
  layout: FlatLayout,
  checks: Checks,
  reading: Reading,
): Outcome {
  if (isNothing(row, layout)) return "skip";
  const { map, headings } = layout;
  if (row.length > headings.length && row.slice(headings.length).some((cell) => cell.trim() !== "")) {
    checks.forgetLast();
    return `the row has ${row.length} cells where the headings have ${headings.length}; put names and amounts that hold the delimiter in quotation marks`;
  }
  const kind = rowKind(row, layout, reading.unknownKinds);
  if (kind === "not a sale") {
    reading.rowsNoSales += 1;
    return "skip";
  }
  const itemCell = cellOf(row, map.item);
  const quantityCell = cellOf(row, map.quantity).trim();
  const placed = placeRow(row, layout);
  if (isTotalRow(row, itemCell, placed, layout)) return "skip";
  const child = readChild(row, layout, { kind, itemCell, quantityCell, placed }, checks);
  if (child !== undefined) return child;
  checks.forgetLast();
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
    row[item]?.trim() === headings[item] &&
    row.every((cell, column) => cell.trim() === (headings[column] ?? "").trim());
  if (isHeaderAgain) return true;
  const filled = row.filter((cell) => cell.trim() !== "");
  return filled.length === 1 && row[0]?.trim() !== "" && isReportNote(filled[0] ?? "");
}

function rowKind(row: readonly string[], layout: FlatLayout, unknownKinds: Map<string, number>): RowKind {
  if (layout.map.kind === undefined) return "sale";
  const cell = cellOf(row, layout.map.kind);
  const kind = layout.readKind(cell);
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
    ...staffIn(row, layout),
  };
}

/** One sale a row; a row whose money is negative takes one sale back. */
function impliedQuantity(row: readonly string[], layout: FlatLayout): number | string {
  const money = readMoney(row, 1, layout);
  if (typeof money === "string") return money;
  return (money.netMinor ?? money.grossMinor ?? 0) < 0 ? -1 : 1;
}

function cleanName(cell: string): string {
  return cell.trim().normalize("NFC");
}

function nothingIn({ headings }: FlatLayout, column: number | undefined, remedy: string): string {
  return `${headings[column ?? -1] ?? "item"}: nothing there; ${remedy}`;
}
