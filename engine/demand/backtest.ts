import { wape } from "#engine/demand/accuracy.ts";
import { type Demand, midCdf, midQuantile } from "#engine/demand/distribution.ts";
import { type DemandFacts, drinkDemand, fitDemand } from "#engine/demand/model.ts";
import { weekdayNumber } from "#engine/demand/open-days.ts";
import { type IsOut, outDays, outReader } from "#engine/demand/out-days.ts";
import { SMOOTHING, type Smoothed, smoothSeasonal, startOf } from "#engine/demand/seasonal-smoothing.ts";
import type { SoldSeries } from "#engine/demand/series.ts";
import { addDays, type BusinessDate, daysBetween } from "#engine/time.ts";

/**
 * How the forecasts of the last weeks would have done, each made without knowing the week it speaks of.
 * Null where the past is too short to tell.
 */
export type Backtest = {
  /** Σ |sold − forecast| ÷ Σ sold, over drinks and days. */
  wape: number | null;
  /** The same of the mean of the last four same weekdays. */
  wapeSameWeekday: number | null;
  /** The same of exponential smoothing with a weekday season, drink by drink. */
  wapeSmoothing: number | null;
  /** Error as a share of the same-weekday mean's: below 1 the forecast is worth having. */
  scaledError: number | null;
  /** Share of drinks and days sold inside q05–q95. */
  coverage90: number | null;
  /** Open days tested. */
  days: number;
  /** Drinks and days left out, for the drink could not be made and nobody knows how many wanted it. */
  outDrinkDays: number;
};

/** Weeks tested, and the days of sales that a forecast must be able to look back on. */
const WEEKS = 8;
const LOOK_BACK_DAYS = 21;

/**
 * Rolling origin: a forecast for each of the last weeks from the days before it, then compared with its sales.
 *
 * Drinks are compared on every open day on which the forecast or the sales know them.
 */
export function backtest(facts: DemandFacts, series: SoldSeries, asOf: BusinessDate): Backtest {
  const isOut = outReader(outDays(facts, series, asOf));
  const tested: Tested = { cases: [], days: 0, outDrinkDays: 0, isOut };
  for (const origin of originsOf(series.dates, asOf)) testWeek(facts, series, origin, asOf, tested);
  const { cases, days } = tested;
  const own = wape(cases);
  const sameWeekday = wape(cases.map((one) => ({ sold: one.sold, expected: one.sameWeekday })));
  return {
    wape: own,
    wapeSameWeekday: sameWeekday,
    wapeSmoothing: wape(cases.map(({ sold, smoothed }) => ({ sold, expected: smoothed }))),
    scaledError: own === null || !sameWeekday ? null : own / sameWeekday,
    coverage90: cases.length === 0 ? null : cases.filter(({ inside }) => inside).length / cases.length,
    days,
    outDrinkDays: tested.outDrinkDays,
  };
}

/** One drink on one day. */
type Case = { sold: number; expected: number; sameWeekday: number; smoothed: number; inside: boolean };
type Tested = { cases: Case[]; days: number; outDrinkDays: number; isOut: IsOut };

export function originsOf(dates: readonly BusinessDate[], asOf: BusinessDate): BusinessDate[] {
  const [first, last] = [dates[0], dates.at(-1)];
  if (first === undefined || last === undefined) return [];
  const end = last < asOf ? addDays(last, 1) : asOf;
  const origins = Array.from({ length: WEEKS }, (_, week) => addDays(end, -7 * (week + 1)));
  return origins.filter((origin) => daysBetween({ from: first, to: origin }) >= LOOK_BACK_DAYS);
}

function testWeek(
  facts: DemandFacts,
  series: SoldSeries,
  origin: BusinessDate,
  asOf: BusinessDate,
  tested: Tested,
): void {
  const model = fitDemand(facts, series, origin);
  const end = addDays(origin, 7);
  const smoothed = smoothedBefore(series, origin);
  series.dates.forEach((date, day) => {
    if (date < origin || date >= end || date >= asOf) return;
    tested.days += 1;
    const expected = new Map(model.on(date).map((drink) => [drink.what, drinkDemand(model, drink)]));
    const sameWeekday = lastSameWeekdays(series.dates, date, origin);
    for (const [what, row] of series.serves) {
      const sold = row[day] ?? 0;
      const demand = expected.get(what);
      if (demand === undefined && sold === 0) continue;
      if (tested.isOut(what, date)) {
        tested.outDrinkDays += 1;
        continue;
      }
      tested.cases.push({
        sold,
        expected: demand?.mean ?? 0,
        sameWeekday: meanOver(row, sameWeekday),
        smoothed: smoothedOn(smoothed.get(what), date),
        inside: demand !== undefined && isInside(sold, demand),
      });
    }
  });
}

function smoothedBefore({ dates, serves }: SoldSeries, origin: BusinessDate): Map<string, Smoothed> {
  const after = dates.findIndex((date) => date >= origin);
  const days = after < 0 ? dates.length : after;
  const weekdays = dates.slice(0, days).map(weekdayNumber);
  return new Map(
    [...serves].map(([what, row]) => {
      const before = row.subarray(0, days);
      const start = startOf(before, weekdays, 7);
      return [what, smoothSeasonal(before, weekdays, { start, ...SMOOTHING })];
    }),
  );
}

function smoothedOn(smoothed: Smoothed | undefined, date: BusinessDate): number {
  if (smoothed === undefined) return 0;
  return Math.max(0, smoothed.level + (smoothed.seasons[weekdayNumber(date)] ?? 0));
}

/** Whether q05 ≤ sold ≤ q95; of a whole number the mid-distribution tells that without finding the quantiles. */
function isInside(sold: number, demand: Demand): boolean {
  if (!Number.isInteger(sold)) return sold >= midQuantile(demand, 0.05) && sold <= midQuantile(demand, 0.95);
  const chance = midCdf(sold, demand);
  return chance >= 0.05 && (chance <= 0.95 || sold === 0);
}

/** The last four open days of the same weekday before the origin; all there are, if fewer. */
function lastSameWeekdays(
  dates: readonly BusinessDate[],
  date: BusinessDate,
  origin: BusinessDate,
): number[] {
  const days: number[] = [];
  for (let day = dates.length - 1; day >= 0 && days.length < 4; day -= 1) {
    const other = dates[day] ?? "";
    if (other < origin && daysBetween({ from: other, to: date }) % 7 === 0) days.push(day);
  }
  return days;
}

function meanOver(row: Float64Array, days: readonly number[]): number {
  return days.length === 0 ? 0 : days.reduce((sum, day) => sum + (row[day] ?? 0), 0) / days.length;
}
