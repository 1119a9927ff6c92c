import { describe, expect, it } from "vitest";
import { amountQuantile, countQuantile } from "#engine/demand/distribution.ts";
import { expectedShort, standardNormalLoss } from "#engine/demand/loss-function.ts";
import { withLateness } from "#engine/orders/lateness.ts";
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

describe("deliveries that come late", () => {
  const none = { mean: 0, variance: 0 };
  const sdOf = ({ variance }: { variance: number }) => Math.sqrt(variance);

  // inventorize::dl.sigmadl(100, 22, 12, 3).
  it("100 ± 22 a day over 12 ± 3 days is 1200 ± 309.53", () => {
    const demand = withLateness(none, { mean: 100, variance: 22 ** 2 }, { mean: 12, variance: 9 });
    expect(demand.mean).toBe(1200);
    expect(sdOf(demand)).toBeCloseTo(309.528673954, 8);
  });

  // Chopra & Meindl ch. 12 (σ 17 500 and safety stock 22 491 in the book): 2500 ± 500 a day over 7 ± 7 days.
  it("seven days' spread in seven ask for nine days of safety stock at 90 %", () => {
    const demand = withLateness(none, { mean: 2500, variance: 500 ** 2 }, { mean: 7, variance: 49 });
    expect(sdOf(demand)).toBeCloseTo(17549.9288, 3);
    // The book's normal z of 0.90.
    expect(1.2815515655 * sdOf(demand)).toBeCloseTo(22491.1387, 2);
  });

  // inventorize::reorderpoint_leadtime_variability: 50 ± 5 a day, 6 ± 2 days, 90 %: σ 100.747208, level 429.112743.
  it("50 ± 5 a day over 6 ± 2 days, with and without the days' spread", () => {
    const perDay = { mean: 50, variance: 25 };
    const [sure, spread] = [0, 4].map((variance) => withLateness(none, perDay, { mean: 6, variance }));
    expect(300 + 1.2815515655 * sdOf(sure ?? none)).toBeCloseTo(315.695737, 5);
    expect(sdOf(spread ?? none)).toBeCloseTo(100.747208, 6);
    expect(300 + 1.2815515655 * sdOf(spread ?? none)).toBeCloseTo(429.112743, 5);
  });

  // Heizer & Render ch. 12, solved problem: 60 a week without spread, 6 ± 2 weeks, z 1.28 → 513.6.
  it("a steady 60 a week over 6 ± 2 weeks", () => {
    const demand = withLateness(none, { mean: 60, variance: 0 }, { mean: 6, variance: 4 });
    expect(demand.mean + 1.28 * sdOf(demand)).toBeCloseTo(513.6, 9);
  });
});

describe("what a stock is short of on the average", () => {
  // Chopra & Meindl ch. 12: reorder at 6000 for 5000 ± 707 → 25 short a cycle. The book's demand is normal; a
  // gamma so near it has a little more in its upper tail.
  it("6000 for 5000 ± 707 is short of about 25", () => {
    const short = expectedShort({ mean: 5000, variance: 2 * 500 ** 2 }, 6000, { isCount: false });
    expect(Math.abs(short - 25.12727)).toBeLessThan(10);
  });

  // stockpyl 1.0.2, normal loss: 15 ± 3 at 18, 50 ± 8 at 60.
  it.each([
    [15, 3, 18, 0.24994641176],
    [50, 8, 60, 0.40469494644],
  ])("%i ± %i at %i by the normal loss", (mean, sd, stock, short) => {
    expect(sd * standardNormalLoss((stock - mean) / sd)).toBeCloseTo(short, 6);
  });

  // Poisson base stock over L + 1 periods of 1.5, mean 6 (a published exercise; E[owed] by R).
  it.each([
    [7, 0.570041629],
    [8, 0.314021389],
    [9, 0.161258883],
    [10, 0.077334866],
    [12, 0.014621979],
  ])("a base stock of %i for a Poisson demand of 6 owes %f", (stock, owed) => {
    expect(expectedShort({ mean: 6, variance: 6 }, stock, { isCount: true })).toBeCloseTo(owed, 7);
  });
});
