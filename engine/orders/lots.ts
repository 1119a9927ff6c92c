import { groupBy, itemNamed } from "#engine/catalogue.ts";
import type { Facts } from "#engine/facts.ts";
import { businessDateOf } from "#engine/sales/read/clock.ts";
import type { Delivery } from "#engine/stock/movement.ts";
import { containerSize, containersIn, packNamed } from "#engine/stock/pack.ts";
import { daysBetween, type Instant } from "#engine/time.ts";

/** Stock that came together and is past its date together: after this day it is thrown out. */
export type Lot = { amount: number; spoils: number };

/**
 * What of the stock will still be used by a day: the oldest first, each lot until it is past its date.
 *
 * 900 of which 600 spoil after day 2, used at 100 a day from day 0 on, looked at until day 9 → 300 + 300.
 */
export function usableBy(
  lots: readonly Lot[],
  { today, until, perDay }: { today: number; until: number; perDay: number },
): number {
  let usable = 0;
  for (const { amount, spoils } of lots) {
    // What is used of the lots before it cannot be used of this one.
    const room = spoils >= until ? amount : Math.max(0, perDay * (spoils - today + 1) - usable);
    usable += Math.min(amount, room);
  }
  return usable;
}

/** The stock of an item at a moment as lots, the oldest first; days are counted from that moment. */
export type LotsReader = (item: string, onHand: number) => Lot[];

/**
 * Lots of what is on hand, taking the oldest as used first: the last deliveries are what still stands there.
 *
 * What came before the deliveries known is as good as its shelf life nearly over, but it is not known, so it is taken
 * as good; so is what is past its date and was counted all the same, for somebody kept it. Items that keep for ever
 * are one lot.
 */
export function lotsReader({ catalogue, book }: Facts, at: Instant): LotsReader {
  const byItem = groupBy(
    book.deliveries.filter((delivery) => delivery.at <= at),
    ({ item }) => item,
  );
  const today = businessDateOf(at, catalogue.venue);
  return (item, onHand) => {
    const { shelfLifeDays } = itemNamed(catalogue, item);
    const forEver = { spoils: Number.POSITIVE_INFINITY };
    if (shelfLifeDays === null) return [{ amount: onHand, ...forEver }];
    const newestFirst = (byItem.get(item) ?? []).toSorted((a, b) => (a.at < b.at ? 1 : -1));
    const lots: Lot[] = [];
    let left = onHand;
    for (const delivery of newestFirst) {
      const age = daysBetween({ from: businessDateOf(delivery.at, catalogue.venue), to: today });
      const amount = Math.min(left, amountOf(delivery));
      if (left <= 0 || age > shelfLifeDays) break;
      lots.unshift({ amount, spoils: Math.floor(shelfLifeDays) - age });
      left -= amount;
    }
    return left > 0 ? [{ amount: left, ...forEver }, ...lots] : lots;
  };

  function amountOf(delivery: Delivery): number {
    const pack = packNamed(catalogue, { ...delivery, date: businessDateOf(delivery.at, catalogue.venue) });
    if (pack === undefined) return 0;
    return containersIn(pack, delivery.quantity, delivery.of) * containerSize(catalogue, pack);
  }
}
