import { describe, expect, it } from "vitest";
import { addDays } from "#engine/time.ts";
import { uncertaintyBudget } from "#engine/variance/budget.ts";
import { habitFrom } from "#engine/variance/habits.ts";
import { varianceReport } from "#engine/variance/report.ts";
import { salesNeeded } from "#engine/variance/sales-needed.ts";
import { trendReport } from "#engine/variance/trend.ts";
import { barOf, counted, countNamed, drink, item, pack, sold, spec } from "./small-bar.ts";

describe("the habit that earlier weeks bear out", () => {
  const week = (off: number, variance = 0.01) => ({ off, variance });

  it("is their mean, drawn to the estimate as far as they leave it open", () => {
    // By hand, normal–normal update with prior 0 ± 1: 270 ÷ 301 and √(1 ÷ 301).
    const habit = habitFrom([week(0.8), week(0.9), week(1)]);
    expect(habit?.shift).toBeCloseTo(270 / 301, 12);
    expect(habit?.sd).toBeCloseTo(Math.sqrt(1 / 301), 12);
    expect(habit?.periods).toBe(3);
  });

  it("is not told by two weeks, nor moved by one in which something else went wrong", () => {
    expect(habitFrom([week(0.9), week(0.9)])).toBeUndefined();
    const calm = habitFrom([week(0.8), week(0.9), week(1), week(0.85)]);
    const upset = habitFrom([week(0.8), week(0.9), week(6), week(1), week(0.85)]);
    expect(upset).toEqual(calm);
  });

  it("lies no farther from the estimate than that can have been off", () => {
    expect(habitFrom([week(7), week(7.1), week(6.9)])?.shift).toBe(2);
  });

  it("knows less where the weeks scatter more than they should", () => {
    const steady = habitFrom([week(0.8), week(0.9), week(1)]);
    const wild = habitFrom([week(0.2), week(0.9), week(1.6)]);
    expect(wild?.scatter).toBeGreaterThan(2);
    expect(wild?.sd ?? 0).toBeGreaterThan(steady?.sd ?? 1);
  });
});

const FIRST = "2026-03-02";
const WEEKS = 14;
const day = (week: number) => addDays(FIRST, 7 * week);
/** Forty highballs a week; the glass has room for 125 ml each, this bar pours 150 (and leaks, from some week on). */
const SERVES = 40;
const POURED_ML = SERVES * 150;

function barThatTops({
  leakMl = 0,
  from = WEEKS,
  newSpecOn,
}: {
  leakMl?: number;
  from?: number;
  newSpecOn?: string;
}) {
  const specs = spec("Highball", "2026-01-01", "50 ml Gin", "1 top Soda");
  return barOf({
    items: [item("Gin"), item("Soda", { category: "mixer" })],
    packs: [pack("Gin", 700), pack("Soda", 1000)],
    drinks: [drink("Highball", { glassMl: 360, ice: "cubed", technique: "built" })],
    specs:
      newSpecOn === undefined ? specs : [...specs, ...spec("Highball", newSpecOn, "40 ml Gin", "1 top Soda")],
    counts: Array.from({ length: WEEKS + 1 }, (_, week) => {
      const leaked = leakMl * Math.max(0, week - from + 1);
      const amount = 200_000 - POURED_ML * week - leaked;
      return counted(`Week ${week}`, `${day(week)}T10:00:00Z`, "Soda", { amount, unit: "ml" });
    }),
  });
}

const sales = Array.from({ length: WEEKS }, (_, week) =>
  [1, 5].map((offset) => sold(addDays(day(week), offset), "Highball", SERVES / 2)),
).flat();

function soda(facts: ReturnType<typeof barThatTops>, week: number) {
  const [opening, closing] = [countNamed(facts, `Week ${week - 1}`), countNamed(facts, `Week ${week}`)];
  const needed = salesNeeded(facts, opening, closing);
  const given = sales.filter(({ businessDate }) => businessDate >= needed.from && businessDate <= needed.to);
  const [row] = varianceReport({ facts, sales: given, opening, closing, costPerBase: new Map() }).items;
  if (row === undefined) throw new Error("Soda has a variance.");
  return row;
}

describe("soda topped up by eye, a fifth more than the glass is reckoned to have room for", () => {
  it("hides behind the width of the estimate at first, and is known after three weeks", () => {
    const bar = barThatTops({});
    const [first, later] = [soda(bar, 1), soda(bar, 4)];
    expect(first.expected).toBeCloseTo(SERVES * 125, 6);
    expect(first.sd).toBeGreaterThan(1200);
    expect(first).not.toHaveProperty("learned");
    expect(later.learned?.periods).toBe(3);
    expect(later.expected).toBeCloseTo(POURED_ML, -2);
    expect(later.sd).toBeLessThan(200);
    expect(Math.abs(later.ratio)).toBeLessThan(1);
  });

  it("shows a leak that began this week, and still shows it seven weeks on", () => {
    for (const week of [7, 14]) {
      const leaking = soda(barThatTops({ leakMl: 1000, from: 7 }), week);
      expect(leaking.unexplained).toBeGreaterThan(850);
      expect(leaking.ratio).toBeGreaterThan(3);
      expect(leaking.verdict).not.toBe("quiet");
    }
  });

  it("finds a small leak in the trend, and none in the habit itself", () => {
    const trendOf = (facts: ReturnType<typeof barThatTops>) =>
      trendReport({ facts, sales, costPerBase: new Map(), item: "Soda" }).items[0];
    expect(trendOf(barThatTops({}))?.drift).toBeNull();
    const leak = trendOf(barThatTops({ leakMl: 250, from: 6 }))?.drift;
    expect(leak?.direction).toBe("missing");
    expect(["Week 4", "Week 5", "Week 6"]).toContain(leak?.since);
  });

  it("forgets the habit where the spec was changed", () => {
    const changed = soda(barThatTops({ newSpecOn: day(9) }), 11);
    expect(changed).not.toHaveProperty("learned");
    expect(changed.sd).toBeGreaterThan(1200);
  });

  it("says in the uncertainty budget how far the estimate follows the bar", () => {
    const bar = barThatTops({});
    const budget = uncertaintyBudget(
      bar,
      sales,
      "Soda",
      countNamed(bar, "Week 9"),
      countNamed(bar, "Week 10"),
    );
    expect(budget?.learned?.periods).toBe(8);
    expect(budget?.learned?.amount).toBeCloseTo(POURED_ML - SERVES * 125, -2);
    expect(budget?.shares.topUps).toBeLessThan(0.5);
  });
});
