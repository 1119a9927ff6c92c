import { beforeAll, describe, expect, it } from "vitest";
import { readBook } from "#db/book/read-book.ts";
import { replaceBook } from "#db/book-repository.ts";
import { closePast } from "#db/closings-repository.ts";
import { listHistory } from "#db/history-repository.ts";
import { closeDatabase, type Db, IN_MEMORY, openDatabase } from "#db/open.ts";
import { acceptRingNames } from "#db/ring-names-repository.ts";
import { addDelivery, listEntries } from "#db/stock-repository.ts";
import { readToken } from "#db/stored/transaction.ts";
import type { Book } from "#engine/book.ts";
import type { RingName } from "#engine/sales/ring.ts";
import { newItem } from "#engine/stock/new-item.ts";
import { createApp } from "#server/app.ts";
import type { ImportJob } from "#server/import-jobs.ts";
import { DEMO_OWNER } from "#server/people/actor.ts";
import { RULES } from "#server/people/permissions.ts";
import { DELIVERY, LINE, ROW } from "#tests/support/acts.ts";
import { smallBookAnd } from "#tests/support/small-book.ts";

// Every route that writes, from the API's own document: it leaves the closed past alone, or stands below with the reason why it
// cannot reach it. A new route that is in neither list fails.

const CLOSED = "2026-03-08";
const DAY = "2026-03-06";
const AT = `${DAY}T12:00:00Z`;
const NOW = { now: "2026-03-16T12:00:00Z", by: "Ana" };

const book: Book = readBook(
  smallBookAnd(
    "counts.csv",
    "Week 10,2026-03-09 10:00,Back bar,Dry gin,1 L,3,0.5,,,,Ana",
    "Week 10,2026-03-09 10:20,Cellar,Dry gin,,8,,,,,Ana",
    "Week 10,2026-03-09 10:02,Back bar,Old Quay rum,700 ml,1,,,,,Ana",
    "Week 10,2026-03-09 10:31,Back bar,Soda,,30,,,,,Ana",
  ),
).book;
const of = <T>(facts: readonly T[], at = 0) => facts[at] as T;
const gml: RingName = {
  ringName: "GML",
  soldAs: { kind: "drink", drink: "Gimlet" },
  serves: 1,
  amount: null,
  unit: null,
};
const till = `Sold at,Item,Qty,Net\n${DAY} 20:00:00,Rum Sour,2,24.00\n${DAY} 20:05:00,Gimlet,1,11.50\n`;

type Answer = { status: number; text: string };
type Bar = {
  db: Db;
  post: (path: string, body?: unknown) => Promise<Answer>;
  raw: (path: string, init?: RequestInit) => Promise<Response>;
};

async function aBar(): Promise<Bar> {
  const db = openDatabase(IN_MEMORY);
  const lines = [LINE, { ...LINE, businessDate: "2026-03-07", ringName: "GML" }];
  await replaceBook(db, book, [{ file: "w10.csv", shape: { files: "*" }, refused: [], lines }], NOW);
  await addDelivery(db, { ...DELIVERY, at: AT, invoice: "Q-200" }, NOW);
  const app = createApp({
    db,
    now: () => new Date(NOW.now),
    webFolder: "/nowhere",
    signIn: { openAs: DEMO_OWNER },
  });
  const raw: Bar["raw"] = async (path, { headers, ...init } = {}) =>
    app.request(path, { method: "POST", ...init, headers: { origin: "http://localhost", ...headers } });
  return {
    db,
    raw,
    post: async (path, body = {}) => {
      const headers = { "content-type": "application/json" };
      const answer = await raw(path, { headers, body: JSON.stringify(body) });
      return { status: answer.status, text: await answer.text() };
    },
  };
}

/** A job answers at once; what came of it is asked for. */
async function endOf(bar: Bar, started: Answer): Promise<Answer> {
  const { id } = JSON.parse(started.text) as ImportJob;
  for (;;) {
    const job = (await (await bar.raw(`/api/sales/jobs/${id}`, { method: "GET" })).json()) as ImportJob;
    if (job.state === "reading" || job.state === "writing") {
      await new Promise((resolve) => setTimeout(resolve, 2));
      continue;
    }
    return { status: job.problems.length > 0 ? 422 : 200, text: JSON.stringify(job) };
  }
}

async function sent(bar: Bar, path: string): Promise<Answer> {
  const answer = await bar.raw(path, { body: till, headers: { "content-type": "text/csv" } });
  return { status: answer.status, text: await answer.text() };
}

async function lookedAt(bar: Bar): Promise<string> {
  const looked = await endOf(bar, await sent(bar, "/api/sales/jobs?name=till.csv&look=yes"));
  return (JSON.parse(looked.text) as ImportJob).id;
}

async function aCause(bar: Bar) {
  const path = "/api/reports/variance?count=Week%2010&since=Week%209";
  const report = (await (await bar.raw(path, { method: "GET" })).json()) as {
    causes: { kind: string; what: string; correction: unknown }[];
  };
  const cause = report.causes.find(({ correction }) => correction !== null);
  if (cause === undefined) throw new Error("The bar has no cause with a correction.");
  const { kind, what } = cause;
  return { counts: { opening: "Week 9", closing: "Week 10" }, cause: { kind, what } };
}

/** What each route is sent: valid, and reaching into the week that is closed. `first` is done while it is open still. */
type Asked = {
  first?: (bar: Bar) => Promise<unknown>;
  ask: (bar: Bar, first: never) => Promise<Answer>;
};
const sends = (path: string, body: unknown): Asked => ({ ask: (bar) => bar.post(`/api/${path}`, body) });

const REFUSED: Record<string, Asked> = {
  "POST /api/counts/entries": sends("counts/entries", { ...ROW, at: AT, count: "Spot check" }),
  "POST /api/deliveries": sends("deliveries", [{ ...DELIVERY, at: AT }]),
  "POST /api/batches": sends("batches", { ...of(book.batches), at: AT }),
  "POST /api/losses": sends("losses", { ...of(book.losses), at: AT }),
  "POST /api/transfers": sends("transfers", { ...of(book.transfers), at: AT }),
  "POST /api/entries/{kind}/{id}/correct": {
    first: async ({ db }) => of(await listEntries(db, "delivery")),
    ask: (bar, { id, fact }: { id: number; fact: object }) =>
      bar.post(`/api/entries/deliveries/${id}/correct`, { facts: { ...fact, quantity: 9 }, reason: "typo" }),
  },
  "POST /api/entries/{kind}/{id}/withdraw": {
    first: async ({ db }) => of(await listEntries(db, "loss")),
    ask: (bar, { id }: { id: number }) => bar.post(`/api/entries/losses/${id}/withdraw`, { reason: "twice" }),
  },
  "POST /api/causes/settle": {
    first: aCause,
    ask: (bar, cause: object) => bar.post("/api/causes/settle", cause),
  },
  "POST /api/causes/settled/{id}/take-back": {
    first: async (bar) =>
      JSON.parse((await bar.post("/api/causes/settle", await aCause(bar))).text) as { id: number },
    ask: (bar, { id }: { id: number }) => bar.post(`/api/causes/settled/${id}/take-back`),
  },
  "POST /api/sales/import": {
    ask: async (bar) => {
      const form = new FormData();
      form.set("file", new File([till], "till.csv"));
      const answer = await bar.raw("/api/sales/import", { body: form });
      return { status: answer.status, text: await answer.text() };
    },
  },
  "POST /api/sales/jobs": {
    ask: async (bar) => endOf(bar, await sent(bar, "/api/sales/jobs?name=till.csv")),
  },
  "POST /api/sales/jobs/{id}/look": {
    first: lookedAt,
    ask: async (bar, id: string) => endOf(bar, await bar.post(`/api/sales/jobs/${id}/look`)),
  },
  "POST /api/sales/jobs/{id}/import": {
    first: lookedAt,
    ask: async (bar, id: string) => endOf(bar, await bar.post(`/api/sales/jobs/${id}/import`)),
  },
  "POST /api/sales/imports/{id}/undo": sends("sales/imports/1/undo", {}),
  "POST /api/venue/settings": sends("venue/settings", {
    was: book.venue,
    now: { ...book.venue, houseMl: { ...book.venue.houseMl, dash: 0.8 } },
  }),
  "POST /api/specs": sends("specs", {
    makes: "Gimlet",
    from: DAY,
    lines: book.specs
      .filter(({ makes }) => makes === "Gimlet")
      .map(({ makes: _, from: __, ...line }) => ({ ...line, amount: 99 })),
  }),
  "POST /api/drinks": sends("drinks", { ...of(book.drinks), glassMl: 299 }),
  "POST /api/preps": sends("preps", { ...of(book.preps), from: DAY, yield: 999 }),
  "POST /api/preps/new": sends("preps/new", {
    item: newItem({ name: "Rich syrup", category: "syrup", base: "ml", inHouse: true, brix: 66 }),
    otherItems: [],
    prep: { ...of(book.preps), prep: "Rich syrup", from: DAY },
    lines: [{ line: 1, amount: 500, unit: "g", item: "Sugar", orItems: [], note: "" }],
    cut: null,
  }),
  "POST /api/cuts": sends("cuts", { ...of(book.cuts), from: DAY, perPiece: 31 }),
  "POST /api/items": sends("items", { ...of(book.items), abv: 47 }),
  "POST /api/packs": sends("packs", { ...of(book.packs), from: DAY, price: 31 }),
  "POST /api/price-lists": sends("price-lists", {
    supplier: "Quayside Drinks",
    items: [],
    packs: [{ ...of(book.packs), from: DAY, price: 32 }],
  }),
  "POST /api/ring-names": sends("ring-names", gml),
  "POST /api/ring-names/accept": sends("ring-names/accept", { names: [gml] }),
  "POST /api/ring-names/undo": {
    first: ({ db }) => acceptRingNames(db, [gml], NOW),
    ask: (bar) => bar.post("/api/ring-names/undo", { ringName: "GML" }),
  },
  "POST /api/ring-names/remove": {
    first: ({ db }) => acceptRingNames(db, [gml], NOW),
    ask: (bar) => bar.post("/api/ring-names/remove", { ringName: "GML" }),
  },
  "POST /api/modifiers": {
    // Rung in the week before it is closed, so that what it does is part of that week.
    first: async (bar) => {
      const lines = `Sold at,Item,Modifiers,Qty,Net\n${DAY} 21:00:00,Gimlet,Double,1,23.00\n`;
      const body = new FormData();
      body.set("file", new File([lines], "double.csv"));
      const { status } = await bar.raw("/api/sales/import", { body });
      if (status !== 200) throw new Error("The modifier was not rung.");
    },
    ask: (bar) =>
      bar.post("/api/modifiers", [{ ...book.modifiers.find(({ effect }) => effect === "times"), factor: 3 }]),
  },
  "POST /api/history/{seq}/undo": {
    first: async ({ db }) => of(await listHistory(db, { act: "delivery entered" })),
    ask: (bar, { seq }: { seq: number }) => bar.post(`/api/history/${seq}/undo`),
  },
};

/** Routes that cannot reach the past, each with why. */
const CANNOT: Record<string, string> = {
  "POST /api/venue": "sets up an empty database only; one with a week to close has its venue",
  "POST /api/areas": "the order in which shelves are walked is no fact of a week",
  "POST /api/suppliers": "when a supplier takes orders is no fact of a week; what came is a delivery",
  "POST /api/orders": "what was ordered is no stock; what came of it is a delivery",
  "POST /api/orders/pars": "a par is what to hold from now on",
  "POST /api/sales/jobs/{id}/cancel": "writes nothing but an end to reading",
  "POST /api/sales/staff": "says whether names of staff are read from now on",
  "POST /api/sales/staff/erase":
    "takes names away and no figure; a closed week may not keep what a person wants gone",
  "POST /api/closing": "closes more of the past; refuses days that are closed already",
  "POST /api/closing/reopen": "the owner's way in, with a reason, on purpose",
};
/** Who may sign in is no part of a week. */
const DOOR = /^POST \/api\/(sign-in|people|devices|tokens)\b/;

async function writingRoutes(): Promise<string[]> {
  const { db, raw } = await aBar();
  const document = (await (await raw("/api/openapi.json", { method: "GET" })).json()) as {
    paths: Record<string, Record<string, unknown>>;
  };
  closeDatabase(db);
  return Object.entries(document.paths)
    .flatMap(([path, methods]) =>
      Object.keys(methods).map((method) => `${method.toUpperCase()} ${path.replace(/(.)\/$/, "$1")}`),
    )
    .filter((route) => !/^(GET|HEAD) /.test(route) && RULES[route]?.readsOnly !== true && !DOOR.test(route));
}

describe("every route that writes", () => {
  let routes: string[];
  beforeAll(async () => {
    routes = await writingRoutes();
  });

  it("is tried on a closed week here, or cannot reach it", () => {
    const known = [...Object.keys(REFUSED), ...Object.keys(CANNOT)];
    expect(routes.length).toBeGreaterThan(30);
    expect(routes.filter((route) => !known.includes(route))).toEqual([]);
    expect(known.filter((route) => !routes.includes(route))).toEqual([]);
  });

  it.each(Object.entries(REFUSED))(
    "%s is refused there, and is valid while the week is open",
    async (_, asked) => {
      const open = await aBar();
      const ready = await asked.first?.(open);
      const taken = await asked.ask(open, ready as never);
      expect(taken, taken.text).toMatchObject({ status: 200 });
      closeDatabase(open.db);

      const bar = await aBar();
      const first = await asked.first?.(bar);
      await closePast(bar.db, CLOSED, NOW);
      const before = [readToken(bar.db), bar.db.sqlite.serialize()] as const;
      const refused = await asked.ask(bar, first as never);
      expect(refused.text).toContain(`the week to ${CLOSED} is closed`);
      expect(refused.status).toBe(422);
      expect(readToken(bar.db)).toBe(before[0]);
      expect(bar.db.sqlite.serialize().equals(before[1])).toBe(true);
      closeDatabase(bar.db);
    },
  );
});
