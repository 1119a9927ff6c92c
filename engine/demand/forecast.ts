import { type Backtest, backtest } from "#engine/demand/backtest.ts";
import { amountQuantile, type Demand, midQuantile } from "#engine/demand/distribution.ts";
import { itemDemandOf } from "#engine/demand/item-demand.ts";
import type { TouchedDay } from "#engine/demand/known-days.ts";
import { type DemandModel, drinkDemand, fitDemand } from "#engine/demand/model.ts";
import type { OutDays } from "#engine/demand/out-days.ts";
import { soldSeries } from "#engine/demand/series.ts";
import type { Facts } from "#engine/facts.ts";
import type { SaleGroup } from "#engine/sales/tally.ts";
import { addDays, type BusinessDate } from "#engine/time.ts";

/** Serves of a drink, or base units of an item, on one day. */
export type ForecastDay = {
  date: BusinessDate;
  what: string;
  mean: number;
  sd: number;
  q05: number;
  q10: number;
  q50: number;
  q90: number;
  q95: number;
};

export type Forecast = {
  asOf: BusinessDate;
  days: ForecastDay[];
  backtest: Backtest;
  /** Public holidays and their eves among the days asked for, with what they did before. */
  holidays: HolidayAhead[];
  /** Days on which drinks could not be made by the counts; their sales are taken as fewer than were wanted. */
  out: OutDays[];
  /** On the menu, but neither sold nor planned: nothing is known of them. */
  noHistory: string[];
  /** Not sold for weeks though nothing took them off the menu; left out of `days`. */
  stopped: string[];
};

/** A day that a holiday touches; `hasEvent` where the book says itself what the day will be, which then counts. */
export type HolidayAhead = TouchedDay & { hasEvent: boolean };

export type ForecastQuestion = {
  facts: Facts;
  sales: readonly SaleGroup[];
  /** Days before this one are looked at. */
  asOf: BusinessDate;
  from: BusinessDate;
  days: number;
};

/**
 * Serves a day of every drink on the menu, with quantiles, beside what such forecasts were worth in the past.
 *
 * A drink that is off the menu that day, and all drinks on a closed day, are left out.
 */
export function forecast(question: ForecastQuestion): Forecast {
  const { facts, sales, asOf } = question;
  const series = soldSeries(facts, sales, asOf);
  const model = fitDemand(facts, series, asOf);
  const days = datesOf(question).flatMap((date) =>
    model.on(date).map((day) => forecastDay(date, day.what, drinkDemand(model, day), midQuantile)),
  );
  const holidays = holidaysAhead(model, question);
  return { ...about(model), days, holidays, backtest: backtest(facts, series, asOf) };
}

/** The same for items: what the drinks forecast will use, stocked preps as themselves, in base units. */
export function itemForecast(question: ForecastQuestion): Forecast {
  const { facts, sales, asOf } = question;
  const series = soldSeries(facts, sales, asOf);
  const model = fitDemand(facts, series, asOf);
  const dates = datesOf(question).map((date) => ({ date, share: 1 }));
  const demand = itemDemandOf({ facts, sales, model, days: dates, raw: false });
  const days = demand.days.flatMap(({ date, items }) =>
    [...items].flatMap(([item, { mean, variance }]) =>
      mean > 0 ? [forecastDay(date, item, { mean, variance }, amountQuantile)] : [],
    ),
  );
  const holidays = holidaysAhead(model, question);
  return { ...about(model), days, holidays, backtest: backtest(facts, series, asOf) };
}

function about({ asOf, noHistory, stopped, out }: DemandModel) {
  return { asOf, noHistory, stopped, out };
}

function holidaysAhead({ holidayOn }: DemandModel, question: ForecastQuestion): HolidayAhead[] {
  const events = new Set(question.facts.book.events.map(({ date }) => date));
  return datesOf(question).flatMap((date) => {
    const day = holidayOn(date);
    return day === null ? [] : [{ ...day, hasEvent: events.has(date) }];
  });
}

function datesOf({ from, days }: ForecastQuestion): BusinessDate[] {
  return Array.from({ length: days }, (_, day) => addDays(from, day));
}

function forecastDay(
  date: BusinessDate,
  what: string,
  demand: Demand,
  quantile: (demand: Demand, level: number) => number,
): ForecastDay {
  return {
    date,
    what,
    mean: demand.mean,
    sd: Math.sqrt(demand.variance),
    q05: quantile(demand, 0.05),
    q10: quantile(demand, 0.1),
    q50: quantile(demand, 0.5),
    q90: quantile(demand, 0.9),
    q95: quantile(demand, 0.95),
  };
}
