import { describe, expect, it } from "vitest";
import { demandQuantile } from "#engine/demand/distribution.ts";
import { forecast } from "#engine/demand/forecast.ts";
import { itemDemand } from "#engine/demand/item-demand.ts";
import { saleAsks } from "#engine/sales/asks.ts";
import { expectedUse } from "#engine/sales/expected-use.ts";
import { addDays } from "#engine/time.ts";
import { simulatedWeeks } from "./simulated.ts";

const bars = [1, 2, 3].map((seed) => simulatedWeeks(seed));
const AFTER = "2026-11-23";

describe("forecasts of simulated bars, whose nights and tastes scatter by their own law", () => {
  it.each(bars.map((bar, index) => ({ seed: index + 1, bar })))(
    "beat the mean of the last four same weekdays, and their bands hold (seed $seed)",
    ({ bar: { facts, sales } }) => {
      const { backtest } = forecast({ facts, sales, asOf: AFTER, from: AFTER, days: 1 });
      expect(backtest.days).toBe(56);
      // Taking four days' scatter out of the mean is worth about a tenth: 1 − 1/√(1 + 1/4).
      expect((backtest.wape ?? 1) / (backtest.wapeSameWeekday ?? 0)).toBeLessThan(0.95);
      expect(backtest.coverage90).toBeGreaterThan(0.85);
      expect(backtest.coverage90).toBeLessThan(0.95);
    },
  );

  it.each([1, 4, 9])("hold for what items are used over %i days, fruit and doubles included", (days) => {
    let [inside, cases] = [0, 0];
    for (const { facts, sales } of bars) {
      for (const asOf of ["2026-10-07", "2026-10-20", "2026-10-30", "2026-11-12"]) {
        const to = addDays(asOf, days - 1);
        const { total } = itemDemand({ facts, sales, asOf, from: asOf, to, raw: true });
        const sold = sales.filter(({ businessDate }) => businessDate >= asOf && businessDate <= to);
        const { asks } = saleAsks(facts.catalogue, sold, { raw: true });
        const used = expectedUse(asks, { dividersOf: () => [] });
        for (const [item, need] of total) {
          const isCount = facts.catalogue.items.get(item)?.base === "each";
          const amount = used.get(item)?.amount ?? 0;
          const [low, high] = [0.05, 0.95].map((level) => demandQuantile(need, level, { isCount }));
          cases += 1;
          if (amount >= (low ?? 0) - 1e-9 && amount <= (high ?? 0) + 1e-9) inside += 1;
        }
      }
    }
    // Items of one bar share its busy nights, so the shares scatter more than so many cases would.
    expect(inside / cases).toBeGreaterThan(0.8);
    expect(inside / cases).toBeLessThan(0.97);
  });
});
