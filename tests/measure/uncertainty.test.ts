import { expect, it } from "vitest";
import { Uncertainty } from "#engine/measure/stated-uncertainty.ts";
import {
  combinedSd,
  DEFAULT_UNCERTAINTY,
  propagate,
  rectangularSd,
  resolutionSd,
  rootSumOfSquares,
} from "#engine/measure/uncertainty.ts";

it("takes its own defaults as a valid block and refuses what it does not know", () => {
  expect(Uncertainty.parse(DEFAULT_UNCERTAINTY)).toEqual(DEFAULT_UNCERTAINTY);
  expect(Uncertainty.safeParse({ ...DEFAULT_UNCERTAINTY, scale: 1 }).success).toBe(false);
  expect(Uncertainty.safeParse({ ...DEFAULT_UNCERTAINTY, each: -1 }).success).toBe(false);
});

it("gives the standard deviations of JCGM 100 for half-widths and resolution", () => {
  expect(rectangularSd(1)).toBeCloseTo(0.577350269, 9);
  expect(resolutionSd(1)).toBeCloseTo(0.288675135, 9);
  // Counting in tenths of a 750 ml bottle, if the eye always picks the right tenth.
  expect(rectangularSd(37.5)).toBeCloseTo(21.650635, 6);
  expect(resolutionSd(0.1) * 750).toBeCloseTo(21.650635, 6);
  expect(rootSumOfSquares([3, 4])).toBe(5);
  expect(rootSumOfSquares([])).toBe(0);
});

it("never claims that an eye is better than perfect tenths", () => {
  expect(DEFAULT_UNCERTAINTY.reading).toBeGreaterThan(resolutionSd(0.1));
});

// R package metRology, documentation of uncert(): a + 2b + 3c + d/2, each u 10 % of its value.
const linear = [
  { sensitivity: 1, sd: 0.1 },
  { sensitivity: 2, sd: 0.3 },
  { sensitivity: 3, sd: 0.2 },
  { sensitivity: 0.5, sd: 1.1 },
];
it("combines the published linear example with and without correlation", () => {
  expect(combinedSd(linear)).toBeCloseTo(1.01612007165, 10);
  expect(combinedSd(linear, [{ first: 2, second: 3, r: 0.5 }])).toBeCloseTo(1.16726175299, 10);
  expect(() => combinedSd(linear, [{ first: 0, second: 9, r: 1 }])).toThrow(/names input 9/);
});

it("weighs a bottle: the spread of empty bottles is nearly all of the uncertainty", () => {
  const bottle = propagate(
    ([grossG = 0, emptyG = 0, density = 0]) => (grossG - emptyG) / density,
    [
      { value: 1012, sd: resolutionSd(1) },
      { value: 520, sd: 8 },
      { value: 0.9505, sd: 0.0008 },
    ],
  );
  expect(bottle.value).toBeCloseTo(517.6223, 4);
  expect(bottle.sd).toBeCloseTo(8.43336, 4);
  expect(bottle.parts[0]).toBeCloseTo(0.304, 3);
  expect(bottle.parts[1]).toBeCloseTo(8.417, 3);
  expect(bottle.parts[2]).toBeCloseTo(0.436, 3);
});

it("reproduces JCGM 100 example H.1, the end gauge", () => {
  const inputs = [
    { value: 50_000_623, sd: 25 },
    { value: 215, sd: 5.8 },
    { value: 0, sd: 3.9 },
    { value: 0, sd: 6.7 },
    { value: 11.5e-6, sd: 1.2e-6 },
    { value: 0, sd: 0.58e-6 },
    { value: -0.1, sd: 0.2 },
    { value: 0, sd: 0.35 },
    { value: 0, sd: 0.029 },
  ];
  const gauge = propagate(
    ([ls = 0, d = 0, cr = 0, cnr = 0, alpha = 0, dAlpha = 0, theta = 0, cycle = 0, dTheta = 0]) =>
      (ls * (1 + alpha * (theta + cycle + dTheta)) + d + cr + cnr) / (1 + (alpha + dAlpha) * (theta + cycle)),
    inputs,
  );
  expect(gauge.value).toBeCloseTo(50_000_838, 0);
  expect(gauge.sd).toBeCloseTo(31.7051, 3);
  const shares = gauge.parts.map((part) => part ** 2 / gauge.sd ** 2);
  [0.6218, 0.0335, 0.0151, 0.0447].forEach((share, at) => {
    expect(shares[at]).toBeCloseTo(share, 3);
  });
  expect(shares[5]).toBeCloseTo(0.0084, 3);
  expect(shares[8]).toBeCloseTo(0.2766, 3);
});

// JCGM 100 example H.2: two counts that share one tare behave like this, in both directions.
it.each([
  ["R", (v: number, i: number, phi: number) => (v * Math.cos(phi)) / i, 127.7321699, 0.0699787, 0.19411789],
  ["X", (v: number, i: number, phi: number) => (v * Math.sin(phi)) / i, 219.8465119, 0.295717, 0.200665631],
  ["Z", (v: number, i: number) => v / i, 254.2597019, 0.236603, 0.203921438],
])(
  "reproduces JCGM 100 example H.2 for %s, where leaving out correlation is wrong",
  (_, f, value, sd, alone) => {
    const inputs = [
      { value: 4.999, sd: 0.0032 },
      { value: 19.661e-3, sd: 0.0095e-3 },
      { value: 1.04446, sd: 0.00075 },
    ];
    const model = ([v = 0, i = 0, phi = 0]: number[]) => f(v, i, phi);
    const together = propagate(model, inputs, [
      { first: 0, second: 1, r: -0.36 },
      { first: 0, second: 2, r: 0.86 },
      { first: 1, second: 2, r: -0.65 },
    ]);
    expect(together.value).toBeCloseTo(value, 5);
    expect(together.sd / sd).toBeCloseTo(1, 4);
    expect(propagate(model, inputs).sd / alone).toBeCloseTo(1, 4);
  },
);

it("is surer of a level than the judges of cups were, whose spread was a third of the volume", () => {
  // Tattersall, Nursing Times 2016;112(45/46):19: a quarter of guesses within 10 %; 0.10/Φ⁻¹(0.625), Φ⁻¹ = 0.3186.
  expect(DEFAULT_UNCERTAINTY.reading).toBeLessThan(0.1 / 0.3186);
});
