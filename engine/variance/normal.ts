import jstat from "jstat";

/** Chance of a standard normal value at least this far from 0, either way. 1.959964 → 0.05. */
export function twoSidedChance(z: number): number {
  return 2 * jstat.jStat.normal.cdf(-Math.abs(z), 0, 1);
}
