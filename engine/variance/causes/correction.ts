import type { RingName } from "#engine/sales/ring.ts";
import type { Batch, CountRow, Delivery, Loss } from "#engine/stock/movement.ts";
import type { Instant } from "#engine/time.ts";
import { toInstant } from "#engine/time.ts";

/** One entry of a sheet put right: `was` null adds it, `fact` null takes it back. */
type Change<Sheet, Fact> = { sheet: Sheet; was: Fact | null; fact: Fact | null };

/** What a confirmed cause changes in the book, and in words what that is. */
export type Correction = (
  | Change<"deliveries", Delivery>
  | Change<"counts", CountRow>
  | Change<"batches", Batch>
  | Change<"losses", Loss>
  | Change<"ringNames", RingName>
) & { words: string };

type Moments = { opening: { at: Instant }; closing: { at: Instant } };

/** A moment that lies in an item's window for sure, for what nobody saw happen: its middle. */
export function middleOf({ opening, closing }: Moments): Instant {
  return toInstant((Date.parse(opening.at) + Date.parse(closing.at)) / 2);
}

/** A moment, or where it lies outside an item's window, the window's middle. */
export function within(at: Instant, window: Moments): Instant {
  return at >= window.opening.at && at < window.closing.at ? at : middleOf(window);
}

/** How an entry says where it came from. */
export const SETTLED_BY = "variance";
