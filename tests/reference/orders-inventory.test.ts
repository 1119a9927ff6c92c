import { describe, expect, it } from "vitest";
import { amountQuantile, countQuantile } from "#engine/demand/distribution.ts";
import { criticalRatio, parOf } from "#engine/orders/par.ts";

describe("the newsvendor's order", () => {
  // SCperf::Newsboy (Porteus; Gallego): price 4, cost 1, nothing back, so short 3 and over 1.
  it.each([
    [100, 30, 120.23],
    [100, 20, 113.49],
  ])("price 4, cost 1, demand %i ± %i", (mean, sd, order) => {
    const level = criticalRatio({ shortCost: 3, overCost: 1 }) ?? 0;
    expect(level).toBe(0.75);
    // The book's demand is normal; a gamma of its mean and spread lies within two in a hundred.
    expect(Math.abs(amountQuantile({ mean, variance: sd * sd }, level) / order - 1)).toBeLessThan(0.02);
  });

  // stockpyl 1.0.2, Snyder & Shen 2nd ed., example 4.7 and problem 4.8a.
  it.each([
    [1, 4, 6, 8],
    [200, 270, 18, 19],
  ])("over %f, short %f, Poisson demand %f → stock %i", (overCost, shortCost, mean, stock) => {
    const level = criticalRatio({ shortCost, overCost }) ?? 0;
    expect(countQuantile({ mean, variance: mean }, level)).toBe(stock);
  });

  // Schmears exercise: owed 6, held 0.01 a day → ratio 0.998336, stock 14.
  it("asks for nearly every bagel where being short costs six hundred times as much", () => {
    const level = criticalRatio({ shortCost: 6, overCost: 0.01 }) ?? 0;
    expect(level).toBeCloseTo(0.998336, 6);
    expect(countQuantile({ mean: 6, variance: 6 }, level)).toBe(14);
  });

  it("says nothing where a price is not known", () => {
    expect(criticalRatio({ shortCost: null, overCost: 1 })).toBeNull();
    expect(criticalRatio({ shortCost: 3, overCost: null })).toBeNull();
  });
});

describe("the par of a periodic review", () => {
  // SCperf::ROP(0.9, 2500, 500, 6): review 4 weeks, lead 2 weeks → 16 570 (Chopra & Meindl ch. 12).
  it("covers review and lead time: 2500 a week, sd 500, six weeks, 90 %", () => {
    const demand = { mean: 6 * 2500, variance: 6 * 500 ** 2 };
    expect(parOf({ demand, serviceLevel: 0.9, isCount: false }) / 16569.57).toBeCloseTo(1, 2);
  });

  // Poisson base stock over four days of 1.5 (Schmears exercise; R qpois).
  it.each([
    [0.9, 9],
    [0.95, 10],
    [0.99, 12],
  ])("of a slow bottle at %f is %i pieces", (serviceLevel, par) => {
    expect(parOf({ demand: { mean: 6, variance: 6 }, serviceLevel, isCount: true })).toBe(par);
  });
});
