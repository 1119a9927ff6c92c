import type { Simulation } from "./bar.ts";
import { weekdayOf } from "./calendar.ts";
import type { Catalogue, Day, SimVersion } from "./catalogue.ts";
import { type Fault, newPlantings } from "./faults.ts";
import { HARBOUR_LANTERN } from "./lantern/bar.ts";
import { type MeanUse, meanUseOn } from "./mean-use.ts";
import { type Random, randomStream } from "./random.ts";
import { type Bar, containerOf, type Noise, type Streams, weekOf } from "./state.ts";
import { newStockroom } from "./stockroom.ts";

/**
 * How far a careful bar errs: the bar's own figures, given to venue.json. Shares of a container, a pour and a
 * batch; grams; ml; pieces.
 */
export const USUAL_NOISE: Noise = {
  reading: 0.04,
  scaleG: 3,
  pourJigger: 0.05,
  pourFree: 0.12,
  yield: 0.06,
  ml: 7,
  each: 0.6,
};

export const FIRST_MONDAY = "2026-08-24";

/** Mon to Sun against the average day. */
const WEEKDAY_BUSYNESS = [0.72, 0.75, 0.85, 1, 1.33, 1.5, 0.85];
/** The level wanders by about so much a week. */
const DRIFT_SD = 0.03;

/** The bar on its first morning, before the opening count. */
export function openBar({
  seed,
  weeks,
  faults,
  catalogue = HARBOUR_LANTERN,
  firstMonday = FIRST_MONDAY,
  noise = USUAL_NOISE,
}: Simulation): Bar {
  if (!Number.isInteger(weeks) || weeks < 1)
    throw new Error(`weeks must be a whole number from 1, not ${weeks}`);
  const random = streams(seed);
  const foreseen = (day: Day) => (WEEKDAY_BUSYNESS[weekdayOf(day)] ?? 1) * eventFactor(catalogue, day);
  const drift = driftByWeek(random.demand, weeks);
  return {
    catalogue,
    book: withSlips(catalogue, faults),
    itemOf: new Map(catalogue.items.map((item) => [item.name, item])),
    firstMonday,
    weeks,
    noise,
    faults,
    plantings: newPlantings(),
    random,
    stockroom: newStockroom(openingStock(catalogue, random.buying)),
    records: { deliveries: [], batches: [], losses: [], transfers: [], orders: [], counts: [] },
    rung: [],
    openOrders: [],
    expected: new Map(),
    variance: new Map(),
    serves: new Map(),
    busyness: (day) => foreseen(day) * (drift[weekOf(day) - 1] ?? 1),
    foreseen,
    meanUse: rememberedMeanUse(catalogue),
    cuttingEase: new Map(),
    next: { invoice: 40_210 + (seed % 1000), order: 700, check: 10_000 },
  };
}

function streams(seed: number): Streams {
  const stream = (concern: string) => randomStream(seed, concern);
  return {
    demand: stream("demand"),
    guests: stream("guests"),
    pours: stream("pours"),
    cuts: stream("cuts"),
    kitchen: stream("kitchen"),
    buying: stream("buying"),
    counting: stream("counting"),
    sundry: stream("sundry"),
  };
}

function eventFactor({ events }: Catalogue, day: Day): number {
  return events.filter((event) => event.day === day).reduce((factor, event) => factor * event.factor, 1);
}

function driftByWeek(demand: Random, weeks: number): number[] {
  const steps = Array.from({ length: weeks }, () => Math.exp(DRIFT_SD * demand.normal()));
  return steps.map((_, week) => steps.slice(0, week + 1).reduce((level, step) => level * step, 1));
}

function rememberedMeanUse(catalogue: Catalogue): (day: Day) => MeanUse {
  const known = new Map<Day, MeanUse>();
  return (day) => {
    const use = known.get(day) ?? meanUseOn(catalogue, day);
    known.set(day, use);
    return use;
  };
}

/** Days of mean use that stand there at first; produce and preps are fresher than bottles. */
function openingDays(category: string, isMade: boolean): number {
  if (isMade) return category === "juice" ? 0 : 4;
  return category === "produce" ? 4 : 12;
}

function openingStock(catalogue: Catalogue, buying: Random): Map<string, number> {
  const mean = meanUseOn(catalogue, 0);
  const stocked = catalogue.items.filter(
    ({ stocked: isStocked, areas }) => isStocked !== false && areas.length > 0,
  );
  return new Map(
    stocked.map((item) => {
      const need =
        (mean.get(item.name) ?? 0) *
        openingDays(item.category, item.inHouse === true) *
        (0.85 + 0.3 * buying.uniform());
      if (item.packs.length === 0) return [item.name, Math.round(need)];
      const { size } = containerOf(item);
      const least =
        item.method === "tenths" || item.method === "scale" ? size * (1.2 + 0.8 * buying.uniform()) : size;
      return [item.name, Math.round(Math.max(need, least))];
    }),
  );
}

/** The book's catalogue: as the bar's, but for a unit written wrong on a spec. */
function withSlips(catalogue: Catalogue, faults: readonly Fault[]): Catalogue {
  const slips = faults.filter((fault) => fault.kind === "unit-slip");
  const slipped = <Made extends { name: string; versions: SimVersion[] }>(made: Made): Made => ({
    ...made,
    versions: made.versions.map((version) => ({
      ...version,
      lines: version.lines.map((line) => {
        const slip = slips.find((fault) => fault.drink === made.name && fault.item === line.item);
        return slip === undefined ? line : { ...line, unit: slip.unit };
      }),
    })),
  });
  return { ...catalogue, drinks: catalogue.drinks.map(slipped), preps: catalogue.preps.map(slipped) };
}
