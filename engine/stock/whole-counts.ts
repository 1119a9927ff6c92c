import type { Count } from "#engine/stock/counts.ts";

/** A count is a spot count when it looked at less than this share of the items that the largest count near it did. */
const SPOT_SHARE = 0.25;

/** As many counts before and after as a quarter of a year of weekly ones: a bar's shelves change. */
const NEAR = 13;

/**
 * The counts that a week can be measured by, oldest first: those that looked at most of the shelves, and not at a few
 * chosen items between them, nor broken off early. What a spot count found stands all the same: it only begins and ends no week.
 * A count of the spirits alone every week beside a full one every month is whole; four items of a hundred are not (common practice).
 */
export function wholeCounts(counts: readonly Count[]): Count[] {
  return counts.filter((count, at) => {
    const near = counts.slice(Math.max(0, at - NEAR), at + NEAR + 1);
    return count.holdings.size >= SPOT_SHARE * Math.max(...near.map(({ holdings }) => holdings.size));
  });
}
