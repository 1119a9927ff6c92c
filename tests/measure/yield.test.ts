import fc from "fast-check";
import { expect, it } from "vitest";
import {
  expectedYield,
  learnYield,
  piecesToPress,
  YIELD_PRIORS,
  type YieldBelief,
} from "#engine/measure/yield.ts";

it("believes a bar's own limes over the published ones after one batch", () => {
  const learned = learnYield(YIELD_PRIORS.lime, { pieces: 40, volumeMl: 1000 });
  // (0.9 × 42.2 + 1000) ÷ 40.9
  expect(learned.meanMl).toBeCloseTo(25.378, 3);
  expect(learned.source).toBe("USDA SR26, juice of one lime, and own batches");
});

it("settles on what the batches give, and becomes surer with each", () => {
  let belief: YieldBelief = YIELD_PRIORS.lime;
  for (let batch = 0; batch < 30; batch += 1) {
    belief = learnYield(belief, { pieces: 40, volumeMl: 1000 + (batch % 2 === 0 ? 40 : -40) });
  }
  expect(belief.meanMl).toBeCloseTo(25, 0);
  // Batch means 1 ml either way of 40 limes each: √40 ml from lime to lime.
  expect(belief.spreadMl).toBeGreaterThan(4);
  expect(belief.spreadMl).toBeLessThan(9);
  expect(expectedYield(belief, 40).sd / 1000).toBeLessThan(0.06);
});

it("presses more fruit the surer the bar wants to be, and never fewer than the mean asks for", () => {
  const belief = learnYield(YIELD_PRIORS.lime, { pieces: 40, volumeMl: 1000 });
  const press = (certainty: number) => piecesToPress(belief, { volumeMl: 1000, certainty });
  expect(press(0.5).pieces).toBe(Math.ceil(1000 / belief.meanMl));
  expect(press(0.5).margin).toBe(0);
  expect(press(0.9).pieces).toBeGreaterThan(press(0.5).pieces);
  expect(press(0.99).pieces).toBeGreaterThan(press(0.9).pieces);
});

it("presses nothing for nothing", () => {
  expect(piecesToPress(YIELD_PRIORS.lemon, { volumeMl: 0, certainty: 0.9 })).toEqual({
    pieces: 0,
    margin: 0,
  });
});

it("refuses a batch of no fruit, and a certainty that no heap of fruit can give", () => {
  expect(() => learnYield(YIELD_PRIORS.lime, { pieces: 0, volumeMl: 100 })).toThrow(/Pieces pressed/);
  const vague = { ...YIELD_PRIORS.lime, spreadMl: 40 };
  expect(() => piecesToPress(vague, { volumeMl: 100, certainty: 0.99 })).toThrow(/surely expected/);
});

it("the number pressed is the smallest that is sure enough", () => {
  const plan = fc.record({
    volumeMl: fc.double({ min: 1, max: 20_000, noNaN: true }),
    certainty: fc.double({ min: 0.5, max: 0.99, noNaN: true }),
    batch: fc.integer({ min: 5, max: 200 }),
  });
  fc.assert(
    fc.property(plan, ({ volumeMl, certainty, batch }) => {
      const belief = learnYield(YIELD_PRIORS.orange, { pieces: batch, volumeMl: batch * 80 });
      const { pieces } = piecesToPress(belief, { volumeMl, certainty });
      const surer = piecesToPress(belief, { volumeMl, certainty: Math.min(0.999, certainty + 0.005) });
      expect(surer.pieces).toBeGreaterThanOrEqual(pieces);
      expect(pieces * belief.meanMl).toBeGreaterThanOrEqual(volumeMl - 1e-6);
      const double = piecesToPress(belief, { volumeMl: 2 * volumeMl, certainty });
      expect(double.pieces).toBeGreaterThanOrEqual(pieces);
    }),
  );
});
