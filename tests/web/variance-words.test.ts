import "../support/english.ts";
import { expect, it } from "vitest";
import { DEFAULT_HOUSE_ML } from "#engine/measure/units.ts";
import { CAUSE_KINDS, type Cause } from "#engine/variance/causes/cause.ts";
import type { VarianceRow } from "../../web/answers.ts";
import { causeSentence, sureness } from "../../web/variance/cause-words.ts";
import { moneyRows } from "../../web/variance/money-error.ts";

const IN_ML = { show: "ml", oz: "us", houseMl: DEFAULT_HOUSE_ML } as const;

const cause = (changes: Partial<Cause>): Cause => ({
  kind: "delivery-not-entered",
  what: "White rum",
  size: 3,
  unit: "container",
  probability: 0.9,
  evidence: [],
  check: "Look for the invoice.",
  correction: null,
  group: 1,
  ...changes,
});

it.each(CAUSE_KINDS)("has a sentence for the cause %s that names the item", (kind) => {
  const what: Cause["what"] = kind.endsWith("-for-another") ? ["White rum", "Aged rum"] : "White rum";
  expect(causeSentence(cause({ kind, what }), IN_ML)).toMatch(/White rum.*\.$/);
});

// common practice: [a, b] is b poured or made, a rung or on the spec (book-format.md, "what").
it("says which was poured and which was on the spec", () => {
  const sentence = causeSentence(
    cause({ kind: "poured-for-another", what: ["White rum", "Aged rum"], size: 840, unit: "ml" }),
    IN_ML,
  );
  expect(sentence).toBe("Aged rum was poured where the spec says White rum: 840\u00a0ml.");
});

it("accuses nobody in any of its sentences", () => {
  const words = CAUSE_KINDS.map((kind) => causeSentence(cause({ kind, what: ["a", "b"] }), IN_ML)).join(" ");
  expect(words).not.toMatch(/\b(theft|stole|staff|bartender|someone|who)\b/i);
});

it("is surer in words the higher the probability", () => {
  expect([0.95, 0.7, 0.5, 0.2].map(sureness)).toEqual(["very likely", "likely", "even chance", "possible"]);
});

it("carries the uncertainty from amount to money, and ranks by money either way", () => {
  const row = (item: string, unexplained: number, cost: number | null) =>
    ({ item, unexplained, cost, sd: 20, verdict: "quiet" }) as VarianceRow;
  const rows = moneyRows([row("Rum", 100, 3), row("Gin", -200, -8), row("Ice", 5, null), row("Rye", 0, 0)]);
  expect(rows.map(({ item }) => item)).toEqual(["Gin", "Rum"]);
  expect(rows[1]?.costSd).toBeCloseTo(0.6, 9);
});
