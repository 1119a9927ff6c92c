import fc from "fast-check";
import { describe, expect, it } from "vitest";
import type { Book } from "#engine/book.ts";
import { factsOf } from "#engine/facts.ts";
import { type OrderPlan, planOrder } from "#engine/orders/order.ts";
import { AT, aCount, anOrder, aPack, EIGHT_WEEKS, orderBook } from "./order-bar.ts";

function planned(book: Book, more: { supplier?: string; budgetMinor?: number } = {}): OrderPlan {
  return planOrder({ facts: factsOf(book), sales: EIGHT_WEEKS, at: AT, ...more });
}

function lineOf(plan: OrderPlan, item: string) {
  return plan.suppliers.flatMap(({ lines }) => lines).find((line) => line.item === item);
}

describe("an order on Monday morning", () => {
  const plan = planned(orderBook());

  it("names the cut-off, the arrival, and the arrival after it", () => {
    expect(plan.suppliers[0]).toMatchObject({
      supplier: "Quay Spirits",
      orderBy: "2026-03-02T15:00:00Z",
      arrives: "2026-03-04T11:00:00Z",
      coversUntil: "2026-03-06T12:30:00Z",
    });
  });

  it("covers the gin of Tuesday to Thursday, by each day's own spec", () => {
    // Monday is closed; Friday's trade begins after the delivery. 20 sours of 50 ml, 24 and 30 of 60 ml.
    expect((lineOf(plan, "Gin")?.expectedUse ?? 0) / (20 * 50 + 24 * 60 + 30 * 60)).toBeCloseTo(1, 2);
  });

  it("orders what is missing to par, rounded up to bottles", () => {
    const gin = lineOf(plan, "Gin");
    expect(gin).toMatchObject({ pack: "700 ml", of: "container", base: "ml", onHand: 2000, onOrder: 0 });
    expect(gin?.par).toBeGreaterThan(gin?.expectedUse ?? 0);
    expect(gin?.quantity).toBe(Math.ceil(((gin?.par ?? 0) - 2000) / 700));
    expect(gin?.cost).toBe((gin?.quantity ?? 0) * 21);
  });

  it("buys a case where single bottles are not sold", () => {
    // 60 ml and the syrup's none: 5 + 6 + 8 old hands use 1140 ml of rum; 900 ml are there.
    expect(lineOf(plan, "Rum")).toMatchObject({ quantity: 1, of: "case", cost: 126 });
  });

  it("says why in a sentence", () => {
    // 2000 ml are there; Tuesday takes 1000, Wednesday 1440, before which the delivery comes.
    expect(lineOf(plan, "Gin")?.why).toBe("lasts until Tue without it");
  });

  it("orders neither preps nor water, but what the preps are made of", () => {
    const items = plan.suppliers.flatMap(({ lines }) => lines.map(({ item }) => item));
    expect(items).not.toContain("Ginger syrup");
    expect(items).not.toContain("Water");
    // 20 ml of ginger syrup a sour take 4.4 g of ginger.
    expect(lineOf(plan, "Ginger")?.quantity).toBe(1);
  });

  it("lists sugar nowhere, for no pack of it is known, and adds up the money", () => {
    for (const { lines, total } of plan.suppliers) {
      expect(total).toBeCloseTo(
        lines.reduce((sum, { cost }) => sum + (cost ?? 0), 0),
        9,
      );
    }
    expect(plan.suppliers[0]?.minimumMet).toBe((plan.suppliers[0]?.total ?? 0) >= 100);
  });

  it("asks for one supplier alone when told to", () => {
    expect(
      planned(orderBook(), { supplier: "Green Cart" }).suppliers.map(({ supplier }) => supplier),
    ).toEqual(["Green Cart"]);
  });
});

describe("what is not ordered", () => {
  it("an item never counted, for not counted is not zero", () => {
    const counts = orderBook().counts.filter(({ item }) => item !== "Gin");
    const plan = planned(orderBook({ counts }));
    expect(plan.notCounted).toEqual(["Gin"]);
    expect(lineOf(plan, "Gin")).toBeUndefined();
  });

  it("an item whose packs name no supplier, which is listed apart", () => {
    const coolers = EIGHT_WEEKS.filter(({ ringName }) => ringName === "Old hand").map((sale) => ({
      ...sale,
      ringName: "Cooler",
    }));
    const plan = planOrder({ facts: factsOf(orderBook()), sales: [...EIGHT_WEEKS, ...coolers], at: AT });
    expect(plan.noSupplier.map(({ item }) => item)).toEqual(["Soda"]);
  });

  it("anything from a supplier without days: the arrival is not made up", () => {
    const supplierDays = orderBook().supplierDays.filter(({ supplier }) => supplier !== "Quay Spirits");
    const [quay] = planned(orderBook({ supplierDays })).suppliers;
    expect(quay).toMatchObject({ orderBy: null, arrives: null, coversUntil: null, lines: [] });
    expect(quay?.unplanned).toEqual(["Gin", "Rum"]);
  });

  it("what is on its way already", () => {
    const without = lineOf(planned(orderBook()), "Gin");
    const line = lineOf(planned(orderBook({ orders: [anOrder()] })), "Gin");
    expect(line?.onOrder).toBe(1400);
    expect(line?.quantity).toBe((without?.quantity ?? 0) - 2);
  });
});

describe("the chance to run out", () => {
  const chance = (amount: number) => {
    const counts = [...orderBook().counts.filter(({ item }) => item !== "Gin"), aCount("Gin", amount)];
    return lineOf(planned(orderBook({ counts })), "Gin")?.runOutChance ?? 0;
  };

  it("is next to none with twice Tuesday's use, even with it, nearly sure with half", () => {
    expect(chance(2000)).toBeLessThan(0.02);
    expect(chance(1000)).toBeGreaterThan(0.3);
    expect(chance(1000)).toBeLessThan(0.7);
    expect(chance(500)).toBeGreaterThan(0.95);
  });

  it("is shown for what will likely run out even though enough is on its way", () => {
    const counts = [...orderBook().counts.filter(({ item }) => item !== "Gin"), aCount("Gin", 500)];
    const orders = [anOrder({ quantity: 12, expected: "2026-03-05" })];
    const plan = planned(orderBook({ counts, orders }));
    expect(lineOf(plan, "Gin")).toBeUndefined();
    expect(plan.atRisk.map(({ item }) => item)).toContain("Gin");
  });

  it("falls with the order", () => {
    const line = lineOf(planned(orderBook()), "Gin");
    expect(line?.runOutChanceWith).toBeLessThanOrEqual(0.05);
    expect(line?.runOutChanceWithout).toBeGreaterThan(0.9);
  });
});

describe("par", () => {
  it("is that of the item's own service level where it has one", () => {
    const sure = orderBook({}, (item) => (item.name === "Gin" ? { ...item, serviceLevel: 0.999 } : item));
    expect(lineOf(planned(sure), "Gin")?.par).toBeGreaterThan(lineOf(planned(orderBook()), "Gin")?.par ?? 0);
  });

  it("of limes that keep a day covers no more than that day after they arrive", () => {
    const short = orderBook({}, (item) => (item.name === "Lime" ? { ...item, shelfLifeDays: 1 } : item));
    // They arrive on Tuesday morning and the next ones on Thursday: only Tuesday can be served with them.
    expect(lineOf(planned(orderBook()), "Lime")?.expectedUse).toBeCloseTo((20 + 24) * 1.125, -1);
    const limes = {
      ...short,
      counts: [...short.counts.filter(({ item }) => item !== "Lime"), aCount("Lime", 0, "each")],
    };
    expect(lineOf(planned(limes), "Lime")?.expectedUse).toBeCloseTo(20 * 1.125, 0);
  });

  it("never fills up beyond what can be used before it spoils, but for the last container", () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 9 }), fc.integer({ min: 0, max: 60 }), (shelfLifeDays, there) => {
        const book = orderBook({}, (item) => (item.name === "Lime" ? { ...item, shelfLifeDays } : item));
        const counts = [...book.counts.filter(({ item }) => item !== "Lime"), aCount("Lime", there, "each")];
        const lasting = planned({ ...orderBook(), counts });
        const spoiling = planned({ ...book, counts });
        const [kept, fresh] = [lasting, spoiling].map((plan) =>
          plan.items.find(({ item }) => item === "Lime"),
        );
        const ordered = lineOf(spoiling, "Lime")?.quantity ?? 0;
        // Tuesday to the delivery on Tuesday, and a day's trade more for each day that it keeps: 60 sours at most.
        const mostUsed = (1 + shelfLifeDays) * 60 * 1.125 * 1.6;
        expect(there + ordered).toBeLessThanOrEqual(Math.max(there, mostUsed));
        if (fresh?.parWhy.includes("keeps"))
          expect(fresh.expectedUse).toBeLessThanOrEqual(kept?.expectedUse ?? 0);
      }),
      { numRuns: 25 },
    );
  });

  it("chooses the cheaper of two suppliers", () => {
    const packs = [...orderBook().packs, aPack("Gin", { supplier: "Green Cart", price: 19 })];
    const plan = planned(orderBook({ packs }));
    expect(plan.suppliers[0]?.lines.some(({ item }) => item === "Gin")).toBe(false);
    expect(plan.suppliers[1]?.lines.some(({ item }) => item === "Gin")).toBe(true);
  });
});

describe("a supplier's minimum", () => {
  const dear = (minimumValueMinor: number, minimumCases: number | null = null) =>
    planned(
      orderBook({
        suppliers: [
          { name: "Quay Spirits", email: "", minimumValueMinor, minimumCases },
          { name: "Green Cart", email: "", minimumValueMinor: null, minimumCases: null },
        ],
      }),
    ).suppliers[0];

  it("that the order reaches needs nothing added", () => {
    expect(dear(10_000)).toMatchObject({ minimumMet: true, missingValue: 0, toMinimum: [] });
  });

  it("that it misses is reached by what is used up soonest", () => {
    const quay = dear(40_000);
    const missing = 400 - (quay?.total ?? 0);
    expect(quay?.minimumMet).toBe(false);
    expect(quay?.missingValue).toBeCloseTo(missing, 9);
    const added = (quay?.toMinimum ?? []).reduce((sum, { cost }) => sum + cost, 0);
    expect(added).toBeGreaterThanOrEqual(missing);
    // Gin goes at 1.5 litres a day, rum at half a litre in cases of 4.2.
    expect(quay?.toMinimum.map(({ item }) => item)).toEqual(["Gin"]);
  });

  it("of cases counts a bottle as its part of a case", () => {
    const quay = dear(0, 50);
    const gin = quay?.lines.find(({ item }) => item === "Gin")?.quantity ?? 0;
    expect(quay?.missingCases).toBeCloseTo(50 - 1 - gin / 6, 9);
  });

  it("that only months of stock would reach is left to the buyer", () => {
    expect(dear(100_000_000)?.toMinimum).toEqual([]);
  });
});

describe("a budget", () => {
  it("is kept, and more of it never means more shortage", () => {
    const money = fc.integer({ min: 0, max: 40_000 });
    fc.assert(
      fc.property(money, money, (a, b) => {
        const [less, more] = [Math.min(a, b), Math.max(a, b)].map((budgetMinor) =>
          planned(orderBook(), { budgetMinor }),
        ) as [OrderPlan, OrderPlan];
        const spent = less.suppliers.reduce((sum, { total }) => sum + total, 0);
        expect(spent * 100).toBeLessThanOrEqual(Math.min(a, b) + 1e-6);
        expect(more.expectedShortage).toBeLessThanOrEqual(less.expectedShortage + 1e-9);
      }),
      { numRuns: 25 },
    );
  });

  it("large enough changes nothing", () => {
    expect(planned(orderBook(), { budgetMinor: 10_000_000 })).toEqual(planned(orderBook()));
  });
});
