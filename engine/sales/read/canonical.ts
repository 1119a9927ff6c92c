import Papa from "papaparse";
import type { ReadSales, RefusedRow, SaleLine } from "#engine/sales/read/line.ts";
import { cut } from "#engine/sales/read/place-in-time.ts";
import type { ReadOptions } from "#engine/sales/read/read-sales.ts";
import { cut as cutRows, isBlank } from "#engine/sales/read/rows.ts";
import { harmlessText, textOfCell } from "#engine/sheet-text.ts";

/** The headings of our own sales file, in their order. */
export const CANONICAL_HEADINGS = [
  "business_date",
  "sold_at",
  "ring_name",
  "modifiers",
  "quantity",
  "gross",
  "net",
  "check",
  "line",
] as const;
const HEADER = CANONICAL_HEADINGS.join(",");
const WIDTH = CANONICAL_HEADINGS.length;
const INSTANT = /^\d{4}-\d\d-\d\dT\d\d:\d\d:\d\dZ$/;
const DATE = /^\d{4}-\d\d-\d\d$/;
const NUMBER = /^-?\d+(?:\.\d+)?(?:e[+-]?\d{1,3})?$/;

/**
 * Sale lines as our own sales file: RFC 4180, times in UTC, money in major units, one row a line in the order given.
 *
 * A text that a spreadsheet would run is led by an apostrophe, which readSales takes off again: it gives back the same lines.
 * Only where a line says who rang it is there a column for that.
 * A line of 1450 minor units and two currency digits writes "14.50".
 */
export function writeSales(lines: readonly SaleLine[], currencyDigits: number): string {
  const hasStaff = lines.some(({ staff }) => staff !== undefined);
  const rows = lines.map((line) => [
    line.businessDate,
    line.at ?? "",
    harmlessText(line.ringName),
    harmlessText(line.modifiers),
    String(line.quantity),
    majorUnits(line.grossMinor, currencyDigits),
    majorUnits(line.netMinor, currencyDigits),
    harmlessText(line.check ?? ""),
    harmlessText(line.lineNo ?? ""),
    ...(hasStaff ? [harmlessText(line.staff ?? "")] : []),
  ]);
  const headings = [...CANONICAL_HEADINGS, ...(hasStaff ? ["staff"] : [])];
  return `${Papa.unparse([headings, ...rows], { newline: "\r\n" })}\r\n`;
}

/** Whole minor units as text in major units. -5 with two digits → "-0.05". */
function majorUnits(minor: number | null, currencyDigits: number): string {
  if (minor === null) return "";
  const digits = String(Math.abs(minor)).padStart(currencyDigits + 1, "0");
  const point = digits.length - currencyDigits;
  const text = currencyDigits === 0 ? digits : `${digits.slice(0, point)}.${digits.slice(point)}`;
  return minor < 0 ? `-${text}` : text;
}

/** Whether a text is our own sales file, by its exact first line. */
export function isCanonical(text: string): boolean {
  return (
    text.startsWith(HEADER) && /^(?:,staff)?(?:\r|\n|$)/.test(text.slice(HEADER.length, HEADER.length + 7))
  );
}

/** The lines of our own sales file. Rows that break its form are refused, with the column and the reason. */
export function readCanonical(
  text: string,
  {
    currencyDigits,
    fileName,
    keepsStaff = false,
  }: Pick<ReadOptions, "currencyDigits" | "fileName" | "keepsStaff">,
): Omit<ReadSales, "shape"> {
  const newline = /^[^\n]*\r\n/.test(text) ? "\r\n" : "\n";
  const hasStaff = text.startsWith(`${HEADER},staff`);
  const { rows, openQuoteRow } = cutRows(text, { delimiter: ",", newline, quoteChar: '"' }, fileName);
  const lines: SaleLine[] = [];
  const refused: RefusedRow[] = [];
  let rowsSkipped = 0;
  for (let index = 1; index < rows.length; index += 1) {
    const row = rows[index] ?? [];
    const isOpen = openQuoteRow === index + 1;
    const read = isOpen
      ? "a quotation mark is never closed; close it"
      : lineOf(row, currencyDigits, { hasStaff, keepsStaff });
    if (isBlank(row)) rowsSkipped += 1;
    else if (typeof read === "string") refused.push({ row: index + 1, reason: read });
    else lines.push(read);
  }
  return { lines, refused, question: null, linesRead: lines.length, rowsSkipped, notices: [] };
}

function lineOf(
  row: readonly string[],
  currencyDigits: number,
  { hasStaff, keepsStaff }: { hasStaff: boolean; keepsStaff: boolean },
): SaleLine | string {
  const width = hasStaff ? WIDTH + 1 : WIDTH;
  if (row.length !== width)
    return `the row has ${row.length} cells, not ${width}; quote cells that hold a comma`;
  const [
    businessDate = "",
    at = "",
    ringName = "",
    modifiers = "",
    quantity = "",
    gross = "",
    net = "",
    check = "",
    line = "",
    staff = "",
  ] = row;
  if (!isDay(businessDate)) return `business_date: "${cut(businessDate)}" is no date; write YYYY-MM-DD`;
  if (at !== "" && !(INSTANT.test(at) && isDay(at.slice(0, 10)) && !Number.isNaN(Date.parse(at))))
    return `sold_at: "${cut(at)}" is no instant; write YYYY-MM-DDTHH:MM:SSZ`;
  if (ringName.trim() === "") return "ring_name: nothing there; write what was sold";
  if (!NUMBER.test(quantity) || !Number.isFinite(Number(quantity)))
    return `quantity: "${cut(quantity)}" is no number; write it as in 2 or -1.5`;
  const grossMinor = minorUnits(gross, currencyDigits);
  const netMinor = minorUnits(net, currencyDigits);
  if (grossMinor === undefined) return `gross: "${cut(gross)}" is no amount of money; write it as in 12.50`;
  if (netMinor === undefined) return `net: "${cut(net)}" is no amount of money; write it as in 12.50`;
  return {
    businessDate,
    at: at === "" ? null : at,
    ringName: textOfCell(ringName.trim()).normalize("NFC"),
    modifiers: textOfCell(modifiers.trim()),
    quantity: Number(quantity) + 0,
    grossMinor,
    netMinor,
    check: check === "" ? null : textOfCell(check),
    lineNo: line === "" ? null : textOfCell(line),
    ...(keepsStaff && staff !== "" ? { staff: textOfCell(staff) } : {}),
  };
}

function isDay(text: string): boolean {
  if (!DATE.test(text)) return false;
  const date = new Date(`${text}T00:00:00Z`);
  return !Number.isNaN(date.getTime()) && date.toISOString().startsWith(text);
}

function minorUnits(cell: string, currencyDigits: number): number | null | undefined {
  if (cell === "") return null;
  const match = /^(-?)(\d{1,16})(?:\.(\d+))?$/.exec(cell);
  if (match === null || (match[3] ?? "").length > currencyDigits) return undefined;
  const minor = Number(`${match[2]}${(match[3] ?? "").padEnd(currencyDigits, "0")}`);
  if (!Number.isSafeInteger(minor)) return undefined;
  return match[1] === "-" && minor !== 0 ? -minor : minor;
}
