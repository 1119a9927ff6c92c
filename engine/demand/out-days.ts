import type { SoldSeries } from "#engine/demand/series.ts";
import type { Facts } from "#engine/facts.ts";
import { businessDateOf } from "#engine/sales/read/clock.ts";
import { addDays, addHours, type BusinessDate, type Instant } from "#engine/time.ts";
import { inForce } from "#engine/versions.ts";

/** Business days on which a count had shown none of an item and none had come since, and what could not be made of it. */
export type OutDays = {
  item: string;
  from: BusinessDate;
  /** The first day after; the day on which some came, or the first not known yet. */
  until: BusinessDate;
  /** Drinks with the item in their spec of which none was sold on these days. */
  drinks: string[];
};

/** Whether sales of a drink on a day tell nothing of what guests wanted. */
export type IsOut = (drink: string, date: BusinessDate) => boolean;

type Known = Pick<Facts, "catalogue" | "counts" | "movements">;

/**
 * The days before `asOf` on which an item was out by a count, with the drinks that it kept from being sold.
 *
 * Only what is bought: a prep is made again the same day. Only whole counts of nothing, until the day of the next
 * delivery or transfer. Where the next count finds some that nothing brought, or where a drink that needs it was sold
 * all the same, the book contradicts itself, and the sales are believed.
 */
export function outDays(known: Known, { dates, serves }: SoldSeries, asOf: BusinessDate): OutDays[] {
  return spans(known, asOf).flatMap((span) => {
    const days = [...dates.entries()].filter(([, date]) => date >= span.from && date < span.until);
    if (days.length === 0) return [];
    const drinks = [...serves].flatMap(([drink, row]) => {
      const needsIt = days.every(([, date]) => needs(known, drink, { item: span.item, date }));
      return needsIt && days.every(([day]) => (row[day] ?? 0) === 0) ? [drink] : [];
    });
    return drinks.length === 0 ? [] : [{ ...span, drinks }];
  });
}

/** For looking up drink by drink and day by day. */
export function outReader(list: readonly OutDays[]): IsOut {
  const byDrink = new Map<string, OutDays[]>();
  for (const out of list)
    for (const drink of out.drinks) byDrink.set(drink, [...(byDrink.get(drink) ?? []), out]);
  return (drink, date) =>
    byDrink.get(drink)?.some(({ from, until }) => from <= date && date < until) ?? false;
}

function spans({ catalogue, movements, ...known }: Known, asOf: BusinessDate): Omit<OutDays, "drinks">[] {
  const { venue } = catalogue;
  const counts = known.counts.filter(({ at }) => firstTradeAfter(at, venue) <= asOf);
  return counts.flatMap((count, index) =>
    [...count.holdings].flatMap(([item, { quantity, at }]) => {
      const isBought = catalogue.items.get(item)?.inHouse === false && catalogue.packs.has(item);
      if (quantity > 0 || !isBought || count.missedAreas.has(item)) return [];
      const from = firstTradeAfter(at, venue);
      const came = movements
        .filter((one) => one.item === item && one.at >= at && one.kind !== "transferredOut")
        .map((one) => businessDateOf(one.at, venue))
        .sort()[0];
      const next = counts
        .slice(index + 1)
        .find(({ holdings }) => holdings.has(item))
        ?.holdings.get(item);
      const nextFrom = next === undefined ? undefined : firstTradeAfter(next.at, venue);
      const isContradicted =
        next !== undefined && next.quantity > 0 && (came === undefined || came >= (nextFrom ?? ""));
      const until = [came, nextFrom, asOf].filter((date) => date !== undefined).sort()[0] ?? asOf;
      return isContradicted || from >= until ? [] : [{ item, from, until }];
    }),
  );
}

/** Sales of a business day lie after a count that was taken in its first twelve hours, as everywhere in the book. */
function firstTradeAfter(at: Instant, venue: Facts["catalogue"]["venue"]): BusinessDate {
  return addDays(businessDateOf(addHours(at, -12), venue), 1);
}

/** Whether a drink's spec asks for an item for which it names no other. */
function needs(
  { catalogue }: Known,
  drink: string,
  { item, date }: { item: string; date: BusinessDate },
): boolean {
  const lines = inForce(catalogue.specs.get(drink) ?? [], date)?.lines ?? [];
  return lines.some((line) => line.item === item && line.orItems.length === 0);
}
