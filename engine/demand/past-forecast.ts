import { originsOf } from "#engine/demand/backtest.ts";
import { type Demand, midQuantile } from "#engine/demand/distribution.ts";
import type { DrinkDay } from "#engine/demand/drink-day.ts";
import { type DemandModel, drinkDemand, fitDemand } from "#engine/demand/model.ts";
import { soldSeries } from "#engine/demand/series.ts";
import type { Facts } from "#engine/facts.ts";
import type { SaleGroup } from "#engine/sales/tally.ts";
import { addDays, type BusinessDate } from "#engine/time.ts";

/** Serves sold on a past day beside what was forecast for it before its week began. */
export type PastForecastDay = {
  date: BusinessDate;
  sold: number;
  mean: number;
  q05: number;
  q95: number;
  isInside: boolean;
};

/**
 * Forecast against fact over the last weeks: of all drinks together, or of one. Every day was forecast from the
 * days before its week; closed days are left out.
 */
export function pastForecast({
  facts,
  sales,
  asOf,
  what,
}: {
  facts: Facts;
  sales: readonly SaleGroup[];
  asOf: BusinessDate;
  what?: string;
}): PastForecastDay[] {
  const series = soldSeries(facts, sales, asOf);
  const rows = [...series.serves].filter(([name]) => what === undefined || name === what);
  return originsOf(series.dates, asOf)
    .reverse()
    .flatMap((origin) => {
      const model = fitDemand(facts, series, origin);
      const end = addDays(origin, 7);
      return [...series.dates.entries()].flatMap(([day, date]) => {
        if (date < origin || date >= end) return [];
        const sold = rows.reduce((sum, [, row]) => sum + (row[day] ?? 0), 0);
        const demand = demandOf(model, date, what);
        const [q05, q95] = [midQuantile(demand, 0.05), midQuantile(demand, 0.95)];
        return [{ date, sold, mean: demand.mean, q05, q95, isInside: q05 <= sold && sold <= q95 }];
      });
    });
}

function demandOf(model: DemandModel, date: BusinessDate, what: string | undefined): Demand {
  const drinks = model.on(date);
  if (what === undefined) return totalDemand(model, drinks);
  const own = drinks.find((drink) => drink.what === what);
  return own === undefined ? { mean: 0, variance: 0 } : drinkDemand(model, own);
}

/** All drinks of a day together: busy nights raise them alike, single choices even out. */
function totalDemand({ dayCv2, levelCv2 }: DemandModel, drinks: readonly DrinkDay[]): Demand {
  let [mean, usual, apart] = [0, 0, 0];
  for (const drink of drinks) {
    mean += drink.mean;
    usual += drink.usual;
    apart += drink.chanceVariance + drink.ownVariance + drink.shareCv2 * drink.usual ** 2;
  }
  const common = dayCv2 + (drinks[0]?.holidayCv2 ?? 0) + levelCv2;
  return { mean, variance: apart + common * usual ** 2 };
}
