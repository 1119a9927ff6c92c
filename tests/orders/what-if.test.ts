import { describe, expect, it } from "vitest";
import type { Change } from "#engine/demand/changed-book.ts";
import { factsOf } from "#engine/facts.ts";
import { type WhatIf, whatIf } from "#engine/orders/what-if.ts";
import { aDrink, specLines } from "../support/hand-bar.ts";
import { AT, EIGHT_WEEKS, orderBook } from "./order-bar.ts";

const base = orderBook();
const facts = factsOf({
  ...base,
  drinks: [...base.drinks, aDrink("New fizz", 1000)],
  specs: [...base.specs, ...specLines("New fizz", "2026-01-01", ["40 ml Gin", "100 ml Soda"])],
});

function asked(changes: Change[], days = 7): WhatIf {
  return whatIf({ facts, sales: EIGHT_WEEKS, at: AT, changes, days });
}

const SUNDAY = "2026-03-08";

describe("a party of 120 at three drinks each, on Saturday", () => {
  const party = asked([
    {
      kind: "party",
      date: "2026-03-07",
      guests: 120,
      drinksEach: 3,
      drinks: [{ drink: "House sour", share: 1 }],
    },
  ]);

  it("adds 360 sours to the week, and 60 ml of gin for each", () => {
    expect(party.to).toBe(SUNDAY);
    const sours = party.drinks.find(({ what }) => what === "House sour");
    expect((sours?.after ?? 0) - (sours?.before ?? 0)).toBeCloseTo(360, 6);
    const gin = party.items.find(({ item }) => item === "Gin");
    expect((gin?.after ?? 0) - (gin?.before ?? 0)).toBeCloseTo(360 * 60, 3);
    expect(gin?.moneyMore).toBeCloseTo(360 * 60 * 0.03, 3);
  });

  it("names the last cut-off whose delivery comes before the day", () => {
    const gin = party.items.find(({ item }) => item === "Gin");
    expect(gin).toMatchObject({ supplier: "Quay Spirits", orderBy: "2026-03-05T15:00:00Z" });
  });

  it("earns what the drinks bring less what goes into them", () => {
    const { sales, cost, contribution, serves } = party.totals;
    expect(serves.after - serves.before).toBeCloseTo(360, 6);
    // The sales of the hand bar took 10.00 a drink.
    expect(sales.after - sales.before).toBeCloseTo(3600, 4);
    expect(contribution.after - contribution.before).toBeCloseTo(3600 - (cost.after - cost.before), 6);
  });

  it("drinks as the other guests do where nobody says what", () => {
    const open = asked([{ kind: "party", date: "2026-03-07", guests: 100, drinksEach: 2, drinks: [] }]);
    const more = open.drinks.map(({ what, before, after }) => [what, (after - before) / before] as const);
    expect(open.totals.serves.after - open.totals.serves.before).toBeCloseTo(200, 6);
    expect(more.map(([what]) => what).sort()).toEqual(["House sour", "Old hand"]);
    expect(more[0]?.[1]).toBeCloseTo(more[1]?.[1] ?? 0, 6);
  });
});

describe("a closed Saturday", () => {
  const closed = asked([{ kind: "closed", date: "2026-03-07" }]);

  it("takes out what a Saturday sells: 60 sours and 15 old hands", () => {
    const lost = new Map(closed.drinks.map(({ what, before, after }) => [what, before - after]));
    expect((lost.get("House sour") ?? 0) / 60).toBeCloseTo(1, 1);
    expect((lost.get("Old hand") ?? 0) / 15).toBeCloseTo(1, 1);
    expect(closed.totals.contribution.after).toBeLessThan(closed.totals.contribution.before);
  });
});

describe("a closed Wednesday that the next order has to last over", () => {
  it("orders less", () => {
    const { totals, order } = asked([{ kind: "closed", date: "2026-03-04" }]);
    expect(totals.order.after).toBeLessThan(totals.order.before);
    for (const { before, after } of order) expect(after).toBeLessThan(before);
  });
});

describe("a price", () => {
  it("moves the money and not the guests", () => {
    const { drinks, items, order, totals } = asked([{ kind: "price", drink: "House sour", price: 13.2 }]);
    expect([drinks, items, order]).toEqual([[], [], []]);
    expect(totals.cost.after).toBe(totals.cost.before);
    // The sour is 12.00 on the menu, and a tenth more is a tenth more of what its guests pay.
    const sours = 20 + 24 + 30 + 44 + 60 + 28;
    expect((totals.sales.after - totals.sales.before) / (sours * 10 * 0.1)).toBeCloseTo(1, 1);
  });
});

describe("a new menu from Wednesday", () => {
  const menu = asked([
    { kind: "menu", from: "2026-03-04", off: ["Old hand"], on: [{ drink: "New fizz", share: 0.25 }] },
  ]);
  const drink = (name: string) => menu.drinks.find(({ what }) => what === name);

  it("sells the old drink until then, and the new one from then on", () => {
    expect((drink("Old hand")?.after ?? 0) / 5).toBeCloseTo(1, 1);
    expect(drink("New fizz")?.before).toBe(0);
    const usual = 24 + 30 + 44 + 60 + 28 + 6 + 8 + 11 + 15 + 7;
    expect((drink("New fizz")?.after ?? 0) / (0.25 * usual)).toBeCloseTo(1, 1);
  });

  it("asks for less rum and for soda that nothing asked for before", () => {
    const need = (name: string) => menu.items.find(({ item }) => item === name);
    expect(need("Rum")?.after).toBeLessThan(need("Rum")?.before ?? 0);
    expect(need("Soda")).toMatchObject({ before: 0 });
    expect(need("Soda")?.after).toBeCloseTo(100 * (drink("New fizz")?.after ?? 0), 6);
  });
});

it("leaves the book as it was", () => {
  const before = structuredClone(facts.book);
  asked([{ kind: "menu", from: "2026-03-04", off: ["Old hand"], on: [] }]);
  expect(facts.book).toEqual(before);
});
