import { expect, it } from "vitest";
import { factsOf } from "#engine/facts.ts";
import { nextOrder } from "#engine/orders/calendar.ts";
import { positionOf } from "#engine/orders/order-line.ts";
import { outlookAt } from "#engine/orders/outlook.ts";
import { saleAsks } from "#engine/sales/asks.ts";
import { expectedUse } from "#engine/sales/expected-use.ts";
import { packsInForce } from "#engine/stock/pack.ts";
import { asItStood, simulatedWeeks } from "../demand/simulated.ts";

it("covers what was then used in as many cases as the service level says", () => {
  let [covered, cases] = [0, 0];
  for (const seed of [1, 2]) {
    const simulated = simulatedWeeks(seed);
    const venue = { ...simulated.facts.book.venue, serviceLevel: 0.95 };
    const bar = { ...simulated, facts: factsOf({ ...simulated.facts.book, venue }) };
    const { book, catalogue } = bar.facts;
    // Monday mornings after the count, before the trade.
    for (const at of ["2026-10-05", "2026-10-19", "2026-11-02"].map((date) => `${date}T16:30:00Z`)) {
      const then = asItStood(bar, at);
      const outlook = outlookAt(then.facts, then.sales, at);
      for (const supplier of book.suppliers) {
        const { arrives, coversUntil } = nextOrder(book, supplier.name, at);
        if (arrives === null || coversUntil === null) throw new Error("a supplier without days");
        // Deliveries come before the trade of their day.
        const sold = bar.sales.filter(
          ({ businessDate }) => businessDate >= at.slice(0, 10) && businessDate < coversUntil.slice(0, 10),
        );
        const used = expectedUse(saleAsks(catalogue, sold, { raw: true }).asks, { dividersOf: () => [] });
        for (const { name, shelfLifeDays } of catalogue.items.values()) {
          const isSold = packsInForce(catalogue, name, at.slice(0, 10)).some(
            (pack) => pack.supplier === supplier.name,
          );
          const position =
            isSold && shelfLifeDays === null
              ? positionOf(outlook, name, { supplier: supplier.name, arrives, coversUntil })
              : undefined;
          if (position === undefined) continue;
          cases += 1;
          if (position.par >= (used.get(name)?.amount ?? 0)) covered += 1;
        }
      }
    }
  }
  expect(cases).toBeGreaterThan(200);
  // 95 in a hundred are asked for; bars share their busy weeks, so a few weeks scatter around it.
  expect(covered / cases).toBeGreaterThan(0.9);
  expect(covered / cases).toBeLessThan(0.99);
});
