import type { Facts } from "#engine/facts.ts";
import { type Ask, batchAsks, lossAsks, saleAsks, type UnmappedSale } from "#engine/sales/asks.ts";
import type { SaleGroup } from "#engine/sales/tally.ts";
import { type Divider, dividerAt } from "#engine/sales/when.ts";
import { addDays, type BusinessDate, type Instant } from "#engine/time.ts";

/** Everything that asked for stock, read once for all periods of a report, by business date. */
export type PeriodAsks = { sold: Ask[]; batched: Ask[]; lost: Ask[]; unmapped: UnmappedSale[] };

export function periodAsks(facts: Facts, sales: readonly SaleGroup[]): PeriodAsks {
  const { catalogue, book } = facts;
  const { asks, unmapped } = saleAsks(catalogue, sales);
  return {
    sold: byDate(asks),
    batched: byDate(batchAsks(catalogue, book)),
    lost: byDate(lossAsks(catalogue, book.losses)),
    unmapped,
  };
}

function byDate(asks: readonly Ask[]): Ask[] {
  return [...asks].sort((a, b) =>
    a.businessDate < b.businessDate ? -1 : a.businessDate > b.businessDate ? 1 : 0,
  );
}

/** The business days in which anything between two moments can lie. */
export function datesBetween(
  facts: Facts,
  { from, to }: { from: Instant; to: Instant },
): { first: BusinessDate; last: BusinessDate } {
  const { venue } = facts.catalogue;
  return { first: addDays(dividerAt(from, venue).untimedUntil, -1), last: dividerAt(to, venue).businessDate };
}

/** The asks of some business days, of asks sorted by date. */
export function asksOn(asks: readonly Ask[], { first, last }: { first: string; last: string }): Ask[] {
  return asks.slice(firstFrom(asks, first), firstFrom(asks, addDays(last, 1)));
}

function firstFrom(asks: readonly Ask[], date: BusinessDate): number {
  let low = 0;
  let high = asks.length;
  while (low < high) {
    const middle = (low + high) >> 1;
    if ((asks[middle]?.businessDate ?? "") < date) low = middle + 1;
    else high = middle;
  }
  return low;
}

/** Those moments at which an item was counted that can divide a day of a period. */
export function dividersWithin(
  dividers: Map<string, Divider[]>,
  { first, last }: { first: string; last: string },
): (item: string) => readonly Divider[] {
  const within = new Map<string, Divider[]>();
  return (item) => {
    const known = within.get(item);
    if (known !== undefined) return known;
    const own = (dividers.get(item) ?? []).filter(
      ({ untimedUntil, businessDate }) => businessDate >= first && untimedUntil <= last,
    );
    within.set(item, own);
    return own;
  };
}
