import { expect, it } from "vitest";
import { varianceReport } from "#engine/variance/report.ts";
import { trendReport } from "#engine/variance/trend.ts";
import { ITEMS, largeBar, WEEKS } from "./large-bar.ts";
import { countNamed } from "./small-bar.ts";

// How long this takes is measured by `npm run bench -- causes`.
it("reports a week with its causes, and a year's trend, of every one of 150 items", () => {
  const { facts, sales } = largeBar();
  const [opening, closing] = [countNamed(facts, "Week 51"), countNamed(facts, "Week 52")];
  const { items, causes } = varianceReport({ facts, sales, opening, closing, costPerBase: new Map() });
  expect(items).toHaveLength(ITEMS);
  expect(causes).toEqual([]);
  const trend = trendReport({ facts, sales, costPerBase: new Map() });
  expect(trend.items.map(({ points }) => points.length)).toEqual(Array.from({ length: ITEMS }, () => WEEKS));
});
