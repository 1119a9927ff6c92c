import type { Book } from "#engine/book.ts";
import type { Closure, SupplierDay } from "#engine/orders/supplier.ts";
import { instantToLocal, localToInstant } from "#engine/sales/read/clock.ts";
import { addDays, type BusinessDate, type Instant, WEEKDAYS, weekdayOf } from "#engine/time.ts";
import type { Venue } from "#engine/venue.ts";

/** One chance to order: by this moment, to arrive at that. */
export type OrderChance = { orderBy: Instant; arrives: Instant };

/**
 * When a supplier can next be ordered from, when that arrives, and when the order after it arrives: until
 * then an order placed now has to last. All null for a supplier without order days; nobody knows then.
 */
export type NextOrder = { orderBy: Instant | null; arrives: Instant | null; coversUntil: Instant | null };

/** Past a quarter of closures there is no calendar to speak of. */
const LOOK_AHEAD_DAYS = 100;

type Calendar = Pick<Book, "supplierDays" | "closures"> & { venue: Pick<Venue, "timeZone"> };

/**
 * The next order of a supplier at a moment; ordering at the very cut-off is in time.
 *
 * Monday by 15:00 for Wednesday 11:00 and Thursday by 15:00 for Friday 12:30, asked on Monday noon →
 * order by Monday 15:00, arrives Wednesday 11:00, covers until Friday 12:30.
 */
export function nextOrder(book: Calendar, supplier: string, at: Instant): NextOrder {
  const [next, ...later] = orderChances(book, supplier, at);
  if (next === undefined) return { orderBy: null, arrives: null, coversUntil: null };
  const after = later.find(({ arrives }) => arrives > next.arrives);
  return { ...next, coversUntil: after?.arrives ?? null };
}

/** A supplier's chances from a moment on, by cut-off. Order and delivery days in a closure are passed over. */
export function orderChances(book: Calendar, supplier: string, at: Instant): OrderChance[] {
  const { timeZone } = book.venue;
  const today = instantToLocal(at, { timeZone }).slice(0, 10);
  const closures = book.closures.filter(
    (closure) => closure.supplier === null || closure.supplier === supplier,
  );
  const chances = book.supplierDays
    .filter((day) => day.supplier === supplier)
    .flatMap((day) => chancesOf(day, closures, today, timeZone));
  return chances
    .filter(({ orderBy }) => orderBy >= at)
    .sort((a, b) => compare(a.orderBy, b.orderBy) || compare(a.arrives, b.arrives));
}

function chancesOf(
  day: SupplierDay,
  closures: readonly Closure[],
  today: BusinessDate,
  timeZone: string,
): OrderChance[] {
  const days = daysToDelivery(day);
  const untilOrderDay = (WEEKDAYS.indexOf(day.orderDay) - WEEKDAYS.indexOf(weekdayOf(today)) + 7) % 7;
  const weeks = Array.from({ length: Math.ceil(LOOK_AHEAD_DAYS / 7) }, (_, week) => untilOrderDay + 7 * week);
  return weeks.flatMap((ahead) => {
    const ordered = addDays(today, ahead);
    const delivered = addDays(ordered, days);
    if (isClosed(closures, ordered) || isClosed(closures, delivered)) return [];
    return [
      {
        orderBy: localToInstant(`${ordered} ${day.orderBy}`, { timeZone }),
        arrives: localToInstant(`${delivered} ${day.deliveryAt}`, { timeZone }),
      },
    ];
  });
}

/** The same weekday is the same day if the delivery comes later than the cut-off, else a week later. */
export function daysToDelivery({ orderDay, orderBy, deliveryDay, deliveryAt }: SupplierDay): number {
  const days = (WEEKDAYS.indexOf(deliveryDay) - WEEKDAYS.indexOf(orderDay) + 7) % 7;
  return days === 0 && deliveryAt <= orderBy ? 7 : days;
}

function isClosed(closures: readonly Closure[], date: BusinessDate): boolean {
  return closures.some(({ from, to }) => from <= date && date <= to);
}

function compare(a: string, b: string): number {
  return a < b ? -1 : a > b ? 1 : 0;
}
