import { describe, expect, it } from "vitest";
import { alikeWeeks } from "../demand/sold-days.ts";
import { aDelivery, anOrder, orderBook, SOURS } from "../orders/order-bar.ts";
import { aTestApp } from "../support/test-app.ts";

/** The order bar with eight weeks of sales up to the Monday of its count. */
async function aPlannedBar() {
  const lines = alikeWeeks({ monday: "2026-01-05", weeks: 8, ringName: "House sour", week: SOURS }).map(
    ({ businessDate, ringName, modifiers, quantity }) => ({
      businessDate,
      at: null,
      ringName,
      modifiers,
      quantity,
      netMinor: 1200 * quantity,
      grossMinor: null,
      check: null,
      lineNo: null,
    }),
  );
  return aTestApp(orderBook({ orders: [anOrder()], deliveries: [aDelivery({ quantity: 1 })] }), lines);
}

describe("looking back", () => {
  it("sets forecast against fact, each day forecast before its week", async () => {
    const { get } = await aPlannedBar();
    const { status, body } = await get("/api/reports/forecast/past?what=house%20SOUR");
    expect(status).toBe(200);
    expect(body).toMatchObject({ what: "House sour" });
    const { days } = body as { days: { date: string; sold: number; mean: number; isInside: boolean }[] };
    expect(days.length).toBeGreaterThan(20);
    expect(days.map(({ date }) => date)).toEqual(days.map(({ date }) => date).sort());
    expect(days.every(({ isInside }) => isInside)).toBe(true);
  });

  it("orders the last weeks anew, against two weeks' use and against pars by hand", async () => {
    const { get, post } = await aPlannedBar();
    const tried = (await get("/api/reports/replay?weeks=2")).body;
    expect(tried).toMatchObject({ weeks: 2, currency: "EUR", handSet: null, twoWeeks: { itemNightsOut: 0 } });
    const byHand = (await post("/api/reports/replay", { weeks: 2, pars: { gin: 100 } })).body;
    expect(byHand).toMatchObject({ handSet: { given: 1 } });
  });

  it("needs a past to look back on", async () => {
    const { get, post } = await aTestApp(orderBook());
    expect(await get("/api/reports/replay")).toMatchObject({
      status: 404,
      body: { problems: [{ field: "more-sales" }] },
    });
    expect((await post("/api/reports/replay", { pars: { Jinn: 100 } })).body).toMatchObject({
      problems: [{ message: 'pars: no item is named "Jinn".' }],
    });
  });
});

describe("looking ahead", () => {
  it("tells what a party would take, and keeps nothing", async () => {
    const { get, post } = await aPlannedBar();
    const before = (await get("/api/reports/forecast")).body;
    const party = { kind: "party", date: "2026-03-07", guests: 120, drinksEach: 3, drinks: [] };
    const { status, body } = await post("/api/reports/what-if", { changes: [party], days: 7 });
    expect(status).toBe(200);
    const { totals } = body as { totals: { serves: { before: number; after: number } } };
    expect(totals.serves.after - totals.serves.before).toBeCloseTo(360, 6);
    expect((await get("/api/reports/forecast")).body).toEqual(before);
  });

  it.each([
    [{ kind: "price", drink: "Nothing", price: 3 }, "No drink is named"],
    [{ kind: "closed", date: "2026-02-30" }, "no such date"],
    [{ kind: "menu", from: "2026-03-04", off: [], on: [{ drink: "Shot", share: 1 }] }, "leave a share"],
    [{ kind: "party", date: "2026-03-07", guests: -1, drinksEach: 3, drinks: [] }, ""],
  ])("refuses %o with its reason", async (change, reason) => {
    const { post } = await aPlannedBar();
    const { status, body } = await post("/api/reports/what-if", { changes: [change] });
    expect(status).toBe(422);
    expect(body).toMatchObject({ problems: [{ message: expect.stringContaining(reason) }] });
  });
});

describe("a delivery against its order", () => {
  it("is checked line by line", async () => {
    const { get } = await aPlannedBar();
    const { body } = await get("/api/orders/check?order=A1");
    expect(body).toMatchObject([
      { order: "A1", invoices: ["Q-1"], lines: [{ item: "Gin", ordered: 2, received: 1, state: "waiting" }] },
    ]);
    expect((await get("/api/orders/check?order=B9")).status).toBe(422);
    expect((await get("/api/orders/late")).body).toEqual([]);
  });
});

it("shows the par of what need not be ordered", async () => {
  const { get } = await aPlannedBar();
  const { items } = (await get("/api/stock")).body as { items: { item: string; par: number | null }[] };
  expect(items.find(({ item }) => item === "Gin")?.par).toBeGreaterThan(0);
});
