import type { Book } from "#engine/book.ts";
import { type Catalogue, groupBy } from "#engine/catalogue.ts";
import { foldName } from "#engine/name.ts";
import { businessDateOf } from "#engine/sales/read/clock.ts";
import { type Divider, dividerAt } from "#engine/sales/when.ts";
import { type Found, foundIn } from "#engine/stock/holding.ts";
import type { CountRow } from "#engine/stock/movement.ts";
import type { Instant } from "#engine/time.ts";

/** All that a count found of one item, at its own moment: the latest among its rows. */
export type Holding = Found & { at: Instant; areas: string[] };

/** What was found in the areas at one time. */
export type Count = {
  name: string;
  /** Its last entry. */
  at: Instant;
  holdings: Map<string, Holding>;
  /** Areas where an item stands but was not counted; such a holding is short. */
  missedAreas: Map<string, string[]>;
};

/** The counts of a book, oldest first. */
export function countsOf(catalogue: Catalogue, book: Pick<Book, "counts" | "areas">): Count[] {
  const areasOf = groupBy(book.areas, (shelf) => shelf.item);
  const counts = [...groupBy(book.counts, (row) => foldName(row.count)).values()].map((rows) =>
    countOf(catalogue, rows, (item) => (areasOf.get(item) ?? []).map(({ area }) => area)),
  );
  return counts.sort((a, b) => (a.at < b.at ? -1 : a.at > b.at ? 1 : 0));
}

function countOf(catalogue: Catalogue, rows: CountRow[], areasOf: (item: string) => string[]): Count {
  const holdings = new Map<string, Holding>();
  const missedAreas = new Map<string, string[]>();
  for (const [item, own] of groupBy(rows, (row) => row.item)) {
    const holding = holdingOf(catalogue, own);
    holdings.set(item, holding);
    const counted = new Set(holding.areas.map(foldName));
    const missed = areasOf(item).filter((area) => !counted.has(foldName(area)));
    if (missed.length > 0) missedAreas.set(item, missed);
  }
  return { name: rows[0]?.count ?? "", at: latest(rows), holdings, missedAreas };
}

function holdingOf(catalogue: Catalogue, rows: CountRow[]): Holding {
  const at = latest(rows);
  const date = businessDateOf(at, catalogue.venue);
  const found = rows.map((row) => foundIn(catalogue, row, date));
  return {
    at,
    areas: [...new Set(rows.map((row) => row.area))],
    quantity: found.reduce((sum, { quantity }) => sum + quantity, 0),
    variance: found.reduce((sum, { variance }) => sum + variance, 0),
  };
}

function latest(rows: CountRow[]): Instant {
  return (
    rows
      .map(({ at }) => at)
      .sort()
      .at(-1) ?? ""
  );
}

/** The moments at which each item was counted, as dividers, oldest first. */
export function dividersByItem(catalogue: Catalogue, counts: readonly Count[]): Map<string, Divider[]> {
  const dividers = new Map<string, Divider[]>();
  for (const count of counts) {
    for (const [item, { at }] of count.holdings) {
      const own = dividers.get(item) ?? [];
      own.push(dividerAt(at, catalogue.venue));
      dividers.set(item, own);
    }
  }
  return dividers;
}

/** The business days that some count divides: their sales are needed line by line. */
export function dividedDates(counts: readonly Count[], catalogue: Catalogue): Set<string> {
  const dates = counts.flatMap((count) =>
    [...count.holdings.values()].map(({ at }) => businessDateOf(at, catalogue.venue)),
  );
  return new Set(dates);
}
