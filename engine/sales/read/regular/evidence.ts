import type { ColumnMap } from "#engine/sales/read/columns.ts";
import { DateOrderWitness } from "#engine/sales/read/date-order.ts";
import { type DateOrder, readMoment, readTimeOfDay, type WrittenMoment } from "#engine/sales/read/moment.ts";
import { type DecimalEvidence, noEvidence, weighDecimal } from "#engine/sales/read/number.ts";
import { type DateEvidence, dateColumns, NightRuns } from "#engine/sales/read/plan-dates.ts";
import { numberColumns, type Weighed } from "#engine/sales/read/plan-numbers.ts";

/**
 * What the cells of a file show about how its dates and numbers are written, gathered while they are read.
 *
 * At the end the same decisions are made on it as the general reader makes before it reads; if they are not those that the file
 * was read by, the reading does not count.
 */
export class RunningEvidence {
  readonly #dates = new Map<number, { witness: DateOrderWitness; midnights: number; others: number }>();
  readonly #numbers = new Map<number, DecimalEvidence>();
  readonly #map: ColumnMap;
  readonly #nights: NightRuns;

  constructor(map: ColumnMap, nightEndsS: number) {
    this.#map = map;
    this.#nights = new NightRuns(nightEndsS);
    for (const column of dateColumns(map))
      this.#dates.set(column, { witness: new DateOrderWitness(), midnights: 0, others: 0 });
    for (const column of numberColumns(map)) this.#numbers.set(column, noEvidence());
  }

  /** Takes the cells of a row that was read as texts. */
  row(row: readonly string[]): void {
    for (const column of this.#dates.keys()) this.dateCell(column, row[column] ?? "");
    for (const column of this.#numbers.keys()) this.numberCell(column, row[column] ?? "");
    const { date, time } = this.#map;
    if (date === undefined || time === undefined) return;
    const text = (row[date] ?? "").trim();
    const second = readTimeOfDay(row[time] ?? "");
    if (text !== "" && second !== undefined) this.night(text, second);
  }

  dateCell(column: number, cell: string): void {
    const moment = readMoment(cell);
    if (moment !== undefined) this.moment(column, moment, cell);
  }

  moment(column: number, { date, secondOfDay, offsetS, epochS }: WrittenMoment, cell: string): void {
    const held = this.#dates.get(column);
    if (held === undefined) return;
    if (date !== null) held.witness.add(date, cell.trim());
    if (epochS !== null || (secondOfDay ?? 0) !== 0 || offsetS !== null) held.others += 1;
    else if (secondOfDay === 0) held.midnights += 1;
  }

  numberCell(column: number, cell: string): void {
    const held = this.#numbers.get(column);
    if (held !== undefined && cell.length > 1) weighDecimal(cell, held);
  }

  /** Takes the date and the time of the next row, in a file that has them in two columns. */
  night(date: string, second: number): void {
    this.#nights.add(date, second);
  }

  get numbers(): Weighed[] {
    return [...this.#numbers].map(([column, evidence]) => ({ column, evidence }));
  }

  dates(agrees: (order: DateOrder) => boolean): DateEvidence {
    const { date, time, businessDate } = this.#map;
    const mayWrap = date !== undefined && time !== undefined && businessDate === undefined;
    return {
      columns: [...this.#dates].map(([column, held]) => ({ column, ...held })),
      agrees,
      isBusinessDate: () => mayWrap && this.#nights.wrap,
    };
  }
}
