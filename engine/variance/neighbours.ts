import type { Facts } from "#engine/facts.ts";
import type { SaleGroup } from "#engine/sales/tally.ts";
import type { Count, Holding } from "#engine/stock/counts.ts";
import { addDays } from "#engine/time.ts";
import { datesBetween } from "#engine/variance/asks.ts";
import { spanOf, type Window, windowsBetween } from "#engine/variance/period.ts";

/** The windows that end where a variance's windows begin, and those that begin where they end. */
export type Neighbours = { before: Window[]; after: Window[] };

/**
 * Each item's own window before and after the one between two counts: back to its last whole count before,
 * on to its first whole count after. A wrong count shows in two windows, the second time the other way round.
 */
export function neighboursOf(facts: Facts, opening: Count, closing: Count): Neighbours {
  const before: Window[] = [];
  const after: Window[] = [];
  for (const window of windowsBetween(opening, closing)) {
    const { item } = window;
    const earlier = holdingsOf(facts, item).findLast(({ at }) => at < window.opening.at);
    const later = holdingsOf(facts, item).find(({ at }) => at > window.closing.at);
    if (earlier !== undefined) before.push({ item, opening: earlier, closing: window.opening });
    if (later !== undefined) after.push({ item, opening: window.closing, closing: later });
  }
  return { before, after };
}

/** An item's whole counts, oldest first. */
export function holdingsOf({ counts }: Facts, item: string): Holding[] {
  return counts.flatMap(({ holdings, missedAreas }) => {
    const holding = holdings.get(item);
    return holding === undefined || missedAreas.has(item) ? [] : [holding];
  });
}

/** Days without sales that a venue may have at an end of a window, closed for a holiday. */
const CLOSED_DAYS = 3;

/** Only those windows that the sales at hand reach over: without its sales a window is all unexplained. */
export function coveredWindows(
  facts: Facts,
  windows: readonly Window[],
  sales: readonly SaleGroup[],
): Window[] {
  const span = spanOf(windows);
  if (span === undefined) return [];
  let earliest = "9999-12-31";
  let latest = "";
  for (const { businessDate } of sales) {
    if (businessDate < earliest) earliest = businessDate;
    if (businessDate > latest) latest = businessDate;
  }
  return windows.filter(({ opening, closing }) => {
    const { first, last } = datesBetween(facts, { from: opening.at, to: closing.at });
    return earliest <= addDays(first, CLOSED_DAYS) && latest >= addDays(last, -CLOSED_DAYS);
  });
}
