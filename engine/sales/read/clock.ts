import { tzOffset } from "@date-fns/tz/tzOffset";

/** How a venue tells the time: its IANA zone, and the hour its trading day ends. */
export type VenueClock = { timeZone: string; dayEnds: string /* "04:00" */ };

/** A local or UTC time that cannot be read, or a clock that cannot be used. */
export class ClockError extends Error {
  override name = "ClockError";
}

const DAY_S = 86_400;
const LOCAL = /^(\d{4}-\d\d-\d\d)(?:[T ](\d\d):(\d\d)(?::(\d\d)(?:\.\d+)?)?)?$/;
const INSTANT = /^\d{4}-\d\d-\d\dT\d\d:\d\d(?::\d\d(?:\.\d+)?)?(?:Z|[+-]\d\d:?\d\d)$/;
const HOUR = /^([01]?\d|2[0-3]):([0-5]\d)$/;
const DAYS_KEPT = 20_000;

/**
 * The instant of a local time at the venue, as "YYYY-MM-DDTHH:MM:SSZ".
 *
 * `local` is "YYYY-MM-DD HH:MM", with "T" or seconds if wanted; a date alone is its midnight. A time that
 * clocks show twice in autumn is its first occurrence; a time skipped in spring is read with the offset before the
 * jump, so that it falls on what clocks show after it ("compatible" in ECMA-262 Temporal, RFC 5545 §3.3.5).
 * Throws ClockError for a text that is no local time, or an unknown zone.
 * "2025-03-30 02:30" in Europe/Berlin → "2025-03-30T01:30:00Z", when clocks show 03:30.
 */
export function localToInstant(local: string, clock: Pick<VenueClock, "timeZone">): string {
  return instantText(instantSecondsOf(localSeconds(local), clock.timeZone));
}

/**
 * What the venue's clocks show at an instant, as "YYYY-MM-DD HH:MM:SS".
 *
 * Throws ClockError for a text that is no instant, or an unknown zone.
 * "2025-10-26T01:30:00Z" in Europe/Berlin → "2025-10-26 02:30:00".
 */
export function instantToLocal(instant: string, clock: Pick<VenueClock, "timeZone">): string {
  const local = localSecondsOf(instantSeconds(instant), clock.timeZone);
  return instantText(local).slice(0, 19).replace("T", " ");
}

/** A moment as the sheets write it: the venue's time, "YYYY-MM-DD HH:MM". Throws as instantToLocal does. */
export function localMinute(instant: string, clock: Pick<VenueClock, "timeZone">): string {
  return instantToLocal(instant, clock).slice(0, 16);
}

/**
 * The business date of an instant: its local date, one day earlier before the hour at which the day ends.
 *
 * Throws ClockError for a text that is no instant, or a clock that cannot be used.
 * "2025-03-02T01:30:00Z" in Europe/Berlin with dayEnds "04:00" → "2025-03-01".
 */
export function businessDateOf(instant: string, clock: VenueClock): string {
  return businessDateOfSeconds(localSecondsOf(instantSeconds(instant), clock.timeZone), clock);
}

/**
 * The business date of a local time: its date, one day earlier before the hour at which the day ends.
 *
 * Throws ClockError for a text that is no local time, or a clock that cannot be used.
 * "2025-03-02 02:30" with dayEnds "04:00" → "2025-03-01"; "2025-03-02 04:00" → "2025-03-02".
 */
export function businessDateOfLocal(local: string, clock: Pick<VenueClock, "dayEnds">): string {
  return businessDateOfSeconds(localSeconds(local), clock);
}

/** businessDateOfLocal for a local time in seconds, counted as if local time were UTC. */
export function businessDateOfSeconds(localS: number, clock: Pick<VenueClock, "dayEnds">): string {
  return dateText(Math.floor((localS - dayEndsSeconds(clock.dayEnds)) / DAY_S));
}

/** Seconds after midnight at which the trading day ends. Throws ClockError unless it reads "HH:MM". "04:00" → 14400. */
export function dayEndsSeconds(dayEnds: string): number {
  const match = HOUR.exec(dayEnds);
  if (match === null)
    throw new ClockError(`dayEnds "${dayEnds}" is no time of day; write HH:MM, as in "04:00".`);
  return Number(match[1]) * 3600 + Number(match[2]) * 60;
}

/** Epoch seconds of an instant from local seconds (counted as if local time were UTC). */
export function instantSecondsOf(localS: number, timeZone: string): number {
  const before = offsetSeconds(localS - DAY_S, timeZone);
  const after = offsetSeconds(localS + DAY_S, timeZone);
  if (before === after || offsetSeconds(localS - before, timeZone) === before) return localS - before;
  if (offsetSeconds(localS - after, timeZone) === after) return localS - after;
  return localS - before;
}

/** Local seconds (counted as if local time were UTC) of an instant in epoch seconds. */
export function localSecondsOf(instantS: number, timeZone: string): number {
  return instantS + offsetSeconds(instantS, timeZone);
}

/** "YYYY-MM-DDTHH:MM:SSZ" of epoch seconds. 0 → "1970-01-01T00:00:00Z". */
export function instantText(instantS: number): string {
  const day = Math.floor(instantS / DAY_S);
  const second = instantS - day * DAY_S;
  const minute = Math.floor(second / 60);
  return `${dateText(day)}T${two(Math.floor(minute / 60))}:${two(minute % 60)}:${two(second % 60)}Z`;
}

/** "YYYY-MM-DD" of a count of days since 1970-01-01. 20151 → "2025-03-04". */
export function dateText(day: number): string {
  const known = dateTexts.get(day);
  if (known !== undefined) return known;
  const date = new Date(day * DAY_S * 1000);
  if (Number.isNaN(date.getTime())) throw new ClockError(`day ${day} lies outside the calendar.`);
  const text = date.toISOString().slice(0, 10);
  return remember(dateTexts, day, text);
}

const TWO = Array.from({ length: 60 }, (_, value) => String(value).padStart(2, "0"));

function two(value: number): string {
  return TWO[value] ?? String(value);
}

function localSeconds(local: string): number {
  const match = LOCAL.exec(local);
  const midnight = match === null ? Number.NaN : Date.parse(`${match[1]}T00:00:00Z`) / 1000;
  const [hour, minute, second] = [Number(match?.[2] ?? 0), Number(match?.[3] ?? 0), Number(match?.[4] ?? 0)];
  const isReal =
    Number.isFinite(midnight) && new Date(midnight * 1000).toISOString().startsWith(match?.[1] ?? "?");
  if (!isReal || hour > 23 || minute > 59 || second > 59)
    throw new ClockError(`"${local}" is no local time; write YYYY-MM-DD HH:MM.`);
  return midnight + hour * 3600 + minute * 60 + second;
}

function instantSeconds(instant: string): number {
  const milliseconds = INSTANT.test(instant) ? Date.parse(instant) : Number.NaN;
  if (Number.isNaN(milliseconds))
    throw new ClockError(`"${instant}" is no instant; write YYYY-MM-DDTHH:MM:SSZ.`);
  return Math.floor(milliseconds / 1000);
}

/** The offsets of one UTC day: one all day, or two with the second from which the later one holds. */
type DayOffsets = { firstS: number; changesAtS: number; laterS: number };

// Asking the zone's rules takes microseconds; a day asked once answers a million sales in no time.
const zones = new Map<string, Map<number, DayOffsets>>();
const dateTexts = new Map<number, string>();

function offsetSeconds(instantS: number, timeZone: string): number {
  const day = Math.floor(instantS / DAY_S);
  let days = zones.get(timeZone);
  if (days === undefined) {
    days = new Map();
    zones.set(timeZone, days);
  }
  const offsets = days.get(day) ?? remember(days, day, offsetsOfDay(day, timeZone));
  return instantS < offsets.changesAtS ? offsets.firstS : offsets.laterS;
}

function offsetsOfDay(day: number, timeZone: string): DayOffsets {
  let low = day * DAY_S;
  let high = low + DAY_S;
  const firstS = askOffset(low, timeZone);
  const laterS = askOffset(high, timeZone);
  if (firstS === laterS) return { firstS, changesAtS: Number.POSITIVE_INFINITY, laterS };
  while (high - low > 1) {
    const middle = Math.floor((low + high) / 2);
    if (askOffset(middle, timeZone) === firstS) low = middle;
    else high = middle;
  }
  return { firstS, changesAtS: high, laterS };
}

function askOffset(instantS: number, timeZone: string): number {
  const minutes = tzOffset(timeZone, new Date(instantS * 1000));
  if (!Number.isFinite(minutes))
    throw new ClockError(`"${timeZone}" is no known time zone; use an IANA name such as "Europe/Berlin".`);
  return Math.round(minutes * 60);
}

function remember<V>(cache: Map<number, V>, key: number, value: V): V {
  if (cache.size >= DAYS_KEPT) cache.clear();
  cache.set(key, value);
  return value;
}
