import fc from "fast-check";
import highs from "highs";
import { describe, expect, it } from "vitest";
import { factsOf } from "#engine/facts.ts";
import { shortageCost, type Wanted, withinBudget } from "#engine/orders/budget.ts";
import { planOrder } from "#engine/orders/order.ts";
import type { Position } from "#engine/orders/order-line.ts";
import { type Minimum, solveBudget } from "#engine/orders/solve-budget.ts";
import { additionsTo } from "#engine/orders/to-minimum.ts";
import { AT, aPack, EIGHT_WEEKS, orderBook } from "./order-bar.ts";

// The package's types are those of its CommonJS build, its import is the function itself.
const solver = await (highs as unknown as typeof highs.default)();

/** A line of bottles of 700 ml that may be bought up to so many. */
function line(item: string, { price, mean, quantity, margin, supplier }: LineFacts): Wanted {
  const demand = { mean, variance: (mean / 3) ** 2 };
  const position: Position = {
    item,
    isCount: false,
    onHand: 0,
    onHandSd: 0,
    onOrder: 0,
    par: 0,
    spoils: 0,
    parSet: null,
    parComputed: 0,
    serviceLevel: 0.95,
    isSpoilt: false,
    demand,
    demandToNext: demand,
    stockToNext: 0,
    short: 0,
    through: null,
    days: [],
  };
  const pack = aPack(item, { price, supplier });
  // Used so slowly that nothing beyond par is worth looking at.
  return {
    position,
    unit: { pack, of: "container", size: 700, cases: 1 / 6, price, deposit: 0 },
    quantity,
    lostMargin: margin,
    perDay: 0,
  };
}

type LineFacts = { price: number; mean: number; quantity: number; margin: number; supplier: string };

const lineFacts = fc.record({
  price: fc.integer({ min: 5, max: 60 }),
  mean: fc.integer({ min: 100, max: 3000 }),
  quantity: fc.integer({ min: 0, max: 3 }),
  margin: fc.double({ min: 0.02, max: 0.4, noNaN: true }),
  supplier: fc.constantFrom("Quay Spirits", "Green Cart"),
});

function moneyOf(wanted: readonly Wanted[], quantities: readonly number[], supplier?: string): number {
  return wanted.reduce((sum, { unit }, index) => {
    const isMeant = supplier === undefined || unit.pack.supplier === supplier;
    return sum + (isMeant ? (unit.price ?? 0) * (quantities[index] ?? 0) : 0);
  }, 0);
}

function shortageOf(wanted: readonly Wanted[], quantities: readonly number[]): number {
  return wanted.reduce((sum, want, index) => sum + shortageCost(want, quantities[index] ?? 0), 0);
}

/** Every way to buy, one after the other: slow, and with nothing in common with the solver. */
function leastShortage(
  wanted: readonly Wanted[],
  budget: number,
  minimums: ReadonlyMap<string, Minimum>,
): number {
  let least = Number.POSITIVE_INFINITY;
  const tryFrom = (index: number, quantities: number[]) => {
    const want = wanted[index];
    if (want === undefined) {
      const isKept = [...minimums].every(([supplier, { value }]) => {
        const money = moneyOf(wanted, quantities, supplier);
        return money === 0 || money >= value;
      });
      if (isKept && moneyOf(wanted, quantities) <= budget)
        least = Math.min(least, shortageOf(wanted, quantities));
      return;
    }
    for (let units = 0; units <= want.quantity; units += 1) tryFrom(index + 1, [...quantities, units]);
  };
  tryFrom(0, []);
  return least;
}

describe("a budget spent by integer programme", () => {
  it("keeps budget and minimum in a whole order", () => {
    const facts = factsOf(orderBook());
    for (const budgetMinor of [5_000, 12_000, 20_000, 60_000]) {
      const { suppliers } = planOrder({ facts, sales: EIGHT_WEEKS, at: AT, budgetMinor, solver });
      const spent = suppliers.reduce((sum, { total }) => sum + total, 0);
      expect(spent * 100).toBeLessThanOrEqual(budgetMinor + 1e-6);
      expect(suppliers.every(({ lines, minimumMet }) => lines.length === 0 || minimumMet)).toBe(true);
    }
  });

  it("loses as little as the best of all ways to spend it, minimums kept", () => {
    fc.assert(
      fc.property(
        fc.array(lineFacts, { minLength: 1, maxLength: 4 }),
        fc.integer({ min: 0, max: 250 }),
        fc.integer({ min: 0, max: 90 }),
        (facts, budget, value) => {
          const wanted = facts.map((one, index) => line(`Item ${index}`, one));
          const minimums = new Map([["Quay Spirits", { value, cases: 0 }]]);
          const bought = solveBudget(wanted, { budget, minimums, keepsDays: () => 999, solver }) ?? [];
          const money = moneyOf(wanted, bought, "Quay Spirits");
          expect(moneyOf(wanted, bought)).toBeLessThanOrEqual(budget);
          expect(money === 0 || money >= value).toBe(true);
          const least = leastShortage(wanted, budget, minimums);
          expect(shortageOf(wanted, bought)).toBeLessThanOrEqual(least + 1e-3 * (1 + least));
        },
      ),
      { numRuns: 40 },
    );
  });

  it("is never worse than spending it unit by unit", () => {
    fc.assert(
      fc.property(
        fc.array(lineFacts, { minLength: 1, maxLength: 8 }),
        fc.integer({ min: 0, max: 400 }),
        (facts, budget) => {
          const wanted = facts.map((one, index) => line(`Item ${index}`, one));
          const bought =
            solveBudget(wanted, { budget, minimums: new Map(), keepsDays: () => 999, solver }) ?? [];
          const oneByOne = shortageOf(wanted, withinBudget(wanted, budget));
          expect(shortageOf(wanted, bought)).toBeLessThanOrEqual(oneByOne + 1e-3 * (1 + oneByOne));
        },
      ),
      { numRuns: 40 },
    );
  });

  it("never loses more for having more to spend, minimums kept", () => {
    fc.assert(
      fc.property(
        fc.array(lineFacts, { minLength: 1, maxLength: 8 }),
        fc.integer({ min: 0, max: 400 }),
        fc.integer({ min: 0, max: 200 }),
        fc.integer({ min: 0, max: 120 }),
        (facts, budget, more, value) => {
          const wanted = facts.map((one, index) => line(`Item ${index}`, one));
          const minimums = new Map([["Quay Spirits", { value, cases: 0 }]]);
          const [less, richer] = [budget, budget + more].map((money) => {
            const bought =
              solveBudget(wanted, { budget: money, minimums, keepsDays: () => 999, solver }) ?? [];
            return shortageOf(wanted, bought);
          });
          expect(richer).toBeLessThanOrEqual((less ?? 0) + 1e-3 * (1 + (less ?? 0)));
        },
      ),
      { numRuns: 40 },
    );
  });
});

describe("a supplier's minimum reached by integer programme", () => {
  /** A line of bottles used at 100 ml a day, of which nothing is bought yet. */
  const candidate = (item: string, price: number, keepsDays = 999) => ({
    ...line(item, { price, mean: 1000, quantity: 0, margin: 0.1, supplier: "Quay Spirits" }),
    perDay: 100,
    bought: 0,
    keepsDays,
  });

  it("adds the least money that reaches it, where bottle by bottle adds more", () => {
    // 21 and 30 reach 50 with 51; the one used up soonest after the other, three of 21, with 63.
    const candidates = [candidate("Gin", 21), candidate("Rum", 30)];
    const missing = { missingValue: 50, missingCases: 0 };
    const cost = (solved?: typeof solver) =>
      additionsTo(missing, candidates, solved).reduce((sum, one) => sum + one.cost, 0);
    expect(cost(solver)).toBe(51);
    expect(cost()).toBeGreaterThanOrEqual(51);
  });

  it("adds nothing where it is met, where too little keeps, or where only months of stock reach it", () => {
    expect(additionsTo({ missingValue: 0, missingCases: 0 }, [candidate("Gin", 21)], solver)).toEqual([]);
    expect(additionsTo({ missingValue: 50, missingCases: 0 }, [candidate("Gin", 21, 10)], solver)).toEqual(
      [],
    );
    expect(additionsTo({ missingValue: 5000, missingCases: 0 }, [candidate("Gin", 21)], solver)).toEqual([]);
  });

  it("never costs more than bottle by bottle, and always reaches it", () => {
    fc.assert(
      fc.property(
        fc.array(fc.integer({ min: 5, max: 60 }), { minLength: 1, maxLength: 6 }),
        fc.integer({ min: 1, max: 150 }),
        (prices, missingValue) => {
          const candidates = prices.map((price, index) => candidate(`Item ${index}`, price));
          const missing = { missingValue, missingCases: 0 };
          const cost = (solved?: typeof solver) =>
            additionsTo(missing, candidates, solved).reduce((sum, one) => sum + one.cost, 0);
          const [exact, byHand] = [cost(solver), cost()];
          if (byHand === 0) return;
          expect(exact).toBeGreaterThanOrEqual(missingValue - 1e-6);
          // A day on the shelf weighs a thousandth of the money, so as much may be paid for being used sooner.
          expect(exact).toBeLessThanOrEqual(byHand * 1.06);
        },
      ),
      { numRuns: 40 },
    );
  });
});
