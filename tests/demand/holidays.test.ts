import { beforeAll, describe, expect, it } from "vitest";
import { forecast } from "#engine/demand/forecast.ts";
import { type Holiday, holidayDays } from "#engine/demand/holiday.ts";
import { effectOf } from "#engine/demand/holiday-effect.ts";
import { holidayWords } from "#engine/demand/holiday-words.ts";
import { fitDemand } from "#engine/demand/model.ts";
import { soldSeries } from "#engine/demand/series.ts";
import { type Facts, factsOf } from "#engine/facts.ts";
import type { SaleGroup } from "#engine/sales/tally.ts";
import { addDays, type BusinessDate } from "#engine/time.ts";
import { holidaysOf, unknownPlace } from "#server/holidays.ts";
import { FIRST, inventedBar, USUAL } from "./invented-bar.ts";

// A year and a half from January 2026: the spring of 2027 has its holidays behind it once.
const BAR = inventedBar({ ...USUAL, weeks: 78, drinks: 8, changing: 0, oddNights: 0 }, 7);
const UNTIL = "2027-06-30";

let holidays: Holiday[];
beforeAll(async () => {
  holidays = await holidaysOf({ country: "PT" }, { from: FIRST, to: UNTIL });
});

/** The same bar with its sales multiplied on some days, 0 for shut. */
function withTrade(sales: readonly SaleGroup[], factorOn: (date: BusinessDate) => number): SaleGroup[] {
  return sales.flatMap((sale) => {
    const quantity = Math.round(sale.quantity * factorOn(sale.businessDate));
    return quantity === 0 ? [] : [{ ...sale, quantity }];
  });
}

/** What is expected of a day, three days before it. */
function expected(facts: Facts, sales: SaleGroup[], date: BusinessDate) {
  const asOf = addDays(date, -3);
  const model = fitDemand(facts, soldSeries(facts, sales, asOf), asOf);
  const days = model.on(date);
  return { days, total: days.reduce((sum, { mean }) => sum + mean, 0), holiday: model.holidayOn(date) };
}

const isEve = (date: BusinessDate) => holidayDays(holidays).get(date)?.kind === "eve";
// Thursday before Good Friday, and the eve of Corpus Christi: 2027-03-26 and 2027-05-27 by the Western computus.
const [EVE_OF_GOOD_FRIDAY, EVE_OF_CORPUS_CHRISTI] = ["2027-03-25", "2027-05-26"];

describe("public holidays", () => {
  it("are those of the country and of its region, on the days the almanacs give", async () => {
    const dates = (list: readonly Holiday[]) => list.map(({ date }) => date);
    // Good Friday and Corpus Christi move with Easter; 25 April and 1 December are Portugal's own.
    expect(dates(holidays)).toEqual(
      expect.arrayContaining(["2026-04-03", "2026-04-25", "2026-06-04", "2026-12-01", "2027-03-26"]),
    );
    // Assumption is a holiday in Saarland and in most of Bavaria, not in all of Germany (from memory).
    const range = { from: "2026-08-01", to: "2026-08-31" };
    const [all, saar] = [
      await holidaysOf({ country: "DE" }, range),
      await holidaysOf({ country: "DE", region: "SL" }, range),
    ];
    expect(dates(all)).not.toContain("2026-08-15");
    expect(dates(saar)).toContain("2026-08-15");
    expect(await holidaysOf({}, range)).toEqual([]);
  });

  it("say what is wrong with a place they do not know", async () => {
    expect(await unknownPlace({ country: "PT" })).toBeNull();
    expect(await unknownPlace({})).toBeNull();
    expect(await unknownPlace({ country: "DE", region: "XX" })).toContain('"XX" in DE (known are BB, BE');
    expect(await unknownPlace({ region: "SL" })).toContain("needs its country");
    expect(await unknownPlace({ country: "AQ" })).toContain("no public holidays are known of AQ");
  });

  it("touch the evening before, unless nobody works the next day in any case", () => {
    const days = holidayDays([
      { date: "2026-06-04", name: "Thursday off" },
      { date: "2026-08-15", name: "Saturday off" },
    ]);
    expect(days.get("2026-06-03")).toEqual({ date: "2026-06-03", name: "Thursday off", kind: "eve" });
    expect(days.get("2026-06-04")?.kind).toBe("holiday");
    expect(days.get("2026-08-14")).toBeUndefined();
    expect(days.get("2026-08-15")?.kind).toBe("weekend holiday");
  });
});

it("are told in words with what they were learnt from", () => {
  const day = {
    date: "2027-03-25",
    name: "Good Friday",
    kind: "eve",
    cv2: 0,
    isClosed: false,
    hasEvent: false,
  } as const;
  const known = { factor: 1.18, seen: 1, seenOfKind: 5 };
  expect(holidayWords({ ...day, ...known })).toBe(
    "Eve of Good Friday: 18 % busier than usual, by 1 such day and 4 other eves",
  );
  expect(holidayWords({ ...day, ...known, isClosed: true })).toContain("taken as shut, as before");
  expect(holidayWords({ ...day, factor: 1, seen: 0, seenOfKind: 0 })).toContain(
    "your sales hold no such day yet",
  );
});

describe("what holidays did before", () => {
  it("is drawn to none by as much as days scatter", () => {
    // By hand: one holiday at 1.5, noise 0.0625. Names apart (0 + 2 × 0.01) ÷ 2 = 0.01; kind 0.4055 × 1 ÷ (1 + 0.0725 ÷
    // 0.0625) = 0.1877; name 0.1877 + 1 ÷ (1 + 6.25) × (0.4055 − 0.1877) = 0.2178 → 1.2433.
    const seen = [Math.log(1.5)];
    expect(effectOf([], seen, 0.0625).factor).toBeCloseTo(1.2065, 3);
    expect(effectOf(seen, seen, 0.0625).factor).toBeCloseTo(1.2433, 3);
    expect(effectOf([], [], 0.0625)).toEqual({ factor: 1, cv2: 0 });
  });

  it("moves the forecast of the next eve most of the way, and of an eve never seen by its kind", () => {
    const sales = withTrade(BAR.sales, (date) => (isEve(date) ? 1.6 : 1));
    const [plain, facts] = [factsOf(BAR.facts.book), factsOf(BAR.facts.book, holidays)];
    for (const eve of [EVE_OF_GOOD_FRIDAY, EVE_OF_CORPUS_CHRISTI]) {
      const [without, with_] = [expected(plain, sales, eve), expected(facts, sales, eve)];
      expect(with_.total / without.total).toBeGreaterThan(1.35);
      expect(with_.total / without.total).toBeLessThan(1.9);
      expect(with_.holiday).toMatchObject({ date: eve, kind: "eve", seen: 1, isClosed: false });
    }
  });

  it("changes little where holidays were as any day, and nothing where none was seen or no country is named", () => {
    const facts = factsOf(BAR.facts.book, holidays);
    const date = EVE_OF_GOOD_FRIDAY;
    const without = expected(factsOf(BAR.facts.book), BAR.sales, date).total;
    expect(Math.abs(expected(facts, BAR.sales, date).total / without - 1)).toBeLessThan(0.15);
    const young = BAR.sales.filter(({ businessDate }) => businessDate >= "2027-01-11");
    const [first, second] = [factsOf(BAR.facts.book), facts].map((own) => expected(own, young, date));
    expect(second?.days).toEqual(first?.days);
    expect(second?.holiday).toMatchObject({ factor: 1, seenOfKind: 0 });
  });

  it("knows only what was before the day it is asked on", () => {
    const facts = factsOf(BAR.facts.book, holidays);
    const later = withTrade(BAR.sales, (date) => (date >= "2027-03-22" && isEve(date) ? 3 : 1));
    const date = EVE_OF_GOOD_FRIDAY;
    expect(expected(facts, later, date).days).toEqual(expected(facts, BAR.sales, date).days);
  });

  it("gives way to an event of the book", () => {
    const sales = withTrade(BAR.sales, (date) => (isEve(date) ? 1.6 : 1));
    const date = EVE_OF_GOOD_FRIDAY;
    const book = { ...BAR.facts.book, events: [{ date, event: "Hired out", factor: 0.5 }] };
    const [event, none] = [
      expected(factsOf(book, holidays), sales, date),
      expected(factsOf(BAR.facts.book), sales, date),
    ];
    expect(event.total / none.total).toBeGreaterThan(0.45);
    expect(event.total / none.total).toBeLessThan(0.55);
    const shown = forecast({
      facts: factsOf(book, holidays),
      sales,
      asOf: date,
      from: date,
      days: 1,
    }).holidays;
    expect(shown).toMatchObject([{ date, hasEvent: true }]);
    expect(shown.map(holidayWords)).toEqual(["Eve of Good Friday: as its event in the book says"]);
  });

  it("takes a venue as shut that was shut on that holiday last, and says so", () => {
    const sales = withTrade(BAR.sales, (date) => (date === "2026-04-03" ? 0 : 1));
    const facts = factsOf(BAR.facts.book, holidays);
    const shut = expected(facts, sales, "2027-03-26");
    expect(shut.days).toEqual([]);
    expect(shut.holiday?.isClosed).toBe(true);
    const book = { ...BAR.facts.book, events: [{ date: "2027-03-26", event: "Open", factor: 1 }] };
    expect(expected(factsOf(book, holidays), sales, "2027-03-26").days).not.toEqual([]);
  });
});
