import type { Facts } from "#engine/facts.ts";
import type { Ask } from "#engine/sales/asks.ts";
import type { SaleGroup } from "#engine/sales/tally.ts";
import type { Count } from "#engine/stock/counts.ts";
import { asksOn, datesBetween, periodAsks } from "#engine/variance/asks.ts";
import { spanOf, windowFilter, windowsBetween } from "#engine/variance/period.ts";

/** How much of an item one drink (or batch) should have used between two counts. */
export type DrinkUse = {
  what: string;
  kind: "sale" | "batch";
  /** Serves sold (of a batch: batches made). */
  serves: number;
  /** Base units per serve, of fruit the larger of the shares asked of its parts; the mean where it varied. */
  amountPerServe: number;
  amount: number;
};

/**
 * The drinks and batches behind an item's expected use, largest first.
 *
 * Of fruit the amounts are what each drink asks by itself; they can add up to more than the pieces expected,
 * because one piece serves several.
 */
export function drinksThatUsed(
  facts: Facts,
  sales: readonly SaleGroup[],
  item: string,
  opening: Count,
  closing: Count,
): DrinkUse[] {
  const windows = windowsBetween(opening, closing).filter((window) => window.item === item);
  const span = spanOf(windows);
  if (span === undefined) return [];
  const dates = datesBetween(facts, span);
  const within = windowFilter(facts, windows);
  const { sold, batched } = periodAsks(facts, sales);
  const uses = new Map<string, DrinkUse>();
  for (const ask of [...asksOn(sold, dates), ...asksOn(batched, dates)]) {
    const amount = askedOf(ask, item);
    if (amount !== 0 && within(item, ask)) addUse(uses, ask, amount * ask.times);
  }
  return [...uses.values()]
    .map((use) => ({ ...use, amountPerServe: use.serves === 0 ? 0 : use.amount / use.serves }))
    .sort((a, b) => b.amount - a.amount);
}

function addUse(uses: Map<string, DrinkUse>, ask: Ask, amount: number): void {
  const kind = ask.kind === "batch" ? "batch" : "sale";
  const key = JSON.stringify([kind, ask.what]);
  const held = uses.get(key) ?? { what: ask.what, kind, serves: 0, amountPerServe: 0, amount: 0 };
  uses.set(key, { ...held, serves: held.serves + ask.times, amount: held.amount + amount });
}

/** What one making of a bill asks of an item by itself. */
function askedOf({ bill }: Ask, item: string): number {
  const direct = bill.items.find((entry) => entry.item === item)?.amount ?? 0;
  const parts = new Map<string, number>();
  for (const cut of bill.cuts) {
    if (cut.source !== item) continue;
    for (const part of cut.parts) parts.set(part, (parts.get(part) ?? 0) + cut.shares);
  }
  return direct + Math.max(0, ...parts.values());
}
