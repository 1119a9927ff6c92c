import type { Demand } from "#engine/demand/distribution.ts";
import { type ItemDemand, itemDemandReader } from "#engine/demand/item-demand.ts";
import { fitDemand } from "#engine/demand/model.ts";
import { soldSeries } from "#engine/demand/series.ts";
import { asUsed, usedRatios } from "#engine/demand/used-ratio.ts";
import type { Facts } from "#engine/facts.ts";
import { orderChances } from "#engine/orders/calendar.ts";
import { latenessBySupplier, PUNCTUAL, withLateness } from "#engine/orders/lateness.ts";
import { type PastItem, pastItems } from "#engine/orders/replay-items.ts";
import { tradeDone, tradingDays } from "#engine/orders/trading-days.ts";
import { businessDateOf, instantToLocal, localToInstant } from "#engine/sales/read/clock.ts";
import type { SaleGroup } from "#engine/sales/tally.ts";
import {
  addDays,
  addHours,
  type BusinessDate,
  datesFrom,
  daysBetween,
  hoursBetween,
  type Instant,
} from "#engine/time.ts";

/** What was to be expected of an item, by its position among the items, over the days that an order had to last. */
export type PastNeed = {
  index: number;
  demand: Demand;
  isSpoilt: boolean;
  days: number;
  daysBetweenOrders: number;
};

/** A chance to order: by its day and the share of that day's trade then done, to arrive before a later day's. */
export type PastOrder = {
  day: number;
  tradeDone: number;
  arrives: number;
  /** The day that the order after it arrives on: until then this one has to last. */
  coversUntil: number;
  items: PastNeed[];
};

/** Weeks of a venue's own past, to try ways of ordering on. */
export type Past = { dates: BusinessDate[]; items: PastItem[]; orders: PastOrder[] };

/** Days of sales that a forecast must be able to look back on. */
const LOOK_BACK_DAYS = 21;

/** The stretch of a past from one day until before another, by position. */
export function stretchOf(
  { dates, items, orders }: Past,
  { from, until }: { from: number; until: number },
): Past {
  return {
    dates: dates.slice(from, until),
    items: items.map((item) => ({ ...item, use: item.use.subarray(from, until) })),
    orders: orders
      .filter(({ day }) => day >= from && day < until)
      .map((order) => ({
        ...order,
        day: order.day - from,
        arrives: order.arrives - from,
        coversUntil: order.coversUntil - from,
      })),
  };
}

type PastQuestion = { facts: Facts; sales: readonly SaleGroup[]; at: Instant; weeks: number };

/**
 * The last whole weeks before a moment: what was used of each item each night, and at each chance to order what the
 * sales up to that week let expect. Null when there is not one week behind three weeks to learn from.
 *
 * What was used is what the sales say by the specs of their day, times what the counts say is really used.
 */
export function pastOf({ facts, sales, at, weeks }: PastQuestion): Past | null {
  const until = businessDateOf(at, facts.catalogue.venue);
  const series = soldSeries(facts, sales, until);
  const [first, last] = [series.dates[0], series.dates.at(-1)];
  if (first === undefined || last === undefined) return null;
  const known = Math.floor((daysBetween({ from: first, to: last }) + 1 - LOOK_BACK_DAYS) / 7);
  const replayed = Math.min(weeks, known);
  if (replayed < 1) return null;
  const dates = datesFrom({ from: addDays(last, 1 - 7 * replayed), to: last });
  const from = dates[0] ?? last;
  const model = fitDemand(facts, series, from);
  const items = pastItems(facts, sales, { at, dates, model });
  return { dates, items, orders: pastOrders(facts, sales, { dates, items, series }) };
}

function pastOrders(
  facts: Facts,
  sales: readonly SaleGroup[],
  {
    dates,
    items,
    series,
  }: { dates: readonly BusinessDate[]; items: readonly PastItem[]; series: ReturnType<typeof soldSeries> },
): PastOrder[] {
  const { book, catalogue } = facts;
  const { venue } = catalogue;
  const from = dates[0] ?? "";
  const start = localToInstant(`${from} ${venue.dayEnds}`, venue);
  const dayOf = (at: Instant) => daysBetween({ from, to: instantToLocal(at, venue).slice(0, 10) });
  const outlookOn = weekly(from, (asOf) => {
    const model = fitDemand(facts, series, asOf);
    const moment = localToInstant(`${asOf} ${venue.dayEnds}`, venue);
    return {
      demandOver: itemDemandReader({ facts, sales, model, raw: true }),
      ratios: usedRatios(facts, sales, moment),
      lateness: latenessBySupplier(facts, moment),
    };
  });
  return book.suppliers
    .flatMap(({ name }) => {
      const own = [...items.entries()].filter(([, { unit }]) => unit.pack.supplier === name);
      const chances = own.length === 0 ? [] : orderChances(book, name, start);
      return chances.flatMap(({ orderBy, arrives }, chance) => {
        const date = businessDateOf(orderBy, venue);
        const day = daysBetween({ from, to: date });
        const covers = chances.slice(chance + 1).find((later) => later.arrives > arrives)?.arrives;
        if (day >= dates.length || covers === undefined) return [];
        const { demandOver, ratios, lateness } = outlookOn(date);
        const demandUntil = (until: Instant) => {
          const days = tradingDays({ from: orderBy, to: until }, venue);
          return { days, demand: asUsed(demandOver(days), ratios) };
        };
        const late = lateness.get(name) ?? PUNCTUAL;
        const covered = demandUntil(covers);
        return [
          {
            day,
            tradeDone: tradeDone(orderBy, date, venue),
            arrives: dayOf(arrives),
            coversUntil: dayOf(covers),
            items: own.map(([index, { item, shelfLifeDays }]) => {
              const spoils = shelfLifeDays === null ? null : addHours(arrives, 24 * shelfLifeDays);
              const isSpoilt = spoils !== null && spoils <= covers;
              const over = isSpoilt ? demandUntil(spoils) : covered;
              const demand = totalOf(over.demand, item);
              const days = over.days.reduce((sum, { share }) => sum + share, 0);
              const perDay = { mean: demand.mean / (days || 1), variance: demand.variance / (days || 1) };
              return {
                index,
                isSpoilt,
                days,
                daysBetweenOrders: hoursBetween(arrives, covers) / 24,
                // What spoils by then is not kept for a delivery that may come late.
                demand: isSpoilt ? demand : withLateness(demand, perDay, late),
              };
            }),
          },
        ];
      });
    })
    .sort((a, b) => a.day - b.day || a.tradeDone - b.tradeDone);
}

function totalOf({ total }: ItemDemand, item: string): Demand {
  return total.get(item) ?? { mean: 0, variance: 0 };
}

/** What was known when the week of a date began; reckoned once a week, as a bar that looks every Monday. */
function weekly<V>(from: BusinessDate, make: (asOf: BusinessDate) => V): (date: BusinessDate) => V {
  const known = new Map<number, V>();
  return (date) => {
    const week = Math.floor(daysBetween({ from, to: date }) / 7);
    const held = known.get(week) ?? make(addDays(from, 7 * week));
    known.set(week, held);
    return held;
  };
}
