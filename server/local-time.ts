import { localMinute, type VenueClock } from "#engine/sales/read/clock.ts";
import type { Instant } from "#engine/time.ts";

/** As `localMinute`, where there may be no moment. */
export function localMinuteOrNull(at: Instant | null, clock: VenueClock): string | null {
  return at === null ? null : localMinute(at, clock);
}
