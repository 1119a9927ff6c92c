import { itemNamed } from "#engine/catalogue.ts";
import { chanceAbove, type Demand } from "#engine/demand/distribution.ts";
import type { BaseUnit } from "#engine/measure/units.ts";
import type { Wanted } from "#engine/orders/budget.ts";
import { type Position, runOutChanceOf } from "#engine/orders/order-line.ts";
import type { Outlook } from "#engine/orders/outlook.ts";
import { type ParInPacks, parInPacks } from "#engine/orders/par-in-packs.ts";
import { parWhy } from "#engine/orders/why.ts";
import { instantToLocal } from "#engine/sales/read/clock.ts";
import type { Of } from "#engine/stock/movement.ts";
import type { Instant } from "#engine/time.ts";

/** An item's stock against its par, whether or not any of it is ordered. Amounts in `base` units. */
export type ReckonedItem = {
  item: string;
  base: BaseUnit;
  onHand: number;
  onHandSd: number;
  /** Of what is on hand: past its date before it is used, and so not counted on. */
  spoils: number;
  onOrder: number;
  /** The one that is ordered up to: set by hand where there is one, else computed. */
  par: number;
  parSet: number | null;
  parReason: string;
  parComputed: number;
  /** The par as people say it. */
  parInPacks: ParInPacks;
  parWhy: string;
  /** What standing at each par would mean; `set` is null where none is set by hand. */
  atPar: { computed: AtPar; set: AtPar | null };
  /** What a par is filled up in, so that it can be written in bottles or cases. */
  unit: { pack: string; of: Of; size: number };
  /** Demand that a par has to last for, and what it is weighed by. */
  demand: Demand;
  isCount: boolean;
  costPerBase: number | null;
  /** Mean demand from now until an order placed now no longer has to last. */
  expectedUse: number;
  /** Chance to run out before what is ordered now can arrive. */
  runOutChance: number;
  /** Chance of lasting that the par gives. */
  serviceLevel: number;
  /** The supplier it is bought from this time. */
  supplier: string;
};

/** Chance of running out before the delivery after the next, filled up to a par, and the money that stands in it. */
export type AtPar = { runOutChance: number; money: number | null };

export function reckonedItem(
  { facts: { catalogue }, costs }: Outlook,
  { position, unit }: Wanted,
  coversUntil: Instant | null,
): ReckonedItem {
  const { item, onHand, onHandSd, spoils, onOrder, par, parSet, parComputed, demand, serviceLevel } =
    position;
  const cost = costs.get(item) ?? null;
  const standing = (amount: number): AtPar => atPar(position, amount, cost);
  const until = coversUntil === null ? null : instantToLocal(coversUntil, catalogue.venue).slice(0, 10);
  return {
    item,
    base: itemNamed(catalogue, item).base,
    onHand,
    onHandSd,
    spoils,
    onOrder,
    par,
    parSet,
    parReason: itemNamed(catalogue, item).parReason,
    parComputed,
    parInPacks: parInPacks(par, unit),
    parWhy: parWhy({
      position,
      until,
      shelfLifeDays: itemNamed(catalogue, item).shelfLifeDays,
      parReason: itemNamed(catalogue, item).parReason,
      read: { base: itemNamed(catalogue, item).base, venue: catalogue.venue },
    }),
    atPar: { computed: standing(parComputed), set: parSet === null ? null : standing(parSet) },
    unit: { pack: unit.pack.pack, of: unit.of, size: unit.size },
    demand,
    isCount: position.isCount,
    costPerBase: cost,
    expectedUse: demand.mean,
    runOutChance: runOutChanceOf(position),
    serviceLevel,
    supplier: unit.pack.supplier ?? "",
  };
}

/** What filling an item up to an amount would mean, by its outlook. */
export function atPar(
  { demand, isCount }: Pick<Position, "demand" | "isCount">,
  amount: number,
  costPerBase: number | null,
): AtPar {
  return {
    runOutChance: chanceAbove(demand, amount, { isCount }),
    money: costPerBase === null ? null : amount * costPerBase,
  };
}
