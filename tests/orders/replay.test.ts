import { describe, expect, it } from "vitest";
import { factsOf } from "#engine/facts.ts";
import { usableBy } from "#engine/orders/lots.ts";
import { type Replay, replay } from "#engine/orders/replay.ts";
import type { Past } from "#engine/orders/replay-past.ts";
import { replayPolicy } from "#engine/orders/replay-policy.ts";
import { simulatedWeeks } from "../demand/simulated.ts";
import { AT, aPack, EIGHT_WEEKS, orderBook } from "./order-bar.ts";

const MONDAY_AFTER = "2026-11-23T16:00:00Z";

function sentence({ itemNightsOut, stockMoney }: { itemNightsOut: number; stockMoney: number }): string {
  return `${itemNightsOut} item-nights out, ${Math.round(stockMoney)} in stock on average`;
}

/** Three bars in every run; ULLAGE_BARS=12 tries as many, by another seed each. */
const SEEDS = Array.from({ length: Number(process.env.ULLAGE_BARS ?? 3) }, (_, index) => index + 1);

describe.each(SEEDS)("ten weeks of a simulated bar ordered anew (seed %i)", (seed) => {
  const { facts, sales } = simulatedWeeks(seed);
  const tried = replay({ facts, sales, at: MONDAY_AFTER }) as Replay;
  const { planned, twoWeeks, curve, asSafe } = tried;

  it("needs a quarter less money for no more nights out than pars of twice the mean weekly use, as shipped", () => {
    console.info(
      `seed ${seed}, ${tried.weeks} weeks: pars of two weeks' use: ${sentence(twoWeeks)}; ` +
        `as shipped: ${sentence(planned)}, ${Math.round((planned.stockMoney / twoWeeks.stockMoney) * 100)} % of the money`,
    );
    expect(tried.weeks).toBe(10);
    // The venue states no level, so that each item's comes from its margin at risk; nothing was fitted to these weeks.
    expect(facts.catalogue.venue.serviceLevel).toBeNull();
    expect(planned.itemNightsOut).toBeLessThanOrEqual(twoWeeks.itemNightsOut);
    expect(planned.stockMoney / twoWeeks.stockMoney).toBeLessThan(0.75);
  });

  it("chooses levels on the earlier weeks that need less money in the later ones too", () => {
    console.info(
      `seed ${seed}, chosen before ${asSafe?.triedFrom}, tried from then on: ` +
        `${asSafe === null ? "nothing" : sentence(asSafe.tried)}; two weeks' use: ${asSafe === null ? "" : sentence(asSafe.twoWeeks)}`,
    );
    expect(asSafe?.triedFrom).toBe("2026-10-19");
    expect((asSafe?.tried.stockMoney ?? Infinity) / (asSafe?.twoWeeks.stockMoney ?? 0)).toBeLessThan(0.75);
    expect(asSafe?.tried.itemNightsOut).toBeLessThanOrEqual((asSafe?.twoWeeks.itemNightsOut ?? 0) + 2);
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

  it("runs out on few of the nights, and throws little away", () => {
    expect(planned.itemNightsOut / planned.itemNights).toBeLessThan(0.005);
    expect(planned.spoiltMoney).toBeLessThan(twoWeeks.spoiltMoney);
    expect(tried.handSet).toBeNull();
  });
});

const unit = { pack: aPack("Gin"), of: "container" as const, size: 700, cases: 1 / 6, price: 21, deposit: 0 };
const item = {
  item: "Gin",
  unit,
  isCount: false,
  shelfLifeDays: null,
  costPerBase: 0.03,
  statedLevel: null,
  parSet: null,
  lostMargin: null,
  spoiltLevel: null,
};
const none = { demand: { mean: 0, variance: 0 }, isSpoilt: false, days: 2, daysBetweenOrders: 2 };
/** Monday to Thursday; ordered on Monday before the trade for Wednesday, on Wednesday for Friday. */
const past: Past = {
  dates: ["2026-03-02", "2026-03-03", "2026-03-04", "2026-03-05"],
  items: [{ ...item, use: Float64Array.from([500, 700, 400, 900]) }],
  orders: [
    { day: 0, tradeDone: 0, arrives: 2, coversUntil: 4, items: [{ index: 0, ...none }] },
    { day: 2, tradeDone: 0, arrives: 4, coversUntil: 7, items: [{ index: 0, ...none }] },
  ],
};

describe("a replay worked by hand", () => {
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

describe("stock that keeps for days", () => {
  const lots = [
    { amount: 600, spoils: 2 },
    { amount: 300, spoils: 20 },
  ];

  it("is worth no more than what is used of it before its date", () => {
    // Three days at 100 before the first lot is past its date; the second keeps beyond the days looked at.
    expect(usableBy(lots, { today: 0, until: 9, perDay: 100 })).toBe(600);
    expect(usableBy(lots, { today: 0, until: 2, perDay: 100 })).toBe(900);
    expect(usableBy(lots, { today: 0, until: 25, perDay: 10 })).toBe(30 + 180);
  });

  it("is ordered anew in time by who looks at its dates", () => {
    const gin = past.items[0];
    if (gin === undefined) throw new Error("no gin");
    // Three bottles are there and little is used; kept for three days, they are thrown out before Friday's delivery.
    const slow: Past = {
      ...past,
      dates: [...past.dates, "2026-03-06"],
      items: [{ ...gin, shelfLifeDays: 3, use: Float64Array.from([50, 50, 50, 50, 50]) }],
    };
    expect(replayPolicy(slow, () => 2000).out).toEqual([]);
    expect(replayPolicy(slow, () => 2000, { looksAtDates: false }).out).toEqual([{ item: "Gin", nights: 1 }]);
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
    expect(tried?.handSet?.given).toBe(1);
    expect(tried?.handSet?.out[0]?.item).toBe("Gin");
    expect(tried?.handSet?.stockMoney).toBeLessThan(tried?.planned.stockMoney ?? 0);
  });

  it("takes the pars that the book has set by hand without being told", () => {
    const book = orderBook();
    const items = book.items.map((item) => (item.name === "Gin" ? { ...item, par: 100 } : item));
    const tried = replay({ facts: factsOf({ ...book, items }), sales: EIGHT_WEEKS, at: AT });
    expect(tried?.handSet?.given).toBe(1);
    expect(tried?.handSet?.out[0]?.item).toBe("Gin");
  });
});
