import { describe, expect, it } from "vitest";
import { factsOf } from "#engine/facts.ts";
import { prepPlan } from "#engine/prep/plan.ts";
import { addDays, datesFrom } from "#engine/time.ts";
import { specLines } from "#tests/support/hand-bar.ts";
import { bookWithDrinks, chances, poisson, soldOn } from "./hand-service.ts";

describe("a plan from the venue's own sales", () => {
  it("asks for the juice, wheels and peels of a steady bar, with a margin", () => {
    const days = datesFrom({ from: "2026-01-05", to: "2026-03-01" });
    const sales = days.flatMap((date) => [soldOn(date, "Gimlet", 20), soldOn(date, "Highball", 12)]);
    const plan = prepPlan({ facts: factsOf(bookWithDrinks()), sales, date: "2026-03-02" });
    const juice = plan.batches.find(({ prep }) => prep === "Lime juice");
    const cordial = plan.batches.find(({ prep }) => prep === "Lime cordial");
    // 20 × 20 ml for the drinks, and 250/700 of the cordial's batch.
    expect((juice?.need ?? 0) - (juice?.forBatches ?? 0)).toBeGreaterThanOrEqual(400);
    expect((juice?.need ?? 0) - (juice?.forBatches ?? 0)).toBeLessThan(650);
    expect(cordial?.need).toBeGreaterThanOrEqual(20 * 30 * 7);
    expect(juice?.forBatches).toBeCloseTo(((cordial?.make ?? 0) * 250) / 700, 6);
    const gives = new Map(plan.cuts[0]?.gives.map(({ item, amount }) => [item, amount]));
    for (const item of ["Lime wheel", "Lime peel"]) {
      expect(gives.get(item)).toBeGreaterThanOrEqual(12);
      expect(gives.get(item)).toBeLessThanOrEqual(22);
      expect(Number.isInteger(gives.get(item))).toBe(true);
    }
  });

  it("is empty for a bar that sold nothing", () => {
    const plan = prepPlan({ facts: factsOf(bookWithDrinks()), sales: [], date: "2026-03-02" });
    expect([plan.batches, plan.cuts, plan.discard]).toEqual([[], [], []]);
  });

  it("uses the spec of the day of prep for drinks sold to the old one", () => {
    const book = bookWithDrinks();
    book.specs.push(...specLines("Gimlet", "2026-03-02", ["30 ml Lime cordial", "40 ml Lime juice"]));
    const sales = datesFrom({ from: "2026-01-05", to: "2026-03-01" }).map((date) =>
      soldOn(date, "Gimlet", 20),
    );
    const { batches } = prepPlan({ facts: factsOf(book), sales, date: "2026-03-02" });
    const juice = batches.find(({ prep }) => prep === "Lime juice");
    expect((juice?.need ?? 0) - (juice?.forBatches ?? 0)).toBeGreaterThanOrEqual(800);
  });

  it("has enough juice about as often as the service level says, and not by asking for twice as much", () => {
    const facts = factsOf(bookWithDrinks());
    const chance = chances(20_260_302);
    const days = datesFrom({ from: "2026-01-05", to: addDays("2026-01-05", 139) });
    const sold = days.map((date) => {
      // Fridays and Saturdays twice as busy; some nights busier than others for all drinks.
      const busy = [4, 5].includes(new Date(`${date}T00:00:00Z`).getUTCDay() - 1) ? 2 : 1;
      return soldOn(date, "Gimlet", poisson(18 * busy * (0.8 + 0.4 * chance()), chance));
    });
    const tested = days.slice(60);
    let [asked, needed] = [0, 0];
    const enough = tested.filter((date) => {
      const plan = prepPlan({
        facts,
        sales: sold.filter(({ businessDate }) => businessDate < date),
        date,
        days: 1,
      });
      const juice = plan.batches.find(({ prep }) => prep === "Lime juice");
      const askedToday = (sold.find(({ businessDate }) => businessDate === date)?.quantity ?? 0) * 20;
      const needToday = (juice?.need ?? 0) - (juice?.forBatches ?? 0);
      asked += askedToday;
      needed += needToday;
      return needToday >= askedToday;
    });
    expect(asked / needed).toBeGreaterThan(0.6);
    // 95 in 100 are promised; of 80 days, three standard deviations of chance are 7 in 100 either way.
    expect(enough.length / tested.length).toBeGreaterThan(0.87);
  });
});
