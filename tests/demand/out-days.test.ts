import { describe, expect, it } from "vitest";
import type { Book } from "#engine/book.ts";
import { backtest } from "#engine/demand/backtest.ts";
import { forecast } from "#engine/demand/forecast.ts";
import { fitDemand } from "#engine/demand/model.ts";
import { soldSeries } from "#engine/demand/series.ts";
import { factsOf } from "#engine/facts.ts";
import { addDays } from "#engine/time.ts";
import { aCount, aDelivery, EIGHT_WEEKS, orderBook } from "../orders/order-bar.ts";
import { soldOn } from "./sold-days.ts";

const AS_OF = "2026-03-02";
const DRINK = EIGHT_WEEKS[0]?.ringName ?? "";
const AT = "2026-02-23T09:00:00Z";

/** The same weeks, in which none of the drink sold from Tuesday 24 to Thursday 26 February; others did. */
const HELD_UP = [
  ...EIGHT_WEEKS.filter(({ businessDate }) => businessDate < "2026-02-24" || businessDate > "2026-02-26"),
  ...["2026-02-24", "2026-02-25", "2026-02-26"].map((date) => soldOn(date, "Rum", 20)),
];

const zero = { ...aCount("Gin", 0), count: "None left", at: AT };
const came = aDelivery({ at: "2026-02-27T12:00:00Z", item: "Gin" });

function facts(more: Partial<Book>) {
  return factsOf(orderBook({ counts: [zero], deliveries: [came], ...more }));
}

function expectedOn(book: ReturnType<typeof facts>, sales = HELD_UP) {
  const model = fitDemand(book, soldSeries(book, sales, AS_OF), AS_OF);
  const day = model.on(addDays(AS_OF, 1)).find(({ what }) => what === DRINK);
  return { out: model.out, mean: day?.mean ?? 0 };
}

describe("days on which a drink could not be made", () => {
  it("are those from a count of nothing until the next delivery, for the drinks that need the item", () => {
    expect(expectedOn(facts({})).out).toEqual([
      { item: "Gin", from: "2026-02-23", until: "2026-02-27", drinks: [DRINK] },
    ]);
  });

  it("do not lower what is expected, as they would without the count", () => {
    const blind = expectedOn(facts({ counts: [] }));
    expect(blind.out).toEqual([]);
    expect(expectedOn(facts({})).mean).toBeGreaterThan(1.05 * blind.mean);
  });

  it("are none where the drink was sold all the same: the count was wrong then, not the guests", () => {
    expect(expectedOn(facts({}), EIGHT_WEEKS).out).toEqual([]);
  });

  it("are none where the next count finds some that nothing brought", () => {
    const found = { ...aCount("Gin", 1400), count: "Found", at: "2026-02-26T09:00:00Z" };
    expect(expectedOn(facts({ counts: [zero, found] })).out).toEqual([]);
  });

  it("are none where some was counted, where an area was missed, or for what is made in house", () => {
    expect(expectedOn(facts({ counts: [{ ...zero, amount: 30 }] })).out).toEqual([]);
    const areas = [
      { area: "Back bar", item: "Gin", shelf: 1 },
      { area: "Cellar", item: "Gin", shelf: 1 },
    ];
    expect(expectedOn(facts({ areas })).out).toEqual([]);
    const book = facts({});
    const items = book.book.items.map((item) => (item.name === "Gin" ? { ...item, inHouse: true } : item));
    expect(expectedOn(factsOf({ ...book.book, items })).out).toEqual([]);
  });

  it("are known only from the count on", () => {
    const book = facts({ counts: [{ ...zero, at: "2026-03-05T09:00:00Z" }] });
    expect(expectedOn(book).out).toEqual([]);
  });

  it("are left out of the score, and said in the report", () => {
    const book = facts({});
    const series = soldSeries(book, HELD_UP, AS_OF);
    const [seen, blind] = [book, facts({ counts: [] })].map((own) => backtest(own, series, AS_OF));
    expect(seen?.outDrinkDays).toBe(3);
    expect(blind?.outDrinkDays).toBe(0);
    expect(seen?.wape ?? 1).toBeLessThan(blind?.wape ?? 0);
    const report = forecast({ facts: book, sales: HELD_UP, asOf: AS_OF, from: AS_OF, days: 1 });
    expect(report.out).toHaveLength(1);
  });
});
