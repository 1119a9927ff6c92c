import fc from "fast-check";
import { expect, it } from "vitest";
import { levelForWorth } from "#engine/orders/worth-level.ts";

// √(2 ln(5 × 100 ÷ (√(2π) × 0.03 × 800 × 0.25))) = 2.647229, whose normal chance is 0.995942 (arithmetic).
it("weighs a run-out of 5.00 a hundred times a year against the money of 800 ml", () => {
  const level = levelForWorth({ worth: 5, ordersPerYear: 100, costPerBase: 0.03, sd: 800 });
  expect(level).toBeCloseTo(0.995942, 5);
});

it("never stands safer for a dearer or a wilder item, nor less safe where a run-out costs more", () => {
  const amount = fc.double({ min: 0.01, max: 1000, noNaN: true });
  const more = fc.double({ min: 1, max: 10, noNaN: true });
  fc.assert(
    fc.property(amount, amount, amount, amount, more, (worth, ordersPerYear, costPerBase, sd, factor) => {
      const level = levelForWorth({ worth, ordersPerYear, costPerBase, sd });
      const dearer = levelForWorth({ worth, ordersPerYear, costPerBase: costPerBase * factor, sd });
      const wilder = levelForWorth({ worth, ordersPerYear, costPerBase, sd: sd * factor });
      const graver = levelForWorth({ worth: worth * factor, ordersPerYear, costPerBase, sd });
      expect(dearer).toBeLessThanOrEqual(level);
      expect(wilder).toBeLessThanOrEqual(level);
      expect(graver).toBeGreaterThanOrEqual(level);
      expect(level).toBeLessThan(1);
    }),
  );
});
