import { type Busyness, fitBusyness, weekdayNumber } from "#engine/demand/busyness.ts";
import type { Demand } from "#engine/demand/distribution.ts";
import { type KnownDays, knownDays } from "#engine/demand/known-days.ts";
import { isOnMenu, menuDays } from "#engine/demand/menu-days.ts";
import { fitMix, type Mix, type MixDays, type Sold } from "#engine/demand/mix.ts";
import type { SoldSeries } from "#engine/demand/series.ts";
import { type Fitted, fitSpread, type Spread } from "#engine/demand/spread.ts";
import type { Facts } from "#engine/facts.ts";
import { addDays, type BusinessDate, daysBetween } from "#engine/time.ts";

/** Serves of one drink (or item sold straight) expected on one day, and the parts of their variance. */
export type DrinkDay = {
  what: string;
  mean: number;
  /** The part of the mean that busy nights raise; the rest is planned. */
  usual: number;
  /** Variance of single guests choosing: of each serve apart. */
  chanceVariance: number;
  /** Variance of this drink's popularity that day: of all its serves together. */
  ownVariance: number;
  /** Relative variance of its share: what all days of a forecast are wrong by together. */
  shareCv2: number;
};

/** What the venue's past says of its days to come. */
export type DemandModel = {
  /** Days before this one were looked at. */
  asOf: BusinessDate;
  /** What is expected to be sold on a day, by drink; nothing on a closed day. */
  on(date: BusinessDate): DrinkDay[];
  /** Relative variance that all drinks of one day share: busy nights. */
  dayCv2: number;
  /** Relative variance that all days share: the level may be off. */
  levelCv2: number;
  /** Drinks on the menu of which neither sales nor plans say anything. */
  noHistory: string[];
  /** Sold once, not any more for weeks, and without a last day on the menu. */
  stopped: string[];
};

/** Older days say nothing of next week that newer ones do not say better. */
const HISTORY_DAYS = 400;
/** A drink's share of the menu: six weeks are half forgotten. */
const SHARE_HALF_LIFE_DAYS = 42;
/** A planned share counts as much as so many days of sales. */
const PLAN_WORTH_DAYS = 7;
/** A drink with fewer days behind it when its plan begins is a new one: its plan is its start. */
const NEW_DRINK_DAYS = 5;
/** Common practice: a party's head count is good to a fifth, the guess for a new drink to a half. */
const PARTY_SPREAD = 0.2;
const LAUNCH_SPREAD = 0.5;

/** A drink's days, and whether its plans are how it starts (a new drink) or come on top (a party). */
type Candidate = Sold & { isNew: boolean; stopped: boolean };

/**
 * Fits the venue's demand to the days before `asOf`: how busy × what share, and the spread of both.
 *
 * Event days count without their factor, parties without their plan, so that neither lifts a plain Tuesday.
 */
export function fitDemand(
  { catalogue, book }: Pick<Facts, "catalogue" | "book">,
  series: SoldSeries,
  asOf: BusinessDate,
): DemandModel {
  const known = knownDays(book);
  const recent = daysUpTo(series, asOf);
  const drinks = candidates(catalogue, recent, known);
  const days = mixDays(recent, drinks, known);
  const busyness = fitBusyness({
    dates: recent.dates,
    serves: plainServes(recent.dates, days.totals, known),
  });
  const withPriors = drinks.map((drink) => startedByPlan(drink, known, busyness));
  const mix = fitMix(withPriors, days);
  const spread = fitSpread(fittedDays(withPriors, days, mix));
  const shareCv2 = withPriors.map((drink) => shareVariance(drink, days, spread));
  const parts: Parts = { catalogue, known, drinks: withPriors, busyness, mix, spread, shareCv2 };
  const remembered = new Map<BusinessDate, DrinkDay[]>();
  return {
    asOf,
    on: (date) => {
      const day = remembered.get(date) ?? demandOn(parts, date);
      remembered.set(date, day);
      return day;
    },
    dayCv2: sharedDayCv2(parts),
    levelCv2: busyness.levelCv2,
    noHistory: withoutHistory(parts, asOf),
    stopped: drinks.filter(({ stopped }) => stopped).map(({ what }) => what),
  };
}

/** Mean and variance of a drink's serves on one day. */
export function drinkDemand(model: DemandModel, day: DrinkDay): Demand {
  const common = (model.dayCv2 + model.levelCv2 + day.shareCv2) * day.usual ** 2;
  return { mean: day.mean, variance: day.chanceVariance + day.ownVariance + common };
}

type Parts = {
  catalogue: Facts["catalogue"];
  known: KnownDays;
  drinks: Candidate[];
  busyness: Busyness;
  mix: Mix;
  spread: Spread;
  shareCv2: number[];
};

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

function candidates(
  catalogue: Facts["catalogue"],
  { dates, serves }: SoldSeries,
  known: KnownDays,
): Candidate[] {
  const whats = new Set([...serves.keys(), ...catalogue.drinks.keys()]);
  return [...whats].map((what) => {
    const row = serves.get(what) ?? new Float64Array(dates.length);
    const { start, end, stopped } = menuDays(catalogue, what, dates, row);
    const firstPlan = known.planDates.get(what)?.[0];
    const before = firstPlan === undefined ? end : dates.findIndex((date) => date >= firstPlan);
    const isNew = firstPlan !== undefined && (before < 0 ? end : before) - start < NEW_DRINK_DAYS;
    const plain = isNew || firstPlan === undefined ? row : withoutPlans(dates, row, what, known);
    return { what, serves: plain, start, end, stopped, prior: null, isNew };
  });
}

function withoutPlans(dates: readonly BusinessDate[], row: Float64Array, what: string, known: KnownDays) {
  return Float64Array.from(row, (sold, day) => Math.max(0, sold - known.plannedOn(dates[day] ?? "", what)));
}

function mixDays({ dates }: SoldSeries, drinks: readonly Candidate[], _known: KnownDays): MixDays {
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

function plainServes(dates: readonly BusinessDate[], totals: Float64Array, known: KnownDays): Float64Array {
  return Float64Array.from(totals, (total, day) => {
    const factor = known.factorOn(dates[day] ?? "");
    return factor > 0 ? total / factor : total;
  });
}

/** A new drink starts from its planned share of what its planned days are expected to sell. */
function startedByPlan(drink: Candidate, known: KnownDays, busyness: Busyness): Candidate {
  const planDates = known.planDates.get(drink.what);
  if (!drink.isNew || planDates === undefined) return drink;
  let [planned, expected] = [0, 0];
  for (const date of planDates) {
    planned += known.plannedOn(date, drink.what);
    expected += levelOn(busyness, known, date);
  }
  if (expected <= 0) return drink;
  return { ...drink, prior: { share: Math.min(0.5, planned / expected), days: PLAN_WORTH_DAYS } };
}

function levelOn({ level, weekdayIndex }: Busyness, known: KnownDays, date: BusinessDate): number {
  return level * (weekdayIndex[weekdayNumber(date)] ?? 1) * known.factorOn(date);
}

/** An event on a weekday that is otherwise closed is a special opening. */
function isTrading({ busyness, known }: Parts, date: BusinessDate): boolean {
  if (known.factorOn(date) === 0) return false;
  return (busyness.isOpenOn[weekdayNumber(date)] ?? true) || known.hasEvent(date);
}

function demandOn(parts: Parts, date: BusinessDate): DrinkDay[] {
  const { drinks, mix, busyness, known, catalogue } = parts;
  const weekday = weekdayNumber(date);
  const served = drinks.map((drink, k) =>
    drink.stopped || !isOnMenu(catalogue, drink.what, date)
      ? 0
      : (mix.weights[k] ?? 0) * (mix.weekdayFactors[k]?.[weekday] ?? 1),
  );
  const onMenu = served.reduce((sum, weight) => sum + weight, 0);
  const total = isTrading(parts, date) && onMenu > 0 ? levelOn(busyness, known, date) : 0;
  return drinks.flatMap((drink, k) => {
    if (known.factorOn(date) === 0 || !isOnMenu(catalogue, drink.what, date)) return [];
    const usual = onMenu > 0 ? (total * (served[k] ?? 0)) / onMenu : 0;
    const day = withPlan(parts, { drink, k, usual, planned: known.plannedOn(date, drink.what) });
    return day.mean > 1e-3 ? [day] : [];
  });
}

/** A party comes on top of the usual; a new drink's plan gives way to its sales as they come in. */
function withPlan(
  { spread, shareCv2 }: Parts,
  { drink, k, usual, planned }: { drink: Candidate; k: number; usual: number; planned: number },
): DrinkDay {
  const share = shareCv2[k] ?? 0;
  const own = spread.own[k] ?? 0;
  const days = drink.end - drink.start;
  const trust = drink.isNew && planned > 0 ? PLAN_WORTH_DAYS / (days + PLAN_WORTH_DAYS) : 0;
  const risen = usual * (1 - trust);
  const plan = drink.isNew ? planned * trust : planned;
  const planSd = plan * (drink.isNew ? LAUNCH_SPREAD : PARTY_SPREAD);
  return {
    what: drink.what,
    mean: risen + plan,
    usual: risen,
    chanceVariance: spread.chance * risen + plan,
    ownVariance: own * risen * risen + planSd * planSd,
    shareCv2: share,
  };
}

function fittedDays(drinks: readonly Candidate[], days: MixDays, mix: Mix): Fitted[] {
  const count = days.totals.length;
  const onMenu = new Float64Array(count);
  const weightOn = (k: number, day: number) =>
    (mix.weights[k] ?? 0) * (mix.weekdayFactors[k]?.[days.weekdays[day] ?? 0] ?? 1);
  drinks.forEach(({ start, end }, k) => {
    for (let day = start; day < end; day += 1) onMenu[day] = (onMenu[day] ?? 0) + weightOn(k, day);
  });
  // Half a year shows how a drink scatters.
  const from = Math.max(0, count - 156);
  return drinks.map(({ serves, start, end }, k) => {
    const first = Math.min(end, Math.max(start, from));
    const shares = new Float64Array(Math.max(0, end - first));
    for (let day = first; day < end; day += 1) shares[day - first] = weightOn(k, day) / (onMenu[day] || 1);
    return { serves: serves.subarray(first, end), totals: days.totals.subarray(first, end), shares };
  });
}

/** How far a share may be off that was read from so many serves; a planned one by the spread of such guesses. */
function shareVariance(
  { serves, start, end, prior }: Candidate,
  { recency }: MixDays,
  spread: Spread,
): number {
  let [sold, squares] = [0, 0];
  for (let day = start; day < end; day += 1) {
    const weight = recency[day] ?? 0;
    sold += weight * (serves[day] ?? 0);
    squares += weight * weight * (serves[day] ?? 0);
  }
  const seen = sold > 0 ? (spread.chance * squares) / (sold * sold) : 1;
  return Math.min(prior === null ? 0.5 : LAUNCH_SPREAD ** 2, seen);
}

/** What single guests' choices make the day's total scatter by is not the busy night's doing. */
function sharedDayCv2({ drinks, busyness, mix, spread }: Parts): number {
  const total = mix.weights.reduce((sum, weight, k) => sum + (drinks[k]?.stopped ? 0 : weight), 0);
  if (total <= 0 || busyness.level <= 0) return busyness.dayCv2;
  const chance = spread.chance / busyness.level;
  const own = mix.weights.reduce((sum, weight, k) => sum + (spread.own[k] ?? 0) * (weight / total) ** 2, 0);
  return Math.max(0, busyness.dayCv2 - chance - own);
}

function withoutHistory({ drinks, catalogue, known }: Parts, asOf: BusinessDate): string[] {
  return drinks
    .filter(({ what, start, end, serves }) => {
      const isCurrent =
        isOnMenu(catalogue, what, asOf) || (catalogue.drinks.get(what)?.onMenuFrom ?? "") > asOf;
      const wasSold = end > start && serves.some((sold) => sold > 0);
      return isCurrent && !wasSold && !known.planDates.has(what);
    })
    .map(({ what }) => what);
}
