import fc from "fast-check";
import { expect, it } from "vitest";
import { levelLineScale } from "../../web/parts/level-line-scale.ts";

const base = fc.double({ min: 0, max: 1e6, noNaN: true });
const parts = fc.record({
  onHand: base,
  sd: fc.option(base),
  par: fc.option(base),
  expectedUse: fc.option(base),
  onOrder: base,
});

it("draws on hand with its ±, what is on order and par all inside the line", () => {
  fc.assert(
    fc.property(parts, (stock) => {
      const x = levelLineScale({ ...stock, width: 200 });
      const places = [0, stock.onHand + (stock.sd ?? 0), stock.onHand + stock.onOrder, stock.par ?? 0].map(x);
      expect(Math.min(...places)).toBeGreaterThanOrEqual(0);
      expect(Math.max(...places)).toBeLessThanOrEqual(200);
    }),
  );
});

it("draws twice the stock twice as long", () => {
  const x = levelLineScale({ onHand: 700, sd: null, par: 2100, expectedUse: null, onOrder: 0, width: 200 });
  expect(x(1400) - x(0)).toBeCloseTo(2 * (x(700) - x(0)), 9);
});
