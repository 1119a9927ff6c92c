import { expect, it } from "vitest";
import { cusum, cusumSignal, ewma } from "#engine/variance/control-chart.ts";

// NIST/SEMATECH e-Handbook of Statistical Methods, 6.3.2.4: λ 0.3, EWMA₀ 50, s 2.0539, k 3.
const BATCHES = [
  52.0, 47.0, 53.0, 49.3, 50.1, 47.0, 51.0, 50.1, 51.2, 50.5, 49.6, 47.6, 49.9, 51.3, 47.8, 51.2, 52.6, 52.4,
  53.6, 52.1,
];
const PRINTED_EWMA = [
  50.6, 49.52, 50.56, 50.18, 50.16, 49.21, 49.75, 49.85, 50.26, 50.33, 50.11, 49.36, 49.52, 50.05, 49.38,
  49.92, 50.73, 51.23, 51.94, 51.99,
];

it("smooths the handbook's twenty batches to the printed averages, none out of control", () => {
  const points = ewma(BATCHES, { lambda: 0.3, target: 50, sd: 2.0539, width: 3 });
  points.forEach(({ value }, index) => {
    expect(Math.abs(value - (PRINTED_EWMA[index] ?? 0))).toBeLessThan(0.00501);
  });
  expect(points.at(-1)?.value).toBeCloseTo(51.988243, 6);
  expect(points.some(({ isOut }) => isOut)).toBe(false);
});

it("widens the limits from the first point to the handbook's steady 2.5884", () => {
  const points = ewma(BATCHES, { lambda: 0.3, target: 50, sd: 2.0539, width: 3 });
  const widths = points.slice(0, 5).map(({ halfWidth }) => halfWidth);
  // R package spc / qcc time-varying limits.
  [1.84851, 2.256394, 2.431406, 2.512715, 2.551611].forEach((width, index) => {
    expect(widths[index]).toBeCloseTo(width, 6);
  });
  expect(points.at(-1)?.halfWidth).toBeCloseTo(2.588431, 6);
});

// NIST/SEMATECH e-Handbook, 6.3.2.3: target 325, k 0.3175, h 4.1959.
const SAMPLES = [
  324.925, 324.675, 324.725, 324.35, 325.35, 325.225, 324.125, 324.525, 325.225, 324.6, 324.625, 325.15,
  328.325, 327.25, 327.825, 328.5, 326.675, 327.775, 326.875, 328.35,
];
const S_HIGH = [
  0, 0, 0, 0, 0.0325, 0, 0, 0, 0, 0, 0, 0, 3.0075, 4.94, 7.4475, 10.63, 11.9875, 14.445, 16.0025, 19.035,
];
const S_LOW = [0, 0.0075, 0, 0.3325, 0, 0, 0.5575, 0.715, 0.1725, 0.255, 0.3125, 0, 0, 0, 0, 0, 0, 0, 0, 0];

it("adds up the handbook's sums above and below the target", () => {
  const points = cusum(SAMPLES, { target: 325, slack: 0.3175 });
  points.forEach(({ high, low }, index) => {
    expect(high).toBeCloseTo(S_HIGH[index] ?? 0, 9);
    expect(low).toBeCloseTo(S_LOW[index] ?? 0, 9);
  });
});

it("signals at the handbook's fourteenth sample, begun with the thirteenth", () => {
  const signal = cusumSignal(cusum(SAMPLES, { target: 325, slack: 0.3175 }), 4.1959);
  expect(signal).toEqual({ direction: "high", began: 12, crossed: 13 });
});

it("refuses a weight outside its range", () => {
  expect(() => ewma([1], { lambda: 0, target: 0, sd: 1, width: 3 })).toThrow(RangeError);
});
