import "../support/english.ts";
import { describe, expect, it } from "vitest";
import { backtestWords } from "../../web/forecast/backtest-words.ts";
import { changeOf } from "../../web/plan/ChangeForm.tsx";
import { changeWords } from "../../web/plan/change-words.ts";

const TYPED = {
  date: "2026-12-05",
  drink: "House sour",
  guests: "120",
  drinksEach: "2,5",
  price: "12.50",
  share: "5",
};

describe("a change typed in", () => {
  it.each([
    ["party", TYPED, { kind: "party", date: "2026-12-05", guests: 120, drinksEach: 2.5, drinks: [] }],
    ["party", { ...TYPED, guests: "many" }, null],
    ["party", { ...TYPED, guests: "0" }, null],
    ["party", { ...TYPED, date: "" }, null],
    ["closed", TYPED, { kind: "closed", date: "2026-12-05" }],
    ["price", TYPED, { kind: "price", drink: "House sour", price: 12.5 }],
    ["price", { ...TYPED, price: "" }, null],
    ["price", { ...TYPED, drink: null }, null],
    ["menu-off", TYPED, { kind: "menu", from: "2026-12-05", off: ["House sour"], on: [] }],
    [
      "menu-on",
      TYPED,
      { kind: "menu", from: "2026-12-05", off: [], on: [{ drink: "House sour", share: 0.05 }] },
    ],
    ["menu-on", { ...TYPED, share: "100" }, null],
  ] as const)("as %s of %o", (kind, typed, change) => {
    expect(changeOf(kind, typed)).toEqual(change);
  });

  it("is said back as one would say it", () => {
    const party = changeOf("party", { ...TYPED, drinksEach: "3" });
    if (party === null) throw new Error("no party");
    expect(changeWords(party, "EUR")).toMatch(/^A party of 120 on Sat,?\s.*5.*, 3 drinks each$/);
  });
});

describe("what a forecast was worth", () => {
  const tested = {
    wape: 0.45,
    wapeSameWeekday: 0.5,
    wapeSmoothing: 0.48,
    scaledError: 0.9,
    coverage90: 0.91,
    days: 56,
    outDrinkDays: 0,
  };

  it("is said in words, with what it is compared with", () => {
    const words = backtestWords(tested);
    expect(words).toContain("off by 45 %");
    expect(words).toContain("10 % better than the mean of the last four same weekdays");
    expect(words).toContain("91 % of the time");
  });

  it("is admitted where it was worth nothing, and where nobody can tell", () => {
    expect(backtestWords({ ...tested, scaledError: 1.02 })).toContain("no better than");
    const unknown = {
      wape: null,
      wapeSameWeekday: null,
      wapeSmoothing: null,
      scaledError: null,
      coverage90: null,
      days: 0,
      outDrinkDays: 0,
    };
    expect(backtestWords(unknown)).toBe("Too few days of sales to say how good such a forecast is.");
  });
});
