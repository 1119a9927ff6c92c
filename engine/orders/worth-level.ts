import jstat from "jstat";

const { normal } = jstat.jStat;

/** Common practice: money in stock costs a quarter of itself a year, in interest, room, breakage and loss. */
const CARRYING_SHARE_A_YEAR = 0.25;
const LEAST_LEVEL = 0.6;
const MOST_LEVEL = 0.9995;

/**
 * The chance of lasting that pays where each run-out costs the same: safety stock goes where it takes little money.
 *
 * k = √(2 ln(B n ÷ (√(2π) v σ r))) for a run-out that costs B, n orders a year, cost v, spread σ and carrying charge
 * r (the B₁ rule of Silver, Pyke & Peterson, Inventory Management and Production Planning and Scheduling, ch. 7).
 *
 * A run-out of 5.00, 100 orders a year, 0.03 a ml, ± 800 ml → k = √(2 ln(500 ÷ 15.04)) = 2.647 → 0.9959.
 */
export function levelForWorth({
  worth,
  ordersPerYear,
  costPerBase,
  sd,
}: {
  worth: number;
  ordersPerYear: number;
  costPerBase: number;
  sd: number;
}): number {
  const held = Math.sqrt(2 * Math.PI) * costPerBase * sd * CARRYING_SHARE_A_YEAR;
  if (held <= 0) return MOST_LEVEL;
  const ratio = (worth * ordersPerYear) / held;
  const level = ratio > 1 ? normal.cdf(Math.sqrt(2 * Math.log(ratio)), 0, 1) : LEAST_LEVEL;
  return Math.min(MOST_LEVEL, Math.max(LEAST_LEVEL, level));
}
