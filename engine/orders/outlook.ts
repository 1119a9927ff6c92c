import { type UnitCosts, unitCosts } from "#engine/costing/unit-cost.ts";
import { type DemandDay, type ItemDemand, itemDemandReader } from "#engine/demand/item-demand.ts";
import { type DemandModel, fitDemand } from "#engine/demand/model.ts";
import { soldSeries } from "#engine/demand/series.ts";
import { serveUseReader } from "#engine/demand/serve-use.ts";
import { asUsed, type UsedRatio, usedRatios } from "#engine/demand/used-ratio.ts";
import type { Facts } from "#engine/facts.ts";
import { type Lateness, latenessBySupplier } from "#engine/orders/lateness.ts";
import { lostMargins } from "#engine/orders/lost-margin.ts";
import { type LotsReader, lotsReader } from "#engine/orders/lots.ts";
import { type OpenOrder, openOrders } from "#engine/orders/open-orders.ts";
import { tradingDays } from "#engine/orders/trading-days.ts";
import { businessDateOf } from "#engine/sales/read/clock.ts";
import type { SaleGroup } from "#engine/sales/tally.ts";
import { type OnHand, onHand } from "#engine/stock/on-hand.ts";
import { addHours, type BusinessDate, type Instant } from "#engine/time.ts";

/** All that an order at a moment is reckoned from. Amounts in base units. */
export type Outlook = {
  facts: Facts;
  at: Instant;
  /** Business date of the moment. */
  date: BusinessDate;
  model: DemandModel;
  onHand: Map<string, OnHand>;
  /** What is on hand of an item by when it came, for what keeps for days. */
  lotsOf: LotsReader;
  open: OpenOrder[];
  /** By supplier; one that is not in it has no past. */
  lateness: Map<string, Lateness>;
  costs: UnitCosts;
  /** What the last counts say is really used of an item for what its specs ask for. */
  usedRatios: Map<string, UsedRatio>;
  /** Major units lost by a base unit short. */
  lostMargins: Map<string, number>;
  /**
   * Demand from the moment to another as the bar really uses things, stocked preps opened up to what is
   * bought for them.
   */
  demandUntil(until: Instant): { days: DemandDay[]; demand: ItemDemand };
  /** The same over whole days or shares of them. */
  demandOver(days: readonly DemandDay[]): ItemDemand;
};

/**
 * Looks ahead from a moment. Today's sales so far do not enter the forecast; where none of today were read in,
 * today's trade is taken as still to come, for stock on hand does not miss it yet.
 */
export function outlookAt(facts: Facts, sales: readonly SaleGroup[], at: Instant): Outlook {
  const { venue } = facts.catalogue;
  const date = businessDateOf(at, venue);
  const model = fitDemand(facts, soldSeries(facts, sales, date), date);
  const costs = unitCosts(facts, at);
  const ratios = usedRatios(facts, sales, at);
  const stock = onHand(facts, sales, at);
  const isTodayKnown = sales.some((sale) => sale.businessDate === date);
  const readRaw = itemDemandReader({ facts, sales, model, raw: true });
  const daysUntil = (until: Instant) =>
    tradingDays({ from: at, to: until }, venue).map((day) =>
      day.date === date && !isTodayKnown ? { ...day, share: 1 } : day,
    );
  const demandOver = (days: readonly DemandDay[]) => asUsed(readRaw(days), ratios);
  const demandUntil = remembered((until: Instant) => {
    const days = daysUntil(until);
    return { days, demand: demandOver(days) };
  });
  return {
    facts,
    at,
    date,
    model,
    onHand: stock,
    lotsOf: lotsReader(facts, at),
    open: openOrders(facts, at),
    lateness: latenessBySupplier(facts, at),
    costs,
    usedRatios: ratios,
    lostMargins: lostMargins(facts, sales, {
      model,
      readUse: serveUseReader(facts.catalogue, sales, { asOf: date, raw: true }),
      costs,
      dates: weekAhead(model, at, venue),
    }),
    demandUntil,
    demandOver,
  };
}

function weekAhead(model: DemandModel, at: Instant, venue: Facts["catalogue"]["venue"]): BusinessDate[] {
  const days = tradingDays({ from: at, to: addHours(at, 7 * 24) }, venue);
  return days.map(({ date }) => date).filter((date) => model.on(date).length > 0);
}

function remembered<V>(answer: (key: string) => V): (key: string) => V {
  const known = new Map<string, V>();
  return (key) => {
    const held = known.get(key);
    if (held !== undefined) return held;
    const value = answer(key);
    known.set(key, value);
    return value;
  };
}
