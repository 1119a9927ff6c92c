import { describe, expect, it } from "vitest";
import type { Book } from "#engine/book.ts";
import { itemDemand } from "#engine/demand/item-demand.ts";
import { factsOf } from "#engine/facts.ts";
import { handBook } from "../support/hand-bar.ts";
import { alikeWeeks } from "./sold-days.ts";

const MONDAY = "2026-01-05";
const ASKED_ON = "2026-03-02";

function weeksOf(ringName: string, aDay: number, modifiers = "") {
  const week = Array.from({ length: 7 }, () => aDay);
  return alikeWeeks({ monday: MONDAY, weeks: 8, ringName, week }).map((sale) => ({ ...sale, modifiers }));
}

function demandOn(date: string, sales = weeksOf("House sour", 16), raw = false, book: Book = handBook()) {
  return itemDemand({ facts: factsOf(book), sales, asOf: ASKED_ON, from: date, to: date, raw }).total;
}

describe("what the items are needed for", () => {
  it("goes by the spec in force on the day to come, not by the one that was sold", () => {
    expect(demandOn("2026-03-03").get("Gin")?.mean).toBeCloseTo(16 * 50, 0);
    expect(demandOn("2026-03-04").get("Gin")?.mean).toBeCloseTo(16 * 60, 0);
  });

  it("counts the doubles that guests ask for", () => {
    const sales = [...weeksOf("House sour", 12), ...weeksOf("House sour", 4, "Double")];
    expect(demandOn("2026-03-03", sales).get("Gin")?.mean).toBeCloseTo((12 + 2 * 4) * 50, 0);
  });

  it("takes the same lime for juice and wheel", () => {
    // 16 sours: flesh 16 × (25/25 + 1/8), skin 16/8.
    expect(demandOn("2026-03-03").get("Lime")?.mean).toBeCloseTo(16 * 1.125, 0);
  });

  it("needs a stocked prep as itself, and what it is made of when opened up", () => {
    const stocked = demandOn("2026-03-03");
    expect(stocked.get("Ginger syrup")?.mean).toBeCloseTo(16 * 20, 0);
    expect(stocked.has("Ginger")).toBe(false);
    const opened = demandOn("2026-03-03", weeksOf("House sour", 16), true);
    expect(opened.has("Ginger syrup")).toBe(false);
    expect(opened.get("Ginger")?.mean).toBeCloseTo((16 * 20 * 100) / 450, 0);
    expect(opened.get("Sugar")?.mean).toBeCloseTo(((16 * 20 * 400) / 450) * (500 / 800), 0);
  });

  it("adds a party's drinks by their spec", () => {
    const plans = [{ date: "2026-03-03", drink: "House sour", serves: 30 }];
    const gin = demandOn("2026-03-03", weeksOf("House sour", 16), false, { ...handBook(), plans }).get("Gin");
    expect(gin?.mean).toBeCloseTo((16 + 30) * 50, 0);
  });

  it("sums the days of a stretch, and is wrong on all of them together", () => {
    const { total, days } = itemDemand({
      facts: factsOf(handBook()),
      sales: weeksOf("House sour", 16),
      asOf: ASKED_ON,
      from: "2026-03-04",
      to: "2026-03-08",
      raw: false,
    });
    const gin = days.map(({ items }) => items.get("Gin") ?? { mean: 0, variance: 0 });
    const apart = gin.reduce((sum, { variance }) => sum + variance, 0);
    expect(total.get("Gin")?.mean).toBeCloseTo(
      gin.reduce((sum, { mean }) => sum + mean, 0),
      6,
    );
    expect(total.get("Gin")?.variance).toBeGreaterThan(apart);
  });

  it("spreads more for two drinks than for each apart, because busy nights raise both", () => {
    const week = [9, 10, 8, 12, 20, 22, 11];
    const busy = [0.7, 1.3, 1, 1.5, 0.6, 1.1, 0.8, 1.2, 1.4];
    const nightly = (ringName: string) =>
      alikeWeeks({ monday: MONDAY, weeks: 8, ringName, week }).map((sale, night) => ({
        ...sale,
        quantity: Math.round(sale.quantity * (busy[night % busy.length] ?? 1)),
      }));
    const [sours, coolers] = [nightly("House sour"), nightly("Cooler")];
    const spread = (sales: typeof sours) => demandOn("2026-03-04", sales).get("Gin")?.variance ?? 0;
    expect(spread([...sours, ...coolers])).toBeGreaterThan(1.2 * (spread(sours) + spread(coolers)));
  });
});
