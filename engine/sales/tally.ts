import type { BusinessDate, Instant } from "#engine/time.ts";

/**
 * Sales of one ring name with one modifier text on one business day, summed.
 *
 * A day that no count divides is one group (`at` null); a day that a count divides comes line by line,
 * each with its moment, so that it can be split. `timed` tells a summed group of timed lines, which lies
 * wholly within its business day, from lines that never had a time.
 */
export type SaleGroup = {
  businessDate: BusinessDate;
  at: Instant | null;
  timed: boolean;
  ringName: string;
  modifiers: string;
  quantity: number;
  /** Net money where the file gives it, else gross; 0 for a line without money. */
  netMinor: number;
};
