import { expect, it } from "vitest";
import { whyLine } from "#engine/orders/why.ts";

const VENUE = { show: "ml", oz: "us", houseMl: { dash: 0.9, barspoon: 5, drop: 0.05, splash: 7.5 } } as const;
const line = {
  days: [{ date: "2026-11-27" }, { date: "2026-11-28" }],
  read: { base: "ml", venue: VENUE },
} as const;

it.each([
  ["2026-11-27", 0.12, "lasts until Fri without it; 12 % chance to run out before it can arrive"],
  ["2026-11-27", 0.004, "lasts until Fri without it"],
  ["", 1, "does not last the first day without it; 100 % chance to run out before it can arrive"],
  [null, 0, "lasts past Sat on the average, but not surely"],
])(
  "says how long stock lasts, and a chance that is worth a word (through %j, chance %d)",
  (through, runOutChance, text) => {
    expect(whyLine({ ...line, through, runOutChance })).toBe(text);
  },
);

it("names what spoils and a par set by hand", () => {
  expect(whyLine({ ...line, through: null, runOutChance: 0, spoils: 750, parSet: true })).toBe(
    "lasts past Sat on the average, but not surely; 750 ml on hand will be past its date before it is used; up to the par set by hand",
  );
});
