import { type Catalogue, itemNamed } from "#engine/catalogue.ts";
import { type Demand, demandQuantile } from "#engine/demand/distribution.ts";
import { type BatchSize, batchSize } from "#engine/prep/batch-size.ts";
import type { PrepStock } from "#engine/prep/fridge.ts";
import { afterUse, isGood, type Layer, sumOf, usableStock } from "#engine/prep/layers.ts";
import { lowLevelCodes } from "#engine/prep/levels.ts";
import type { Making } from "#engine/prep/making.ts";
import {
  type DrinksDemand,
  directDemand,
  laterDemand,
  sumDemand,
  takenByBatches,
} from "#engine/prep/taken.ts";
import { daysServed } from "#engine/prep/use-by.ts";
import { addDays, type BusinessDate, datesFrom } from "#engine/time.ts";
import { DEFAULT_SERVICE_LEVEL } from "#engine/venue.ts";

/** One prep on the day of prep. Amounts are in base units. */
export type PrepNeed = BatchSize & {
  making: Making;
  /** The days a batch made now is meant for. */
  days: BusinessDate[];
  /** The chance of lasting that `need` is meant to give. */
  serviceLevel: number;
  /** What those days need at that service level, with what today's other batches take of it. */
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
  /** What would do until the next making, where the kitchen makes it more often than it has to. */
  untilNext: { days: number; need: number; make: number } | null;
  /** Past its date when prep begins. */
  past: Layer[];
};

/** A batch is made for a week at most: what keeps longer is made again by then. */
const DAYS_AHEAD = 7;

/** What stands longer than this is not ready for the same evening; common practice: prep at 14:00, doors at 18:00. */
const READY_TONIGHT_HOURS = 4;

/** What was made today and came out a little short is not made again for this share of the need. */
const SCRAP = 0.05;

export type NeedInput = {
  catalogue: Catalogue;
  makings: readonly Making[];
  date: BusinessDate;
  /** Days to make for; null: as long as it keeps, a week at most. */
  days: number | null;
  demand: DrinksDemand;
  stock: ReadonlyMap<string, PrepStock>;
  /** Leave what can wait, and make what keeps less than a week only until its next usual making. */
  onlyDue: boolean;
  /** Chances of lasting that pay best for what dies tonight; the others take the sheet's. */
  levels: ReadonlyMap<string, number>;
  /** Usual days from one making to the next, where known. */
  pace: ReadonlyMap<string, number>;
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
  const { catalogue, date, stock, demand } = input;
  const { prep, batchStep, vesselMax } = making;
  const { base, serviceLevel: stated } = itemNamed(catalogue, prep);
  const serviceLevel =
    input.levels.get(prep) ?? stated ?? catalogue.venue.serviceLevel ?? DEFAULT_SERVICE_LEVEL;
  const quantileOf = (asked: Demand) => demandQuantile(asked, serviceLevel, { isCount: base === "each" });
  const days = daysToServe(making, input);
  const { held, variance } = stockOnDay(prep, input);
  const good = held.filter((layer) => isGood(layer, date));

  const forBatches = takenByBatches(prep, known);
  const daily = days.map((day) => ({
    date: day,
    amount:
      directDemand(prep, [day], demand).mean +
      laterDemand(prep, [day], known, demand).mean +
      (day === date ? forBatches : 0),
  }));
  const usable = usableStock(good, daily);
  const needFor = (first: readonly BusinessDate[]) => {
    const asked = sumDemand([directDemand(prep, first, demand), laterDemand(prep, first, known, demand)]);
    return quantileOf(asked.mean > 0 ? sumDemand([asked, { mean: 0, variance }]) : asked) + forBatches;
  };
  const shortFor = (first: readonly BusinessDate[]) =>
    needFor(first) - usableStock(good, daily.slice(0, first.length));
  const soon = days.slice(0, isReadyTonight(making) ? 1 : 2);
  const next = days.slice(0, input.pace.get(prep) ?? days.length);
  const isMadeToday = good.some(({ madeOn }) => madeOn === date);
  const sizeFor = (first: readonly BusinessDate[]) => {
    const short = shortFor(first);
    const isScrap = isMadeToday && short < SCRAP * needFor(first);
    return isScrap ? NOTHING : batchSize({ short, batchStep, vesselMax });
  };
  const canWait = soon.length < days.length && shortFor(soon) <= 0;
  const size = sizeFor(days);
  return {
    making,
    days,
    serviceLevel,
    need: needFor(days),
    forBatches,
    onHand: sumOf(good),
    usable,
    ...(canWait && input.onlyDue ? NOTHING : size),
    basis: stock.get(prep)?.basis ?? "none",
    runsOutOn: runsOutOn(usable, daily),
    canWait: canWait && size.make > 0,
    untilNext:
      next.length < days.length ? { days: next.length, need: needFor(next), make: sizeFor(next).make } : null,
    past: held.filter((layer) => !isGood(layer, date)),
  };
}

const NOTHING: BatchSize = { make: 0, batches: 0 };

/** What is left when the day of prep comes, days not on record taken off, and how unsure that makes it. */
function stockOnDay(prep: string, input: NeedInput): { held: Layer[]; variance: number } {
  let held = input.stock.get(prep)?.layers ?? [];
  let variance = 0;
  for (const day of input.daysBefore) {
    const taken = directDemand(prep, [day], input.demand);
    // What was made since, and on the day of prep itself, was not there to be used.
    const [there, later] = [
      held.filter(({ madeOn }) => madeOn <= day),
      held.filter(({ madeOn }) => madeOn > day),
    ];
    held = [...afterUse(there, taken.mean, day), ...later];
    variance += taken.variance;
  }
  return { held, variance };
}

/**
 * The days a batch made on the day of prep is for: as long as it keeps, a week at most; of what keeps less than that,
 * only until it is usually made again, so that juice pressed daily is not pressed for tomorrow too.
 */
function daysToServe({ prep, shelfLifeDays }: Making, { date, days, pace }: NeedInput): BusinessDate[] {
  const keeps = shelfLifeDays === null ? Number.POSITIVE_INFINITY : daysServed(shelfLifeDays);
  const next = keeps < DAYS_AHEAD ? (pace.get(prep) ?? DAYS_AHEAD) : DAYS_AHEAD;
  const count = Math.max(1, Math.min(keeps, days ?? next));
  return datesFrom({ from: date, to: addDays(date, count - 1) });
}

/** Whether a batch begun at prep time can be poured the same evening. */
export function isReadyTonight({ standingHours }: Making): boolean {
  return (standingHours ?? 0) <= READY_TONIGHT_HOURS;
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
