import { itemNamed } from "#engine/catalogue.ts";
import type { BaseUnit } from "#engine/measure/units.ts";
import type { Wanted } from "#engine/orders/budget.ts";
import { runOutChanceOf } from "#engine/orders/order-line.ts";
import type { Outlook } from "#engine/orders/outlook.ts";
import { type ParInPacks, parInPacks } from "#engine/orders/par-in-packs.ts";
import { parWhy } from "#engine/orders/why.ts";
import { instantToLocal } from "#engine/sales/read/clock.ts";
import type { Instant } from "#engine/time.ts";

/** An item's stock against its par, whether or not any of it is ordered. Amounts in `base` units. */
export type ReckonedItem = {
  item: string;
  base: BaseUnit;
  onHand: number;
  onHandSd: number;
  onOrder: number;
  par: number;
  /** The par as people say it. */
  parInPacks: ParInPacks;
  parWhy: string;
  /** Mean demand from now until an order placed now no longer has to last. */
  expectedUse: number;
  /** Chance to run out before the next delivery. */
  runOutChance: number;
  /** Chance of lasting that the par gives. */
  serviceLevel: number;
  /** The supplier it is bought from this time. */
  supplier: string;
};

export function reckonedItem(
  { facts: { catalogue } }: Outlook,
  { position, unit }: Wanted,
  coversUntil: Instant | null,
): ReckonedItem {
  const { item, onHand, onHandSd, onOrder, par, demand, serviceLevel } = position;
  const until = coversUntil === null ? null : instantToLocal(coversUntil, catalogue.venue).slice(0, 10);
  return {
    item,
    base: itemNamed(catalogue, item).base,
    onHand,
    onHandSd,
    onOrder,
    par,
    parInPacks: parInPacks(par, unit),
    parWhy: parWhy({ position, until, shelfLifeDays: itemNamed(catalogue, item).shelfLifeDays }),
    expectedUse: demand.mean,
    runOutChance: runOutChanceOf(position),
    serviceLevel,
    supplier: unit.pack.supplier ?? "",
  };
}
