import type { ColumnFinding, ColumnMap } from "#engine/sales/read/columns.ts";
import { DateOrderWitness } from "#engine/sales/read/date-order.ts";
import { type DateOrder, dayNumber, readMoment } from "#engine/sales/read/moment.ts";
import { type DecimalMark, noEvidence, weighDecimal } from "#engine/sales/read/number.ts";
import type { SheetRows } from "#engine/sales/read/rows.ts";
import type { SalesShape } from "#engine/sales/read/shape.ts";

/** How the cells of a file are to be read, decided from its whole columns. */
export type CellStyles = {
  dateOrder: DateOrder;
  /** Whether any date needed the order to be known; only then is it part of the shape. */
  isOrderUsed: boolean;
  decimals: Map<number, DecimalMark>;
  decimal: DecimalMark;
  /** Whether the shape or any number shows the mark; only then is it part of the shape. */
  isDecimalShown: boolean;
  /** Every time in the file is midnight: a spreadsheet wrote a date as a date with a time. */
  isDateOnly: boolean;
  /** A plain date column that stays on the evening before when the clock passes midnight. */
  isDateBusinessDate: boolean;
};

export type Planned = { styles: CellStyles; question: string | null };

/**
 * The styles of a file's dates and numbers, each decided from all rows below the headings; or a question.
 *
 * Nothing is guessed: a column that could be read two ways asks, unless the shape or another column answers.
 */
export function planStyles(
  rows: SheetRows,
  firstRow: number,
  map: ColumnMap,
  findings: readonly ColumnFinding[],
  shape: SalesShape | undefined,
): Planned {
  const heading = (column: number): string => findings[column]?.heading ?? `#${column + 1}`;
  const dates = planDates(rows, firstRow, map, shape, heading);
  const numbers = planNumbers(rows, firstRow, map, shape, heading);
  const styles = { ...dates.styles, ...numbers.styles };
  return { styles, question: dates.question ?? numbers.question };
}

type Heading = (column: number) => string;

function planDates(
  rows: SheetRows,
  firstRow: number,
  map: ColumnMap,
  shape: SalesShape | undefined,
  heading: Heading,
) {
  const columns = [map.when, map.date, map.businessDate].filter((column) => column !== undefined);
  const witnesses = columns.map((column) => witnessOf(rows, firstRow, column));
  const needed = witnesses.filter(({ witness }) => witness.isNeeded);
  const styles = {
    dateOrder: shape?.dateOrder ?? ("dmy" as DateOrder),
    isOrderUsed: needed.length > 0,
    isDateOnly:
      map.time === undefined &&
      witnesses.some(({ midnights }) => midnights > 0) &&
      witnesses.every(({ others }) => others === 0),
    isDateBusinessDate: false,
  };
  let question: string | null = null;
  if (shape?.dateOrder === undefined && needed.length > 0) {
    const findings = needed.map(({ witness, column }) => ({
      column,
      finding: witness.decide((order) => agreesWithOthers(rows, firstRow, columns, order)),
    }));
    const orders = new Set(
      findings.flatMap(({ finding }) => (finding.kind === "decided" ? [finding.order] : [])),
    );
    const clash = findings.find(({ finding }) => finding.kind === "contradictory");
    const [order] = orders;
    if (clash !== undefined || orders.size > 1) question = askContradiction(clash ?? findings[0], heading);
    else if (order !== undefined) styles.dateOrder = order;
    else question = askOrder(findings[0], heading);
  }
  styles.isDateBusinessDate = isBusinessDate(rows, firstRow, map, styles.dateOrder);
  return { styles, question };
}

type ColumnOrder = { column: number; finding: ReturnType<DateOrderWitness["decide"]> };

function askOrder(found: ColumnOrder | undefined, heading: Heading): string | null {
  if (found?.finding.kind !== "ambiguous") return null;
  const { orders, example } = found.finding;
  const names = { dmy: 'day first ("dmy")', mdy: 'month first ("mdy")', ymd: 'year first ("ymd")' };
  return `are the dates of the column "${heading(found.column)}" written ${orders.map((order) => names[order]).join(" or ")}? "${example}" could be either; answer as dateOrder in sales-shapes.json.`;
}

function askContradiction(found: ColumnOrder | undefined, heading: Heading): string {
  const column = heading(found?.column ?? 0);
  const examples =
    found?.finding.kind === "contradictory" ? ` ("${found.finding.examples.join('" and "')}")` : "";
  return `the column "${column}" has dates with the day first and dates with the month first${examples}: which one is it? Export the file again with one form of date, or state dateOrder in sales-shapes.json.`;
}

function witnessOf(rows: SheetRows, firstRow: number, column: number) {
  const witness = new DateOrderWitness();
  let midnights = 0;
  let others = 0;
  for (let index = firstRow; index < rows.length; index += 1) {
    const cell = rows[index]?.[column] ?? "";
    // Once a time is seen, dates that start with their year have nothing more to tell.
    if (cell === "" || (others > 0 && cell[4] === "-")) continue;
    const moment = readMoment(cell);
    if (moment === undefined) continue;
    if (moment.date !== null) witness.add(moment.date, cell.trim());
    if (moment.epochS !== null || (moment.secondOfDay ?? 0) !== 0 || moment.offsetS !== null) others += 1;
    else if (moment.secondOfDay === 0) midnights += 1;
  }
  return { column, witness, midnights, others };
}

const AGREEMENT_ROWS = 2000;

/** In an order that holds, the dates of one row lie within a day of each other. */
function agreesWithOthers(
  rows: SheetRows,
  firstRow: number,
  columns: readonly number[],
  order: DateOrder,
): boolean {
  if (columns.length < 2) return true;
  for (const row of rows.slice(firstRow, firstRow + AGREEMENT_ROWS)) {
    const days = columns.map((column) => dayIn(row[column] ?? "", order)).filter((day) => day !== undefined);
    if (Math.max(...days) - Math.min(...days) > 1) return false;
  }
  return true;
}

function dayIn(cell: string, order: DateOrder): number | undefined {
  const date = readMoment(cell)?.date;
  return date === null || date === undefined ? undefined : dayNumber(date, date.order ?? order);
}

const MORNING_ENDS_S = 10 * 3600;

/** Whether a date column beside full times always stays on the evening before: then it is the till's own business date. */
function isBusinessDate(rows: SheetRows, firstRow: number, map: ColumnMap, order: DateOrder): boolean {
  if (map.when === undefined || map.date === undefined || map.businessDate !== undefined) return false;
  let evenings = 0;
  for (const row of rows.slice(firstRow)) {
    const moment = readMoment(row[map.when] ?? "");
    const date = dayIn(row[map.date] ?? "", order);
    if (moment?.date == null || moment.secondOfDay === null || date === undefined || moment.offsetS !== null)
      continue;
    const behind = (dayNumber(moment.date, moment.date.order ?? order) ?? date) - date;
    if (behind === 1 && moment.secondOfDay < MORNING_ENDS_S) evenings += 1;
    else if (behind !== 0) return false;
  }
  return evenings > 0;
}

function planNumbers(
  rows: SheetRows,
  firstRow: number,
  map: ColumnMap,
  shape: SalesShape | undefined,
  heading: Heading,
) {
  const { quantity, gross, net, discount, unitPrice } = map;
  const columns = [quantity, gross, net, discount, unitPrice].filter((column) => column !== undefined);
  const found = columns.map((column) => ({ column, evidence: noEvidence(), thousandths: true }));
  for (let index = firstRow; index < rows.length; index += 1) {
    for (const one of found) {
      const cell = rows[index]?.[one.column] ?? "";
      if (cell.length < 2) continue;
      weighDecimal(cell, one.evidence);
      if (one.thousandths && /[1-9]/.test(cell) && !/[.,]000\D*$/.test(cell)) one.thousandths = false;
    }
  }
  const decimals = new Map<number, DecimalMark>();
  const marks = new Set(found.flatMap(({ evidence }) => markOf(evidence) ?? []));
  const [only] = marks.size === 1 ? marks : [];
  let question: string | null = null;
  for (const { column, evidence, thousandths } of found) {
    const mark = shape?.decimal ?? markOf(evidence) ?? (evidence.unclear === null ? undefined : only);
    if (shape?.decimal === undefined && evidence.dot !== null && evidence.comma !== null)
      question ??= `the column "${heading(column)}" has "${evidence.dot}" and "${evidence.comma}": is its decimal mark "." or ","? State decimal in sales-shapes.json, or export the file again.`;
    const isThousands = mark !== undefined && evidence.unclear !== null && !evidence.unclear.includes(mark);
    // A till that writes one piece as "1,000" beside money as "12.50" would otherwise sell a thousand of it.
    const isDoubtful =
      shape?.decimal === undefined &&
      column === quantity &&
      thousandths &&
      isThousands &&
      markOf(evidence) === undefined;
    if ((mark === undefined && evidence.unclear !== null) || isDoubtful)
      question ??= `is "${evidence.unclear}" in the column "${heading(column)}" a number of thousands, or one with three decimals? State decimal ("." or ",") in sales-shapes.json.`;
    decimals.set(column, mark ?? only ?? ".");
  }
  const shown = shape?.decimal ?? only;
  return {
    styles: { decimals, decimal: shown ?? ("." as const), isDecimalShown: shown !== undefined },
    question,
  };
}

function markOf(evidence: ReturnType<typeof noEvidence>): DecimalMark | undefined {
  if (evidence.dot !== null) return ".";
  return evidence.comma === null ? undefined : ",";
}
