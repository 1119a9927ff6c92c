import { type Cell, WrongCell } from "#db/book/cell.ts";
import { quote } from "#db/book/quote.ts";
import { instantToLocal, localToInstant } from "#engine/sales/read/clock.ts";
import { BusinessDate, type ClockTime, Instant, toInstant, WEEKDAYS, type Weekday } from "#engine/time.ts";

const CLOCK = /^(\d{1,2}):(\d{2})(?::00)?$/;
const LOCAL = /^(\d{4}-\d{2}-\d{2})[T ]\s*(\d{1,2}):(\d{2})(?::(\d{2}))?$/;
const WITH_OFFSET = /^\d{4}-\d{2}-\d{2}T\d{2}:\d{2}(?::\d{2})?(?:Z|[+-]\d{2}:\d{2})$/;

export const date: Cell<BusinessDate> = { read: (text) => readDate(text.trim()), write: (value) => value };

/** A time of day, "HH:MM"; "9:00" is 09:00. */
export const clockTime: Cell<ClockTime> = {
  read: (text) => {
    const match = CLOCK.exec(text.trim());
    if (match === null || Number(match[1]) > 23 || Number(match[2]) > 59) {
      throw new WrongCell(`${quote(text)} is no time of day; write it like 17:30`);
    }
    return `${match[1]?.padStart(2, "0")}:${match[2]}`;
  },
  write: (value) => value,
};

export const weekday: Cell<Weekday> = {
  read: (text) => {
    const short = text.trim().slice(0, 3).toLowerCase();
    const found = WEEKDAYS.find((day) => day.toLowerCase() === short);
    if (found === undefined || !isNameOfDay(text)) {
      throw new WrongCell(`${quote(text)} is no weekday; write ${WEEKDAYS.join(", ")}`);
    }
    return found;
  },
  write: (value) => value,
};

function isNameOfDay(text: string): boolean {
  return /^(?:mon|tue|tues|wed|thu|thur|thurs|fri|sat|sun|(?:mon|tues|wednes|thurs|fri|satur|sun)day)$/i.test(
    text.trim(),
  );
}

/** A moment on the venue's clock. Of an hour that clocks show twice, the second showing is written with "Z". */
export const moment: Cell<Instant> = {
  read: (text, { timeZone }) => readMoment(text.trim(), timeZone),
  write: (instant, { timeZone }) => {
    const local = instantToLocal(instant, { timeZone }).replace(/:00$/, "");
    return localToInstant(local, { timeZone }) === instant ? local : instant;
  },
};

/** As `moment`; a bare date is its midnight. */
export const momentOrDate: Cell<Instant> = {
  ...moment,
  read: (text, { timeZone }) => {
    const written = text.trim();
    return readMoment(/^\d{4}-\d{2}-\d{2}$/.test(written) ? `${written} 00:00` : written, timeZone);
  },
};

function readMoment(written: string, timeZone: string): Instant {
  if (WITH_OFFSET.test(written)) return readOffset(written);
  const match = LOCAL.exec(written);
  if (match === null) {
    throw new WrongCell(`${quote(written)} is no time; write it like 2026-03-02 15:00`);
  }
  const [, day = "", hour = "", minute = "", second = "00"] = match;
  readDate(day);
  if (Number(hour) > 23 || Number(minute) > 59 || Number(second) > 59) {
    throw new WrongCell(`${quote(written)} is no time of day; write it like 2026-03-02 15:00`);
  }
  return localToInstant(`${day} ${hour.padStart(2, "0")}:${minute}:${second}`, { timeZone });
}

function readOffset(written: string): Instant {
  readDate(written.slice(0, 10));
  const epochMs = Date.parse(written);
  const instant = Number.isNaN(epochMs) ? undefined : Instant.safeParse(toInstant(epochMs)).data;
  if (instant === undefined) throw new WrongCell(`${quote(written)} is no time of day`);
  return instant;
}

function readDate(written: string): BusinessDate {
  if (!/^\d{4}-\d{2}-\d{2}$/.test(written)) {
    throw new WrongCell(`${quote(written)} is no date; write it like 2026-03-02`);
  }
  if (!BusinessDate.safeParse(written).success || written < "1900-01-01") {
    throw new WrongCell(`there is no date ${written}`);
  }
  return written;
}
