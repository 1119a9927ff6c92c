import { groupBy } from "#engine/catalogue.ts";
import type { Facts } from "#engine/facts.ts";
import type { Ask } from "#engine/sales/asks.ts";
import { expectedUse, type Used, type UseOptions, usedSd } from "#engine/sales/expected-use.ts";
import { type Divider, dividerAt } from "#engine/sales/when.ts";
import { type Flow, flowBetween, type Movement, netFlow } from "#engine/stock/balance.ts";
import type { Count, Holding } from "#engine/stock/counts.ts";
import { isBetween } from "#engine/stock/on-hand.ts";
import type { Instant } from "#engine/time.ts";
import { asksOn, datesBetween, dividersWithin, type PeriodAsks } from "#engine/variance/asks.ts";

/** One item from its moment in one count to its moment in a later one. */
export type Window = { item: string; opening: Holding; closing: Holding };

/** What one item's window came to, in base units. */
export type ItemPeriod = Flow & {
  item: string;
  opening: Holding;
  closing: Holding;
  /** Opening + received + made + in − out − closing. */
  used: number;
  expected: Used;
  losses: number;
  /** Used − expected − losses. */
  unexplained: number;
  /** Standard uncertainty of `unexplained`: both counts, and the expected use with its shared biases. */
  sd: number;
  /** By how much `expected` was moved from the estimate, as so many earlier periods have it (habits.ts). */
  learned?: { amount: number; periods: number };
};

const NOTHING: Used = { amount: 0, variance: 0, bias: 0 };

/** The items that both counts found whole, each from its own moment in one to its own moment in the other. */
export function windowsBetween(opening: Count, closing: Count): Window[] {
  return [...closing.holdings].flatMap(([item, close]) => {
    const open = opening.holdings.get(item);
    if (open === undefined || opening.missedAreas.has(item) || closing.missedAreas.has(item)) return [];
    return open.at < close.at ? [{ item, opening: open, closing: close }] : [];
  });
}

/**
 * used, expected, losses and the unexplained rest of every window, by item.
 *
 * Opening 2100 ml, received 700, closing 1400; drinks sold should have used 1350 → used 1400, unexplained 50.
 */
export function itemPeriods(
  facts: Facts,
  asks: PeriodAsks,
  windows: readonly Window[],
): Map<string, ItemPeriod> {
  const span = spanOf(windows);
  if (span === undefined) return new Map();
  const dates = datesBetween(facts, span);
  const options: UseOptions = {
    dividersOf: dividersWithin(facts.dividers, dates),
    within: windowFilter(facts, windows),
  };
  const use = expectedUse([...asksOn(asks.sold, dates), ...asksOn(asks.batched, dates)], options);
  const lost = expectedUse(asksOn(asks.lost, dates), options);
  const movements = groupBy(movementsWithin(facts.movements, span), (movement) => movement.item);
  return new Map(
    windows.map((window) => {
      const { item } = window;
      const expected = use.get(item) ?? NOTHING;
      const losses = lost.get(item)?.amount ?? 0;
      return [item, itemPeriod(window, { expected, losses, movements: movements.get(item) ?? [] })];
    }),
  );
}

function itemPeriod(
  { item, opening, closing }: Window,
  { expected, losses, movements }: { expected: Used; losses: number; movements: readonly Movement[] },
): ItemPeriod {
  const flow = flowBetween(movements, { item, from: opening.at, to: closing.at });
  const used = opening.quantity + netFlow(flow) - closing.quantity;
  return {
    item,
    opening,
    closing,
    ...flow,
    used,
    expected,
    losses,
    unexplained: withoutDust(used - expected.amount - losses, opening.quantity + netFlow(flow)),
    sd: Math.sqrt(opening.variance + closing.variance + usedSd(expected) ** 2),
  };
}

/** Sums of decimals leave dust behind: 0.1 + 0.2 − 0.3 is no loss. */
function withoutDust(difference: number, scale: number): number {
  return Math.abs(difference) <= 1e-9 * Math.max(1, Math.abs(scale)) ? 0 : difference;
}

/** Whether something an item was asked for lies in that item's own window. */
export function windowFilter(
  facts: Facts,
  windows: readonly Window[],
): (item: string, when: Pick<Ask, "businessDate" | "at" | "timed">) => boolean {
  const { venue } = facts.catalogue;
  const dividers = new Map<Instant, Divider>();
  const dividerOf = (at: Instant): Divider => {
    const known = dividers.get(at) ?? dividerAt(at, venue);
    dividers.set(at, known);
    return known;
  };
  const bounds = new Map(
    windows.map(({ item, opening, closing }) => [
      item,
      { from: dividerOf(opening.at), to: dividerOf(closing.at) },
    ]),
  );
  return (item, when) => {
    const bound = bounds.get(item);
    return bound !== undefined && isBetween(when, bound.from, bound.to);
  };
}

/** From the first opening to the last closing; undefined without a window. */
export function spanOf(windows: readonly Window[]): { from: Instant; to: Instant } | undefined {
  const [first] = windows;
  if (first === undefined) return undefined;
  let from = first.opening.at;
  let to = first.closing.at;
  for (const { opening, closing } of windows) {
    if (opening.at < from) from = opening.at;
    if (closing.at > to) to = closing.at;
  }
  return { from, to };
}

function movementsWithin(movements: readonly Movement[], { from, to }: { from: Instant; to: Instant }) {
  return movements.filter(({ at }) => at >= from && at < to);
}
