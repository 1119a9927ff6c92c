import { describe, expect, it } from "vitest";
import { DEFAULT_HOUSE_ML } from "#engine/measure/units.ts";
import { typedAmount, typedIn } from "../../web/prep/typed-amount.ts";
import { inputsToRecord, likelyWentIn } from "../../web/prep/used-inputs.ts";

const VENUE = { oz: "us" as const, houseMl: DEFAULT_HOUSE_ML };

describe("what a cook types of an input", () => {
  it.each([
    ["1.1 kg", "g", 1100],
    ["1,1 kg", "g", 1100],
    ["950", "g", 950],
    ["42", "each", 42],
    ["0", "g", 0],
    ["1 1/2 l", "ml", 1500],
    ["½ oz", "ml", 14.7867647812],
    ["1 l", "g", undefined],
    ["some", "g", undefined],
    ["-3", "each", undefined],
  ] as const)("%s of what is kept in %s is %s", (text, base, amount) => {
    const read = typedAmount(text, base, VENUE);
    if (amount === undefined) expect(read).toBeUndefined();
    else expect(read).toBeCloseTo(amount, 6);
  });
});

describe("what a cook types of what is made", () => {
  it.each([
    ["900", "ml", 900],
    ["1,5 l", "ml", 1500],
    ["1500 ml", "l", 1.5],
    ["½", "l", 0.5],
    ["1 kg", "ml", undefined],
    ["much", "ml", undefined],
  ] as const)("%s, asked in %s, is %s", (text, unit, amount) => {
    expect(typedIn(text, unit, VENUE)).toEqual(amount);
  });
});

describe("what is recorded beside a batch", () => {
  const planned = [
    { item: "Sugar", base: "g" as const, amount: 1000.04 },
    { item: "Lime", base: "each" as const, amount: 38 },
  ];

  it("is nothing where it came out as the card says", () => {
    expect(likelyWentIn(1626, 1626)).toBeUndefined();
    expect(inputsToRecord({ planned, typed: new Map(), wentIn: undefined })).toEqual([]);
  });

  it("is the card's weights where the batch gave a little less, but no fruit that nobody counted", () => {
    const wentIn = likelyWentIn(1580, 1626);
    expect(wentIn).toBe("as the card says");
    expect(inputsToRecord({ planned, typed: new Map(), wentIn })).toEqual([
      { item: "Sugar", amount: 1000, unit: "g" },
    ]);
  });

  it("is nothing where half was made: it went in by the half", () => {
    const wentIn = likelyWentIn(800, 1626);
    expect(inputsToRecord({ planned, typed: new Map(), wentIn })).toEqual([]);
  });

  it("is what was typed, whatever the card says", () => {
    const typed = new Map([
      ["Lime", { amount: 42, base: "each" as const }],
      ["Sugar", { amount: 1100, base: "g" as const }],
    ]);
    expect(inputsToRecord({ planned, typed, wentIn: "as the card says" })).toEqual([
      { item: "Lime", amount: 42, unit: "each" },
      { item: "Sugar", amount: 1100, unit: "g" },
    ]);
  });
});
