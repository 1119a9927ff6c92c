import { groupBy } from "#engine/catalogue.ts";
import type { Facts } from "#engine/facts.ts";
import { batchAsks, lossAsks, saleAsks } from "#engine/sales/asks.ts";
import { expectedUse, type UseOptions, usedSd } from "#engine/sales/expected-use.ts";
import type { SaleGroup } from "#engine/sales/tally.ts";
import { type Divider, dividerAt, isBefore, type When } from "#engine/sales/when.ts";
import { flowBetween, netFlow } from "#engine/stock/balance.ts";
import type { Holding } from "#engine/stock/counts.ts";
import { type BusinessDate, type Instant, justAfter } from "#engine/time.ts";

/** What should stand on the shelves now, in base units, and its standard deviation. */
export type OnHand = {
  quantity: number;
  sd: number;
  /** When the item was last counted whole. */
  countedAt: Instant;
};

/** Each item's last whole count at or before a moment. */
export function lastHoldings(facts: Facts, at: Instant): Map<string, Holding> {
  const last = new Map<string, Holding>();
  for (const count of facts.counts) {
    for (const [item, holding] of count.holdings) {
      if (holding.at <= at && !count.missedAreas.has(item)) last.set(item, holding);
    }
  }
  return last;
}

/** The first business day whose sales `onHand` needs; undefined when nothing was ever counted. */
export function salesNeededFrom(facts: Facts, at: Instant): BusinessDate | undefined {
  const dates = [...lastHoldings(facts, at).values()].map(
    ({ at: counted }) => dividerAt(counted, facts.catalogue.venue).untimedUntil,
  );
  return dates.sort()[0];
}

/**
 * On hand at a moment: last count + what came − what went − expected use and losses since. What came or
 * went at the moment itself is in: a delivery stands on the shelf once it is entered.
 *
 * An item never counted whole is left out: nobody knows what there is. `sales` reach from
 * `salesNeededFrom` to the moment, the days of counts and of the moment itself line by line.
 */
export function onHand(facts: Facts, sales: readonly SaleGroup[], at: Instant): Map<string, OnHand> {
  const { catalogue, book } = facts;
  const last = lastHoldings(facts, at);
  const end = justAfter(at);
  const until = dividerAt(end, catalogue.venue);
  const since = new Map([...last].map(([item, holding]) => [item, dividerAt(holding.at, catalogue.venue)]));
  const options: UseOptions = {
    dividersOf: (item) => facts.dividers.get(item) ?? [],
    within: (item, when) => isBetween(when, since.get(item), until),
  };
  const used = expectedUse([...saleAsks(catalogue, sales).asks, ...batchAsks(catalogue, book)], options);
  const lost = expectedUse(lossAsks(catalogue, book.losses), options);
  const movements = groupBy(facts.movements, (movement) => movement.item);
  return new Map(
    [...last].map(([item, holding]) => {
      const flow = flowBetween(movements.get(item) ?? [], { item, from: holding.at, to: end });
      const use = used.get(item);
      const gone = (use?.amount ?? 0) + (lost.get(item)?.amount ?? 0);
      const quantity = holding.quantity + netFlow(flow) - gone;
      const sd = Math.hypot(Math.sqrt(holding.variance), use === undefined ? 0 : usedSd(use));
      return [item, { quantity, sd, countedAt: holding.at }];
    }),
  );
}

/** From one moment on (always, when there is none) and before another. */
export function isBetween(when: When, from: Divider | undefined, to: Divider): boolean {
  return (from === undefined || !isBefore(when, from)) && isBefore(when, to);
}
