import { fitBusyness, openWeekdays } from "#engine/demand/busyness.ts";
import { type Candidate, candidates, startedByPlan } from "#engine/demand/candidate.ts";
import type { Demand } from "#engine/demand/distribution.ts";
import { type DayParts, type DrinkDay, demandOn } from "#engine/demand/drink-day.ts";
import { fittedDays, sharedDayCv2, shareVariance } from "#engine/demand/fitted-spread.ts";
import { type Holiday, holidayDays } from "#engine/demand/holiday.ts";
import { holidayEffects } from "#engine/demand/holiday-effect.ts";
import { type KnownDays, knownDays, type TouchedDay, withHolidays } from "#engine/demand/known-days.ts";
import { isOnMenu } from "#engine/demand/menu-days.ts";
import { fitMix, type MixDays } from "#engine/demand/mix.ts";
import { weekdayNumber } from "#engine/demand/open-days.ts";
import { type OutDays, outDays, outReader } from "#engine/demand/out-days.ts";
import type { SoldSeries } from "#engine/demand/series.ts";
import { fitSpread } from "#engine/demand/spread.ts";
import type { Facts } from "#engine/facts.ts";
import { addDays, type BusinessDate, daysBetween } from "#engine/time.ts";

/** Older days say nothing of next week that newer ones do not say better. */
const HISTORY_DAYS = 400;

/** A drink's share of the menu: six weeks are half forgotten. */
const SHARE_HALF_LIFE_DAYS = 42;

/** What the venue's past says of its days to come. */
export type DemandModel = {
  /** Days before this one were looked at. */
  asOf: BusinessDate;
  /** What is expected to be sold on a day, by drink; nothing on a closed day. */
  on(date: BusinessDate): DrinkDay[];
  /** The holiday that touches a day and what it does; null on other days. */
  holidayOn(date: BusinessDate): TouchedDay | null;
  /** Days on which drinks could not be made: what was then sold says nothing of what was wanted. */
  out: OutDays[];
  /** Relative variance that all drinks of one day share: busy nights. */
  dayCv2: number;
  /** Relative variance that all days share: the level may be off. */
  levelCv2: number;
  /** Drinks on the menu of which neither sales nor plans say anything. */
  noHistory: string[];
  /** Sold once, not any more for weeks, and without a last day on the menu. */
  stopped: string[];
};

/** What of a venue its demand is fitted from, beside its sales. */
export type DemandFacts = Pick<Facts, "catalogue" | "book" | "holidays" | "counts" | "movements">;

/**
 * Fits the venue's demand to the days before `asOf`: how busy × what share, and the spread of both.
 *
 * Event days count without their factor, holidays without what they did before, parties without their plan, so that
 * none of them lifts a plain Tuesday.
 */
export function fitDemand(facts: DemandFacts, series: SoldSeries, asOf: BusinessDate): DemandModel {
  const { catalogue, book, holidays } = facts;
  const events = knownDays(book);
  const recent = daysUpTo(series, asOf);
  const out = outDays(facts, recent, asOf);
  const drinks = candidates(catalogue, recent, { known: events, isOut: outReader(out) });
  const days = mixDays(recent, drinks);
  const holidayOn = touchedDays(
    holidays,
    recent.dates,
    plainServes(recent.dates, days.totals, events),
    events,
  );
  const known = withHolidays(events, holidayOn);
  const busyness = fitBusyness({
    dates: recent.dates,
    serves: plainServes(recent.dates, days.totals, known),
  });
  const withPriors = drinks.map((drink) => startedByPlan(drink, known, busyness));
  const mix = fitMix(withPriors, days);
  const spread = fitSpread(fittedDays(withPriors, days, mix));
  const shareCv2 = withPriors.map((drink) => shareVariance(drink, days, spread));
  const parts: DayParts = { catalogue, known, drinks: withPriors, busyness, mix, spread, shareCv2 };
  const remembered = new Map<BusinessDate, DrinkDay[]>();
  return {
    asOf,
    on: (date) => {
      const day = remembered.get(date) ?? demandOn(parts, date);
      remembered.set(date, day);
      return day;
    },
    holidayOn,
    out,
    dayCv2: sharedDayCv2(parts),
    levelCv2: busyness.levelCv2,
    noHistory: withoutHistory(parts, asOf),
    stopped: drinks.filter(({ stopped }) => stopped).map(({ what }) => what),
  };
}

/** Mean and variance of a drink's serves on one day. */
export function drinkDemand(model: DemandModel, day: DrinkDay): Demand {
  const common = (model.dayCv2 + day.holidayCv2 + model.levelCv2 + day.shareCv2) * day.usual ** 2;
  return { mean: day.mean, variance: day.chanceVariance + day.ownVariance + common };
}

function mixDays({ dates }: SoldSeries, drinks: readonly Candidate[]): MixDays {
  const totals = new Float64Array(dates.length);
  for (const { serves, start, end } of drinks) {
    for (let day = start; day < end; day += 1) totals[day] = (totals[day] ?? 0) + (serves[day] ?? 0);
  }
  const last = dates.at(-1) ?? "";
  const age = (date: BusinessDate) => daysBetween({ from: date, to: last });
  return {
    totals,
    recency: Float64Array.from(dates, (date) => 0.5 ** (age(date) / SHARE_HALF_LIFE_DAYS)),
    weekdays: dates.map(weekdayNumber),
  };
}

function daysUpTo({ dates, serves }: SoldSeries, asOf: BusinessDate): SoldSeries {
  const from = addDays(asOf, -HISTORY_DAYS);
  const start = dates.findIndex((date) => date >= from);
  const after = dates.findIndex((date) => date >= asOf);
  const [first, end] = [start < 0 ? dates.length : start, after < 0 ? dates.length : after];
  return {
    dates: dates.slice(first, end),
    serves: new Map([...serves].map(([what, row]) => [what, row.subarray(first, Math.max(first, end))])),
  };
}

function plainServes(dates: readonly BusinessDate[], totals: Float64Array, known: KnownDays): Float64Array {
  return Float64Array.from(totals, (total, day) => {
    const factor = known.factorOn(dates[day] ?? "");
    return factor > 0 ? total / factor : total;
  });
}

function touchedDays(
  holidays: readonly Holiday[],
  dates: readonly BusinessDate[],
  serves: Float64Array,
  { hasEvent }: KnownDays,
): (date: BusinessDate) => TouchedDay | null {
  if (holidays.length === 0) return () => null;
  const days = holidayDays(holidays);
  const isOpenOn = openWeekdays(dates);
  const isUsuallyOpen = (date: BusinessDate) => isOpenOn[weekdayNumber(date)] ?? true;
  const effectOf = holidayEffects({ dates, serves }, days, { hasEvent, isUsuallyOpen });
  return (date) => {
    const day = days.get(date);
    return day === undefined ? null : { ...day, ...effectOf(day) };
  };
}

function withoutHistory({ drinks, catalogue, known }: DayParts, asOf: BusinessDate): string[] {
  return drinks
    .filter(({ what, start, end, serves }) => {
      const isCurrent =
        isOnMenu(catalogue, what, asOf) || (catalogue.drinks.get(what)?.onMenuFrom ?? "") > asOf;
      const wasSold = end > start && serves.some((sold) => sold > 0);
      return isCurrent && !wasSold && !known.planDates.has(what);
    })
    .map(({ what }) => what);
}
