import { loadBook } from "#db/book-repository.ts";
import { type Closing, currentClosing } from "#db/closings-repository.ts";
import { NotFoundError } from "#db/errors.ts";
import type { Db } from "#db/open.ts";
import { saleGroups, salesExtent } from "#db/sales-repository.ts";
import { type KeptSettlement, listSettlements } from "#db/settlements-repository.ts";
import { changeToken } from "#db/stored/transaction.ts";
import { type Facts, factsOf } from "#engine/facts.ts";
import { businessDateOf, localToInstant } from "#engine/sales/read/clock.ts";
import type { SaleGroup } from "#engine/sales/tally.ts";
import { dividedDates } from "#engine/stock/counts.ts";
import { addDays, type BusinessDate, type Instant } from "#engine/time.ts";
import { holidaysOf } from "#server/holidays.ts";
import { YoungBookError } from "#server/young-book-error.ts";

/** A venue's book made ready, and its sales on demand: what every report starts from. */
export type World = {
  facts: Facts;
  /** The latest moment anything in the book happened; null in a book where nothing has. */
  lastMoment: Instant | null;
  /** Sales of business dates, both included; the days of counts, and of any moment given, come line by line. */
  salesBetween: (range: { from?: BusinessDate; to?: BusinessDate; at?: Instant }) => Promise<SaleGroup[]>;
  /** Gives what `make` made of this world before under the same key; a world lives until something is written. */
  remembered: <T>(key: string, make: () => Promise<T>) => Promise<T>;
  /** What the checks of likely causes showed so far. */
  settlements: KeptSettlement[];
  /** The past that is closed; null while nothing is. */
  closing: Closing | null;
  /** First and last business date with sales. */
  salesDates: { from: BusinessDate; to: BusinessDate } | undefined;
};

const worlds = new WeakMap<Db, { token: string; world: World }>();

/**
 * The world of a database, kept as long as nothing is written to it.
 * Throws NotFoundError when the database holds no venue yet.
 */
export async function openWorld(db: Db): Promise<World> {
  const token = await changeToken(db);
  const kept = worlds.get(db);
  if (kept !== undefined && kept.token === token) return kept.world;
  const book = await loadBook(db);
  if (book === undefined) {
    throw new NotFoundError(
      "This database holds no venue yet. Bring one in with: ullage load DIR (or try: ullage demo).",
    );
  }
  const extent = await salesExtent(db);
  const facts = factsOf(book, extent === undefined ? [] : await holidaysOf(book.venue, extent));
  const divided = dividedDates(facts.counts, facts.catalogue);
  const settlements = await listSettlements(db);
  const memory = new Map<string, Promise<unknown>>();
  const world: World = {
    facts,
    remembered: <T>(key: string, make: () => Promise<T>) => {
      const known = memory.get(key) as Promise<T> | undefined;
      if (known !== undefined) return known;
      const made = make();
      memory.set(key, made);
      return made;
    },
    settlements,
    closing: (await currentClosing(db)) ?? null,
    salesDates: extent,
    lastMoment: lastMomentOf(facts, extent?.to, extent?.lastAt ?? null),
    salesBetween: ({ from = "0001-01-01", to = "9999-12-31", at }) => {
      const splitDates =
        at === undefined ? divided : new Set([...divided, businessDateOf(at, facts.catalogue.venue)]);
      return saleGroups(db, { from, to, splitDates });
    },
  };
  worlds.set(db, { token, world });
  return world;
}

/** Untimed sales happened at the latest when their business day ended. */
function lastMomentOf(
  facts: Facts,
  lastSalesDate: BusinessDate | undefined,
  lastSaleAt: Instant | null,
): Instant | null {
  const { book, counts, movements, catalogue } = facts;
  const { venue } = catalogue;
  const untimedEnd =
    lastSalesDate === undefined || (lastSaleAt !== null && businessDateOf(lastSaleAt, venue) >= lastSalesDate)
      ? null
      : localToInstant(`${addDays(lastSalesDate, 1)} ${venue.dayEnds}`, venue);
  const moments = [
    ...counts.map(({ at }) => at),
    ...movements.map(({ at }) => at),
    ...book.losses.map(({ at }) => at),
    ...book.orders.map(({ placed }) => placed),
    lastSaleAt ?? "",
    untimedEnd ?? "",
  ];
  const last = moments.reduce((a, b) => (b > a ? b : a), "");
  return last === "" ? null : last;
}

/** The moment to reckon from: the one given, else the last in the book. Throws YoungBookError without either. */
export function momentOf(world: World, given?: Instant): Instant {
  const moment = given ?? world.lastMoment;
  if (moment === null) {
    throw new YoungBookError(
      "first-fact",
      "The book has no count, sale or delivery yet, so there is no moment to reckon from. " +
        "Load one, or give the moment (order --at, forecast --as-of, prep --for).",
    );
  }
  return moment;
}
