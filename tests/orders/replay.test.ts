import { describe, expect, it } from "vitest";
import { factsOf } from "#engine/facts.ts";
import { type Replay, replay } from "#engine/orders/replay.ts";
import type { Past } from "#engine/orders/replay-past.ts";
import { replayPolicy } from "#engine/orders/replay-policy.ts";
import { simulatedWeeks } from "../demand/simulated.ts";
import { AT, aPack, EIGHT_WEEKS, orderBook } from "./order-bar.ts";

const MONDAY_AFTER = "2026-11-23T16:00:00Z";

function sentence({ itemNightsOut, stockMoney }: { itemNightsOut: number; stockMoney: number }): string {
  return `${itemNightsOut} item-nights out, ${Math.round(stockMoney)} in stock on average`;
}

describe.each([1, 2, 3])("ten weeks of a simulated bar ordered anew (seed %i)", (seed) => {
  const { facts, sales } = simulatedWeeks(seed);
  const tried = replay({ facts, sales, at: MONDAY_AFTER }) as Replay;
  const { planned, byHand, curve, asSafe } = tried;

  it("needs a quarter less money for no more nights out than pars of twice the mean weekly use", () => {
    console.info(
      `seed ${seed}, ${tried.weeks} weeks: pars of two weeks' use: ${sentence(byHand)}; ` +
        `as safe for the least money: ${asSafe === null ? "nothing" : sentence(asSafe)}; ` +
        `as the book is set (${facts.catalogue.venue.serviceLevel}): ${sentence(planned)}`,
    );
    expect(tried.weeks).toBe(10);
    expect(asSafe?.itemNightsOut).toBeLessThanOrEqual(byHand.itemNightsOut);
    expect((asSafe?.stockMoney ?? Infinity) / byHand.stockMoney).toBeLessThan(0.75);
  });

  it("stands safer the more money stands in stock", () => {
    for (const [index, point] of curve.entries()) {
      const lower = curve[index - 1];
      if (lower === undefined) continue;
      expect(point.stockMoney).toBeGreaterThan(lower.stockMoney);
      expect(point.itemNightsOut).toBeLessThanOrEqual(lower.itemNightsOut);
    }
  });

  it("says which level to set for each item, dearer ones no higher than need be", () => {
    const levels = new Map(asSafe?.levels.map(({ item, serviceLevel }) => [item, serviceLevel]));
    expect(asSafe?.serviceLevel === null).toBe(levels.size > 0);
    for (const level of levels.values()) {
      expect(level).toBeGreaterThanOrEqual(0.6);
      expect(level).toBeLessThan(1);
    }
  });

  it("runs out on few of the nights, as its service level lets expect", () => {
    expect(planned.itemNightsOut / planned.itemNights).toBeLessThan(0.01);
    expect(planned.spoiltMoney).toBeLessThan(byHand.spoiltMoney);
  });
});

describe("a replay worked by hand", () => {
  const unit = { pack: aPack("Gin"), of: "container" as const, size: 700, cases: 1 / 6, price: 21 };
  const item = {
    item: "Gin",
    unit,
    isCount: false,
    shelfLifeDays: null,
    costPerBase: 0.03,
    ownLevel: null,
    spoiltLevel: null,
  };
  const none = { demand: { mean: 0, variance: 0 }, isSpoilt: false };
  /** Monday to Thursday; ordered on Monday before the trade for Wednesday, on Wednesday for Friday. */
  const past: Past = {
    dates: ["2026-03-02", "2026-03-03", "2026-03-04", "2026-03-05"],
    items: [{ ...item, use: Float64Array.from([500, 700, 400, 900]) }],
    orders: [
      { day: 0, tradeDone: 0, arrives: 2, items: [{ index: 0, ...none }] },
      { day: 2, tradeDone: 0, arrives: 4, items: [{ index: 0, ...none }] },
    ],
  };

  it("begins at par, orders what is missing, and counts each night that did not last", () => {
    // Par 1400: Monday 1400 → 900, Tuesday 900 → 200, nothing ordered on Monday; Wednesday 200 − 400 is out.
    const figures = replayPolicy(past, () => 1400);
    expect(figures.out).toEqual([{ item: "Gin", nights: 2 }]);
    // Before and after trade: 1150, 550, 100, 0 ml on the average, at 0.03.
    expect(figures.stockMoney).toBeCloseTo(((1150 + 550 + 100 + 0) / 4) * 0.03, 9);
    expect(figures.itemNights).toBe(4);
  });

  it("throws out what is past its date, the oldest used first", () => {
    const [gin] = past.items;
    if (gin === undefined) throw new Error("no gin");
    // 2100 at first, kept from Monday on; on Wednesday two bottles come that keep one day.
    const perishable: Past = {
      ...past,
      items: [{ ...gin, shelfLifeDays: 1, use: Float64Array.from([500, 0, 0, 0]) }],
    };
    const figures = replayPolicy(perishable, () => 2100);
    // Monday: 1600 left, kept through Tuesday, out on Wednesday.
    expect(figures.spoiltMoney).toBeCloseTo(1600 * 0.03, 9);
    expect(figures.itemNightsOut).toBe(0);
  });
});

describe("what a replay takes", () => {
  it("is four weeks of sales: three to learn from, one to try on", () => {
    const facts = factsOf(orderBook());
    const tried = (sales: typeof EIGHT_WEEKS) => replay({ facts, sales, at: AT });
    // The first Monday was closed, so there are eight weeks less a day.
    expect(tried(EIGHT_WEEKS)?.weeks).toBe(4);
    expect(tried(EIGHT_WEEKS.filter(({ businessDate }) => businessDate >= "2026-02-09"))).toBeNull();
    expect(tried([])).toBeNull();
  });

  it("says of weeks that are all alike that nothing ever runs out", () => {
    const tried = replay({ facts: factsOf(orderBook()), sales: EIGHT_WEEKS, at: AT, weeks: 3 });
    expect(tried?.planned.itemNightsOut).toBe(0);
    expect(tried?.weeks).toBe(3);
  });

  it("takes pars set by hand where there are some", () => {
    const pars = new Map([["Gin", 100]]);
    const tried = replay({ facts: factsOf(orderBook()), sales: EIGHT_WEEKS, at: AT, pars });
    expect(tried?.byHand.given).toBe(1);
    expect(tried?.byHand.out[0]?.item).toBe("Gin");
  });
});
