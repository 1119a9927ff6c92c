import { dayEndsSeconds, type VenueClock } from "#engine/sales/read/clock.ts";
import type { ColumnFinding, ColumnMap } from "#engine/sales/read/columns.ts";
import type { DateOrder } from "#engine/sales/read/moment.ts";
import type { DecimalMark } from "#engine/sales/read/number.ts";
import { planDates } from "#engine/sales/read/plan-dates.ts";
import { planNumbers } from "#engine/sales/read/plan-numbers.ts";
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

/** What a file is reckoned by: the venue's clock and currency, and the shape, if one is known. */
export type Reckoning = {
  clock: VenueClock;
  currencyDigits: number;
  shape: SalesShape | undefined;
  /** Whether the names of staff are read. */
  keepsStaff: boolean;
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
  { shape, clock, currencyDigits }: Reckoning,
): Planned {
  const heading = (column: number): string => findings[column]?.heading ?? `#${column + 1}`;
  const dates = planDates(rows, firstRow, map, { shape, heading, nightEndsS: dayEndsSeconds(clock.dayEnds) });
  const numbers = planNumbers(rows, firstRow, map, { shape, heading, currencyDigits });
  const styles = { ...dates.styles, ...numbers.styles };
  return { styles, question: dates.question ?? numbers.question };
}

/** The heading of a column, for a question about it. */
export type Heading = (column: number) => string;
