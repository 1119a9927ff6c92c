import { describe, expect, it } from "vitest";
import {
  amountQuantile,
  chanceAbove,
  countCdf,
  countQuantile,
  demandQuantile,
  midQuantile,
} from "#engine/demand/distribution.ts";
import { largestPart } from "#engine/demand/largest-part.ts";
import { expectedShort, standardNormalLoss } from "#engine/demand/loss-function.ts";

const poisson = (mean: number) => ({ mean, variance: mean });

// R 4.2.2: ppois, qpois, qnbinom(size = 6, mu = 6), qgamma(shape = 3, scale = 2).
describe("counts and amounts have the quantiles that R gives them", () => {
  it.each([
    [7, 0.74397976],
    [8, 0.847237494],
    [9, 0.916075983],
    [10, 0.957379076],
    [12, 0.991172516],
  ])("a Poisson demand of mean 6 is at most %i with chance %f", (count, chance) => {
    expect(countCdf(count, poisson(6))).toBeCloseTo(chance, 8);
  });

  it.each([
    [6, 0.9, 9],
    [6, 0.95, 10],
    [6, 0.98, 12],
    [6, 0.99, 12],
    [18, 0.9, 24],
    [18, 0.95, 25],
    [18, 0.99, 29],
    [0.58, 0.9, 2],
    [0.58, 0.95, 2],
    [0.58, 0.99, 3],
  ])("the smallest stock for a Poisson demand of mean %f at level %f is %i", (mean, level, stock) => {
    expect(countQuantile(poisson(mean), level)).toBe(stock);
  });

  it.each([
    [0.5, 5, 5.348121],
    [0.9, 11, 10.644641],
    [0.95, 12, 12.591587],
    [0.98, 15, 15.033208],
  ])("mean 6, variance 12 at level %f: %i as a count, %f as an amount", (level, count, amount) => {
    expect(countQuantile({ mean: 6, variance: 12 }, level)).toBe(count);
    expect(amountQuantile({ mean: 6, variance: 12 }, level)).toBeCloseTo(amount, 6);
  });

  // Schmears exercise, Poisson over four days of 1.5: chance of a stock-out at 8.
  it("the chance that eight do not do for a Poisson demand of six is 0.1528", () => {
    expect(chanceAbove(poisson(6), 8, { isCount: true })).toBeCloseTo(0.152762506, 8);
  });

  it("stays exact for a night of nine hundred, where probabilities one by one overflow", () => {
    // R: qpois(.95, 900) = 950.
    expect(countQuantile(poisson(900), 0.95)).toBe(950);
  });

  it("pieces taken in eighths spread less than whole ones, and need no more", () => {
    expect(demandQuantile({ mean: 6, variance: 0.75 }, 0.95, { isCount: true })).toBeLessThan(10);
  });

  it("a mid-quantile lies within one piece of the whole-number quantile", () => {
    for (const mean of [0.2, 0.9, 4, 17, 120]) {
      for (const level of [0.05, 0.1, 0.5, 0.9, 0.95]) {
        const demand = { mean, variance: mean * 1.4 };
        expect(Math.abs(midQuantile(demand, level) - countQuantile(demand, level))).toBeLessThanOrEqual(1);
      }
    }
  });
});

// R: dnorm(z) - z * (1 - pnorm(z)).
describe("the standard normal loss", () => {
  it.each([
    [-2, 2.0084907026],
    [-0.5, 0.6977965574],
    [0, 0.3989422804],
    [0.5, 0.1977965574],
    [1, 0.0833154706],
    [1.6449, 0.0208906405],
    [2, 0.0084907026],
    [3, 0.0003821543],
  ])("at z = %f is %f", (z, loss) => {
    expect(standardNormalLoss(z)).toBeCloseTo(loss, 7);
  });
});

// stockpyl 1.0.2, loss functions (Snyder & Shen, Fundamentals of Supply Chain Theory, 2nd ed.).
describe("expected shortage", () => {
  it.each([
    ["Poisson 6 at 8", poisson(6), 8, true, 0.31402138915],
    ["Poisson 20 at 18", poisson(20), 18, true, 2.92502713156],
    ["Poisson 2.5 at 3", poisson(2.5), 3, true, 0.41319560969],
    ["Poisson 7.2 at 10", poisson(7.2), 10, true, 0.23728732312],
    ["negative binomial r 6, p 0.4 at 14", { mean: 9, variance: 22.5 }, 14, true, 0.49171042932],
    ["gamma shape 9, scale 2 at 22.3", { mean: 18, variance: 36 }, 22.3, false, 0.95789374326],
  ])("%s", (_, demand, stock, isCount, short) => {
    expect(expectedShort(demand, stock, { isCount })).toBeCloseTo(short, 7);
  });
});

// Clark 1961, "The greatest of a finite set of random variables", Operations Research 9(2): closed form of two.
describe("the part of a fruit most asked for", () => {
  it("of two independent standard ones is 1/√π on the average, with variance 1 − 1/π", () => {
    const largest = largestPart({
      mean: [0, 0],
      covariance: [
        [1, 0],
        [0, 1],
      ],
    });
    expect(largest.mean).toBeCloseTo(1 / Math.sqrt(Math.PI), 8);
    expect(largest.variance).toBeCloseTo(1 - 1 / Math.PI, 8);
  });

  it("is the only one asked for, where the other never is", () => {
    const largest = largestPart({
      mean: [12, 0],
      covariance: [
        [3, 0],
        [0, 0],
      ],
    });
    expect(largest.mean).toBeCloseTo(12, 6);
    expect(largest.variance).toBeCloseTo(3, 4);
  });

  it("of skin and flesh asked for together is either of them", () => {
    const largest = largestPart({
      mean: [5, 5],
      covariance: [
        [2, 2],
        [2, 2],
      ],
    });
    expect(largest).toEqual({ mean: 5, variance: 2 });
  });
});
