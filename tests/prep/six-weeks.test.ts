import { describe, expect, it } from "vitest";
import { factsOf } from "#engine/facts.ts";
import { afterUse, isGood, type Layer, sumOf } from "#engine/prep/layers.ts";
import { prepPlan } from "#engine/prep/plan.ts";
import { datesFrom, weekdayOf } from "#engine/time.ts";
import { aBatch, counted } from "./hand-prep.ts";
import { bookWithDrinks, chances, poisson, soldOn } from "./hand-service.ts";

const PREPS = ["Lime juice", "Lime cordial", "Simple syrup"];
const HISTORY = { from: "2026-01-05", to: "2026-03-01" };
const SERVICE = { from: "2026-03-02", to: "2026-04-12" };

/** Gimlets sold each day, Fridays and Saturdays twice as many, some nights busier than others. */
function salesOf(seed: number) {
  const chance = chances(seed);
  return datesFrom({ from: HISTORY.from, to: SERVICE.to }).map((date) => {
    const busy = ["Fri", "Sat"].includes(weekdayOf(date)) ? 2 : 1;
    return soldOn(date, "Gimlet", poisson(18 * busy * (0.8 + 0.4 * chance()), chance));
  });
}

type Result = {
  used: number;
  made: number;
  short: number;
  shortDays: number;
  wasted: number;
  makings: number;
};

/**
 * A kitchen that does what the plan says for six weeks, and a fridge that holds what is really there: the plan only sees
 * the book. A gimlet takes 20 ml juice (keeps two days) and 30 ml cordial (keeps seven).
 */
function sixWeeks(onlyDue: boolean): Map<string, Result> {
  const book = bookWithDrinks();
  book.items = book.items.map((item) => (item.name === "Lime juice" ? { ...item, shelfLifeDays: 2 } : item));
  for (const date of datesFrom({ from: "2026-02-20", to: HISTORY.to })) {
    book.batches.push(aBatch("Lime juice", `${date}T14:00:00Z`, 400));
  }
  for (const prep of PREPS) book.counts.push(counted(prep, "2026-03-02T10:00:00Z", 0));
  const sales = salesOf(7);
  const shelf = new Map<string, Layer[]>();
  const results = new Map<string, Result>(
    PREPS.map((prep) => [prep, { used: 0, made: 0, short: 0, shortDays: 0, wasted: 0, makings: 0 }]),
  );
  const resultOf = (prep: string) =>
    results.get(prep) ?? { used: 0, made: 0, short: 0, shortDays: 0, wasted: 0, makings: 0 };

  for (const date of datesFrom(SERVICE)) {
    const facts = factsOf(book);
    const known = sales.filter(({ businessDate }) => businessDate < date);
    const plan = prepPlan({ facts, sales: known, date, onlyDue });
    for (const prep of PREPS) {
      const held = shelf.get(prep) ?? [];
      resultOf(prep).wasted += sumOf(held.filter((layer) => !isGood(layer, date)));
      shelf.set(
        prep,
        held.filter((layer) => isGood(layer, date)),
      );
    }
    for (const { prep, amount } of plan.discard) {
      const loss = { kind: "expired" as const, unit: "ml" as const, by: "", note: "" };
      book.losses.push({ ...loss, at: `${date}T14:00:00Z`, what: prep, amount });
    }
    for (const { prep, make, useBy, inputs } of plan.batches) {
      const madeAt = `${date}T14:30:00Z`;
      book.batches.push(aBatch(prep, madeAt, make));
      shelf.set(prep, [
        ...(shelf.get(prep) ?? []),
        { madeOn: date, madeAt, orOlder: false, quantity: make, useBy },
      ]);
      resultOf(prep).made += make;
      resultOf(prep).makings += 1;
      for (const { item, amount } of inputs) pour(item, amount);
    }
    const gimlets = sales.find(({ businessDate }) => businessDate === date)?.quantity ?? 0;
    pour("Lime juice", gimlets * 20);
    pour("Lime cordial", gimlets * 30);

    function pour(item: string, amount: number) {
      const held = shelf.get(item);
      if (held === undefined) return;
      const result = resultOf(item);
      result.used += amount;
      if (amount > sumOf(held) + 1e-6) result.shortDays += 1;
      result.short += Math.max(0, amount - sumOf(held));
      shelf.set(item, afterUse(held, amount, date));
    }
  }
  return results;
}

/** Of all that was made, by volume. */
function shareWasted(results: ReadonlyMap<string, Result>): number {
  const all = [...results.values()];
  const made = all.reduce((sum, result) => sum + result.made, 0);
  return all.reduce((sum, { wasted }) => sum + wasted, 0) / made;
}

describe("a kitchen that follows the plan for six weeks", () => {
  const filledUp = sixWeeks(false);
  const due = sixWeeks(true);

  it("runs out of a prep on no more days than the service level allows", () => {
    for (const results of [filledUp, due]) {
      // 5 in 100 of 42 days are 2; five or more would be a chance of 6 in 100, seven of 1 in 100.
      for (const { shortDays } of results.values()) expect(shortDays).toBeLessThanOrEqual(6);
      for (const { short, used } of results.values()) expect(short / used).toBeLessThan(0.01);
    }
  });

  it("pours away little when it makes only what is due, less than when it fills up", () => {
    expect(shareWasted(due)).toBeLessThan(0.1);
    expect(shareWasted(due)).toBeLessThan(shareWasted(filledUp));
    expect(due.get("Lime cordial")?.makings).toBeLessThan(filledUp.get("Lime cordial")?.makings ?? 0);
  });
});
