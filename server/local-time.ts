import { instantToLocal, type VenueClock } from "#engine/sales/read/clock.ts";
import type { Instant } from "#engine/time.ts";

/** A moment as the sheets write it: the venue's time, "YYYY-MM-DD HH:MM". */
export function localMinute(at: Instant, clock: VenueClock): string {
  return instantToLocal(at, clock).slice(0, 16);
}

/** As `localMinute`, where there may be no moment. */
export function localMinuteOrNull(at: Instant | null, clock: VenueClock): string | null {
  return at === null ? null : localMinute(at, clock);
}
