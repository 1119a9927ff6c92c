import { beforeAll, describe, expect, it } from "vitest";
import { readBookFolder } from "#db/book/folder.ts";
import { RULES } from "#server/people/permissions.ts";
import { redacted } from "#server/people/redact.ts";
import { type Answer, aDoor, type TestBar, type TestBrowser } from "#tests/people/door.ts";

/** Fields that hold money, by their names anywhere in the product. */
const MONEY = /cost|price|money|minor|margin|contribution|budget|value|worth|^net$|^total|spend|revenue/i;
/** Fields of such names that hold minutes and grams. */
const NO_MONEY = [".activeMinutes.total", ".totalWeightG"];

type Found = { field: string; value: unknown };

function fieldsOf(answer: unknown, at = ""): Found[] {
  if (Array.isArray(answer)) return answer.flatMap((one) => fieldsOf(one, at));
  if (typeof answer !== "object" || answer === null) return [];
  return Object.entries(answer).flatMap(([name, value]) => [
    { field: `${at}.${name}`, value },
    ...fieldsOf(value, `${at}.${name}`),
  ]);
}

function moneyIn(answer: unknown): Found[] {
  return fieldsOf(answer).filter(({ field, value }) => {
    const name = field.split(".").at(-1) ?? "";
    const isShown =
      typeof value === "number" || (typeof value === "object" && value !== null && !isEmpty(value));
    return MONEY.test(name) && !NO_MONEY.some((end) => field.endsWith(end)) && isShown;
  });
}

function isEmpty(value: object): boolean {
  return Array.isArray(value) && value.length === 0;
}

let bar: TestBar;
let owner: TestBrowser;
let counter: TestBrowser;
let prep: TestBrowser;
beforeAll(async () => {
  bar = await aDoor(readBookFolder("sample-sales").book);
  owner = await bar.signedIn("Ines", "owner");
  counter = await bar.signedIn("Kit", "counter");
  prep = await bar.signedIn("Noor", "prep");
}, 60_000);

/** Every address of a GET that counter or prep may call, with what it needs to be asked. */
const READABLE = [
  "/api/week",
  "/api/venue",
  "/api/catalogue",
  "/api/stock",
  "/api/counts",
  "/api/counts/sheet",
  "/api/counts/rows/Week%2001",
  "/api/entries/deliveries",
  "/api/entries/losses",
  "/api/entries/batches",
  "/api/entries/transfers",
  "/api/reports/prep",
  "/api/reports/prep/card?prep=Simple%20Syrup&make=1000",
  "/api/reports/forecast",
  "/api/reports/forecast/past",
  "/api/orders",
  "/api/orders/late",
];

describe("what things cost", () => {
  it("is looked for at every address that somebody without the power may read", () => {
    const open = Object.entries(RULES)
      .filter(([route, { may }]) => route.startsWith("GET") && may !== "anyone" && may.includes("counter"))
      .map(([route]) => route.replace("GET ", "").replace(/\{\w+\}.*/, ""));
    const missing = open.filter((path) => !READABLE.some((address) => address.startsWith(path)));
    expect(missing).toEqual([]);
  });

  it.each(READABLE)("is nowhere in %s for who counts and who preps", async (address) => {
    for (const own of [counter, prep]) {
      const { status, body } = await own.get(address);
      if (own === prep && status === 403) continue;
      expect(status).toBe(200);
      expect(moneyIn(body)).toEqual([]);
    }
  });

  it("is there for the owner, so that the test above looks for what exists", async () => {
    const seen = await Promise.all(
      ["/api/week", "/api/catalogue", "/api/stock", "/api/entries/deliveries"].map(async (address) => [
        address,
        moneyIn((await owner.get(address)).body).length > 0,
      ]),
    );
    expect(seen.filter(([, isThere]) => !isThere)).toEqual([]);
  });
});

const delivery = {
  at: "2026-03-08T10:00:00Z",
  supplier: "",
  invoice: "Q-77",
  item: "",
  pack: "",
  quantity: 1,
  of: "container",
  priceTotalMinor: 2100,
  by: "",
};

type Entry = {
  id: number;
  fact: { by: string; invoice: string; priceTotalMinor: number | null };
  stamp: { enteredBy: string };
};

async function entered(own: TestBrowser, by: string): Promise<number> {
  const [pack] = (
    (await owner.get("/api/catalogue")).body as { packs: { item: string; pack: string; supplier: string }[] }
  ).packs;
  const line = { ...delivery, item: pack?.item, pack: pack?.pack, supplier: pack?.supplier, by };
  const { status, body } = await own.post("/api/deliveries", [line]);
  if (status !== 200) throw new Error(JSON.stringify(body));
  return (body as { ids: number[] }).ids[0] ?? 0;
}

async function deliveryOf(own: TestBrowser, id: number): Promise<Entry | undefined> {
  const { body } = await own.get("/api/entries/deliveries");
  return (body as Entry[]).find((one) => one.id === id);
}

describe("names beside entries", () => {
  it("are those of whoever is signed in, unless an entry says who made it", async () => {
    const own = await deliveryOf(owner, await entered(counter, ""));
    expect(own).toMatchObject({ fact: { by: "Kit" }, stamp: { enteredBy: "Kit" } });
    const sent = await deliveryOf(owner, await entered(counter, "Ana"));
    expect(sent).toMatchObject({ fact: { by: "Ana" } });
  });

  it("are shown to others only by who may see them; one's own everybody sees", async () => {
    const [ines, kit] = [await entered(owner, ""), await entered(counter, "")];
    expect((await deliveryOf(owner, kit))?.fact.by).toBe("Kit");
    expect(await deliveryOf(counter, kit)).toMatchObject({
      fact: { by: "Kit" },
      stamp: { enteredBy: "Kit" },
    });
    expect(await deliveryOf(counter, ines)).toMatchObject({ fact: { by: "" }, stamp: { enteredBy: "" } });
  });

  it("tell in the history who really sent it, and by which way", async () => {
    await entered(counter, "Ana");
    const { body } = await owner.get("/api/history?limit=1");
    expect(JSON.stringify(body)).toContain('"who":"Kit"');
    expect(JSON.stringify(body)).toContain('"via":"device"');
  });
});

describe("the past", () => {
  const correct = async (own: TestBrowser, id: number): Promise<Answer> => {
    const held = await deliveryOf(own, id);
    return own.post(`/api/entries/deliveries/${id}/correct`, {
      facts: { ...held?.fact, invoice: "Q-78" },
      reason: "typed wrongly",
    });
  };

  it("is one's own for a day: a slip is corrected, and the price one was not shown stays", async () => {
    const id = await entered(counter, "");
    const { status, body } = await correct(counter, id);
    expect(status).toBe(200);
    expect(await deliveryOf(owner, (body as { id: number }).id)).toMatchObject({
      fact: { by: "Kit", invoice: "Q-78", priceTotalMinor: 2100 },
    });
  });

  it("is the manager's where others entered it, or after the day", async () => {
    const ines = await entered(owner, "");
    expect((await correct(counter, ines)).status).toBe(403);
    expect((await correct(owner, ines)).status).toBe(200);
    const kit = await entered(counter, "");
    bar.wait(24 * 3_600_000);
    const later = await bar.signedIn("Kim", "counter");
    expect((await later.post(`/api/entries/deliveries/${kit}/withdraw`, { reason: "x" })).status).toBe(403);
  });
});

it("empties lists and numbers alike, at any depth, and leaves the rest", () => {
  const how = { emptied: ["cost", "top"], names: ["by"], ownName: "Kit" };
  expect(
    redacted({ item: "Gin", cost: 3, rows: [{ cost: { of: 1 }, by: "Ines" }, { by: "Kit" }], top: [1] }, how),
  ).toEqual({ item: "Gin", cost: null, rows: [{ cost: null, by: "" }, { by: "Kit" }], top: [] });
});
