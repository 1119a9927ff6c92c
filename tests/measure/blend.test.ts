import { expect, it } from "vitest";
import { blend } from "#engine/measure/blend.ts";
import { OutOfRangeError } from "#engine/measure/range.ts";
import { syrupByWeight } from "#engine/measure/syrup.ts";

it("batches a stirred drink with its dilution water, within half a percent of the sum of its parts", () => {
  const batch = blend([
    { volumeMl: 1000, abvPct: 40 },
    { volumeMl: 500, abvPct: 16, brix: 14, densityGPerMl: 1.04 },
    { volumeMl: 400 },
  ]);
  expect(Math.abs(batch.volumeMl / 1900 - 1)).toBeLessThan(0.005);
  expect((batch.abvPct * batch.volumeMl) / 100).toBeCloseTo(480, 6);
  expect(batch.isApproximate).toBe(true);
});

it("makes of syrup and water the syrup that the weights make", () => {
  const thick = syrupByWeight({ sweetenerG: 2000, waterG: 1000 });
  const thinned = blend([{ volumeMl: thick.volumeMl, brix: thick.brix }, { volumeMl: 1000 / 0.9982 }]);
  const thin = syrupByWeight({ sweetenerG: 2000, waterG: 2000 });
  expect(thinned.brix).toBeCloseTo(50, 3);
  expect(thinned.volumeMl / thin.volumeMl).toBeCloseTo(1, 5);
  expect(thinned.isApproximate).toBe(false);
});

it("asks for the density of a liqueur instead of guessing it", () => {
  expect(() => blend([{ volumeMl: 500, abvPct: 24, brix: 30 }])).toThrow(/needs its density/);
});

it("refuses an empty blend, and a part that cannot weigh what it is said to", () => {
  expect(() => blend([])).toThrow(OutOfRangeError);
  expect(() => blend([{ volumeMl: 100, abvPct: 96, brix: 40, densityGPerMl: 1 }])).toThrow(
    /measure its density/,
  );
});
