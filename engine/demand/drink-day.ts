import type { Catalogue } from "#engine/catalogue.ts";
import { type Busyness, levelOn } from "#engine/demand/busyness.ts";
import { type Candidate, PLAN_WORTH_DAYS } from "#engine/demand/candidate.ts";
import type { KnownDays } from "#engine/demand/known-days.ts";
import { isOnMenu } from "#engine/demand/menu-days.ts";
import type { Mix } from "#engine/demand/mix.ts";
import { weekdayNumber } from "#engine/demand/open-days.ts";
import type { Spread } from "#engine/demand/spread.ts";
import type { BusinessDate } from "#engine/time.ts";

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
  /** Relative variance that all drinks share on a holiday beyond that of any night; else 0. */
  holidayCv2: number;
  /** Relative variance of its share: what all days of a forecast are wrong by together. */
  shareCv2: number;
};

/** Common practice: a party's head count is good to a fifth, the guess for a new drink to a half. */
const PARTY_SPREAD = 0.2;
export const LAUNCH_SPREAD = 0.5;

/** What a day's demand is put together from. */
export type DayParts = {
  catalogue: Catalogue;
  known: KnownDays;
  drinks: Candidate[];
  busyness: Busyness;
  mix: Mix;
  spread: Spread;
  shareCv2: number[];
};

/** An event on a weekday that is otherwise closed is a special opening. */
function isTrading({ busyness, known }: DayParts, date: BusinessDate): boolean {
  if (known.factorOn(date) === 0 || known.isShutOn(date)) return false;
  return (busyness.isOpenOn[weekdayNumber(date)] ?? true) || known.hasEvent(date);
}

/** What is expected to be sold on a day, by drink: how busy × what share, and what is planned. */
export function demandOn(parts: DayParts, date: BusinessDate): DrinkDay[] {
  const { drinks, mix, busyness, known, catalogue } = parts;
  const weekday = weekdayNumber(date);
  const served = drinks.map((drink, k) =>
    drink.stopped || !isOnMenu(catalogue, drink.what, date) || isUnsold(drink)
      ? 0
      : (mix.weights[k] ?? 0) * (mix.weekdayFactors[k]?.[weekday] ?? 1),
  );
  const onMenu = served.reduce((sum, weight) => sum + weight, 0);
  const total = isTrading(parts, date) && onMenu > 0 ? levelOn(busyness, date) * known.factorOn(date) : 0;
  return drinks.flatMap((drink, k) => {
    if (known.factorOn(date) === 0 || !isOnMenu(catalogue, drink.what, date)) return [];
    const share = onMenu > 0 ? (served[k] ?? 0) / onMenu : 0;
    const usual =
      total * (isUnsold(drink) && hasBegun(known, drink, date) ? (drink.prior?.share ?? 0) : share);
    const planned = known.plannedOn(date, drink.what);
    const typicalPlan = total * (drink.prior?.share ?? 0);
    const holidayCv2 = known.factorCv2On(date);
    const day = withPlan(parts, { drink, k, usual, planned, typicalPlan, holidayCv2 });
    return day.mean > 1e-3 ? [day] : [];
  });
}

/** A plan is beyond the usual: what nobody has sold yet takes no guests from the other drinks. */
function isUnsold({ isNew, serves }: Candidate): boolean {
  return isNew && !serves.some((sold) => sold > 0);
}

/** A new drink is expected from its first planned day on, on the days between its plans too. */
function hasBegun({ planDates }: KnownDays, { what }: Candidate, date: BusinessDate): boolean {
  return (planDates.get(what)?.[0] ?? "9999") <= date;
}

/**
 * A party comes on top of the usual. A new drink's usual starts from its plans; a day's own plan moves it by as
 * far as plans are still trusted, all the way before the first sale.
 */
function withPlan(
  { spread, shareCv2 }: DayParts,
  {
    drink,
    k,
    usual,
    planned,
    typicalPlan,
    holidayCv2,
  }: { drink: Candidate; k: number; usual: number; planned: number; typicalPlan: number; holidayCv2: number },
): DrinkDay {
  const share = shareCv2[k] ?? 0;
  const own = spread.own[k] ?? 0;
  const days = drink.end - drink.start;
  const trust = drink.isNew && planned > 0 ? PLAN_WORTH_DAYS / (days + PLAN_WORTH_DAYS) : 0;
  const risen = Math.max(0, usual - trust * typicalPlan);
  const plan = drink.isNew ? planned * trust : planned;
  const planSd = plan * (drink.isNew ? LAUNCH_SPREAD : PARTY_SPREAD);
  return {
    what: drink.what,
    mean: risen + plan,
    usual: risen,
    chanceVariance: spread.chance * risen + plan,
    ownVariance: own * risen * risen + planSd * planSd,
    holidayCv2,
    shareCv2: share,
  };
}
