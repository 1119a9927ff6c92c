import { describe, expect, it } from "vitest";
import type { Book } from "#engine/book.ts";
import { handBook } from "#tests/support/hand-bar.ts";
import { aTestApp, type TestApp } from "#tests/support/test-app.ts";

/** A bar whose gin is counted in bottles on two Mondays, nothing sold between, and a bottle gone. */
function bottleGone(): Book {
  const book = handBook();
  book.suppliers.push({ name: "Quay", email: "", minimumValueMinor: null, minimumCases: null });
  book.packs.push({
    item: "Gin",
    pack: "700 ml",
    amount: 700,
    unit: "ml",
    from: null,
    perCase: 1,
    supplier: "Quay",
    code: "",
    gtin: "",
    price: 21,
    pricePer: "container",
    split: true,
    emptyG: null,
    fullG: null,
    depositMinor: null,
  });
  const row = { area: "Bar", item: "Gin", pack: "700 ml", grossG: [], amount: null, unit: null, by: "" };
  book.counts.push(
    { ...row, count: "First", at: "2026-03-02T10:00:00Z", full: 4, parts: [0.5] },
    { ...row, count: "Second", at: "2026-03-09T10:00:00Z", full: 3, parts: [0.5] },
  );
  return book;
}

type Report = {
  items: { item: string; unexplained: number; losses: number }[];
  causes: { kind: string; what: string; probability: number; correction: { words: string } | null }[];
  spotCount: { items: { item: string }[]; minutes: number };
};

const variance = async ({ get }: TestApp) => (await get("/api/reports/variance")).body as Report;

const counts = { opening: "First", closing: "Second" };

describe("settling a cause", () => {
  it("posts the correction of what was it, and the variance is gone; taking it back brings it back", async () => {
    const bar = await aTestApp(bottleGone());
    const before = await variance(bar);
    expect(before.items[0]?.unexplained).toBe(700);
    expect(before.causes.find(({ kind }) => kind === "breakage")?.correction?.words).toMatch(
      /1 × 700 ml of Gin/,
    );
    const asked = { counts, cause: { kind: "breakage", what: "Gin" }, by: "Kit" };
    const { status, body } = await bar.post("/api/causes/settle", asked);
    expect(status).toBe(200);
    const settled = await variance(bar);
    expect(settled.items[0]).toMatchObject({ unexplained: 0, losses: 700 });
    expect(settled.causes).toEqual([]);
    expect((await bar.get("/api/causes/settled")).body).toMatchObject([
      { answer: "confirmed", cause: { kind: "breakage", what: "Gin", size: 1 }, settledBy: "Kit" },
    ]);
    const { id } = body as { id: number };
    expect((await bar.post(`/api/causes/settled/${id}/take-back`, {})).status).toBe(200);
    expect((await variance(bar)).items[0]?.unexplained).toBe(700);
    expect((await bar.get("/api/causes/settled")).body).toEqual([]);
    expect((await bar.post(`/api/causes/settled/${id}/take-back`, {})).status).toBe(422);
  });

  it("corrects the count row of a miscount, and puts it back", async () => {
    const bar = await aTestApp(bottleGone());
    const cause = { kind: "container-miscounted", what: "Gin", count: "Second" };
    const { body } = await bar.post("/api/causes/settle", { counts, cause });
    expect((await variance(bar)).items[0]?.unexplained).toBe(0);
    expect((await bar.get("/api/counts/rows/second")).body).toMatchObject([{ full: 4, parts: [0.5] }]);
    const { id } = body as { id: number };
    await bar.post(`/api/causes/settled/${id}/take-back`, {});
    expect((await bar.get("/api/counts/rows/second")).body).toMatchObject([{ full: 3, parts: [0.5] }]);
  });

  it("remembers what it was not: the other explanations take its place", async () => {
    const bar = await aTestApp(bottleGone());
    const chance = async () =>
      (await variance(bar)).causes.find(({ kind }) => kind === "breakage")?.probability ?? 0;
    const before = await chance();
    await bar.post("/api/causes/settle", {
      counts,
      cause: { kind: "breakage", what: "Gin" },
      answer: "refuted",
    });
    expect(await chance()).toBeLessThan(before / 5);
    expect((await variance(bar)).items[0]?.unexplained).toBe(700);
  });

  it("refuses what the report does not say, and changes nothing", async () => {
    const bar = await aTestApp(bottleGone());
    const answer = await bar.post("/api/causes/settle", { counts, cause: { kind: "breakage", what: "Rum" } });
    expect(answer.status).toBe(422);
    expect((await bar.get("/api/causes/settled")).body).toEqual([]);
  });
});

it("proposes the bottle for a spot count, since counting it again decides", async () => {
  const { spotCount } = await variance(await aTestApp(bottleGone()));
  expect(spotCount.items.map(({ item }) => item)).toEqual(["Gin"]);
  expect(spotCount.minutes).toBeGreaterThan(0);
});

it("gives the owner's page with what to check and what was settled", async () => {
  const bar = await aTestApp(bottleGone());
  const page = (await bar.get("/api/reports/owner")).body as {
    checks: { what: string; cost: number }[];
    periods: { closing: string; cost: number }[];
    caution: string;
  };
  // 700 ml at 21.00 a bottle.
  expect(page.checks[0]).toMatchObject({ what: "Gin" });
  expect(page.checks[0]?.cost).toBeCloseTo(21, 6);
  expect(page.periods).toMatchObject([{ closing: "Second" }]);
  expect(page.caution).toMatch(/no accusation/);
  await bar.post("/api/causes/settle", { counts, cause: { kind: "breakage", what: "Gin" } });
  expect((await bar.get("/api/reports/owner")).body).toMatchObject({
    checks: [],
    settled: [{ answer: "confirmed", words: expect.stringContaining("broken") }],
  });
});
