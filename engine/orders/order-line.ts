import { itemNamed } from "#engine/catalogue.ts";
import { chanceAbove, type Demand } from "#engine/demand/distribution.ts";
import type { BaseUnit } from "#engine/measure/units.ts";
import { PUNCTUAL, withLateness } from "#engine/orders/lateness.ts";
import { usableBy } from "#engine/orders/lots.ts";
import type { Outlook } from "#engine/orders/outlook.ts";
import { criticalRatio, parOf } from "#engine/orders/par.ts";
import { type BuyingUnit, unitsFor } from "#engine/orders/purchase.ts";
import { levelByMargin } from "#engine/orders/service-level.ts";
import { lastsThrough, whyLine } from "#engine/orders/why.ts";
import { instantToLocal } from "#engine/sales/read/clock.ts";
import type { Of } from "#engine/stock/movement.ts";
import { addHours, hoursBetween, type Instant } from "#engine/time.ts";

/** One line of an order. Amounts in `base` units, money in major units. */
export type OrderPlanLine = {
  item: string;
  pack: string;
  /** Of `of`. */
  quantity: number;
  of: Of;
  base: BaseUnit;
  onHand: number;
  /** Of what is on hand: past its date before it is used, and so not counted on. */
  spoils: number;
  onOrder: number;
  /** The one that is ordered up to: set by hand where there is one. */
  par: number;
  parSet: number | null;
  parComputed: number;
  /** Mean demand from now until the line no longer has to last. */
  expectedUse: number;
  /** Chance to run out before the next delivery, which nothing ordered now can help. */
  runOutChance: number;
  /** Chance to run out before the delivery after that, with this line and without it. */
  runOutChanceWith: number;
  runOutChanceWithout: number;
  /** Used for each unit the specs ask for, by the last counts; 1 where they do not tell. */
  usedRatio: number;
  /** Null when the price is not known. */
  cost: number | null;
  /** Deposits on its containers, beside the cost; 0 without. */
  deposit: number;
  why: string;
};

/** An item's stock against what it has to last for. */
export type Position = {
  item: string;
  isCount: boolean;
  onHand: number;
  onHandSd: number;
  /** Of what is on hand: past its date before it is used. */
  spoils: number;
  onOrder: number;
  /** The one that is ordered up to: set by hand where there is one, else computed. */
  par: number;
  parSet: number | null;
  parComputed: number;
  /** Chance of lasting that the computed par gives. */
  serviceLevel: number;
  /** It spoils before the delivery after the next one. */
  isSpoilt: boolean;
  /** Over the days that the order has to last, late deliveries included. */
  demand: Demand;
  /** Until the next delivery. */
  demandToNext: Demand;
  /** On hand and arriving by the next delivery. */
  stockToNext: number;
  short: number;
  through: string | null;
  days: { date: string }[];
};

const NONE: Demand = { mean: 0, variance: 0 };

/** The least and the most chance of lasting that weighing waste against lost sales may lead to. */
const LEAST_LEVEL = 0.5;
const MOST_LEVEL = 0.995;

/**
 * What an item's stock is short of: par − on hand − on order, never below 0.
 *
 * Par covers demand until the delivery after the next one, or until the next delivery's shelf life is over.
 * What stands in preps does not count: the kitchen keeps them at their level, so the shelf gives what the
 * drinks take. Undefined for an item never counted: nobody knows what there is.
 */
export function positionOf(
  outlook: Outlook,
  item: string,
  { supplier, arrives, coversUntil }: { supplier: string; arrives: Instant; coversUntil: Instant },
): Position | undefined {
  const stock = outlook.onHand.get(item);
  if (stock === undefined) return undefined;
  const { base, shelfLifeDays, par: parSet } = itemNamed(outlook.facts.catalogue, item);
  const spoilsAt = shelfLifeDays === null ? null : addHours(arrives, 24 * shelfLifeDays);
  const isSpoilt = spoilsAt !== null && spoilsAt <= coversUntil;
  const until = isSpoilt ? spoilsAt : coversUntil;
  const isCount = base === "each";
  const cover = outlook.demandUntil(until);
  const inTimeDemand = cover.demand.total.get(item) ?? NONE;
  const perDay = perDayOf(inTimeDemand, cover.days);
  const late = outlook.lateness.get(supplier) ?? PUNCTUAL;
  // What spoils by then is not kept for a delivery that may come late.
  const demand = isSpoilt ? inTimeDemand : withLateness(inTimeDemand, perDay, late);
  const days = sum(cover.days.map(({ share }) => share));
  const serviceLevel = levelOf(outlook, item, {
    isSpoilt,
    demand,
    days,
    daysBetweenOrders: hoursBetween(arrives, coversUntil) / 24,
  });
  const parComputed = parOf({ demand, isCount, serviceLevel });
  const par = parSet ?? parComputed;
  const toNext = outlook.demandUntil(arrives).demand.total.get(item) ?? NONE;
  const open = outlook.open.filter((order) => order.item === item);
  const onOrder = sum(open.map(({ quantity }) => quantity));
  // The book can come to less than nothing on the shelf; the shelf cannot.
  const held = Math.max(0, stock.quantity);
  const usable = usableBy(outlook.lotsOf(item, held), {
    today: 0,
    until: hoursBetween(outlook.at, coversUntil) / 24,
    perDay: perDay.mean,
  });
  const nextDate = instantToLocal(arrives, outlook.facts.catalogue.venue).slice(0, 10);
  const inTime = sum(open.filter(({ expected }) => expected <= nextDate).map(({ quantity }) => quantity));
  return {
    item,
    isCount,
    onHand: held,
    onHandSd: stock.sd,
    spoils: held - usable,
    onOrder,
    par,
    parSet,
    parComputed,
    serviceLevel,
    isSpoilt,
    demand,
    demandToNext: withLateness(toNext, perDay, late),
    stockToNext: held + inTime,
    short: Math.max(0, par - usable - onOrder),
    through: lastsThrough(item, held, { days: cover.demand.days, incoming: open }),
    days: cover.days,
  };
}

function perDayOf({ mean, variance }: Demand, days: readonly { share: number }[]): Demand {
  const count = sum(days.map(({ share }) => share));
  return count > 0 ? { mean: mean / count, variance: variance / count } : NONE;
}

/** The item's own level, else the venue's, else by the margin at risk; what spoils first is weighed against waste. */
function levelOf(
  { facts, costs, lostMargins }: Outlook,
  item: string,
  { isSpoilt, ...cover }: { isSpoilt: boolean; demand: Demand; days: number; daysBetweenOrders: number },
): number {
  const stated = itemNamed(facts.catalogue, item).serviceLevel ?? facts.catalogue.venue.serviceLevel;
  const lostMargin = lostMargins.get(item) ?? null;
  const costPerBase = costs.get(item) ?? null;
  const wanted = stated ?? levelByMargin({ lostMargin, costPerBase, ...cover });
  if (!isSpoilt) return wanted;
  const ratio = criticalRatio({ shortCost: lostMargin, overCost: costPerBase });
  return ratio === null ? wanted : Math.min(MOST_LEVEL, Math.max(LEAST_LEVEL, ratio));
}

/** The line that buys so many units of a pack. */
export function lineOf(
  outlook: Outlook,
  position: Position,
  unit: BuyingUnit,
  quantity: number,
): OrderPlanLine {
  const { item, isCount, demand, onHand, onOrder, spoils } = position;
  const stock = onHand - spoils + onOrder;
  const runOutChance = runOutChanceOf(position);
  const { catalogue } = outlook.facts;
  const { base } = itemNamed(catalogue, item);
  return {
    item,
    pack: unit.pack.pack,
    quantity,
    of: unit.of,
    base,
    onHand,
    spoils,
    onOrder,
    par: position.par,
    parSet: position.parSet,
    parComputed: position.parComputed,
    expectedUse: demand.mean,
    runOutChance,
    runOutChanceWith: chanceAbove(uncertain(position, demand), stock + quantity * unit.size, { isCount }),
    runOutChanceWithout: chanceAbove(uncertain(position, demand), stock, { isCount }),
    usedRatio: outlook.usedRatios.get(item)?.ratio ?? 1,
    cost: unit.price === null ? null : unit.price * quantity,
    deposit: unit.deposit * quantity,
    why: whyLine({
      through: position.through,
      runOutChance,
      days: position.days,
      spoils,
      parSet: position.parSet !== null,
      read: { base, venue: catalogue.venue },
    }),
  };
}

/** Chance to run out before the next delivery: nothing ordered now can help it. */
export function runOutChanceOf(position: Position): number {
  const { demandToNext, stockToNext, isCount } = position;
  return chanceAbove(uncertain(position, demandToNext), stockToNext, { isCount });
}

/** What stands there is only known as well as it was counted. */
function uncertain({ onHandSd }: Position, { mean, variance }: Demand): Demand {
  return { mean, variance: variance + onHandSd * onHandSd };
}

/** Units of a pack that fill a position up to its par. */
export function quantityFor(position: Position, unit: BuyingUnit): number {
  return unitsFor({ short: position.short, size: unit.size });
}

function sum(values: readonly number[]): number {
  return values.reduce((total, value) => total + value, 0);
}
