import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { factsOf } from "#engine/facts.ts";
import { inputsOf } from "#engine/prep/inputs.ts";
import { lowLevelCodes } from "#engine/prep/levels.ts";
import { type Making, makingOf } from "#engine/prep/making.ts";
import { workOrder } from "#engine/prep/work-order.ts";
import { PrepCycleError } from "#engine/specs/bill.ts";
import { counted, daily, planOf, prepBook } from "./hand-prep.ts";

const PREPS = ["Simple syrup", "Lime cordial", "Lime juice"] as const;
const amount = fc.double({ min: 0, max: 900, noNaN: true });

const situation = fc.record({
  drunk: fc.record({ "Simple syrup": amount, "Lime cordial": amount, "Lime juice": amount }),
  held: fc.record({ "Simple syrup": amount, "Lime cordial": amount, "Lime juice": amount }),
  wheels: fc.integer({ min: 0, max: 90 }),
  relativeSd: fc.double({ min: 0, max: 0.6, noNaN: true }),
  batchStep: fc.option(fc.integer({ min: 50, max: 2000 })),
  days: fc.option(fc.integer({ min: 1, max: 10 }), { nil: undefined }),
});

type Bar = typeof situation extends fc.Arbitrary<infer T> ? T : never;

function planFor({ drunk, held, wheels, relativeSd, batchStep, days }: Bar) {
  const book = prepBook();
  book.preps = book.preps.map((prep) => ({ ...prep, batchStep }));
  for (const prep of PREPS) book.counts.push(counted(prep, "2026-03-02T10:00:00Z", held[prep]));
  return planOf(book, daily(drunk, wheels > 0 ? { "Lime wheel": wheels } : {}, relativeSd), { days });
}

describe("the laws of a prep plan", () => {
  it("makes at least what is short, never less than nothing, and nothing that is not needed", () => {
    fc.assert(
      fc.property(situation, (bar) => {
        const plan = planFor(bar);
        for (const { make, need, onHand, usable, canMake, batches } of plan.batches) {
          expect(make).toBeGreaterThan(0);
          expect(make).toBeGreaterThanOrEqual(need - onHand - 1e-6);
          expect(make).toBeLessThanOrEqual(need - usable + (bar.batchStep ?? 0) + 1e-6);
          expect(usable).toBeLessThanOrEqual(onHand + 1e-9);
          expect(usable).toBeGreaterThanOrEqual(0);
          expect(canMake).toBeLessThanOrEqual(make + 1e-6);
          expect(batches).toBeGreaterThanOrEqual(1);
        }
        // what lacks by no more than the plan's own tolerance (1e-6, inclusive, of a sum of days) is enough
        for (const { need, onHand } of plan.enough) expect(onHand).toBeGreaterThanOrEqual(need - 2e-6);
      }),
      { numRuns: 150 },
    );
  });

  it("gives every batch its inputs: what the plan makes and holds covers what the plan takes", () => {
    fc.assert(
      fc.property(situation, (bar) => {
        const plan = planFor(bar);
        for (const prep of PREPS) {
          const taken = plan.batches
            .flatMap(({ inputs }) => inputs)
            .reduce((sum, input) => sum + (input.item === prep ? input.amount : 0), 0);
          const made = plan.batches.find((batch) => batch.prep === prep)?.make ?? 0;
          expect(made + bar.held[prep]).toBeGreaterThanOrEqual(taken - 1e-6);
        }
      }),
      { numRuns: 100 },
    );
  });

  it("cuts as many pieces as the part most asked for, and what is spare fills the other parts up to them", () => {
    fc.assert(
      fc.property(situation, (bar) => {
        for (const { pieces, gives, spare } of planFor(bar).cuts) {
          const of = (item: string) => gives.find((given) => given.item === item)?.amount ?? 0;
          const skin = of("Lime wheel") / 8;
          const flesh = of("Lime juice") / 25 + of("Lime wheel") / 8;
          expect(pieces).toBeCloseTo(Math.max(skin, flesh), 6);
          const spareOf = (part: string) => spare.find((left) => left.part === part)?.share ?? 0;
          expect(skin + spareOf("skin")).toBeCloseTo(pieces, 6);
          expect(flesh + spareOf("flesh")).toBeCloseTo(pieces, 6);
        }
      }),
      { numRuns: 100 },
    );
  });

  it("begins every batch after the batches it is made of", () => {
    fc.assert(
      fc.property(situation, (bar) => {
        const plan = planFor(bar);
        const orderOf = new Map(plan.batches.map(({ prep, order }) => [prep, order]));
        expect([...orderOf.values()]).toEqual(plan.batches.map((_, index) => index + 1));
        for (const { order, inputs } of plan.batches) {
          for (const { item } of inputs) expect(orderOf.get(item) ?? 0).toBeLessThan(order);
        }
      }),
      { numRuns: 100 },
    );
  });

  it("takes inputs in proportion to what is made", () => {
    const making = makingOf(factsOf(prepBook()).catalogue, "Lime cordial", "2026-03-02");
    if (making === undefined) throw new Error("the cordial is made here");
    fc.assert(
      fc.property(
        fc.double({ min: 1, max: 1e5, noNaN: true }),
        fc.double({ min: 0.1, max: 50, noNaN: true }),
        (make, by) => {
          const once = inputsOf(making, make);
          const scaled = inputsOf(making, make * by);
          scaled.forEach(({ amount: more }, index) => {
            expect(more / ((once[index]?.amount ?? 0) * by)).toBeCloseTo(1, 9);
          });
        },
      ),
    );
  });
});

describe("the order of work", () => {
  const job = (prep: string, uses: string[] = [], standingHours = 0, neededOn: string | null = null) => ({
    prep,
    uses,
    standingHours,
    neededOn,
  });

  it("starts what stands longest, with all that it waits for, and then what is needed first", () => {
    const jobs = [
      job("Juice", [], 0, "2026-03-03"),
      job("Foam", [], 0, "2026-03-02"),
      job("Infusion", [], 6),
      job("Syrup"),
      job("Cordial", ["Syrup"], 12),
    ];
    expect(workOrder(jobs)).toEqual(["Syrup", "Cordial", "Infusion", "Foam", "Juice"]);
  });

  it("does not wait for what is on hand already", () => {
    expect(workOrder([job("Cordial", ["Syrup"])])).toEqual(["Cordial"]);
  });
});

describe("low-level codes", () => {
  const making = (prep: string, ...uses: string[]): Making => ({
    prep,
    unit: "ml",
    perUnit: 1,
    batchStep: null,
    vesselMax: null,
    activeMinutes: null,
    standingHours: null,
    shelfLifeDays: null,
    method: "",
    inputs: uses.map((item) => ({ item, perUnit: 1 })),
    cuts: [],
  });

  it("go by the deepest level at which a prep is used", () => {
    // D is used by A directly and three levels down: it waits for all of its users (MRP, low-level code).
    const codes = lowLevelCodes([making("A", "B", "D"), making("B", "C"), making("C", "D"), making("D")]);
    expect(Object.fromEntries(codes)).toEqual({ A: 0, B: 1, C: 2, D: 3 });
  });

  it("name the circle where there is one", () => {
    expect(() => lowLevelCodes([making("A", "B"), making("B", "A")])).toThrow(PrepCycleError);
  });
});
