import type { HolidayDay, HolidayKind } from "#engine/demand/holiday.ts";
import { median } from "#engine/demand/median.ts";
import { indexOn, type OpenDays } from "#engine/demand/open-days.ts";
import { weekdayIndices } from "#engine/demand/weekday-index.ts";
import type { BusinessDate } from "#engine/time.ts";

/** What a venue's own past says of a day that a holiday touches. */
export type HolidayEffect = {
  /** Times the usual trade of the weekday; 1 where the past says nothing. */
  factor: number;
  /** Relative variance of the factor. */
  cv2: number;
  /** The venue was shut the last time this holiday came, or on every one of its like. */
  isClosed: boolean;
  /** Days of this name, and of this kind, that it was learnt from. */
  seen: number;
  seenOfKind: number;
};

/** Reads the effect of a holiday's day; by its name where that came before, else by its kind. */
export type HolidayEffects = (day: HolidayDay) => HolidayEffect;

/** Before anything was seen a holiday's effect is none, give or take this much of the logarithm: common practice. */
const EFFECT_SD = 0.25;

/** Holidays of one kind differ by about this much; what the past shows of it replaces it. */
const NAMES_APART_SD = 0.1;
const NAMES_APART_DAYS = 2;

/** Trade five times the usual says no more than this; it would drag every holiday after it. */
const MOST_LOG = Math.log(5);

/** Of holidays never seen by name, so many of their kind must all have been shut. */
const SHUT_DAYS_TELL = 3;

/**
 * What holidays did to the trade of a venue before, drawn towards none by as much as its days scatter.
 *
 * Log ratios to the usual of the four weeks around, in two steps of the normal-normal model (Gelman et al., Bayesian
 * Data Analysis, ch. 5): the kinds are drawn to none, the names to their kind. Days scattering by ± 0.25 and one
 * holiday that sold 1.5 times the usual → 1.21 for its kind and 1.24 for its own name.
 * Days with an event of the book are left out: the event says what they were.
 */
export function holidayEffects(
  open: OpenDays,
  days: ReadonlyMap<BusinessDate, HolidayDay>,
  {
    hasEvent,
    isUsuallyOpen,
  }: { hasEvent(date: BusinessDate): boolean; isUsuallyOpen(date: BusinessDate): boolean },
): HolidayEffects {
  const { seen, noise } = pastEffects(open, days, hasEvent);
  const shut = shutDays(open.dates, days, isUsuallyOpen);
  return ({ name, kind }) => {
    const ofKind = seen.filter((one) => one.kind === kind);
    const named = ofKind.filter((one) => one.name === name);
    const counts = { seen: named.length, seenOfKind: ofKind.length };
    const isClosed = isShut(shut, ofKind, { name, kind });
    return { ...effectOf(named.map(logOf), ofKind.map(logOf), noise), ...counts, isClosed };
  };
}

/** The factor from the log ratios of a name's days and of all its kind's, whose single days scatter by `noise`. */
export function effectOf(
  named: readonly number[],
  ofKind: readonly number[],
  noise: number,
): { factor: number; cv2: number } {
  const count = ofKind.length;
  if (count === 0) return { factor: 1, cv2: 0 };
  const apart = namesApart(ofKind, noise);
  const scatter = noise + apart;
  const kindWeight = count / (count + scatter / EFFECT_SD ** 2);
  const kind = kindWeight * mean(ofKind);
  const kindVariance = (1 - kindWeight) * EFFECT_SD ** 2;
  const weight = named.length / (named.length + noise / apart);
  const log = kind + weight * (mean(named) - kind);
  const variance = (1 - weight) * apart + (1 - weight) ** 2 * kindVariance;
  return { factor: Math.exp(log), cv2: Math.expm1(variance) };
}

function namesApart(logs: readonly number[], noise: number): number {
  const middle = mean(logs);
  const squares = logs.reduce((sum, log) => sum + (log - middle) ** 2, 0);
  const beyond = Math.max(0, squares - (logs.length - 1) * noise);
  return (beyond + NAMES_APART_DAYS * NAMES_APART_SD ** 2) / (logs.length - 1 + NAMES_APART_DAYS);
}

type Seen = { date: BusinessDate; name: string; kind: HolidayKind; log: number };

function pastEffects(
  { dates, serves }: OpenDays,
  days: ReadonlyMap<BusinessDate, HolidayDay>,
  hasEvent: (date: BusinessDate) => boolean,
): { seen: Seen[]; noise: number } {
  const index = weekdayIndices({ dates, serves });
  const ratios = dates.map((date, day) => (serves[day] ?? 0) / indexOn(index, date));
  const isPlain = dates.map((date) => !days.has(date) && !hasEvent(date));
  const logs = ratios.map((ratio, day) => {
    const from = Math.max(0, day - 14);
    const around = median(ratios.slice(from, day + 15).filter((_, at) => isPlain[from + at]));
    return ratio > 0 && around > 0 ? Math.log(ratio / around) : null;
  });
  const plain = logs.filter((log, day) => log !== null && isPlain[day]).map((log) => Math.abs(log ?? 0));
  const seen = dates.flatMap((date, day): Seen[] => {
    const [touched, log] = [days.get(date), logs[day] ?? null];
    if (touched === undefined || log === null || hasEvent(date)) return [];
    return [{ date, name: touched.name, kind: touched.kind, log: clamp(log) }];
  });
  return { seen, noise: Math.max(0.1, 1.4826 * median(plain)) ** 2 };
}

/** Holidays, not eves, that the venue kept shut on a weekday it usually trades on. */
function shutDays(
  dates: readonly BusinessDate[],
  days: ReadonlyMap<BusinessDate, HolidayDay>,
  isUsuallyOpen: (date: BusinessDate) => boolean,
): HolidayDay[] {
  const [first = "", last = ""] = [dates[0], dates.at(-1)];
  const open = new Set(dates);
  return [...days.values()].filter(
    ({ date }) => date > first && date < last && !open.has(date) && isUsuallyOpen(date),
  );
}

function isShut(
  shut: readonly HolidayDay[],
  open: readonly { date: BusinessDate; name: string }[],
  { name, kind }: Pick<HolidayDay, "name" | "kind">,
): boolean {
  const shutNamed = lastDate(shut.filter((one) => one.kind === kind && one.name === name));
  const openNamed = lastDate(open.filter((one) => one.name === name));
  if (shutNamed !== openNamed) return shutNamed > openNamed;
  return open.length === 0 && shut.filter((one) => one.kind === kind).length >= SHUT_DAYS_TELL;
}

function lastDate(days: readonly { date: BusinessDate }[]): BusinessDate {
  return (
    days
      .map(({ date }) => date)
      .sort()
      .at(-1) ?? ""
  );
}

function logOf({ log }: Seen): number {
  return log;
}

function clamp(log: number): number {
  return Math.min(MOST_LOG, Math.max(-MOST_LOG, log));
}

function mean(values: readonly number[]): number {
  return values.length === 0 ? 0 : values.reduce((sum, value) => sum + value, 0) / values.length;
}
