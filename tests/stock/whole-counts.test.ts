import { describe, expect, it } from "vitest";
import type { Count, Holding } from "#engine/stock/counts.ts";
import { wholeCounts } from "#engine/stock/whole-counts.ts";

/** Counts of so many items each, a week apart. */
function countsOfSizes(...sizes: number[]): Count[] {
  return sizes.map((size, week) => ({
    name: `Week ${week}`,
    at: `2026-01-${String(1 + week).padStart(2, "0")}T10:00:00Z`,
    holdings: new Map(Array.from({ length: size }, (_, at) => [`Item ${at}`, {} as Holding])),
    missedAreas: new Map(),
  }));
}

const sizesOfWhole = (...sizes: number[]) =>
  wholeCounts(countsOfSizes(...sizes)).map(({ holdings }) => holdings.size);

describe("whole counts", () => {
  it("pass over a few items between two of the whole bar", () => {
    expect(sizesOfWhole(109, 4, 108, 3, 2)).toEqual([109, 108]);
  });

  it("keep a weekly count of the spirits beside a monthly one of everything", () => {
    expect(sizesOfWhole(110, 40, 40, 40, 110)).toEqual([110, 40, 40, 40, 110]);
  });

  it("measure a small bar, or one that grew, by what it was near the count", () => {
    expect(sizesOfWhole(4, 4, 4)).toEqual([4, 4, 4]);
    expect(sizesOfWhole(...Array(20).fill(12), ...Array(20).fill(100))).toContain(12);
  });

  it("are none of none", () => {
    expect(wholeCounts([])).toEqual([]);
  });
});
