import { levelVariance, smoothLevel } from "#engine/demand/level.ts";
import { type OpenDays, weekdayNumber } from "#engine/demand/open-days.ts";
import { weekdayIndices, withinReason } from "#engine/demand/weekday-index.ts";
import { addDays, type BusinessDate, WEEKDAYS } from "#engine/time.ts";

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

/** Half-lives tried for the level in days, from a bar whose trade turns within a week to one that hardly ever does. */
const LEVEL_HALF_LIVES = [4, 8, 16, 28, 56, 112] as const;

/** The one to beat, by more than chance would: four weeks, as in most bars. */
const USUAL_HALF_LIFE = 28;
const BETTER_BY = 0.98;

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
  const usual = fits[LEVEL_HALF_LIVES.indexOf(USUAL_HALF_LIFE)];
  const best = fits.reduce((a, b) => (b.weekAheadError < a.weekAheadError ? b : a));
  const chosen = usual !== undefined && best.weekAheadError > usual.weekAheadError * BETTER_BY ? usual : best;
  return {
    level: chosen.level,
    weekdayIndex,
    isOpenOn: openWeekdays(open.dates),
    dayCv2: chosen.dayCv2,
    levelCv2: levelVariance(chosen, open.dates.length),
  };
}

/** A weekday is traded if it was on at least half of its last four times; one never seen is taken as traded. */
export function openWeekdays(dates: readonly BusinessDate[]): boolean[] {
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
    date = addDays(date, -1);
  }
  return times;
}

/** Serves expected on a day without events, were the venue open. */
export function levelOn({ level, weekdayIndex }: Busyness, date: BusinessDate): number {
  return level * (weekdayIndex[weekdayNumber(date)] ?? 1);
}
