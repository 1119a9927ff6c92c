import { describe, expect, it } from "vitest";
import type { Book } from "#engine/book.ts";
import { forecast } from "#engine/demand/forecast.ts";
import { soldSeries } from "#engine/demand/series.ts";
import { factsOf } from "#engine/facts.ts";
import type { SaleGroup } from "#engine/sales/tally.ts";
import { datesFrom } from "#engine/time.ts";
import { aDrink, handBook } from "../support/hand-bar.ts";
import { alikeWeeks, soldOn } from "./sold-days.ts";

const MONDAY = "2026-01-05";
const AFTER_EIGHT_WEEKS = "2026-03-02";
const SOURS = [0, 20, 24, 30, 44, 60, 28];
const HANDS = [0, 5, 6, 8, 11, 15, 7];

const EIGHT_WEEKS: SaleGroup[] = [
  ...alikeWeeks({ monday: MONDAY, weeks: 8, ringName: "House sour", week: SOURS }),
  ...alikeWeeks({ monday: MONDAY, weeks: 8, ringName: "Old hand", week: HANDS }),
];

function weekAhead(book: Book, sales: readonly SaleGroup[] = EIGHT_WEEKS) {
  return forecast({
    facts: factsOf(book),
    sales,
    asOf: AFTER_EIGHT_WEEKS,
    from: AFTER_EIGHT_WEEKS,
    days: 7,
  });
}

function meanOf(ahead: ReturnType<typeof weekAhead>, date: string, what: string): number {
  return ahead.days.find((day) => day.date === date && day.what === what)?.mean ?? 0;
}

describe("the series of what was sold", () => {
  const facts = factsOf({
    ...handBook(),
    ringNames: [
      {
        ringName: "Sour jug",
        soldAs: { kind: "drink", drink: "House sour" },
        serves: 4,
        amount: null,
        unit: null,
      },
      { ringName: "Rum pour", soldAs: { kind: "item", item: "Rum" }, serves: 1, amount: 30, unit: "ml" },
    ],
  });
  const sales = [
    soldOn("2026-02-02", "House sour", 5),
    soldOn("2026-02-02", "House sour", -2),
    soldOn("2026-02-02", "Sour jug", 2),
    soldOn("2026-02-02", "Rum pour", 3),
    soldOn("2026-02-04", "Nobody knows this", 1),
    soldOn("2026-02-05", "House sour", -1),
  ];

  it("counts quantity × serves, net of voids, with what is poured straight by its item", () => {
    const series = soldSeries(facts, sales);
    expect(series.serves.get("House sour")).toEqual(Float64Array.of(11, 0));
    expect(series.serves.get("Rum")).toEqual(Float64Array.of(3, 0));
  });

  it("takes a day with any sale as open, and a day of nothing but voids as closed", () => {
    expect(soldSeries(facts, sales).dates).toEqual(["2026-02-02", "2026-02-04"]);
  });

  it("does not look at the day it is asked on", () => {
    expect(soldSeries(facts, sales, "2026-02-04").dates).toEqual(["2026-02-02"]);
  });
});

describe("a week ahead", () => {
  it("repeats weeks that were all alike, weekday by weekday", () => {
    const ahead = weekAhead(handBook());
    SOURS.forEach((sold, day) => {
      const date = `2026-03-0${2 + day}`;
      expect(meanOf(ahead, date, "House sour")).toBeCloseTo(sold, 0);
      expect(meanOf(ahead, date, "Old hand")).toBeCloseTo(HANDS[day] ?? 0, 0);
    });
  });

  it("leaves out the weekday on which the bar is closed", () => {
    expect(weekAhead(handBook()).days.filter(({ date }) => date === "2026-03-02")).toEqual([]);
  });

  it("is busier by the factor of an event, and empty on a day the book calls closed", () => {
    const events = [
      { date: "2026-03-06", event: "Street festival", factor: 1.5 },
      { date: "2026-03-07", event: "Closed for works", factor: 0 },
    ];
    const ahead = weekAhead({ ...handBook(), events });
    expect(meanOf(ahead, "2026-03-06", "House sour")).toBeCloseTo(66, 0);
    expect(ahead.days.filter(({ date }) => date === "2026-03-07")).toEqual([]);
  });

  it("is not lifted by a festival of the past", () => {
    const festival = "2026-02-21";
    const sales = EIGHT_WEEKS.map((sale) =>
      sale.businessDate === festival ? { ...sale, quantity: sale.quantity * 2 } : sale,
    );
    const events = [{ date: festival, event: "Street festival", factor: 2 }];
    expect(meanOf(weekAhead({ ...handBook(), events }, sales), "2026-03-07", "House sour")).toBeCloseTo(
      60,
      0,
    );
  });

  it("adds a party's drinks to the usual ones, and forgets a party of the past", () => {
    const plans = [
      { date: "2026-02-24", drink: "House sour", serves: 40 },
      { date: "2026-03-05", drink: "House sour", serves: 40 },
    ];
    const sales = [...EIGHT_WEEKS, soldOn("2026-02-24", "House sour", 40)];
    const ahead = weekAhead({ ...handBook(), plans }, sales);
    expect(meanOf(ahead, "2026-03-05", "House sour")).toBeCloseTo(30 + 40, 0);
    expect(meanOf(ahead, "2026-03-03", "House sour")).toBeCloseTo(20, 0);
  });

  it("leaves out a drink that is off the menu that day, and gives its guests to the others", () => {
    const drinks = [aDrink("House sour"), { ...aDrink("Old hand"), onMenuUntil: "2026-03-04" }];
    const ahead = weekAhead({ ...handBook(), drinks });
    expect(meanOf(ahead, "2026-03-04", "Old hand")).toBeCloseTo(6, 0);
    expect(ahead.days.some(({ date, what }) => date === "2026-03-05" && what === "Old hand")).toBe(false);
    expect(meanOf(ahead, "2026-03-05", "House sour")).toBeCloseTo(38, 0);
  });

  it("starts a new drink from its plan, and keeps to it on days without one", () => {
    const drinks = [
      aDrink("House sour"),
      aDrink("Old hand"),
      { ...aDrink("Cooler"), onMenuFrom: "2026-03-03" },
    ];
    const plans = [3, 4, 5].map((day) => ({ date: `2026-03-0${day}`, drink: "Cooler", serves: 10 }));
    const ahead = weekAhead({ ...handBook(), drinks, plans });
    expect(meanOf(ahead, "2026-03-04", "Cooler")).toBeCloseTo(10, 0);
    // A tenth of a stronger night's guests and more: 30 planned of the 93 or so of those three nights.
    expect(meanOf(ahead, "2026-03-07", "Cooler")).toBeGreaterThan(10);
    expect(ahead.noHistory).toEqual([]);
    // Planned beyond the usual: nobody's guests are taken away.
    expect(meanOf(ahead, "2026-03-04", "House sour")).toBeCloseTo(
      meanOf(weekAhead(handBook()), "2026-03-04", "House sour"),
      6,
    );
  });

  it("believes a new drink's sales more than its plan as the nights go by", () => {
    const drinks = [
      aDrink("House sour"),
      aDrink("Old hand"),
      { ...aDrink("Cooler"), onMenuFrom: "2026-02-17" },
    ];
    const plans = datesFrom({ from: "2026-02-17", to: "2026-03-08" }).map((date) => ({
      date,
      drink: "Cooler",
      serves: 5,
    }));
    const coolers = alikeWeeks({
      monday: "2026-02-16",
      weeks: 2,
      ringName: "Cooler",
      week: [0, 15, 15, 15, 15, 15, 15],
    });
    const cooler = meanOf(
      weekAhead({ ...handBook(), drinks, plans }, [...EIGHT_WEEKS, ...coolers]),
      "2026-03-04",
      "Cooler",
    );
    expect(cooler).toBeGreaterThan(8);
    expect(cooler).toBeLessThan(15);
  });

  it("takes a drink that nobody has sold for weeks as gone, and says so", () => {
    const sales = EIGHT_WEEKS.filter(
      ({ ringName, businessDate }) => ringName !== "Old hand" || businessDate < "2026-02-09",
    );
    const ahead = weekAhead(handBook(), sales);
    expect(ahead.stopped).toEqual(["Old hand"]);
    expect(ahead.days.some(({ what }) => what === "Old hand")).toBe(false);
    expect(meanOf(ahead, "2026-03-07", "House sour")).toBeCloseTo(60, -1);
  });

  it("names a drink on the menu of which nothing is known, instead of making up a number", () => {
    const drinks = [aDrink("House sour"), aDrink("Old hand"), aDrink("Cooler")];
    const ahead = weekAhead({ ...handBook(), drinks });
    expect(ahead.noHistory).toEqual(["Cooler"]);
    expect(ahead.days.some(({ what }) => what === "Cooler")).toBe(false);
  });

  it("knows a drink that goes on Sundays alone", () => {
    const brunch = alikeWeeks({ monday: MONDAY, weeks: 8, ringName: "Cooler", week: [0, 0, 0, 0, 0, 0, 20] });
    const ahead = weekAhead(handBook(), [...EIGHT_WEEKS, ...brunch]);
    expect(meanOf(ahead, "2026-03-08", "Cooler")).toBeGreaterThan(15);
    expect(meanOf(ahead, "2026-03-07", "Cooler")).toBeLessThan(3);
  });

  it("states quantiles in order, around its mean", () => {
    for (const { mean, q05, q10, q50, q90, q95 } of weekAhead(handBook()).days) {
      expect([q05, q10, q50, q90, q95]).toEqual([q05, q10, q50, q90, q95].sort((a, b) => a - b));
      expect(mean).toBeGreaterThanOrEqual(q05);
      expect(mean).toBeLessThanOrEqual(q95);
    }
  });

  it("tells nothing of days to come when nothing was ever sold", () => {
    const ahead = weekAhead(handBook(), []);
    expect(ahead.days).toEqual([]);
    expect(ahead.backtest).toMatchObject({ wape: null, wapeSameWeekday: null, coverage90: null, days: 0 });
  });
});
