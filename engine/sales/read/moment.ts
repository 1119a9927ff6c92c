import { monthOf } from "#engine/sales/read/months.ts";

export type DateOrder = "dmy" | "mdy" | "ymd";

/** A date as its three parts in the order written; `order` is fixed where the writing itself shows it. */
export type WrittenDate = {
  parts: [number, number, number];
  order: DateOrder | null;
  shortYear: boolean;
};

/** A cell that tells a time: its date (if it has one), its time of day (if it has one), its zone (if it says). */
export type WrittenMoment = {
  date: WrittenDate | null;
  secondOfDay: number | null;
  /** Seconds east of UTC; null when the cell leaves it to the venue's clock. */
  offsetS: number | null;
  /** The instant itself, where the cell counts seconds or milliseconds since 1970. */
  epochS: number | null;
};

const ZONES: Record<string, number> = {
  z: 0,
  utc: 0,
  gmt: 0,
  wet: 0,
  bst: 60,
  west: 60,
  cet: 60,
  mez: 60,
  cest: 120,
  mesz: 120,
  eet: 120,
  eest: 180,
  est: -300,
  edt: -240,
  cst: -360,
  cdt: -300,
  mst: -420,
  mdt: -360,
  pst: -480,
  pdt: -420,
};

const ZONE = /\s*(?:(z|utc|gmt)?([+-])(\d\d):?(\d\d)?|\b([a-z]{1,5}))(?:\s*\[[\w/+-]+\])?$/i;
const TIME =
  /(?:^|[\sT,])(\d{1,2})(?:(?::|h|\.)([0-5]\d)(?:(?::|m|\.)([0-5]\d)(?:[.,]\d{1,9})?)?s?)?\s*(a\.?\s?m\.?|p\.?\s?m\.?|[ap])?(?:\s*(?:uhr|h))?$/i;
const DIGITS = /^\d+$/;
const NUMERIC = /^(\d{1,4})\s?([/.-])\s?(\d{1,2})\s?\2\s?(\d{1,4})\.?$/;
const NAMED_DAY_FIRST =
  /^(\d{1,2})(?:\.|st|nd|rd|th|º|er)?[\s/-]*(?:de\s+)?([\p{L}]{3,})\.?[\s/,-]*(?:de\s+)?'?(\d{4}|\d{2})$/u;
const NAMED_MONTH_FIRST = /^([\p{L}]{3,})\.?[\s/-]*(\d{1,2})(?:st|nd|rd|th)?[\s/,-]+'?(\d{4}|\d{2})$/u;
const NAMED_YEAR_FIRST = /^(\d{4})[\s/-]+([\p{L}]{3,})\.?[\s/-]+(\d{1,2})$/u;
const WEEKDAY = /^\p{L}{2,}\.?,?\s+(?=\d|\p{L}{3,}\.?\s+\d)/u;
const CELL_CHARACTERS_MOST = 60;

/**
 * What a cell says of a date and a time, before it is known whether its column writes the day or the month first.
 *
 * Undefined when the cell is neither. "03/04/25 9:05 PM" → parts 3, 4, 25, order unknown, 21:05.
 */
export function readMoment(cell: string): WrittenMoment | undefined {
  const text = cell.trim();
  if (text === "" || text.length > CELL_CHARACTERS_MOST) return undefined;
  if (DIGITS.test(text)) return momentOfDigits(text);
  if (/^\d{10}\.\d{1,9}$/.test(text)) return momentOfDigits(text.slice(0, 10));
  const basic = /^(\d{4})(\d\d)(\d\d)T(\d\d)(\d\d)(\d\d)?(Z|[+-]\d{4})?$/.exec(text);
  if (basic !== null) {
    const [, year, month, day, hour, minute, second = "00", zone = ""] = basic;
    return isoMoment(`${year}-${month}-${day}T${hour}:${minute}:${second}${zone}`);
  }
  const fast = isoMoment(text);
  if (fast !== undefined) return fast;
  return writtenMoment(text.replace(/\s+/g, " "));
}

const ISO =
  /^(\d{4})-(\d\d)-(\d\d)(?:[T ](\d\d):(\d\d)(?::(\d\d)(?:[.,]\d{1,9})?)?(Z|[+-]\d\d(?::?\d\d)?)?)?$/;

function isoMoment(text: string): WrittenMoment | undefined {
  const match = ISO.exec(text);
  if (match === null) return undefined;
  const [, year, month, day, hour, minute, second, zone] = match;
  const date: WrittenDate = {
    parts: [Number(year), Number(month), Number(day)],
    order: "ymd",
    shortYear: false,
  };
  if (hour === undefined) return { date, secondOfDay: null, offsetS: null, epochS: null };
  const secondOfDay = clockSeconds(Number(hour), Number(minute), Number(second ?? 0));
  if (secondOfDay === undefined) return undefined;
  return { date, secondOfDay, offsetS: zone === undefined ? null : isoOffset(zone), epochS: null };
}

function isoOffset(zone: string): number {
  if (zone === "Z") return 0;
  const size = Number(zone.slice(1, 3)) * 3600 + Number(zone.slice(3).replace(":", "") || 0) * 60;
  return zone.startsWith("-") ? -size : size;
}

function writtenMoment(text: string): WrittenMoment | undefined {
  const whole = readDate(text);
  if (whole !== undefined) return { date: whole, secondOfDay: null, offsetS: null, epochS: null };
  const { rest, offsetS } = withoutZone(text);
  const time = TIME.exec(rest);
  if (time === null) return undefined;
  const secondOfDay = secondOf(time);
  if (secondOfDay === undefined) return undefined;
  const before = rest
    .slice(0, time.index)
    .replace(/[\s,|–-]+(?:at|um|à|alle|a las|kl\.?)?$/i, "")
    .trim();
  if (before === "") return { date: null, secondOfDay, offsetS, epochS: null };
  const date = readDate(before);
  return date === undefined ? undefined : { date, secondOfDay, offsetS, epochS: null };
}

function withoutZone(text: string): { rest: string; offsetS: number | null } {
  const none = { rest: text, offsetS: null };
  const match = ZONE.exec(text);
  if (match === null || !/\d:\d\d|\d\s?[ap]\.?m/i.test(text.slice(0, match.index))) return none;
  const [, , sign, hours, minutes, name] = match;
  const rest = text.slice(0, match.index);
  if (sign !== undefined) {
    const size = Number(hours) * 3600 + Number(minutes ?? 0) * 60;
    return { rest, offsetS: sign === "-" ? -size : size };
  }
  const offsetMinutes = ZONES[(name ?? "").toLowerCase()];
  return offsetMinutes === undefined ? none : { rest, offsetS: offsetMinutes * 60 };
}

function secondOf(time: RegExpExecArray): number | undefined {
  const [, hours, minutes, seconds, half] = time;
  // A lone number is no time of day: "9 pm" and "21h" say that they are, "9" does not.
  if (minutes === undefined && half === undefined) return undefined;
  let hour = Number(hours);
  if (half !== undefined) {
    if (hour < 1 || hour > 12) return undefined;
    hour = (hour % 12) + (half.toLowerCase().startsWith("p") ? 12 : 0);
  }
  return clockSeconds(hour, Number(minutes ?? 0), Number(seconds ?? 0));
}

function clockSeconds(hour: number, minute: number, second: number): number | undefined {
  if (hour > 23 || minute > 59 || second > 59) return undefined;
  return hour * 3600 + minute * 60 + second;
}

/** The date in a text that is nothing but a date, with or without its weekday. "Mon, 3 March 2025" → 3, 3, 2025. */
export function readDate(text: string): WrittenDate | undefined {
  return bareDate(text) ?? bareDate(text.replace(WEEKDAY, ""));
}

function bareDate(text: string): WrittenDate | undefined {
  const numeric = NUMERIC.exec(text);
  if (numeric !== null) return numericDate(numeric);
  const dayFirst = NAMED_DAY_FIRST.exec(text);
  if (dayFirst !== null) return namedDate(dayFirst[1], dayFirst[2], dayFirst[3]);
  const monthFirst = NAMED_MONTH_FIRST.exec(text);
  if (monthFirst !== null) return namedDate(monthFirst[2], monthFirst[1], monthFirst[3]);
  const yearFirst = NAMED_YEAR_FIRST.exec(text);
  if (yearFirst !== null) return namedDate(yearFirst[3], yearFirst[2], yearFirst[1]);
  if (/^(?:19|20)\d{6}$/.test(text)) return packedDate(text);
  return undefined;
}

function numericDate([, first = "", mark, middle = "", last = ""]: RegExpExecArray): WrittenDate | undefined {
  const parts: [number, number, number] = [Number(first), Number(middle), Number(last)];
  if (first.length >= 3) return last.length > 2 ? undefined : { parts, order: "ymd", shortYear: false };
  if (last.length === 3 || last.length === 1) return undefined;
  // Dots are written between day, month and year, in that order, wherever they are written (Unicode CLDR date patterns).
  return { parts, order: mark === "." ? "dmy" : null, shortYear: last.length === 2 };
}

function namedDate(day = "", name = "", year = ""): WrittenDate | undefined {
  const month = monthOf(name);
  if (month === undefined) return undefined;
  return { parts: [Number(day), month, Number(year)], order: "dmy", shortYear: year.length === 2 };
}

function packedDate(text: string): WrittenDate {
  const parts: [number, number, number] = [
    Number(text.slice(0, 4)),
    Number(text.slice(4, 6)),
    Number(text.slice(6, 8)),
  ];
  return { parts, order: "ymd", shortYear: false };
}

const EPOCH_FIRST_S = 946_684_800;
const EPOCH_LAST_S = 4_102_444_800;

function momentOfDigits(text: string): WrittenMoment | undefined {
  if (/^(?:19|20)\d{6}(?:\d{4}(?:\d\d)?)?$/.test(text) && text.length !== 10) {
    const date = packedDate(text);
    if (text.length === 8) return { date, secondOfDay: null, offsetS: null, epochS: null };
    const secondOfDay = clockSeconds(
      Number(text.slice(8, 10)),
      Number(text.slice(10, 12)),
      Number(text.slice(12) || 0),
    );
    return secondOfDay === undefined ? undefined : { date, secondOfDay, offsetS: null, epochS: null };
  }
  const epochS = text.length === 10 ? Number(text) : text.length === 13 ? Math.floor(Number(text) / 1000) : 0;
  if (epochS < EPOCH_FIRST_S || epochS > EPOCH_LAST_S) return undefined;
  return { date: null, secondOfDay: null, offsetS: 0, epochS };
}

/**
 * Seconds after midnight in a column of times alone: as readMoment, and "2105" or "210500", an hour "21", and the start of
 * "21:00 - 22:00" besides.
 */
export function readTimeOfDay(cell: string): number | undefined {
  const text = cell.trim();
  const packed = /^([01]\d|2[0-3])([0-5]\d)([0-5]\d)?$/.exec(text);
  if (packed !== null) return clockSeconds(Number(packed[1]), Number(packed[2]), Number(packed[3] ?? 0));
  if (/^\d{1,2}$/.test(text)) return clockSeconds(Number(text), 0, 0);
  const range = /^(\d{1,2}(?::\d\d)?(?: ?[ap]m)?) ?[-–] ?\d{1,2}(?::\d\d)?(?: ?[ap]m)?$/i.exec(text);
  if (range !== null) return readTimeOfDay(range[1] ?? "");
  return readMoment(text)?.secondOfDay ?? undefined;
}

/** Seconds east of UTC that a heading states for its times. "Sold at (UTC)" → 0; "time_gmt+2" → 7200; "Time" → null. */
export function offsetInHeading(heading: string): number | null {
  const match = /(?:^|[^a-z])(?:utc|gmt)(?:\s?([+-]\d{1,2}))?(?![a-z])/i.exec(heading);
  return match === null ? null : Number(match[1] ?? 0) * 3600;
}

const DAY_MS = 86_400_000;
const YEAR_FIRST = 1990;
const YEAR_LAST = 2100;

/**
 * Days since 1970-01-01 of a written date, read in an order; undefined when there is no such day, or not one that a till
 * could have seen (1990 to 2100). Two-digit years lie in this century. 3/4/25 as "dmy" → 20181 (2025-04-03).
 */
export function dayNumber(date: WrittenDate, order: DateOrder): number | undefined {
  const [first, second, third] = date.parts;
  const [year, month, day] =
    order === "ymd"
      ? [first, second, third]
      : order === "dmy"
        ? [third, second, first]
        : [third, first, second];
  const fullYear = date.shortYear ? 2000 + year : year;
  if (fullYear < YEAR_FIRST || fullYear > YEAR_LAST || (date.shortYear && year > 99)) return undefined;
  const time = Date.UTC(fullYear, month - 1, day);
  const real = new Date(time);
  if (real.getUTCMonth() !== month - 1 || real.getUTCDate() !== day) return undefined;
  return time / DAY_MS;
}
