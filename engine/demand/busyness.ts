import { type BusinessDate, daysBetween, WEEKDAYS, weekdayOf } from "#engine/time.ts";

/** How busy the venue is: level × weekday, with how far single days and the level itself may be off. */
export type Busyness = {
  /** Serves on an average open day without events. */
  level: number;
  /** By weekday, Monday first; 1 = an average open day. */
  weekdayIndex: number[];
  /** Whether the venue trades on a weekday. */
  isOpenOn: boolean[];
  /** Relative variance of one day around its expectation, chance of single guests included. */
  dayCv2: number;
  /** Relative variance of the level: what all days of a forecast are wrong by together. */
  levelCv2: number;
};

/** Serves sold on each open day, with the factor of the day's events taken out. */
export type OpenDays = { dates: readonly BusinessDate[]; serves: Float64Array };

/** Weekday pattern: eight weeks are half forgotten. */
const WEEKDAY_HALF_LIFE_DAYS = 56;

/** Half-lives tried for the level; the second is the one to beat, being 28 open days in most bars. */
const LEVEL_HALF_LIVES = [14, 28, 56, 112] as const;

/** A day further off than this many robust deviations is taken as if it were just so far off. */
const OUTLIER_DEVIATIONS = 3;

/**
 * Level × shrunk weekday index from the days sold, recent weeks weighing more, single odd days held in.
 *
 * The weekday index is drawn towards 1 by as much as single days scatter (empirical Bayes), so that a
 * weekday seen twice does not decide. Half of the level's weight lies in the half-life that would have
 * forecast the venue's own past best.
 */
export function fitBusyness(open: OpenDays): Busyness {
  const first = withinReason(open, weekdayIndices(open));
  const weekdayIndex = weekdayIndices(first);
  const held = withinReason(open, weekdayIndex);
  const fits = LEVEL_HALF_LIVES.map((halfLife) => smoothLevel(held, weekdayIndex, halfLife));
  const usual = fits[1];
  const best = fits.reduce((a, b) => (b.weekAheadError < a.weekAheadError ? b : a));
  const chosen = usual !== undefined && best.weekAheadError > usual.weekAheadError * 0.98 ? usual : best;
  return {
    level: chosen.level,
    weekdayIndex,
    isOpenOn: openWeekdays(open.dates),
    dayCv2: chosen.dayCv2,
    levelCv2: levelVariance(chosen, open.dates.length),
  };
}

function weekdayIndices({ dates, serves }: OpenDays): number[] {
  const last = dates.at(-1);
  if (last === undefined) return WEEKDAYS.map(() => 1);
  const sums = WEEKDAYS.map(() => ({ weight: 0, value: 0, square: 0, days: 0 }));
  dates.forEach((date, day) => {
    const weight = 0.5 ** (daysBetween({ from: date, to: last }) / WEEKDAY_HALF_LIFE_DAYS);
    const own = sums[weekdayNumber(date)];
    const value = serves[day] ?? 0;
    if (own === undefined) return;
    own.weight += weight;
    own.value += weight * value;
    own.square += weight * value * value;
    own.days += 1;
  });
  return shrunk(sums);
}

function shrunk(sums: readonly { weight: number; value: number; square: number; days: number }[]): number[] {
  const seen = sums.filter(({ days }) => days > 0);
  // Every weekday counts alike, so that a missing Saturday does not make the others look busier.
  const average = mean(seen.map(({ value, weight }) => value / weight));
  if (!(average > 0)) return sums.map(() => 1);
  const ratios = seen.map(({ value, weight }) => value / weight / average);
  const repeated = seen.filter(({ days }) => days > 1);
  const within = mean(
    repeated.map(({ value, square, weight, days }) =>
      Math.max(0, ((square / weight - (value / weight) ** 2) / average ** 2) * (days / (days - 1))),
    ),
  );
  const ownNoise = mean(seen.map(({ days }) => within / days));
  const between = Math.max(1e-4, mean(ratios.map((ratio) => (ratio - 1) ** 2)) - ownNoise);
  const pull = repeated.length === 0 ? 1 : Math.min(20, within / between);
  return sums.map(({ value, weight, days }) =>
    days === 0 ? 1 : ((days * value) / weight / average + pull) / (days + pull),
  );
}

/** The days with any that is oddly far from its weekday's usual drawn in. */
function withinReason({ dates, serves }: OpenDays, weekdayIndex: readonly number[]): OpenDays {
  const ratios = dates.map((date, day) => (serves[day] ?? 0) / indexOn(weekdayIndex, date));
  // The usual is that of the four weeks around the day: a bar that grows is not odd.
  const logs = ratios.map((ratio, day) => {
    const around = median(ratios.slice(Math.max(0, day - 14), day + 15));
    return ratio > 0 && around > 0 ? Math.log(ratio / around) : 0;
  });
  const spread = Math.max(0.1, 1.4826 * median(logs.map(Math.abs)));
  const most = OUTLIER_DEVIATIONS * spread;
  const held = Float64Array.from(serves, (value, day) => {
    const off = logs[day] ?? 0;
    return Math.abs(off) <= most ? value : value * Math.exp(Math.sign(off) * most - off);
  });
  return { dates, serves: held };
}

type LevelFit = {
  level: number;
  weekAheadError: number;
  dayCv2: number;
  weightOfDays: number;
  /** Squared relative errors of whole weeks ahead, summed, and how many (overlapping) weeks. */
  weekSquares: number;
  weeks: number;
};

/**
 * What the level is off by: by the scatter of the days it is read from, and by drifting on since. The errors
 * of whole weeks ahead, beyond what seven single days would give, tell the drift.
 */
function levelVariance({ dayCv2, weightOfDays, weekSquares, weeks }: LevelFit, openDays: number): number {
  const read = dayCv2 / Math.max(1, Math.min(openDays, weightOfDays));
  const apart = weeks / 7;
  const seen = weeks > 0 ? Math.max(0, weekSquares / weeks - dayCv2 / 7) : read;
  return Math.max(read, (apart * seen + 4 * read) / (apart + 4));
}

/**
 * The level as discounted serves over discounted indices, with its errors a day and a week ahead.
 *
 * With indices of 1 and daily dates this is simple exponential smoothing with α = 1 − 0.5^(1 ÷ half-life).
 */
export function smoothLevel(
  { dates, serves }: OpenDays,
  index: readonly number[],
  halfLifeDays: number,
): LevelFit {
  let value = 0;
  let weight = 0;
  let squares = 0;
  let previous: BusinessDate | undefined;
  const levels: number[] = [];
  let [dayErrors, dayCount, weekErrors, weekSquares, weeks] = [0, 0, 0, 0, 0];
  dates.forEach((date, day) => {
    const expected = indexOn(index, date);
    const sold = serves[day] ?? 0;
    const keep =
      previous === undefined ? 1 : 0.5 ** (daysBetween({ from: previous, to: date }) / halfLifeDays);
    const before = levels[day - 1];
    if (before !== undefined && before > 0 && day >= 7) {
      dayErrors += (sold / (before * expected) - 1) ** 2;
      dayCount += 1;
    }
    const weekBefore = levels[day - 7];
    if (weekBefore !== undefined && weekBefore > 0 && day >= 21) {
      weekErrors += Math.abs(sold - weekBefore * expected);
      weekSquares += (ratioOfWeek(dates, serves, index, day) / weekBefore - 1) ** 2;
      weeks += 1;
    }
    value = value * keep + sold;
    weight = weight * keep + expected;
    squares = squares * keep * keep + expected * expected;
    levels.push(weight > 0 ? value / weight : 0);
    previous = date;
  });
  return {
    level: levels.at(-1) ?? 0,
    weekAheadError: weekErrors,
    // With less than two weeks behind it, a day is taken to be off by a third: common practice.
    dayCv2: (dayErrors + 7 * 0.1) / (dayCount + 7),
    weightOfDays: squares > 0 ? (weight * weight) / squares : 1,
    weekSquares,
    weeks,
  };
}

/** The level that the seven open days up to one show by themselves. */
function ratioOfWeek(
  dates: readonly BusinessDate[],
  serves: Float64Array,
  index: readonly number[],
  last: number,
): number {
  let [sold, expected] = [0, 0];
  for (let day = last - 6; day <= last; day += 1) {
    sold += serves[day] ?? 0;
    expected += indexOn(index, dates[day] ?? "");
  }
  return sold / expected;
}

/** A weekday is traded if it was on at least half of its last four times; one never seen is taken as traded. */
function openWeekdays(dates: readonly BusinessDate[]): boolean[] {
  const open = new Set(dates);
  const [first, last] = [dates[0], dates.at(-1)];
  return WEEKDAYS.map((_, weekday) => {
    if (first === undefined || last === undefined) return true;
    const times = lastTimes(weekday, first, last);
    return times.length === 0 || times.filter((date) => open.has(date)).length * 2 >= times.length;
  });
}

function lastTimes(weekday: number, first: BusinessDate, last: BusinessDate): BusinessDate[] {
  const times: BusinessDate[] = [];
  let date = last;
  while (date >= first && times.length < 4) {
    if (weekdayNumber(date) === weekday) times.push(date);
    date = new Date(Date.parse(`${date}T00:00:00Z`) - 86_400_000).toISOString().slice(0, 10);
  }
  return times;
}

/** Monday 0 … Sunday 6. */
export function weekdayNumber(date: BusinessDate): number {
  return WEEKDAYS.indexOf(weekdayOf(date));
}

function indexOn(index: readonly number[], date: BusinessDate): number {
  return Math.max(1e-6, index[weekdayNumber(date)] ?? 1);
}

function mean(values: readonly number[]): number {
  return values.length === 0 ? 0 : values.reduce((sum, value) => sum + value, 0) / values.length;
}

function median(values: readonly number[]): number {
  if (values.length === 0) return 0;
  const sorted = [...values].sort((a, b) => a - b);
  const middle = sorted.length >> 1;
  const upper = sorted[middle] ?? 0;
  return sorted.length % 2 === 1 ? upper : ((sorted[middle - 1] ?? 0) + upper) / 2;
}
