import { expect, it } from "vitest";
import { handBook } from "#tests/support/hand-bar.ts";
import { aTestApp } from "#tests/support/test-app.ts";

const loss = {
  at: "2026-03-05T20:00:00Z",
  kind: "spill",
  what: "Gin",
  amount: 50,
  unit: "ml",
  by: "AB",
  note: "",
};

it("lists a loss that was taken back apart from those that hold, with the reason", async () => {
  const { get, post } = await aTestApp(handBook());
  const { body } = await post("/api/losses", loss);
  const { id } = body as { id: number };
  await post(`/api/entries/losses/${id}/withdraw`, { reason: "entered twice", by: "AB" });
  expect((await get("/api/entries/losses")).body).toEqual([]);
  expect((await get("/api/entries/losses?withdrawn=true")).body).toMatchObject([
    { fact: loss, stamp: { reason: "entered twice", enteredBy: "AB" } },
  ]);
});

it("takes a till name's meaning back, once", async () => {
  const { get, post } = await aTestApp(handBook());
  const ring = {
    ringName: "GIN SHOT",
    soldAs: { kind: "item", item: "Gin" },
    serves: 1,
    amount: 40,
    unit: "ml",
  };
  const names = async () =>
    ((await get("/api/catalogue")).body as { ringNames: { ringName: string }[] }).ringNames.map(
      ({ ringName }) => ringName,
    );
  await post("/api/ring-names", ring);
  expect(await names()).toContain("GIN SHOT");
  expect((await post("/api/ring-names/remove", { ringName: "gin shot" })).status).toBe(200);
  expect(await names()).not.toContain("GIN SHOT");
  expect((await post("/api/ring-names/remove", { ringName: "gin shot" })).status).toBe(404);
});

it("writes a shelf order, and refuses an item twice or unknown with nothing changed", async () => {
  const { get, post } = await aTestApp(handBook());
  const shelf = async () => ((await get("/api/catalogue")).body as { areas: unknown[] }).areas;
  expect((await post("/api/areas", { area: "Bar", items: ["Gin"] })).status).toBe(200);
  expect(await shelf()).toEqual([{ area: "Bar", item: "Gin", shelf: 1 }]);
  expect((await post("/api/areas", { area: "Bar", items: ["Gin", "Gin"] })).status).toBe(422);
  expect((await post("/api/areas", { area: "Bar", items: ["Gin", "Ghost"] })).status).toBeGreaterThan(399);
  expect(await shelf()).toEqual([{ area: "Bar", item: "Gin", shelf: 1 }]);
});

it("sets up an empty database once", async () => {
  const { get, post } = await aTestApp();
  const venue = {
    name: "The Tin Heron",
    currency: "eur",
    timeZone: "Europe/Lisbon",
    dayEnds: "04:00",
    oz: "us",
    show: "ml",
  };
  expect((await get("/api/venue")).status).toBe(404);
  expect((await post("/api/venue", { ...venue, currency: "XXQ" })).status).toBe(422);
  expect((await post("/api/venue", venue)).status).toBe(200);
  expect((await get("/api/venue")).body).toMatchObject({ name: "The Tin Heron", currency: "EUR" });
  expect((await post("/api/venue", { ...venue, name: "Another" })).status).toBe(422);
  expect((await get("/api/venue")).body).toMatchObject({ name: "The Tin Heron" });
});

it("keeps two findings of one shelf apart until somebody who saw both chooses", async () => {
  const { get, post } = await aTestApp(handBook());
  const row = {
    count: "Week",
    at: "2026-03-09T10:00:00Z",
    area: "Bar",
    item: "Gin",
    pack: null,
    full: null,
    parts: [],
    grossG: [],
    amount: 500,
    unit: "ml",
    by: "AB",
  };
  const other = { ...row, at: "2026-03-09T10:02:00Z", amount: 700, by: "CD" };
  const rows = async () => (await get("/api/counts/rows/Week")).body;
  await post("/api/counts/entries?seen=none", row);
  await post("/api/counts/entries?seen=none", { ...row, by: "EF" });
  expect(await rows()).toMatchObject([{ amount: 500, by: "EF", apart: [] }]);
  const { body } = await post("/api/counts/entries?seen=none", other);
  expect(await rows()).toMatchObject([{ amount: 700, by: "CD", apart: [{ amount: 500 }] }]);
  await post("/api/counts/entries?seen=none", other);
  expect(await rows()).toMatchObject([{ amount: 700, apart: [{ amount: 500 }] }]);
  await post(`/api/counts/entries?seen=${(body as { id: number }).id}`, other);
  expect(await rows()).toMatchObject([{ amount: 700, by: "CD", apart: [] }]);
});
