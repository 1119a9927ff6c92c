import type { Demand } from "#engine/demand/distribution.ts";
import type { Facts } from "#engine/facts.ts";
import type { Unit } from "#engine/measure/units.ts";
import { type ActiveMinutes, activeMinutes } from "#engine/prep/active-minutes.ts";
import { prepBegins } from "#engine/prep/begins.ts";
import { type CutLine, cutList, cutsForDrinks, type LearntYields } from "#engine/prep/cut-list.ts";
import { type Discard, discardsOf } from "#engine/prep/discard.ts";
import { forecastForPrep } from "#engine/prep/drinks-demand.ts";
import { prepStock } from "#engine/prep/fridge.ts";
import { fruitYield } from "#engine/prep/fruit-yield.ts";
import { limitsOf } from "#engine/prep/limits.ts";
import { type Making, makingsOn } from "#engine/prep/making.ts";
import { type PrepNeed, prepNeeds } from "#engine/prep/need.ts";
import { makingPace } from "#engine/prep/pace.ts";
import { type PickLine, pickList } from "#engine/prep/pick-list.ts";
import { type PlannedBatch, plannedBatch } from "#engine/prep/planned-batch.ts";
import type { DrinksDemand } from "#engine/prep/taken.ts";
import { tonightLevels } from "#engine/prep/tonight-level.ts";
import { workOrder } from "#engine/prep/work-order.ts";
import type { SaleGroup } from "#engine/sales/tally.ts";
import { onHand, salesNeededFrom } from "#engine/stock/on-hand.ts";
import { addDays, type BusinessDate, datesFrom, type Instant } from "#engine/time.ts";

export type PrepPlan = {
  date: BusinessDate;
  /** The moment the plan starts from. */
  at: Instant;
  batches: PlannedBatch[];
  cuts: CutLine[];
  discard: Discard[];
  /** Preps that are wanted and last without a batch. */
  enough: { prep: string; unit: Unit; need: number; onHand: number }[];
  /** With `onlyDue`: what is short for its days but lasts today, and so is not made today. */
  later: { prep: string; unit: Unit; need: number; onHand: number; runsOutOn: BusinessDate | null }[];
  pickList: PickLine[];
  /** Hands-on time of the day, of all vessels together. */
  activeMinutes: ActiveMinutes;
  /** Made in house and wanted, but nothing says how they are made on that day. */
  noRecipe: string[];
};

export type PlanInput = {
  facts: Facts;
  sales: readonly SaleGroup[];
  date: BusinessDate;
  days?: number | undefined;
  at?: Instant | undefined;
  /**
   * Plan only what cannot wait until tomorrow, and of what keeps less than a week only what is used until its next making,
   * as the batches on record show its pace. Far less is poured away; the default fills up for as long as a batch keeps.
   */
  onlyDue?: boolean | undefined;
  /** How sure it shall be that the most pieces of a fruit are enough (0.5–0.999); default: `USUAL_CERTAINTY`. */
  certainty?: number | undefined;
  demand: DrinksDemand;
};

/**
 * What to make, cut and throw out on a day, from what the drinks are expected to take.
 *
 * `sales` reach back to each prep's last count, the days of counts and of the moment itself line by line; trading
 * days between the last one in `sales` and `date` are taken off the stock at their expected use. Without `at`,
 * prep begins at `prepBegins`. Throws PrepCycleError where preps are made of each other.
 */
export function planPrep({
  facts,
  sales,
  date,
  days,
  at: given,
  demand,
  onlyDue = false,
  certainty,
}: PlanInput): PrepPlan {
  const { catalogue } = facts;
  const at = given ?? prepBegins(facts, sales, date);
  const makings = makingsOn(catalogue, date);
  const stock = prepStock(facts, sales, { preps: makings.map(({ prep }) => prep), at });
  const daysBefore = daysNotRecorded(sales, date);
  const pace = makingPace(facts, date);
  const needs = prepNeeds({
    catalogue,
    makings,
    date,
    days: days ?? null,
    demand,
    stock,
    levels: tonightLevels(facts, { makings, demand, date, at }),
    pace,
    daysBefore,
    onlyDue,
  });
  const jobs = inWorkOrder(needs.filter(({ make }) => make > 0));

  const held = inputsOnHand(facts, sales, at);
  for (const { making, usable } of needs) held.set(making.prep, usable);
  const limits = limitsOf(catalogue, jobs, held);
  const batches = jobs.map((job, index) => {
    const limit = limits[index] ?? { canMake: job.make, missing: [] };
    return plannedBatch(catalogue, job, { date, at, order: index + 1, ...limit });
  });
  const cuts = cutList(
    catalogue,
    [...jobs.flatMap(batchCuts), ...cutsForDrinks(catalogue, demand.cutsOn(date), date)],
    date,
    { learnt: learntYields(facts, makings, date), certainty },
  );
  return {
    date,
    at,
    batches,
    cuts,
    discard: needs.flatMap((need) => discardsOf(catalogue, need)),
    enough: needs.flatMap(enoughOf),
    later: needs.flatMap(laterOf),
    pickList: pickList(catalogue, { jobs, cuts, onHand: held, date }),
    activeMinutes: activeMinutes(batches),
    noRecipe: withoutRecipe(facts, makings, demand.itemsOver({ from: date, to: date })),
  };
}

/**
 * What to make, cut and throw out on a business day, from the venue's own forecast.
 *
 * `sales` reach back as far as the forecast should look; the days of counts and of the moment itself come line by line.
 * Only days before `date` are forecast from. `days`: make for so many days at most (default: as long as each keeps, a
 * week at most). `at`: the moment prep begins (default: `prepBegins`). Throws PrepCycleError.
 */
export function prepPlan(question: Omit<PlanInput, "demand">): PrepPlan {
  const { facts, sales, date } = question;
  return planPrep({ ...question, demand: forecastForPrep({ facts, sales, asOf: date }) });
}

/** Days after the last one on record and before the day of prep. */
function daysNotRecorded(sales: readonly SaleGroup[], date: BusinessDate): BusinessDate[] {
  let last: BusinessDate | undefined;
  for (const { businessDate } of sales) if (last === undefined || businessDate > last) last = businessDate;
  return last === undefined ? [] : datesFrom({ from: addDays(last, 1), to: addDays(date, -1) });
}

function inWorkOrder(needs: readonly PrepNeed[]): PrepNeed[] {
  const order = workOrder(
    needs.map(({ making, runsOutOn }) => ({
      prep: making.prep,
      uses: making.inputs.map(({ item }) => item),
      standingHours: making.standingHours ?? 0,
      neededOn: runsOutOn,
    })),
  );
  return order.flatMap((prep) => needs.filter(({ making }) => making.prep === prep));
}

function inputsOnHand(facts: Facts, sales: readonly SaleGroup[], at: Instant): Map<string, number> {
  const from = salesNeededFrom(facts, at) ?? "";
  const recent = sales.filter(({ businessDate }) => businessDate >= from);
  return new Map([...onHand(facts, recent, at)].map(([item, { quantity }]) => [item, quantity]));
}

function learntYields(facts: Facts, makings: readonly Making[], date: BusinessDate): LearntYields {
  return new Map(
    makings.flatMap((making) => {
      const learnt = fruitYield(facts, making, date);
      return learnt === undefined ? [] : [[making.prep, learnt] as const];
    }),
  );
}

function batchCuts({ making, make }: PrepNeed) {
  return making.cuts.map((cut) => ({ ...cut, amount: cut.amount * make, shares: cut.shares * make }));
}

function withoutRecipe(
  { catalogue }: Facts,
  makings: readonly Making[],
  demand: ReadonlyMap<string, Demand>,
): string[] {
  const made = new Set(makings.map(({ prep }) => prep));
  return [...catalogue.items.values()].flatMap(({ name, inHouse, stocked }) =>
    inHouse && stocked && !made.has(name) && (demand.get(name)?.mean ?? 0) > 0 ? [name] : [],
  );
}

function laterOf({ making, need, onHand: held, make, canWait, runsOutOn }: PrepNeed): PrepPlan["later"] {
  if (make > 0 || !canWait) return [];
  const { prep, unit, perUnit } = making;
  return [{ prep, unit, need: need / perUnit, onHand: held / perUnit, runsOutOn }];
}

function enoughOf({ making, need, onHand: held, make, canWait }: PrepNeed): PrepPlan["enough"] {
  if (make > 0 || canWait || need <= 0) return [];
  const { prep, unit, perUnit } = making;
  return [{ prep, unit, need: need / perUnit, onHand: held / perUnit }];
}
