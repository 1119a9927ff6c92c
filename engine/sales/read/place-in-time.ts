import {
  businessDateOfSeconds,
  dateText,
  dayEndsSeconds,
  instantSecondsOf,
  instantText,
  localSecondsOf,
  type VenueClock,
} from "#engine/sales/read/clock.ts";
import type { ColumnMap } from "#engine/sales/read/columns.ts";
import { dayNumber, readMoment, type WrittenMoment } from "#engine/sales/read/moment.ts";
import type { CellStyles } from "#engine/sales/read/plan.ts";

const DAY_S = 86_400;

/** When a row was sold; or `wrong`, why that cannot be told; or "none", when the row has neither date nor time. */
export type Placed = { businessDate: string; at: string | null } | { wrong: string } | "none";

/** Reads the moment of rows of one file: which columns, in which styles, by whose clock. */
export type Placing = {
  map: ColumnMap;
  styles: CellStyles;
  clock: VenueClock;
  headings: readonly string[];
  /** The business date of a whole file that has no date in its rows; undefined where the rows have one. */
  day: string | undefined;
  /** Reads a date cell and a time cell; both repeat, so they may remember. */
  readDay: (cell: string) => WrittenMoment | undefined;
  readTime: (cell: string) => number | undefined;
  /** Seconds east of UTC that the heading states for times without a zone; null leaves them to the venue's clock. */
  headingOffsetS: number | null;
};

/**
 * The business date of a row and, where it has a time, the instant.
 *
 * A column of business dates wins over the clock. Beside such a column a time of day before the day's end is on the next morning.
 */
export function placeRow(row: readonly string[], placing: Placing): Placed {
  const { map, styles } = placing;
  const stated = businessDay(row, placing);
  if (typeof stated === "string") return { wrong: stated };
  const when = map.when === undefined ? "" : (row[map.when] ?? "").trim();
  const date = map.date === undefined || styles.isDateBusinessDate ? "" : (row[map.date] ?? "").trim();
  const time = map.time === undefined ? "" : (row[map.time] ?? "").trim();
  if (date !== "" && time !== "") return ofDateAndTime(date, time, stated, placing);
  if (when !== "") return ofOneCell(when, map.when, stated, placing);
  if (date !== "") return ofOneCell(date, map.date, stated, placing);
  if (stated === undefined)
    return time === "" ? "none" : { wrong: `no date beside the time "${cut(time)}"; write one` };
  return time === "" ? { businessDate: dateText(stated), at: null } : ofTimeOnly(time, stated, placing);
}

function businessDay(row: readonly string[], placing: Placing): number | string | undefined {
  if (placing.day !== undefined) return Date.parse(placing.day) / (DAY_S * 1000);
  const { map, styles, readDay } = placing;
  const column = styles.isDateBusinessDate ? map.date : map.businessDate;
  const cell = column === undefined ? "" : (row[column] ?? "").trim();
  if (cell === "") return undefined;
  const moment = readDay(cell);
  const day = moment === undefined ? undefined : dayOf(moment, placing);
  return day ?? unreadable(cell, column, placing, "date");
}

function dayOf(moment: WrittenMoment, { styles, clock }: Placing): number | undefined {
  if (moment.epochS !== null) return Math.floor(localSecondsOf(moment.epochS, clock.timeZone) / DAY_S);
  return moment.date === null ? undefined : dayNumber(moment.date, moment.date.order ?? styles.dateOrder);
}

function ofOneCell(
  cell: string,
  column: number | undefined,
  stated: number | undefined,
  placing: Placing,
): Placed {
  const moment = readMoment(cell);
  if (moment === undefined) return { wrong: unreadable(cell, column, placing, "date or time") };
  if (moment.epochS !== null) return ofInstant(moment.epochS, stated, placing.clock);
  if (moment.date === null && stated !== undefined) return ofTimeOnly(cell, stated, placing);
  const day = dayOf(moment, placing);
  if (day === undefined) return { wrong: unreadable(cell, column, placing, "date") };
  if (moment.secondOfDay === null || placing.styles.isDateOnly)
    return { businessDate: dateText(stated ?? day), at: null };
  return ofWallClock(day * DAY_S + moment.secondOfDay, moment.offsetS, stated, placing);
}

function ofDateAndTime(date: string, time: string, stated: number | undefined, placing: Placing): Placed {
  const moment = placing.readDay(date);
  const day = moment === undefined ? undefined : dayOf(moment, placing);
  if (day === undefined) return { wrong: unreadable(date, placing.map.date, placing, "date") };
  const second = placing.readTime(time);
  if (second === undefined) return { wrong: unreadable(time, placing.map.time, placing, "time") };
  return ofWallClock(day * DAY_S + second, offsetBeside(time), stated, placing);
}

/** A plain time of day leaves the zone to the venue's clock. */
function offsetBeside(time: string): number | null {
  return time.length <= 8 && !/z$/i.test(time) ? null : (readMoment(time)?.offsetS ?? null);
}

function ofTimeOnly(time: string, stated: number, placing: Placing): Placed {
  const second = placing.readTime(time);
  if (second === undefined)
    return { wrong: unreadable(time, placing.map.time ?? placing.map.when, placing, "time") };
  const day = second < dayEndsSeconds(placing.clock.dayEnds) ? stated + 1 : stated;
  return ofWallClock(day * DAY_S + second, null, stated, placing);
}

function ofWallClock(
  localS: number,
  writtenOffsetS: number | null,
  stated: number | undefined,
  { clock, headingOffsetS }: Placing,
): Placed {
  const offsetS = writtenOffsetS ?? headingOffsetS;
  if (offsetS !== null) return ofInstant(localS - offsetS, stated, clock);
  const businessDate = stated === undefined ? businessDateOfSeconds(localS, clock) : dateText(stated);
  return { businessDate, at: instantText(instantSecondsOf(localS, clock.timeZone)) };
}

function ofInstant(instantS: number, stated: number | undefined, clock: VenueClock): Placed {
  const local = localSecondsOf(instantS, clock.timeZone);
  const businessDate = stated === undefined ? businessDateOfSeconds(local, clock) : dateText(stated);
  return { businessDate, at: instantText(instantS) };
}

function unreadable(cell: string, column: number | undefined, { headings }: Placing, what: string): string {
  return `${headings[column ?? -1] ?? "time"}: "${cut(cell)}" is no ${what}; write YYYY-MM-DD HH:MM`;
}

/** A cell as a message shows it: its first 60 characters. */
export function cut(cell: string): string {
  const text = cell.trim().replace(/\s+/g, " ");
  return text.length > 60 ? `${text.slice(0, 60)}…` : text;
}
