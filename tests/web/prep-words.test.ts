import "../support/english.ts";
import { describe, expect, it } from "vitest";
import { adviceText } from "../../web/prep/Correction.tsx";
import { plainSpaces } from "../support/plain-spaces.ts";

const SUGAR = { sweetener: { item: "White Sugar", solidsPct: 100 }, water: "Water" };

describe("a syrup measured off its target", () => {
  // By sums of weights: 2000 g at 52 hold 1040 g sugar, which is half of 2080; at 48 they hold 960 + 80 of 2080.
  it.each([
    [52, 2000, 50, /^Stir in 80 g of Water/],
    [48, 2000, 50, /^Stir in 80 g of White Sugar/],
    [50.1, 2000, 50, /^On target/],
    [undefined, 2000, 50, /^Write what the meter reads/],
    [48, undefined, 50, /^Write what the batch weighs/],
  ])("read at %s °Bx, %s g, wanted %s", (measuredBrix, weightG, targetBrix, words) => {
    const advice = adviceText({ measuredBrix, weightG, targetBrix, corrective: SUGAR });
    expect(plainSpaces(advice)).toMatch(words);
  });
});
