import { type Catalogue, itemNamed } from "#engine/catalogue.ts";
import type { BaseUnit, Unit } from "#engine/measure/units.ts";
import { type AllergenFrom, allergensOf } from "#engine/prep/allergens.ts";
import { vesselLoads } from "#engine/prep/batch-size.ts";
import { cautionsOf } from "#engine/prep/cautions.ts";
import { inputsOf } from "#engine/prep/inputs.ts";
import type { Shortage } from "#engine/prep/limits.ts";
import { isReadyTonight, type PrepNeed } from "#engine/prep/need.ts";
import { syrupCautions } from "#engine/prep/syrup-check.ts";
import { useBy } from "#engine/prep/use-by.ts";
import { type Mixed, mixedSyrup, weightsG } from "#engine/prep/weights.ts";
import { addHours, type BusinessDate, type Instant } from "#engine/time.ts";

/** One prep to make. `make`, `need`, `onHand`, `usable`, `forBatches` and `canMake` are in `unit`. */
export type PlannedBatch = {
  prep: string;
  make: number;
  unit: Unit;
  /** In how many vessels. */
  batches: number;
  useBy: BusinessDate | null;
  need: number;
  onHand: number;
  inputs: { item: string; amount: number; base: BaseUnit }[];
  /** Of the inputs whose weight is known. */
  weightsG?: Record<string, number>;
  /** What the syrup must read once made, from the weights; else as the item states it. */
  brix?: number;
  order: number;
  /** Of `onHand`: what the days can use before it is past its date. */
  usable: number;
  /** Of `need`: what today's other batches take. */
  forBatches: number;
  /** The chance of lasting that `need` is meant to give; of what dies tonight, the one that pays best where known. */
  serviceLevel: number;
  /** Last day it is made for. */
  coversUntil: BusinessDate;
  /** When what is usable runs out on the average; null when it lasts. */
  runsOutOn: BusinessDate | null;
  /** Today's need is covered by what is usable, and the batch would be ready tomorrow if it were begun then. */
  canWait: boolean;
  /** What would do until the next making, where the kitchen makes it more often than it has to: less to pour away. */
  untilNext: { days: number; need: number; make: number } | null;
  /** What `onHand` rests on: a count, only the batches on record, or nothing. */
  basis: PrepNeed["basis"];
  /** Weight and volume that the inputs come to, where all of them are sugar and water. */
  mix?: Mixed;
  /** What the inputs on hand make. */
  canMake: number;
  limitedBy: string[];
  missing: Shortage[];
  activeMinutes: number | null;
  standingHours: number | null;
  /** When it can be used, if it is begun at once. */
  readyAt: Instant;
  /** Runs out today, and what is begun now stands too long to be ready tonight. */
  tooLateTonight: boolean;
  method: string;
  allergens: AllergenFrom[];
  mayContain: AllergenFrom[];
  cautions: string[];
  /** Of one batch each, in `unit`. */
  loads: number[];
};

/** The line of the plan for one prep that needs making. */
export function plannedBatch(
  catalogue: Catalogue,
  need: PrepNeed,
  {
    date,
    at,
    order,
    canMake,
    missing,
  }: { date: BusinessDate; at: Instant; order: number; canMake: number; missing: Shortage[] },
): PlannedBatch {
  const { making } = need;
  const { prep, unit, perUnit } = making;
  const inputs = inputsOf(making, need.make);
  const weights = weightsG(catalogue, inputs, date);
  const mix = mixedSyrup(catalogue, inputs, date);
  const { base, brix: statedBrix } = itemNamed(catalogue, prep);
  const brix = mix?.brix ?? statedBrix;
  const { contains, mayContain } = allergensOf(catalogue, prep, date);
  return {
    prep,
    make: need.make / perUnit,
    unit,
    batches: need.batches,
    useBy: useBy(date, making.shelfLifeDays),
    need: need.need / perUnit,
    onHand: need.onHand / perUnit,
    inputs: inputs.map(({ item, amount }) => ({ item, amount, base: itemNamed(catalogue, item).base })),
    ...(Object.keys(weights).length > 0 ? { weightsG: weights } : {}),
    ...(brix !== null ? { brix } : {}),
    order,
    usable: need.usable / perUnit,
    forBatches: need.forBatches / perUnit,
    serviceLevel: need.serviceLevel,
    coversUntil: need.days.at(-1) ?? date,
    runsOutOn: need.runsOutOn,
    canWait: need.canWait,
    untilNext: need.untilNext && {
      days: need.untilNext.days,
      need: need.untilNext.need / perUnit,
      make: need.untilNext.make / perUnit,
    },
    basis: need.basis,
    ...(mix !== undefined ? { mix } : {}),
    canMake: canMake / perUnit,
    limitedBy: missing.map(({ item }) => item),
    missing,
    activeMinutes: making.activeMinutes,
    standingHours: making.standingHours,
    readyAt: addHours(at, (making.activeMinutes ?? 0) / 60 + (making.standingHours ?? 0)),
    tooLateTonight: need.runsOutOn === date && !isReadyTonight(making),
    method: making.method,
    allergens: contains,
    mayContain,
    cautions: [
      ...syrupCautions({ mix, makeMl: base === "ml" ? need.make : null }),
      ...cautionsOf(catalogue, prep, date),
    ],
    loads: vesselLoads(need.make, making).map((load) => load / perUnit),
  };
}
