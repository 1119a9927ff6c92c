import { describe, expect, it } from "vitest";
import { forecast } from "#engine/demand/forecast.ts";
import { inventedBar, type Kind, USUAL } from "./invented-bar.ts";

const KINDS: [string, Partial<Kind>][] = [
  ["a bar like many", {}],
  ["closed on Mondays", { closed: [0] }],
  ["open at the weekend only", { closed: [0, 1, 2, 3] }],
  // All eight drinks are out together on an odd night, and a young bar has but a fortnight to be tested on.
  ["small", { drinks: 8, perDay: 30, oddNights: 0 }],
  ["with many slow drinks", { drinks: 60, perDay: 40 }],
  ["growing to two and a half times", { growth: 2.5 }],
  ["shrinking to two fifths", { growth: 0.4 }],
  ["with wild nights", { nightShape: 8 }],
  ["with steady nights", { nightShape: 300, tasteShape: 300, round: 1 }],
  ["whose guests change their taste by the night", { tasteShape: 5 }],
  ["whose tables order the same for all", { round: 6 }],
  ["with many odd nights", { oddNights: 0.06 }],
  ["whose menu changes", { changing: 0.4 }],
  ["with 150 drinks", { drinks: 150, perDay: 500 }],
  ["with 150 slow drinks", { drinks: 150, perDay: 120 }],
  ["eight weeks old", { weeks: 8 }],
  ["five weeks old", { weeks: 5, oddNights: 0 }],
  ["a year old and growing", { weeks: 52, growth: 1.5 }],
  ["big", { drinks: 20, perDay: 900 }],
  ["closed on three days, with odd nights", { closed: [0, 1, 6], oddNights: 0.04 }],
];

describe("forecasts of twenty kinds of bar, by a law they know nothing of", () => {
  it.each(KINDS.map(([name, kind], index) => ({ name, kind, seed: 41 + index })))(
    "beat the same-weekday mean, and their bands hold, of a bar $name",
    ({ kind, seed }) => {
      const { facts, sales, after } = inventedBar({ ...USUAL, ...kind }, seed);
      const { backtest } = forecast({ facts, sales, asOf: after, from: after, days: 1 });
      expect(backtest.scaledError).toBeLessThan(1);
      expect(backtest.coverage90).toBeGreaterThan(0.85);
      expect(backtest.coverage90).toBeLessThan(0.95);
    },
  );

  it("are as good as smoothing with a season at least, over all of them", () => {
    const errors = KINDS.slice(0, 8).map(([, kind], index) => {
      const { facts, sales, after } = inventedBar({ ...USUAL, ...kind }, 91 + index);
      const { backtest } = forecast({ facts, sales, asOf: after, from: after, days: 1 });
      return (backtest.wape ?? 1) / (backtest.wapeSmoothing ?? 1);
    });
    expect(errors.reduce((sum, error) => sum + error, 0) / errors.length).toBeLessThan(1);
  });
});

it("holds where nearly every drink sells less than one a night, though nought is never outside the band", () => {
  const { facts, sales, after } = inventedBar({ ...USUAL, drinks: 12, perDay: 5 }, 61);
  const { backtest } = forecast({ facts, sales, asOf: after, from: after, days: 1 });
  expect(backtest.coverage90).toBeGreaterThan(0.9);
  expect(backtest.coverage90).toBeLessThan(0.97);
});
