import type { Facts } from "#engine/facts.ts";
import { businessDateOf, localToInstant } from "#engine/sales/read/clock.ts";
import type { SaleGroup } from "#engine/sales/tally.ts";
import { addHours, type BusinessDate, type Instant } from "#engine/time.ts";

/** When prep begins on an ordinary day; common practice. */
const PREP_AT = "14:00";

/**
 * The moment whose stock the plan of a day starts from, when none is given.
 *
 * It is 14:00 at the venue (or the first minute of a trading day that begins later), but
 * - on a day that the book has left behind: the day's first batch, if that was earlier. The plan then tells what was to
 *   be made, not what was left to make; a count later than that batch found it and comes first;
 * - on the book's last day: the last thing recorded before service, if that was later, so that what is made is not asked for
 *   again. Service begins with the day's first sale.
 */
export function prepBegins(facts: Facts, sales: readonly SaleGroup[], date: BusinessDate): Instant {
  const { venue } = facts.catalogue;
  const usual = localToInstant(`${date} ${venue.dayEnds > PREP_AT ? venue.dayEnds : PREP_AT}`, venue);
  const onDay = (moments: readonly Instant[]) =>
    moments.filter((at) => businessDateOf(at, venue) === date).sort();
  const counted = facts.counts.flatMap(({ holdings }) => [...holdings.values()].map(({ at }) => at));
  const made = facts.book.batches.map(({ at }) => at);

  if (isPast(facts, sales, date)) {
    const firstMade = onDay(made)[0];
    if (firstMade === undefined || firstMade >= usual) return usual;
    return latest([firstMade, ...onDay(counted).filter((at) => at <= usual)]);
  }
  const served = sales.filter(({ businessDate, at }) => businessDate === date && at !== null);
  const firstServed = served.map(({ at }) => at ?? "").sort()[0] ?? "9999";
  const recorded = [...counted, ...made, ...facts.book.losses.map(({ at }) => at)];
  // A batch at a moment belongs after it; a second later it stands on the shelf.
  return latest([
    usual,
    ...onDay(recorded)
      .filter((at) => at < firstServed)
      .map((at) => addHours(at, 1 / 3600)),
  ]);
}

/** Whether the book goes on after a business day. */
function isPast(
  { catalogue, book, counts }: Facts,
  sales: readonly SaleGroup[],
  date: BusinessDate,
): boolean {
  if (sales.some(({ businessDate }) => businessDate > date)) return true;
  const recorded = [...counts, ...book.batches, ...book.deliveries, ...book.losses];
  return recorded.some(({ at }) => businessDateOf(at, catalogue.venue) > date);
}

function latest(moments: readonly Instant[]): Instant {
  return [...moments].sort().at(-1) ?? "";
}
