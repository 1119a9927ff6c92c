import { type Catalogue, itemNamed } from "#engine/catalogue.ts";
import { type Demand, demandQuantile } from "#engine/demand/distribution.ts";
import { type BatchSize, batchSize } from "#engine/prep/batch-size.ts";
import type { PrepStock } from "#engine/prep/fridge.ts";
import { afterUse, isGood, type Layer, sumOf, usableStock } from "#engine/prep/layers.ts";
import { lowLevelCodes } from "#engine/prep/levels.ts";
import type { Making } from "#engine/prep/making.ts";
import { daysServed } from "#engine/prep/use-by.ts";
import { addDays, type BusinessDate, datesFrom } from "#engine/time.ts";

/** What the drinks are expected to take, as far as prep has to know it; in base units. */
export type DrinksDemand = {
  /** Of stocked items, over all days from one to another. */
  itemsOver: (days: { from: BusinessDate; to: BusinessDate }) => ReadonlyMap<string, Demand>;
  /** Of what is cut when it is asked for, on one day. */
  cutsOn: (date: BusinessDate) => ReadonlyMap<string, Demand>;
};

/** One prep on the day of prep. Amounts are in base units. */
export type PrepNeed = BatchSize & {
  making: Making;
  /** The days a batch made now is meant for. */
  days: BusinessDate[];
  /** What those days need at the prep's service level, with what today's other batches take of it. */
  need: number;
  /** Of `need`: for today's other batches. */
  forBatches: number;
  /** In date on the day of prep. */
  onHand: number;
  /** Of `onHand`: what the days can use before it is past its date. */
  usable: number;
  basis: PrepStock["basis"];
  /** The first of the days on which what is usable no longer lasts on the average; null when it does. */
  runsOutOn: BusinessDate | null;
  /** What is usable covers today and, for what stands overnight, tomorrow: the batch can be begun tomorrow. */
  canWait: boolean;
  /** Past its date when prep begins. */
  past: Layer[];
};

/** A batch is made for a week at most: what keeps longer is made again by then. */
const DAYS_AHEAD = 7;

/** What stands longer than this is not ready for the same evening; common practice: prep at 14:00, doors at 18:00. */
const READY_TONIGHT_HOURS = 4;

export type NeedInput = {
  catalogue: Catalogue;
  makings: readonly Making[];
  date: BusinessDate;
  /** Days to make for; null: as long as it keeps, a week at most. */
  days: number | null;
  demand: DrinksDemand;
  stock: ReadonlyMap<string, PrepStock>;
  /** Trading days between the last one on record and the day of prep: their use is still to come off the stock. */
  daysBefore: readonly BusinessDate[];
};

/**
 * What each prep needs made, users before inputs, so that a prep used by drinks and by other batches is netted once.
 *
 * Need = quantile of the drinks' demand over the days a batch can serve + what today's batches take of it. A prep that
 * keeps longer than one that uses it also answers, on the average, for the later makings of that one.
 * Throws PrepCycleError where stocked preps are made of each other.
 */
export function prepNeeds(input: NeedInput): PrepNeed[] {
  const codes = lowLevelCodes(input.makings);
  const inTurn = [...input.makings].sort((a, b) => (codes.get(a.prep) ?? 0) - (codes.get(b.prep) ?? 0));
  const needs = new Map<string, PrepNeed>();
  for (const making of inTurn) needs.set(making.prep, needOf(making, needs, input));
  return inTurn.flatMap(({ prep }) => needs.get(prep) ?? []);
}

function needOf(making: Making, known: ReadonlyMap<string, PrepNeed>, input: NeedInput): PrepNeed {
  const { catalogue, date, stock } = input;
  const { prep, batchStep, vesselMax } = making;
  const { base, serviceLevel } = itemNamed(catalogue, prep);
  const quantileOf = (demand: Demand) =>
    demandQuantile(demand, serviceLevel ?? catalogue.venue.serviceLevel, { isCount: base === "each" });
  const days = daysToServe(making, input);
  const { held, variance } = stockOnDay(prep, input);
  const good = held.filter((layer) => isGood(layer, date));

  const forBatches = sumOfUse(prep, known);
  const drinks = sumDemand([directDemand(prep, days, input), laterDemand(prep, days, known, input)]);
  const need = quantileOf(drinks.mean > 0 ? sumDemand([drinks, { mean: 0, variance }]) : drinks) + forBatches;
  const daily = days.map((day) => ({
    date: day,
    amount:
      directDemand(prep, [day], input).mean +
      laterDemand(prep, [day], known, input).mean +
      (day === date ? forBatches : 0),
  }));
  const usable = usableStock(good, daily);
  const soon = days.slice(0, (making.standingHours ?? 0) > READY_TONIGHT_HOURS ? 2 : 1);
  return {
    making,
    days,
    need,
    forBatches,
    onHand: sumOf(good),
    usable,
    ...batchSize({ short: need - usable, batchStep, vesselMax }),
    basis: stock.get(prep)?.basis ?? "none",
    runsOutOn: runsOutOn(usable, daily),
    canWait: soon.length < days.length && usable >= quantileOf(directDemand(prep, soon, input)) + forBatches,
    past: held.filter((layer) => !isGood(layer, date)),
  };
}

/** What is left when the day of prep comes, days not on record taken off, and how unsure that makes it. */
function stockOnDay(prep: string, input: NeedInput): { held: Layer[]; variance: number } {
  let held = input.stock.get(prep)?.layers ?? [];
  let variance = 0;
  for (const day of input.daysBefore) {
    const demand = directDemand(prep, [day], input);
    held = afterUse(held, demand.mean, day);
    variance += demand.variance;
  }
  return { held, variance };
}

/** What today's batches of other preps take of one. */
function sumOfUse(prep: string, known: ReadonlyMap<string, PrepNeed>): number {
  return [...known.values()].reduce((sum, user) => sum + user.make * shareOf(prep, user.making), 0);
}

/** The days a batch made on the day of prep is for. */
function daysToServe({ shelfLifeDays }: Making, { date, days }: NeedInput): BusinessDate[] {
  const keeps = shelfLifeDays === null ? Number.POSITIVE_INFINITY : daysServed(shelfLifeDays);
  const count = Math.max(1, Math.min(keeps, days ?? DAYS_AHEAD));
  return datesFrom({ from: date, to: addDays(date, count - 1) });
}

function directDemand(prep: string, days: readonly BusinessDate[], { demand }: NeedInput): Demand {
  const [from, to] = [days[0], days.at(-1)];
  if (from === undefined || to === undefined) return NONE;
  return demand.itemsOver({ from, to }).get(prep) ?? NONE;
}

/** What makings later than today's take of a prep: of preps whose own batch of today does not serve so long. */
function laterDemand(
  prep: string,
  days: readonly BusinessDate[],
  known: ReadonlyMap<string, PrepNeed>,
  input: NeedInput,
): Demand {
  const asked = [...known.values()].map((user) => {
    const share = shareOf(prep, user.making);
    const later = share === 0 ? [] : days.filter((day) => day > (user.days.at(-1) ?? day));
    return scaled(grossDemand(user.making.prep, later, known, input), share);
  });
  return sumDemand(asked);
}

/** All that is taken of a prep on some days, by drinks and by whatever is made of it, stock aside. */
function grossDemand(
  prep: string,
  days: readonly BusinessDate[],
  known: ReadonlyMap<string, PrepNeed>,
  input: NeedInput,
): Demand {
  if (days.length === 0) return NONE;
  const users = [...known.values()].filter(({ making }) => shareOf(prep, making) > 0);
  return sumDemand([
    directDemand(prep, days, input),
    ...users.map(({ making }) => scaled(grossDemand(making.prep, days, known, input), shareOf(prep, making))),
  ]);
}

/** Base units of an input in one base unit made. */
function shareOf(input: string, { inputs }: Making): number {
  return inputs.find(({ item }) => item === input)?.perUnit ?? 0;
}

function runsOutOn(
  usable: number,
  daily: readonly { date: BusinessDate; amount: number }[],
): BusinessDate | null {
  let left = usable;
  for (const { date, amount } of daily) {
    left -= amount;
    if (left < 0) return date;
  }
  return null;
}

const NONE: Demand = { mean: 0, variance: 0 };

function sumDemand(demands: readonly Demand[]): Demand {
  return demands.reduce(
    (sum, { mean, variance }) => ({ mean: sum.mean + mean, variance: sum.variance + variance }),
    NONE,
  );
}

function scaled({ mean, variance }: Demand, by: number): Demand {
  return { mean: mean * by, variance: variance * by * by };
}
