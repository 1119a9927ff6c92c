import { afterEach, beforeEach, describe, expect, it } from "vitest";
import { readBook } from "#db/book/read-book.ts";
import type { Act } from "#db/history-repository.ts";
import { closeDatabase } from "#db/open.ts";
import { DELIVERY } from "#tests/support/acts.ts";
import { smallBook } from "#tests/support/small-book.ts";
import { aTestApp, type TestApp } from "#tests/support/test-app.ts";

let app: TestApp;
beforeEach(async () => {
  app = await aTestApp(readBook(smallBook()).book);
});
afterEach(() => closeDatabase(app.db));

type Shown = { acts: (Act & { atLocal: string })[]; more: boolean };
const history = async (query = "") => (await app.get(`/api/history${query}`)).body as Shown;

describe("the history over HTTP", () => {
  it("lists acts with the venue's time, by thing and by the venue's day, a page at a time", async () => {
    await app.post("/api/deliveries", [DELIVERY]);
    await app.post("/api/ring-names/remove", { ringName: "Cloakroom" });
    const { acts } = await history("?subject=dry%20gin");
    expect(acts).toHaveLength(1);
    expect(acts[0]).toMatchObject({
      act: "delivery entered",
      who: "Demo owner",
      at: "2026-03-09T12:00:00Z",
      atLocal: "2026-03-09 12:00",
      summary: "6 × 1 L Dry gin from Quayside Drinks (Q-130), dated 2026-03-09 10:30",
    });
    expect((await history("?from=2026-03-10&act=delivery%20entered")).acts).toEqual([]);
    expect((await history("?from=2026-03-09&to=2026-03-09&act=delivery%20entered")).acts).toHaveLength(1);
    const first = await history("?limit=1");
    expect(first).toMatchObject({ more: true, acts: [{ act: "ring name changed" }] });
    expect((await history(`?limit=2&before=${first.acts[0]?.seq}`)).more).toBe(false);
  });

  it("undoes an act, and says why it cannot", async () => {
    await app.post("/api/deliveries", [DELIVERY]);
    expect(await app.post("/api/history/2/undo", { reason: "never came" })).toMatchObject({
      status: 200,
      body: { seq: 3, summary: expect.stringContaining("Undone: 6 × 1 L Dry gin") },
    });
    expect(await app.post("/api/history/2/undo", {})).toMatchObject({
      status: 422,
      body: { problems: [{ message: "This was undone already (no. 3)." }] },
    });
    expect((await app.post("/api/history/99/undo", {})).status).toBe(404);
  });
});

describe("the closed past over HTTP", () => {
  it("is closed, refuses what lies in it, and is reopened with a reason", async () => {
    expect((await app.get("/api/closing")).body).toEqual({ closed: null, next: null });
    await app.post("/api/closing", { through: "2026-03-08" });
    expect((await app.get("/api/closing")).body).toMatchObject({
      closed: { through: "2026-03-08", closedBy: "Demo owner", closedAtLocal: "2026-03-09 12:00" },
    });
    const late = [{ ...DELIVERY, at: "2026-03-06T10:00:00Z" }];
    expect(await app.post("/api/deliveries", late)).toMatchObject({
      status: 422,
      body: { problems: [{ message: expect.stringContaining("the week to 2026-03-08 is closed") }] },
    });
    expect((await app.post("/api/closing/reopen", { reason: " " })).status).toBe(422);
    expect((await app.post("/api/closing/reopen", { reason: "invoice came late" })).body).toEqual({
      closed: null,
    });
    expect((await app.post("/api/deliveries", late)).status).toBe(200);
  });

  it("is offered when two counts are explained, up to the last day before the closing count", async () => {
    await app.post("/api/counts/entries", {
      count: "Week 10",
      at: "2026-03-09T10:00:00Z",
      area: "Back bar",
      item: "Soda",
      pack: null,
      full: 48,
      parts: [],
      grossG: [],
      amount: null,
      unit: null,
      by: "Ana",
    });
    const { body } = await app.get("/api/closing");
    expect(body).toMatchObject({ next: { through: "2026-03-08", opening: "Week 9", closing: "Week 10" } });
    await app.post("/api/closing", { through: "2026-03-08" });
    const { steps } = (await app.get("/api/week")).body as { steps: { id: string; state: string }[] };
    expect(steps.find(({ id }) => id === "close")).toMatchObject({ state: "done" });
  });
});
