import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { batchSize, vesselLoads } from "#engine/prep/batch-size.ts";

describe("the size of a batch", () => {
  it.each([
    // short, step, vessel → make, batches
    [900, 500, null, 1000, 1],
    [1000, 500, null, 1000, 1],
    [1000.0001, 500, null, 1500, 1],
    [900, 500, 600, 1000, 2],
    [900, null, 400, 900, 3],
    [900, 500, 300, 1000, 2], // one step is more than the vessel holds: each is its own batch
    [0.3, 0.1, null, 0.30000000000000004, 1], // 3 × 0.1 in floating point, not a fourth step
    [0, 500, 600, 0, 0],
    [-40, null, null, 0, 0],
    [700, null, null, 700, 1],
  ])("short %s with step %s and vessel %s makes %s in %s", (short, batchStep, vesselMax, make, batches) => {
    expect(batchSize({ short, batchStep, vesselMax })).toEqual({ make, batches });
  });

  it("covers the shortfall by less than a step, in whole steps that fit the vessel", () => {
    const size = fc.record({
      short: fc.double({ min: 1, max: 50_000, noNaN: true }),
      batchStep: fc.option(fc.integer({ min: 1, max: 3000 })),
      vesselMax: fc.option(fc.integer({ min: 3000, max: 20_000 })),
    });
    fc.assert(
      fc.property(size, ({ short, batchStep, vesselMax }) => {
        const { make, batches } = batchSize({ short, batchStep, vesselMax });
        const loads = vesselLoads(make, { batchStep, vesselMax });
        expect(make).toBeGreaterThanOrEqual(short * (1 - 1e-9));
        expect(make).toBeLessThan(short + (batchStep ?? 1e-9));
        expect(loads).toHaveLength(batches);
        expect(loads.reduce((sum, load) => sum + load, 0)).toBeCloseTo(make, 6);
        for (const load of loads) {
          expect(load).toBeGreaterThan(0);
          expect(load).toBeLessThanOrEqual((vesselMax ?? Number.POSITIVE_INFINITY) + 1e-9);
          if (batchStep !== null)
            expect(Math.abs(load / batchStep - Math.round(load / batchStep))).toBeLessThan(1e-6);
        }
      }),
    );
  });
});
