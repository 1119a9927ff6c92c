import { readBook } from "#db/book/read-book.ts";
import { type Facts, factsOf } from "#engine/facts.ts";
import type { SaleGroup } from "#engine/sales/tally.ts";
import type { Instant } from "#engine/time.ts";
import { type SimulatedBar, simulateBar } from "../simulate/bar.ts";
import type { Catalogue } from "../simulate/catalogue.ts";
import { soldLines } from "../simulate/read-till.ts";

/** Thirteen weeks of a simulated bar as the planner gets them: its book, and its sales by business day. */
export type Simulated = { facts: Facts; sales: SaleGroup[] };

export function simulatedWeeks(seed: number, catalogue?: Catalogue): Simulated {
  const bar = simulateBar({ seed, weeks: 13, faults: [], ...(catalogue === undefined ? {} : { catalogue }) });
  return { facts: factsOf(readBook(new Map(Object.entries(bar.book))).book), sales: talliesOf(bar) };
}

/** The same bar as it stood at a moment: nothing is known of what came later. */
export function asItStood({ facts: { book }, sales }: Simulated, at: Instant): Simulated {
  const facts = factsOf({
    ...book,
    counts: book.counts.filter((row) => row.at <= at),
    deliveries: book.deliveries.filter((row) => row.at <= at),
    batches: book.batches.filter((row) => row.at <= at),
    losses: book.losses.filter((row) => row.at <= at),
    orders: book.orders.filter((row) => row.placed <= at),
  });
  return { facts, sales: sales.filter(({ businessDate }) => businessDate < at.slice(0, 10)) };
}

function talliesOf(bar: SimulatedBar): SaleGroup[] {
  const tallies = new Map<string, SaleGroup>();
  for (const { businessDate, ring, modifiers, quantity } of soldLines(bar.sales)) {
    const key = JSON.stringify([businessDate, ring, modifiers]);
    const held = tallies.get(key);
    if (held !== undefined) held.quantity += quantity;
    else
      tallies.set(key, {
        businessDate,
        at: null,
        timed: true,
        ringName: ring,
        modifiers,
        quantity,
        netMinor: 0,
      });
  }
  return [...tallies.values()];
}
