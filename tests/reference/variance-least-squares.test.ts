import { describe, expect, it } from "vitest";
import { leastSquares } from "#engine/variance/least-squares.ts";

// NIST Statistical Reference Datasets, linear regression: data and certified values.

const NORRIS: [y: number, x: number][] = [
  [0.1, 0.2],
  [338.8, 337.4],
  [118.1, 118.2],
  [888, 884.6],
  [9.2, 10.1],
  [228.1, 226.5],
  [668.5, 666.3],
  [998.5, 996.3],
  [449.1, 448.6],
  [778.9, 777],
  [559.2, 558.2],
  [0.3, 0.4],
  [0.1, 0.6],
  [778.1, 775.5],
  [668.8, 666.9],
  [339.3, 338],
  [448.9, 447.5],
  [10.8, 11.6],
  [557.7, 556],
  [228.3, 228.1],
  [998, 995.8],
  [888.8, 887.6],
  [119.6, 120.2],
  [0.3, 0.3],
  [0.6, 0.3],
  [557.6, 556.8],
  [339.3, 339.1],
  [888, 887.2],
  [998.5, 999],
  [778.9, 779],
  [10.2, 11.1],
  [117.6, 118.3],
  [228.9, 229.2],
  [668.4, 669.1],
  [449.2, 448.9],
  [0.2, 0.5],
];

const LONGLEY = [
  [60323, 83, 234289, 2356, 1590, 107608, 1947],
  [61122, 88.5, 259426, 2325, 1456, 108632, 1948],
  [60171, 88.2, 258054, 3682, 1616, 109773, 1949],
  [61187, 89.5, 284599, 3351, 1650, 110929, 1950],
  [63221, 96.2, 328975, 2099, 3099, 112075, 1951],
  [63639, 98.1, 346999, 1932, 3594, 113270, 1952],
  [64989, 99, 365385, 1870, 3547, 115094, 1953],
  [63761, 100, 363112, 3578, 3350, 116219, 1954],
  [66019, 101.2, 397469, 2904, 3048, 117388, 1955],
  [67857, 104.6, 419180, 2822, 2857, 118734, 1956],
  [68169, 108.4, 442769, 2936, 2798, 120445, 1957],
  [66513, 110.8, 444546, 4681, 2637, 121950, 1958],
  [68655, 112.6, 482704, 3813, 2552, 123366, 1959],
  [69564, 114.2, 502601, 3931, 2514, 125368, 1960],
  [69331, 115.7, 518173, 4806, 2572, 127852, 1961],
  [70551, 116.9, 554894, 4007, 2827, 130081, 1962],
];

/** Relative, or absolute where the certified value is 0. */
function expectNear(found: number | undefined, certified: number, tolerance: number): void {
  expect(Math.abs((found ?? Number.NaN) - certified)).toBeLessThanOrEqual(
    tolerance * Math.max(Math.abs(certified), 1e-300),
  );
}

describe("least squares on certified data", () => {
  it("Norris: a straight line", () => {
    const fit = leastSquares(
      NORRIS.map(([, x]) => [1, x]),
      NORRIS.map(([y]) => y),
    );
    expectNear(fit?.coefficients[0], -0.262323073774029, 1e-10);
    expectNear(fit?.coefficients[1], 1.00211681802045, 1e-10);
    expectNear(fit?.standardErrors[0], 0.232818234301152, 1e-10);
    expectNear(fit?.standardErrors[1], 0.429796848199937e-3, 1e-10);
    expectNear(fit?.residualSd, 0.884796396144373, 1e-10);
  });

  it("NoInt1: a line through nothing", () => {
    const xs = Array.from({ length: 11 }, (_, index) => 60 + index);
    const fit = leastSquares(
      xs.map((x) => [x]),
      xs.map((x) => x + 70),
    );
    expectNear(fit?.coefficients[0], 2.07438016528926, 1e-10);
    expectNear(fit?.standardErrors[0], 0.0165289256198347, 1e-10);
    expectNear(fit?.residualSd, 3.56753034006338, 1e-10);
  });

  it("Longley: six predictors that nearly say the same", () => {
    const fit = leastSquares(
      LONGLEY.map(([, ...xs]) => [1, ...xs]),
      LONGLEY.map(([y = 0]) => y),
    );
    const certified = [
      -3482258.63459582, 15.0618722713733, -0.03581917929259, -2.02022980381683, -1.03322686717359,
      -0.0511041056535807, 1829.15146461355,
    ];
    const errors = [
      890420.383607373, 84.9149257747669, 0.0334910077722432, 0.488399681651699, 0.214274163161675,
      0.22607320006937, 455.478499142212,
    ];
    for (const [index, value] of certified.entries()) expectNear(fit?.coefficients[index], value, 1e-7);
    for (const [index, value] of errors.entries()) expectNear(fit?.standardErrors[index], value, 1e-7);
    expectNear(fit?.residualSd, 304.854073561965, 1e-7);
  });

  it("Wampler1: an exact polynomial of the fifth degree", () => {
    const xs = Array.from({ length: 21 }, (_, x) => x);
    const powers = (x: number) => Array.from({ length: 6 }, (_, power) => x ** power);
    const fit = leastSquares(
      xs.map(powers),
      xs.map((x) => powers(x).reduce((sum, term) => sum + term)),
    );
    fit?.coefficients.forEach((value) => {
      expect(Math.abs(value - 1)).toBeLessThan(1e-6);
    });
    expect(fit?.coefficients).toHaveLength(6);
  });
});

it("finds no answer where two columns say the same", () => {
  expect(
    leastSquares(
      [
        [1, 2],
        [2, 4],
        [3, 6],
      ],
      [1, 2, 3],
    ),
  ).toBeUndefined();
});

it("refuses fewer rows than columns", () => {
  expect(() => leastSquares([[1, 2]], [1])).toThrow(RangeError);
});
