import { expect, it } from "vitest";
import { CAUSE_KINDS } from "#engine/variance/causes/cause.ts";
import { kindFactor, NO_EXPERIENCE } from "#engine/variance/causes/experience.ts";

it("makes a kind that was confirmed likelier in this venue, and the others less likely", () => {
  // By hand: (20 + 17 × 5) ÷ 25 and 20 ÷ 25.
  expect(kindFactor({ confirmed: { breakage: 5 } }, "breakage")).toBeCloseTo(4.2, 9);
  expect(kindFactor({ confirmed: { breakage: 5 } }, "over-pour")).toBeCloseTo(0.8, 9);
});

it("leaves a new venue as all are, and the mean of all kinds at one", () => {
  expect(CAUSE_KINDS.map((kind) => kindFactor(NO_EXPERIENCE, kind))).toEqual(CAUSE_KINDS.map(() => 1));
  const factors = CAUSE_KINDS.map((kind) => kindFactor({ confirmed: { breakage: 3, "not-rung": 1 } }, kind));
  expect(factors.reduce((sum, factor) => sum + factor, 0) / CAUSE_KINDS.length).toBeCloseTo(1, 9);
});
