import { expect, it } from "vitest";
import { largestStandingOut } from "#engine/variance/false-alarms.ts";
import { ratioOf, verdicts } from "#engine/variance/verdict.ts";

// Benjamini and Hochberg (1995), their example of 15 chances; from memory, recomputed by their rule.
const CHANCES = [
  0.0001, 0.0004, 0.0019, 0.0095, 0.0201, 0.0278, 0.0298, 0.0344, 0.0459, 0.324, 0.4262, 0.5719, 0.6528,
  0.759, 1,
];

it("lets the first four of the published fifteen stand out at 5 %", () => {
  expect(largestStandingOut(CHANCES, 0.05)).toBe(0.0095);
  expect(largestStandingOut([0.5, 0.9], 0.05)).toBe(-1);
  expect(largestStandingOut([], 0.05)).toBe(-1);
});

const clean = Array.from({ length: 98 }, (_, index) => ({ ratio: Math.sin(index) * 1.4, cost: 20 }));

it.each([
  ["a bottle gone that the count is sure of", { ratio: 6, cost: 18 }, "chase"],
  ["as sure, at a price nobody wrote down", { ratio: 6, cost: null }, "chase"],
  ["as sure, but of straws for 40 cents", { ratio: 6, cost: 0.4 }, "watch"],
  ["more left than there should be", { ratio: -6, cost: -18 }, "chase"],
  ["two standard uncertainties, as five clean items in a hundred", { ratio: 2.2, cost: 50 }, "quiet"],
  ["within what counting produces", { ratio: 1.5, cost: 200 }, "quiet"],
])("among clean items: %s", (_, item, verdict) => {
  expect(verdicts([item, ...clean])[0]).toBe(verdict);
});

it("keeps a clean week quiet", () => {
  expect(verdicts(clean).every((verdict) => verdict === "quiet")).toBe(true);
});

it("measures in whole pieces where nobody had any doubt", () => {
  expect(ratioOf({ unexplained: 0, sd: 0 })).toBe(0);
  expect(ratioOf({ unexplained: 1, sd: 0 })).toBeCloseTo(Math.sqrt(12), 12);
  expect(ratioOf({ unexplained: -50, sd: 25 })).toBe(-2);
});
