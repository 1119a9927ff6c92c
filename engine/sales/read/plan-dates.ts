import type { ColumnMap } from "#engine/sales/read/columns.ts";
import { DateOrderWitness } from "#engine/sales/read/date-order.ts";
import { type DateOrder, dayNumber, readMoment, readTimeOfDay } from "#engine/sales/read/moment.ts";
import type { Heading } from "#engine/sales/read/plan.ts";
import { remembering } from "#engine/sales/read/remember.ts";
import type { SheetRows } from "#engine/sales/read/rows.ts";
import type { SalesShape } from "#engine/sales/read/shape.ts";

/** What the rows of a file show about its dates. */
export type DateEvidence = {
  columns: { column: number; witness: DateOrderWitness; midnights: number; others: number }[];
  /** Whether the dates of one row lie near each other in an order. */
  agrees: (order: DateOrder) => boolean;
  /** Whether the dates are the till's business dates, in an order. */
  isBusinessDate: (order: DateOrder) => boolean;
};

/** The columns of a file that hold dates. */
export function dateColumns({ when, date, businessDate }: ColumnMap): number[] {
  return [when, date, businessDate].filter((column) => column !== undefined);
}

/** How the dates of a file are written, decided from all of them; or a question. */
export function planDates(
  rows: SheetRows,
  firstRow: number,
  map: ColumnMap,
  { shape, heading, nightEndsS }: { shape: SalesShape | undefined; heading: Heading; nightEndsS: number },
) {
  const columns = dateColumns(map);
  return decideDates(
    {
      columns: columns.map((column) => witnessOf(rows, firstRow, column)),
      agrees: (order) => agreesWithOthers(rows, firstRow, columns, order),
      isBusinessDate: (order) =>
        staysOnEvening(rows, firstRow, map, order) || wrapsPastMidnight(rows, firstRow, map, nightEndsS),
    },
    map,
    { shape, heading },
  );
}

/** The decision on what was gathered from all rows of a file. */
export function decideDates(
  evidence: DateEvidence,
  map: ColumnMap,
  { shape, heading }: { shape: SalesShape | undefined; heading: Heading },
) {
  const needed = evidence.columns.filter(({ witness }) => witness.isNeeded);
  const styles = {
    dateOrder: shape?.dateOrder ?? ("dmy" as DateOrder),
    isOrderUsed: needed.length > 0,
    isDateOnly:
      map.time === undefined &&
      evidence.columns.some(({ midnights }) => midnights > 0) &&
      evidence.columns.every(({ others }) => others === 0),
    isDateBusinessDate: false,
  };
  let question: string | null = null;
  if (shape?.dateOrder === undefined && needed.length > 0) {
    const findings = needed.map(({ witness, column }) => ({
      column,
      finding: witness.decide(evidence.agrees),
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
  styles.isDateBusinessDate = evidence.isBusinessDate(styles.dateOrder);
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
  let last = "";
  let midnights = 0;
  let others = 0;
  for (let index = firstRow; index < rows.length; index += 1) {
    const cell = rows[index]?.[column] ?? "";
    // Once a time is seen, dates that start with their year have nothing more to tell.
    if (cell === last || (others > 0 && cell[4] === "-")) continue;
    last = cell;
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
export function agreesWithOthers(
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
function staysOnEvening(rows: SheetRows, firstRow: number, map: ColumnMap, order: DateOrder): boolean {
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

const NOON_S = 12 * 3600;

/**
 * Whether the rows run on past midnight under one date (…, 23:50, 00:20): then the date beside the time is the business date.
 *
 * Only in a file whose times run forwards, and not where dates rather begin with their small hours, as calendar dates do.
 */
function wrapsPastMidnight(rows: SheetRows, firstRow: number, map: ColumnMap, nightEndsS: number): boolean {
  if (map.date === undefined || map.time === undefined || map.businessDate !== undefined) return false;
  const nights = new NightRuns(nightEndsS);
  const secondOf = remembering(readTimeOfDay);
  for (let index = firstRow; index < rows.length; index += 1) {
    const date = (rows[index]?.[map.date] ?? "").trim();
    const second = secondOf(rows[index]?.[map.time] ?? "");
    if (date !== "" && second !== undefined) nights.add(date, second);
  }
  return nights.wrap;
}

/** Follows the dates and times of rows in their order, to see whether a date runs on past midnight. */
export class NightRuns {
  readonly #smallHoursEndS: number;
  #wraps = 0;
  #starts = 0;
  #forwards = 0;
  #backwards = 0;
  #lastDate: string | number = "";
  #lastSecond = -1;

  constructor(nightEndsS: number) {
    this.#smallHoursEndS = Math.min(nightEndsS, NOON_S);
  }

  /** Takes the next row: its date, as its text or the text's number, and its second of the day. */
  add(date: string | number, second: number): void {
    const isSmallHour = second < this.#smallHoursEndS;
    const isSameDate = date === this.#lastDate;
    if (!isSameDate && isSmallHour) this.#starts += 1;
    else if (isSameDate && isSmallHour && this.#lastSecond >= NOON_S) this.#wraps += 1;
    else if (isSameDate && second > this.#lastSecond) this.#forwards += 1;
    else if (isSameDate && second < this.#lastSecond) this.#backwards += 1;
    this.#lastDate = date;
    this.#lastSecond = second;
  }

  get wrap(): boolean {
    return this.#wraps > this.#starts && this.#forwards > 20 * this.#backwards;
  }
}
