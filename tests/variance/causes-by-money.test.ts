import { expect, it } from "vitest";
import { causesByMoney, moneyOf } from "#engine/variance/causes/by-money.ts";
import type { Cause } from "#engine/variance/causes/cause.ts";
import type { VarianceItem } from "#engine/variance/report.ts";

// Unexplained 100 ml at 3.00, and 1000 ml at 2.70: a millilitre of gin costs 0.03, of syrup 0.0027; garnish has no price.
const items = [
  { item: "Gin", unexplained: 100, cost: 3 },
  { item: "Syrup", unexplained: -1000, cost: -2.7 },
  { item: "Garnish", unexplained: 5, cost: null },
] as VarianceItem[];

const cause = (what: string, group: number, probability: number, amount: number) =>
  ({ kind: "over-pour", what, group, probability, evidence: [{ item: what, amount }] }) as unknown as Cause;

it("reckons the money a cause explains, either way, and nothing for what has no price", () => {
  expect(moneyOf({ items }, cause("Gin", 0, 1, 50))).toBeCloseTo(1.5, 9);
  expect(moneyOf({ items }, cause("Syrup", 0, 1, -1000))).toBeCloseTo(2.7, 9);
  expect(moneyOf({ items }, cause("Garnish", 0, 1, 5))).toBe(0);
});

it("puts the check that is worth most first, and keeps explanations of the same numbers together", () => {
  const sure = cause("Syrup", 0, 0.99, -1000);
  const likely = cause("Gin", 1, 0.7, 100);
  const rival = { ...cause("Gin", 1, 0.95, 100), kind: "breakage" } as Cause;
  const small = cause("Gin", 2, 0.99, 10);
  const unpriced = cause("Garnish", 3, 0.99, 5);
  const causes = [unpriced, small, rival, likely, sure];
  // 3.00 × 0.95 = 2.85, 2.70 × 0.99 = 2.67, 0.30 × 0.99, nothing.
  expect(causesByMoney({ items, causes })).toEqual([rival, likely, sure, small, unpriced]);
});
