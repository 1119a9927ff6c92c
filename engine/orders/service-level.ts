import type { Demand } from "#engine/demand/distribution.ts";
import { levelForWorth } from "#engine/orders/worth-level.ts";

/** Of guests whose drink cannot be made, one in twenty takes nothing instead: common practice. */
const GOES_WITHOUT = 0.05;

/**
 * Between these lies a level that nobody set. Chosen on simulated bars (README.md): lower ones run out more often than
 * two weeks' use on the shelf does, higher ones need more than three quarters of its money.
 */
const LEAST_LEVEL = 0.95;
const MOST_LEVEL = 0.996;

/** For an item that no priced drink tells the worth of: a beer, straws. */
const UNPRICED_LEVEL = 0.995;

/** What is at risk when an item runs out. Amounts in base units, money in major units. */
export type AtRisk = {
  /** Lost by a base unit short; null when not known. */
  lostMargin: number | null;
  costPerBase: number | null;
  /** Over the days that an order has to last. */
  demand: Demand;
  days: number;
  /** From one delivery to the next. */
  daysBetweenOrders: number;
};

/**
 * The chance of lasting that an item should have by the margin at risk, where neither it nor the venue states one.
 *
 * A run-out costs the margin of an evening's use from the few guests who then take nothing. An item that earns 0.20 a
 * ml at 300 ml a day loses 3.00; at 0.03 a ml, ± 800 ml and an order a week → √(2 ln(156 ÷ 15.04)) = 2.16 → 0.985.
 */
export function levelByMargin({ lostMargin, costPerBase, demand, days, daysBetweenOrders }: AtRisk): number {
  if (lostMargin === null || costPerBase === null || days <= 0) return UNPRICED_LEVEL;
  const level = levelForWorth({
    worth: (GOES_WITHOUT * lostMargin * demand.mean) / days,
    ordersPerYear: 365 / Math.max(1, daysBetweenOrders),
    costPerBase,
    sd: Math.sqrt(demand.variance),
  });
  return Math.min(MOST_LEVEL, Math.max(LEAST_LEVEL, level));
}
