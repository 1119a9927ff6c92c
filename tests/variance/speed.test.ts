import { expect, it } from "vitest";
import type { SaleGroup } from "#engine/sales/tally.ts";
import { addDays } from "#engine/time.ts";
import { varianceReport } from "#engine/variance/report.ts";
import { trendReport } from "#engine/variance/trend.ts";
import { barOf, counted, countNamed, drink, item, pack, sold, spec } from "./small-bar.ts";

const ITEMS = 150;
const DRINKS = 120;
const WEEKS = 52;
const FIRST = "2025-11-24";
/** It takes half a second on two idle cores; the limit leaves room for a machine busy with other things. */
const LIMIT_MS = 5000;

/** Each drink takes four items; every number follows from its place, so that the bar is always the same. */
const linesOf = (index: number) =>
  [0, 1, 2, 3].map((line) => ({ name: `Item ${(index * 7 + line * 37) % ITEMS}`, ml: 10 + 5 * line }));
const soldOn = (day: number, index: number) => (day * 5 + index * 3 + ((day * index) % 7)) % 6;

/** The largest bar that one screen has to show at once: a year of weekly counts. */
function largeBar() {
  const names = Array.from({ length: DRINKS }, (_, index) => `Drink ${index}`);
  const sales: SaleGroup[] = [];
  const stock = Array.from({ length: ITEMS }, () => 2_000_000);
  const counts = [];
  for (let day = 0; day <= WEEKS * 7; day++) {
    if (day % 7 === 0) {
      for (const [index, ml] of stock.entries()) {
        const noise = ((day * 13 + index * 29) % 31) - 15;
        counts.push(
          counted(`Week ${day / 7}`, `${addDays(FIRST, day)}T10:00:00Z`, `Item ${index}`, {
            amount: ml + noise,
            unit: "ml",
          }),
        );
      }
    }
    for (const [index, name] of names.entries()) {
      const serves = soldOn(day, index);
      if (serves === 0) continue;
      sales.push(sold(addDays(FIRST, day), name, serves));
      for (const { name: of, ml } of linesOf(index)) {
        const at = Number(of.slice(5));
        stock[at] = (stock[at] ?? 0) - serves * ml;
      }
    }
  }
  const facts = barOf({
    items: stock.map((_, index) => item(`Item ${index}`, { category: `kind ${index % 8}` })),
    packs: stock.map((_, index) => pack(`Item ${index}`, 700)),
    drinks: names.map((name) => drink(name)),
    specs: names.flatMap((name, index) =>
      spec(name, "2025-01-01", ...linesOf(index).map(({ name: of, ml }) => `${ml} ml ${of}`)),
    ),
    counts,
  });
  return { facts, sales };
}

/** The best of three runs: what the machine can do when it is not doing something else. */
function bestMs(run: () => unknown): number {
  const times = [1, 2, 3].map(() => {
    const start = performance.now();
    run();
    return performance.now() - start;
  });
  return Math.min(...times);
}

it("reports a week with its causes, and a year's trend, of 150 items while one waits", () => {
  const { facts, sales } = largeBar();
  const [opening, closing] = [countNamed(facts, "Week 51"), countNamed(facts, "Week 52")];
  const input = { facts, sales, opening, closing, costPerBase: new Map<string, number>() };
  expect(varianceReport(input).items).toHaveLength(ITEMS);
  expect(bestMs(() => varianceReport(input))).toBeLessThan(LIMIT_MS);
  const trend = trendReport({ facts, sales, costPerBase: new Map() });
  expect(trend.items.map(({ points }) => points.length)).toEqual(Array.from({ length: ITEMS }, () => WEEKS));
  expect(bestMs(() => trendReport({ facts, sales, costPerBase: new Map() }))).toBeLessThan(LIMIT_MS);
});
