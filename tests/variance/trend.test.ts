import { expect, it } from "vitest";
import { addDays } from "#engine/time.ts";
import { trendReport } from "#engine/variance/trend.ts";
import { barOf, counted, drink, item, pack, sold, spec } from "./small-bar.ts";

const WEEKS = 16;
const day = (week: number) => addDays("2026-03-02", 7 * week);

/** Sixteen Mondays; from the ninth week on 60 ml of gin go each week that no drink asked for. */
function leakyBar({ leakMl }: { leakMl: number }) {
  const counts = Array.from({ length: WEEKS + 1 }, (_, week) => {
    const used = 1500 * week + leakMl * Math.max(0, week - 8);
    const bottles = (700 * 60 - used) / 700;
    const full = Math.floor(bottles);
    // The eye reads the open bottle in tenths.
    const parts = [Math.round((bottles - full) * 10) / 10];
    return counted(`Week ${week}`, `${day(week)}T10:00:00Z`, "Gin", { full, parts });
  });
  const vodka = Array.from({ length: WEEKS + 1 }, (_, week) =>
    counted(`Week ${week}`, `${day(week)}T10:05:00Z`, "Vodka", { full: 10 }),
  );
  const spot = counted("Spot", `${addDays(day(15), 3)}T10:00:00Z`, "Vodka", { full: 10 });
  return barOf({
    items: [item("Gin"), item("Vodka")],
    packs: [pack("Gin", 700), pack("Vodka", 700)],
    drinks: [drink("Martini")],
    specs: spec("Martini", "2026-01-01", "60 ml Gin"),
    counts: [...counts, ...vodka, spot],
  });
}
const sales = Array.from({ length: WEEKS }, (_, week) => sold(addDays(day(week), 4), "Martini", 25));
const costPerBase = new Map([["Gin", 0.03]]);

it("finds a leak of two shots a week that no single week shows, and when it began", () => {
  const { items } = trendReport({ facts: leakyBar({ leakMl: 75 }), sales, costPerBase });
  const [gin] = items;
  expect(gin?.item).toBe("Gin");
  expect(Math.max(...(gin?.points ?? []).map(({ ratio }) => ratio))).toBeLessThan(3);
  expect(gin?.drift?.direction).toBe("missing");
  expect(["Week 7", "Week 8", "Week 9"]).toContain(gin?.drift?.since);
  expect(gin?.drift?.perPeriod).toBeGreaterThan(50);
  expect(gin?.drift?.perPeriod).toBeLessThan(100);
  expect(gin?.drift?.costPerPeriod).toBeCloseTo((gin?.drift?.perPeriod ?? 0) * 0.03, 12);
});

it("sees no drift where all is poured to spec", () => {
  const { items } = trendReport({ facts: leakyBar({ leakMl: 0 }), sales, costPerBase });
  expect(items.map(({ drift }) => drift)).toEqual([null, null]);
});

it("gives a spot count of one bottle a short period of its own", () => {
  const { items } = trendReport({ facts: leakyBar({ leakMl: 0 }), sales, costPerBase, item: "Vodka" });
  expect(items).toHaveLength(1);
  expect(items[0]?.points.slice(-2).map(({ opening, closing }) => [opening, closing])).toEqual([
    ["Week 15", "Spot"],
    ["Spot", "Week 16"],
  ]);
});
