import { dateText } from "#engine/sales/read/clock.ts";
import { DateOrderWitness } from "#engine/sales/read/date-order.ts";
import { nothingRead, type Reading } from "#engine/sales/read/flat-layout.ts";
import type { SaleLine } from "#engine/sales/read/line.ts";
import {
  type DateOrder,
  dayNumber,
  readDate,
  readMoment,
  type WrittenDate,
} from "#engine/sales/read/moment.ts";
import {
  type DecimalEvidence,
  type DecimalMark,
  noEvidence,
  readQuantity,
  weighDecimal,
} from "#engine/sales/read/number.ts";
import { cut } from "#engine/sales/read/place-in-time.ts";
import { isBlank, type SheetRows } from "#engine/sales/read/rows.ts";
import type { SalesShape } from "#engine/sales/read/shape.ts";
import { isPrintNote, isTotalLabel } from "#engine/sales/read/words.ts";

/** Columns whose heading is a day: items in rows, days in columns. */
export type DayColumns = { column: number; date: WrittenDate }[];

/** The columns headed by a day; empty unless there are at least two, or one and nothing else beside the item. */
export function dayColumns(headings: readonly string[]): DayColumns {
  return headings.flatMap((heading, column) => {
    const date = readDate(heading.trim()) ?? readMoment(heading)?.date ?? undefined;
    return date === undefined ? [] : [{ column, date }];
  });
}

export type DayOrItsQuestion = { order: DateOrder; question: string | null };

/** The order in which the headings write their days. */
export function orderOfHeads(
  days: DayColumns,
  headings: readonly string[],
  shape: SalesShape | undefined,
): DayOrItsQuestion {
  if (shape?.dateOrder !== undefined) return { order: shape.dateOrder, question: null };
  const witness = new DateOrderWitness();
  for (const { column, date } of days) witness.add(date, headings[column] ?? "");
  const finding = witness.decide();
  if (finding.kind === "decided") return { order: finding.order, question: null };
  const example = finding.kind === "ambiguous" ? finding.example : finding.examples.join('" and "');
  return {
    order: "dmy",
    question: `is the day or the month first in the headings "${example}"? Answer as dateOrder ("dmy" or "mdy") in sales-shapes.json.`,
  };
}

/** The decimal mark of the cells under the days, or a question where they are not clearly quantities. */
export function decimalOfDays(
  rows: SheetRows,
  firstRow: number,
  days: DayColumns,
  shape: SalesShape | undefined,
): { decimal: DecimalMark; question: string | null } {
  const evidence = noEvidence();
  for (const row of rows.slice(firstRow))
    for (const { column } of days) weighDecimal(row[column] ?? "", evidence);
  return decideDecimal(evidence, shape);
}

/** The same decision on what all cells under the days show. */
export function decideDecimal(
  evidence: DecimalEvidence,
  shape: SalesShape | undefined,
): { decimal: DecimalMark; question: string | null } {
  const decimal = shape?.decimal ?? (evidence.comma !== null ? "," : ".");
  const isClear =
    shape?.decimal !== undefined ||
    (evidence.unclear === null && evidence.dot === null && evidence.comma === null);
  const example = evidence.unclear ?? evidence.comma ?? evidence.dot ?? "";
  return {
    decimal,
    question: isClear
      ? null
      : `are the numbers under the days, such as "${example}", pieces sold or money? Where they are pieces, state decimal ("." or ",") in sales-shapes.json; where they are money, export the quantities.`,
  };
}

/** How items in rows and days in columns are read. */
export type DaysLayout = {
  item: number;
  days: DayColumns;
  order: DateOrder;
  decimal: DecimalMark;
  headings: readonly string[];
};

/** So many of one name in a day, which counts from 1 January 1970. */
export type DaySum = { ringName: string; day: number; quantity: number };

/** Reads items in rows and days in columns: one line for each cell that holds a quantity other than zero. */
export function readDays(rows: SheetRows, firstRow: number, layout: DaysLayout): Reading {
  const reading = nothingRead();
  for (let index = firstRow; index < rows.length; index += 1)
    for (const sum of readDaysRow(rows[index] ?? [], index, layout, reading))
      reading.lines.push(summedLine(sum));
  return reading;
}

/** The sums of one row; `reading` is told where it was passed over or refused. */
export function readDaysRow(
  row: readonly string[],
  index: number,
  layout: DaysLayout,
  reading: Reading,
): DaySum[] {
  const name = (row[layout.item] ?? "").trim().normalize("NFC");
  const first = row.find((cell) => cell.trim() !== "") ?? "";
  const isRepeatedHeading = row.every((cell, column) => cell === layout.headings[column]);
  if (isBlank(row) || isRepeatedHeading || isTotalLabel(name) || (name === "" && isTotalLabel(first))) {
    reading.rowsSkipped += 1;
    return [];
  }
  const sums = sumsOf(row, name, layout);
  if (typeof sums === "string") {
    reading.refused.push({ row: index + 1, reason: sums });
    return [];
  }
  reading.linesRead += 1;
  return sums;
}

function sumsOf(row: readonly string[], ringName: string, layout: DaysLayout): DaySum[] | string {
  const sums: DaySum[] = [];
  let filled = 0;
  for (const { column, date } of layout.days) {
    const cell = (row[column] ?? "").trim();
    if (cell === "" || cell === "-" || cell === "–") continue;
    filled += 1;
    const quantity = readQuantity(cell, layout.decimal);
    const day = dayNumber(date, date.order ?? layout.order);
    if (day === undefined) return `${layout.headings[column]}: no such day; write the heading as YYYY-MM-DD`;
    if (quantity === undefined)
      return `${layout.headings[column]}: "${cut(cell)}" is no quantity; write a number, as in 2`;
    if (quantity !== 0) sums.push({ ringName, day, quantity });
  }
  return ringName === "" && filled > 0
    ? `${layout.headings[0] ?? "item"}: nothing there; write what was sold`
    : sums;
}

function summedLine({ ringName, day, quantity }: DaySum): SaleLine {
  return {
    businessDate: dateText(day),
    at: null,
    ringName,
    modifiers: "",
    quantity,
    grossMinor: null,
    netMinor: null,
    check: null,
    lineNo: null,
  };
}

/**
 * The one day that the lines above the headings name, for a file without dates in its rows; or a question.
 *
 * A line that tells when the report was made is not asked. "Sales of Monday, 3 March 2025" → 2025-03-03.
 */
export function dayInTitles(
  titles: SheetRows,
  shape: SalesShape | undefined,
): { day: string | null; question: string | null } {
  if (shape?.day !== undefined) return { day: shape.day, question: null };
  const witness = new DateOrderWitness();
  const dates: WrittenDate[] = [];
  for (const row of titles) {
    if (row.some(isPrintNote)) continue;
    for (const date of row.flatMap(datesWithin)) {
      witness.add(date, date.parts.join("/"));
      dates.push(date);
    }
  }
  const finding = witness.decide();
  const order = shape?.dateOrder ?? (finding.kind === "decided" ? finding.order : undefined);
  if (dates.length > 0 && order === undefined)
    return {
      day: null,
      question: `is the day or the month first in the date above the headings? Answer as dateOrder ("dmy" or "mdy") in sales-shapes.json.`,
    };
  const days = new Set(dates.map((date) => dayNumber(date, date.order ?? order ?? "dmy")));
  const [day] = days;
  if (days.size === 1 && day !== undefined) return { day: dateText(day), question: null };
  const question =
    days.size > 1
      ? `the lines above the headings name ${days.size} days, and the rows name none: which day are these sales of? Export one day a file, or with a date in each row.`
      : "no column holds a date, and no line above the headings names the day: which day are these sales of? Export with a date, or state day (YYYY-MM-DD) for this file in sales-shapes.json.";
  return { day: null, question };
}

const DATE_WITHIN =
  /\d{4}[-/.]\d{1,2}[-/.]\d{1,2}|\d{1,2}[-/.]\d{1,2}[-/.](?:\d{4}|\d{2})(?!\d)|\d{1,2}\.?(?: de)? \p{L}{3,12}\.?(?: de)? \d{4}|\p{L}{3,12}\.? \d{1,2}(?:st|nd|rd|th)?,? \d{4}/gu;

function datesWithin(cell: string): WrittenDate[] {
  return [...cell.slice(0, 300).matchAll(DATE_WITHIN)].flatMap(([text]) => readDate(text) ?? []);
}
