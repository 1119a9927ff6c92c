import type { DemandDay } from "#engine/demand/item-demand.ts";
import { businessDateOf, dayEndsSeconds, instantToLocal } from "#engine/sales/read/clock.ts";
import { type BusinessDate, datesFrom, type Instant } from "#engine/time.ts";
import type { Venue } from "#engine/venue.ts";

type Clock = Pick<Venue, "timeZone" | "dayEnds">;

/**
 * Common practice where the hours are not known: a bar's trade of a day lies, evenly, between twelve and two
 * hours before its day ends.
 */
const TRADE_BEGINS_BEFORE_END_H = 12;
const TRADE_ENDS_BEFORE_END_H = 2;

/**
 * The business days from one moment to another, each with the share of its trade that lies between them.
 *
 * From Monday 12:00 to Wednesday 11:00 → Monday 1, Tuesday 1 (Wednesday 0 is left out); Monday 21:00 is the
 * middle of a trade from 16:00 to 02:00, so from then on Monday counts half.
 */
export function tradingDays({ from, to }: { from: Instant; to: Instant }, clock: Clock): DemandDay[] {
  const [first, last] = [businessDateOf(from, clock), businessDateOf(to, clock)];
  return datesFrom({ from: first, to: last }).flatMap((date) => {
    const begin = date === first ? tradeDone(from, date, clock) : 0;
    const end = date === last ? tradeDone(to, date, clock) : 1;
    return end > begin ? [{ date, share: end - begin }] : [];
  });
}

/** Share of a business day's trade that is done at a moment of that day. */
export function tradeDone(at: Instant, date: BusinessDate, clock: Clock): number {
  const local = instantToLocal(at, clock);
  const [hours = 0, minutes = 0, seconds = 0] = local.slice(11).split(":").map(Number);
  const dayEndsH = dayEndsSeconds(clock.dayEnds) / 3600;
  const hourOfDay = hours + minutes / 60 + seconds / 3600 + (local.slice(0, 10) > date ? 24 : 0);
  const begins = 24 + dayEndsH - TRADE_BEGINS_BEFORE_END_H;
  const done = (hourOfDay - begins) / (TRADE_BEGINS_BEFORE_END_H - TRADE_ENDS_BEFORE_END_H);
  return Math.min(1, Math.max(0, done));
}
