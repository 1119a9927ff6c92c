import { describe, expect, it } from "vitest";
import type { Book } from "#engine/book.ts";
import { aSale, handBook } from "#tests/support/hand-bar.ts";
import { aTestApp } from "#tests/support/test-app.ts";

/** The hand bar with gin in bottles, two counts, a week of sales between them, and a supplier for it. */
function weekOfGin(): { book: Book; lines: NonNullable<Parameters<typeof aTestApp>[1]> } {
  const book = handBook();
  book.suppliers.push({ name: "Quay", email: "", minimumValueMinor: null, minimumCases: null });
  book.supplierDays.push({
    supplier: "Quay",
    orderDay: "Mon",
    orderBy: "16:00",
    deliveryDay: "Tue",
    deliveryAt: "10:00",
  });
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
    { ...row, count: "Second", at: "2026-03-09T10:00:00Z", full: 2, parts: [0.2] },
  );
  const sold = [aSale("2026-03-02T20:00:00Z", "House sour", 10), aSale("2026-03-05T20:00:00Z", "Cooler", 12)];
  const lines = sold.map(({ businessDate, at, ringName, quantity, netMinor }) => ({
    businessDate,
    at,
    ringName,
    modifiers: "",
    quantity,
    grossMinor: null,
    netMinor,
    check: null,
    lineNo: null,
  }));
  return { book, lines };
}

async function aBar() {
  const { book, lines } = weekOfGin();
  return aTestApp(book, lines);
}

describe("the API", () => {
  it("gives the variance worked by hand", async () => {
    const { get } = await aBar();
    const { status, body } = await get("/api/reports/variance");
    expect(status).toBe(200);
    // Used 3150 − 1540; expected 10 × 50 + 12 × 40; at 0.03 a ml.
    expect(body).toMatchObject({
      opening: "First",
      closing: "Second",
      items: [{ item: "Gin", used: 1610, expected: 980, losses: 0, unexplained: 630 }],
    });
  });

  it("judges no week before its sales are in", async () => {
    const { book, lines } = weekOfGin();
    type Week = { isEarly: boolean; steps: { id: string; state: string; detail: string }[] };
    const weekOf = async (sold: typeof lines) =>
      (await (await aTestApp(book, sold)).get("/api/week")).body as Week;
    const stepOf = ({ steps }: Week) => steps.find(({ id }) => id === "variance");
    // Sold up to Thursday the 5th, counted on Monday the 9th.
    const early = await weekOf(lines);
    expect(early.isEarly).toBe(true);
    expect(stepOf(early)).toMatchObject({
      state: "attention",
      detail: "Sales before the last count are missing. Read them in first.",
    });
    const [line] = lines;
    if (line === undefined) throw new Error("The week has no sale.");
    const later = ["06", "07", "08"].map((day) => ({
      ...line,
      businessDate: `2026-03-${day}`,
      at: `2026-03-${day}T20:00:00Z`,
    }));
    const whole = await weekOf([...lines, ...later]);
    expect(whole.isEarly).toBe(false);
    expect(stepOf(whole)?.detail).toMatch(/^All 1 items are|of 1 items stand out/);
  });

  it("lets a count of a few items end no week, and says how far it got", async () => {
    const { book, lines } = weekOfGin();
    const gin = book.counts.filter(({ item }) => item === "Gin");
    const others = [...book.items].filter(({ name }) => name !== "Gin").slice(0, 8);
    expect(others.length).toBeGreaterThanOrEqual(4);
    book.counts.push(
      ...gin.flatMap((row) =>
        others.map(({ name, base }) => ({
          ...row,
          item: name,
          pack: null,
          full: null,
          parts: [],
          amount: 500,
          unit: base,
        })),
      ),
      { ...(gin[1] as (typeof gin)[0]), count: "Gin again", at: "2026-03-09T11:00:00Z", full: 1 },
    );
    const { get } = await aTestApp(book, lines);
    expect((await get("/api/counts")).body).toMatchObject([
      { name: "Gin again", items: 1, isSpot: true },
      { name: "Second", isSpot: false },
      { name: "First", isSpot: false },
    ]);
    const between = async (query: string) => {
      const { body } = await get(`/api/reports/variance${query}`);
      const { opening, closing } = body as { opening: string; closing: string };
      return [opening, closing];
    };
    expect(await between("?whole=true")).toEqual(["First", "Second"]);
    expect(await between("")).toEqual(["Second", "Gin again"]);
    expect(await between("?whole=true&count=Gin%20again")).toEqual(["Second", "Gin again"]);
    const week = (await get("/api/week")).body as { latestCount: unknown; steps: { detail: string }[] };
    expect(week.latestCount).toMatchObject({ name: "Second" });
    expect(week.steps[0]?.detail).toBe(
      `Last counted whole today; "Gin again" holds 1 of ${others.length + 1} items.`,
    );
    const owner = async (query: string) => (await get(`/api/reports/owner${query}`)).body;
    const periods = [{ closing: "Second" }];
    expect(await owner("?whole=true")).toMatchObject({ compared: others.length + 1, periods });
    // One item's cost is no share of all sales, and what a spot count split off ends no period.
    expect(await owner("?count=Gin%20again")).toMatchObject({
      ...{ compared: 1, periods, specCostPct: null, totals: { pourCostPct: null } },
    });
    expect(((await owner("?count=Gin%20again")) as { periods: unknown[] }).periods).toHaveLength(1);
  });

  it("says of a young book what it needs, not that something is wrong", async () => {
    const { get } = await aTestApp({ ...handBook(), counts: [], deliveries: [], batches: [], losses: [] });
    for (const [path, field] of [
      ["/api/reports/order", "first-fact"],
      ["/api/week", "first-fact"],
      ["/api/reports/variance", "second-count"],
      ["/api/reports/owner", "second-count"],
    ] as const) {
      expect(await get(path), path).toMatchObject({ status: 404, body: { problems: [{ field }] } });
    }
  });

  it("writes a supplier with its days, in place of those it had", async () => {
    const { get, post } = await aBar();
    const day = { orderDay: "Thu", orderBy: "18:00", deliveryDay: "Fri", deliveryAt: "09:00" };
    const facts = { email: "", minimumValueMinor: null, minimumCases: null };
    expect(
      (await post("/api/suppliers", { name: "Fern", ...facts, days: [day, { ...day, orderDay: "Mon" }] }))
        .status,
    ).toBe(200);
    expect((await post("/api/suppliers", { name: "Quay", ...facts, days: [day] })).status).toBe(200);
    const { supplierDays } = (await get("/api/catalogue")).body as { supplierDays: unknown[] };
    expect(supplierDays).toEqual([
      { supplier: "Fern", ...day },
      { supplier: "Fern", ...day, orderDay: "Mon" },
      { supplier: "Quay", ...day },
    ]);
    const { acts } = (await get("/api/history")).body as { acts: { act: string }[] };
    expect(acts.map(({ act }) => act).filter((act) => act.startsWith("supplier"))).toEqual([
      "supplier changed",
      "supplier changed",
    ]);
    const wrong = await post("/api/suppliers", { name: " ", ...facts, days: [{ ...day, orderBy: "6 pm" }] });
    expect(wrong.status).toBe(422);
  });

  it("takes a delivery in, corrects it and takes it back, and the variance follows", async () => {
    const { get, post } = await aBar();
    const delivery = {
      at: "2026-03-04T10:00:00Z",
      supplier: "Quay",
      invoice: "17",
      item: "Gin",
      pack: "700 ml",
      quantity: 1,
      of: "container",
      priceTotalMinor: 2100,
      by: "Kit",
    };
    const received = async () => {
      const { body } = await get("/api/reports/variance");
      return (body as { items: { received: number }[] }).items[0]?.received;
    };
    const entered = (await post("/api/deliveries", [delivery])).body as { ids: number[] };
    expect(await received()).toBe(700);
    const corrected = (
      await post(`/api/entries/deliveries/${entered.ids[0]}/correct`, {
        facts: { ...delivery, quantity: 3 },
        reason: "three came",
      })
    ).body as { id: number };
    expect(await received()).toBe(2100);
    expect(
      (await post(`/api/entries/deliveries/${entered.ids[0]}/correct`, { facts: delivery, reason: "again" }))
        .status,
    ).toBe(422);
    expect((await post(`/api/entries/deliveries/${corrected.id}/withdraw`, { reason: "" })).status).toBe(422);
    expect(
      (await post(`/api/entries/deliveries/${corrected.id}/withdraw`, { reason: "other bar's" })).status,
    ).toBe(200);
    expect(await received()).toBe(0);
  });

  it("enters a count row by row, a later row in place of the earlier", async () => {
    const { get, post } = await aBar();
    const row = {
      count: "Third",
      at: "2026-03-10T10:00:00Z",
      area: "Bar",
      item: "Gin",
      pack: "700 ml",
      full: 1,
      parts: [],
      grossG: [],
      amount: null,
      unit: null,
      by: "",
    };
    expect((await post("/api/counts/entries", row)).status).toBe(200);
    expect((await post("/api/counts/entries", { ...row, full: 2, parts: [0.3] })).status).toBe(200);
    expect((await get("/api/counts/rows/third")).body).toMatchObject([{ full: 2, parts: [0.3] }]);
    expect((await get("/api/counts")).body).toMatchObject([
      { name: "Third", items: 1 },
      { name: "Second" },
      { name: "First" },
    ]);
  });

  it("reads a sales file in once, says what it does not know, and takes it back", async () => {
    const { get, send, post } = await aBar();
    const text =
      "Date,Time,Item,Qty,Net\r\n2026-03-13,20:00,House Sour,2,24.00\r\n2026-03-13,21:00,Huose Sour,1,12.00\r\n2026-03-14,21:00,Shot,1,6.00\r\n";
    const form = () => {
      const data = new FormData();
      data.append("file", new File([text], "week.csv", { type: "text/csv" }));
      return data;
    };
    const preview = await send("/api/sales/preview", form());
    expect(preview.body).toMatchObject({
      question: null,
      report: {
        lines: 3,
        new: 3,
        known: 0,
        unmapped: [
          {
            ringName: "Huose Sour",
            quantity: 1,
            net: 12,
            suggestions: [{ name: "House sour", kind: "drink" }],
          },
        ],
      },
    });
    const first = (await send("/api/sales/import", form())).body as { importId: number };
    expect(first).toMatchObject({ lines: 3, new: 3 });
    expect((await send("/api/sales/import", form())).body).toMatchObject({ lines: 3, new: 0, known: 3 });
    expect((await get("/api/sales/days?from=2026-03-13&to=2026-03-14")).body).toEqual([
      { date: "2026-03-13", quantity: 3, net: 36 },
      { date: "2026-03-14", quantity: 1, net: 6 },
    ]);
    await post("/api/ring-names", {
      ringName: "Huose Sour",
      soldAs: { kind: "drink", drink: "House sour" },
      serves: 1,
      amount: null,
      unit: null,
    });
    expect((await get("/api/sales/unmapped")).body).toMatchObject({ unmapped: [], coverage: 1 });
    expect((await post(`/api/sales/imports/${first.importId}/undo`, {})).status).toBe(200);
    expect((await get("/api/sales/days?from=2026-03-13&to=2026-03-14")).body).toHaveLength(2); // the second import still holds it
  });

  it("writes a new version of a spec, and old days keep the old one", async () => {
    const { get, post } = await aBar();
    const line = { line: 1, amount: 100, unit: "ml", item: "Gin", orItems: [], note: "" };
    expect((await post("/api/specs", { makes: "Cooler", from: "2026-03-06", lines: [line] })).status).toBe(
      200,
    );
    const gin = async (from: string, to: string) => {
      const { body } = await get(`/api/reports/use?from=${from}&to=${to}`);
      return (body as { items: { item: string; expected: number }[] }).items.find(
        ({ item }) => item === "Gin",
      )?.expected;
    };
    expect(await gin("2026-03-05", "2026-03-05")).toBe(480);
    const wrong = await post("/api/specs", {
      makes: "Cooler",
      from: "2026-03-06",
      lines: [{ ...line, item: "Jin" }],
    });
    expect(wrong.status).toBe(404);
    expect(wrong.body).toMatchObject({ problems: [{ message: expect.stringContaining("Jin") }] });
  });

  it("plans the order and places it", async () => {
    const { get, post } = await aBar();
    const { body } = await get("/api/reports/order?at=2026-03-09%2012:00");
    expect(body).toMatchObject({
      at: "2026-03-09 12:00",
      suppliers: [
        {
          supplier: "Quay",
          orderBy: "2026-03-09 16:00",
          arrives: "2026-03-10 10:00",
          coversUntil: "2026-03-17 10:00",
        },
      ],
    });
    const line = {
      order: "PO-1",
      placed: "2026-03-09T12:00:00Z",
      supplier: "Quay",
      item: "Gin",
      pack: "700 ml",
      quantity: 2,
      of: "container",
      expected: "2026-03-10",
    };
    expect((await post("/api/orders", [line])).status).toBe(200);
    expect((await get("/api/orders")).body).toMatchObject([{ order: "PO-1", item: "Gin", quantity: 1400 }]);
  });

  it("reads recipe text with the bar's own items", async () => {
    const { post } = await aBar();
    expect((await post("/api/specs/read", { text: "2 oz gin\n1 oz jinn" })).body).toMatchObject([
      { line: 1, amount: 2, unit: "oz", item: "Gin", error: null },
      { line: 2, error: expect.stringContaining("jinn") },
    ]);
  });
});

describe("a wrong request", () => {
  it.each([
    ["/api/reports/use?from=2026-02-30&to=2026-03-01", 422, "from"],
    ["/api/reports/variance?count=Nope", 422, ""],
    ["/api/reports/order?at=soon", 422, ""],
    ["/api/reports/forecast?days=0", 422, "days"],
    ["/api/nothing", 404, ""],
  ])("to %s is answered %i with its problem", async (path, status, field) => {
    const { get } = await aBar();
    const answer = await get(path);
    expect(answer.status).toBe(status);
    expect(answer.body).toMatchObject({ problems: [{ field, message: expect.stringMatching(/.{10,}/) }] });
  });

  it("that writes is refused whole, with every problem", async () => {
    const { get, post } = await aBar();
    const delivery = {
      at: "2026-03-04T10:00:00Z",
      supplier: "Quay",
      invoice: "",
      item: "Gin",
      pack: "700 ml",
      quantity: 1,
      of: "container",
      priceTotalMinor: null,
      by: "",
    };
    const wrong = await post("/api/deliveries", [delivery, { ...delivery, pack: "1 L" }]);
    expect([404, 422]).toContain(wrong.status);
    expect((await get("/api/entries/deliveries")).body).toEqual([]);
    expect((await post("/api/deliveries", [{ ...delivery, quantity: -1, of: "crate" }])).body).toMatchObject({
      problems: [{ field: "0.quantity" }, { field: "0.of" }],
    });
  });

  it("from another site's page is refused", async () => {
    const { db } = await aBar();
    const { createApp } = await import("#server/app.ts");
    const app = createApp({ db, now: () => new Date(), webFolder: "/nowhere" });
    const form = new FormData();
    form.append("file", new File(["x"], "x.csv"));
    const answer = await app.request("/api/sales/import", {
      method: "POST",
      body: form,
      headers: { origin: "https://elsewhere.example" },
    });
    expect(answer.status).toBe(403);
  });

  it("to an empty database is told how to begin", async () => {
    const { get } = await aTestApp();
    const { status, body } = await get("/api/week");
    expect(status).toBe(404);
    expect(body).toMatchObject({ problems: [{ message: expect.stringContaining("ullage load DIR") }] });
  });
});

describe("the API's document", () => {
  it("is OpenAPI 3.1 and names every route with what it is for", async () => {
    const { get } = await aBar();
    const { body } = await get("/api/openapi.json");
    const { openapi, paths } = body as {
      openapi: string;
      paths: Record<string, Record<string, { summary?: string; responses: object }>>;
    };
    expect(openapi).toMatch(/^3\.1/);
    expect(Object.keys(paths)).toEqual(
      expect.arrayContaining([
        "/api/week",
        "/api/reports/variance",
        "/api/sales/import",
        "/api/entries/{kind}/{id}/correct",
      ]),
    );
    for (const [path, methods] of Object.entries(paths)) {
      for (const { summary, responses } of Object.values(methods)) {
        expect(summary, path).toBeTruthy();
        expect(Object.keys(responses), path).not.toContain("400");
      }
    }
  });
});
