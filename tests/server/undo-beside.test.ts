import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, beforeAll, expect, it } from "vitest";
import { replaceBook } from "#db/book-repository.ts";
import { closePast, reopenPast } from "#db/closings-repository.ts";
import { listHistory } from "#db/history-repository.ts";
import { closeDatabase, type Db, openDatabase } from "#db/open.ts";
import { daySales, importSales, listImports, undoImport } from "#db/sales-repository.ts";
import { addDays } from "#engine/time.ts";
import { createApp } from "#server/app.ts";
import { DEMO_OWNER } from "#server/people/actor.ts";
import { DOING, LINE, ROW } from "#tests/support/acts.ts";
import { handBook } from "#tests/support/hand-bar.ts";

const LINES = 24_000;
const DAYS = 240;
const ALL = { from: "0001-01-01", to: "9999-12-31" };

let folder: string;
let db: Db;
let app: ReturnType<typeof createApp>;
const post = (path: string, body: unknown = {}) =>
  app.request(path, {
    method: "POST",
    body: JSON.stringify(body),
    headers: { origin: "http://localhost", "content-type": "application/json" },
  });

const book = handBook();
const gin = book.items[0] as (typeof book.items)[0];
const row = { ...ROW, count: "Meanwhile", item: gin.name, pack: null, full: null, parts: [], unit: gin.base };

beforeAll(async () => {
  folder = mkdtempSync(join(tmpdir(), "ullage-undo-"));
  db = openDatabase(join(folder, "bar.db"));
  await replaceBook(db, book, [], DOING);
  const lines = Array.from({ length: LINES }, (_, at) => ({
    ...LINE,
    businessDate: addDays("2025-01-01", at % DAYS),
    at: `${addDays("2025-01-01", at % DAYS)}T20:00:${String(at % 60).padStart(2, "0")}Z`,
    ringName: `Drink ${at % 40}`,
    check: String(at),
  }));
  const file = { shape: { files: "*" }, refused: [] };
  // Half of it came in another file too, and is there still when the long one is taken back.
  await importSales(db, { ...file, file: "half.csv", lines: lines.slice(0, LINES / 2), ...DOING });
  await importSales(db, { ...file, file: "whole.csv", lines, ...DOING });
  app = createApp({
    db,
    now: () => new Date(DOING.now),
    webFolder: "/nowhere",
    signIn: { openAs: { ...DEMO_OWNER, name: "Ines" } },
  });
});
afterAll(() => {
  closeDatabase(db);
  rmSync(folder, { recursive: true, force: true });
});

/** Asks for something long, and enters what was counted until it is done. */
async function whileCounting(ask: () => Response | Promise<Response>) {
  let isOver = false;
  const long = Promise.resolve(ask()).finally(() => {
    isOver = true;
  });
  let entered = 0;
  while (!isOver) {
    const answer = await post("/api/counts/entries", { ...row, amount: entered });
    expect(answer.status).toBe(200);
    if (!isOver) entered += 1;
    // Gives way to whatever else the thread has to do, as a network would.
    await new Promise((resolve) => setTimeout(resolve, 1));
  }
  const answer = await long;
  return { status: answer.status, body: await answer.json(), entered };
}

it("takes a long import back beside the server, which goes on entering counts", async () => {
  const before = await daySales(db, ALL);
  const undone = await whileCounting(() => post("/api/sales/imports/2/undo"));
  expect(undone).toMatchObject({ status: 200, body: { daysTouched: { length: DAYS } } });
  expect(undone.entered).toBeGreaterThan(3);
  const half = await daySales(db, ALL);
  expect(half.reduce((sum, { quantity }) => sum + quantity, 0)).toBe((LINES / 2) * LINE.quantity);
  expect((await listImports(db))[0]).toMatchObject({ importId: 2, undoneBy: "screen" });
  const acts = await listHistory(db, { act: "import undone" });
  expect(acts).toMatchObject([{ who: "Ines", via: "demo", subjects: [{ name: "whole.csv" }] }]);

  // The history does it again, and takes that back in turn, beside the server, too.
  const again = await whileCounting(() => post(`/api/history/${acts[0]?.seq}/undo`));
  expect(again).toMatchObject({ status: 200, body: { summary: expect.stringContaining("whole.csv") } });
  expect(again.entered).toBeGreaterThan(3);
  expect(await daySales(db, ALL)).toEqual(before);
});

it("says what is wrong as it does with a short one, and changes nothing then", async () => {
  await closePast(db, "2025-06-30", DOING);
  const closed = await post("/api/sales/imports/2/undo");
  expect(closed.status).toBe(422);
  expect(JSON.stringify(await closed.json())).toContain("the week to 2025-06-30 is closed");
  await reopenPast(db, { reason: "test" }, DOING);
  expect((await post("/api/sales/imports/99/undo")).status).toBe(404);
});

it("is undone by what the sales are when it is written, not by what they were when it was worked out", async () => {
  const other = openDatabase(join(folder, "bar.db"));
  const more = {
    file: "more.csv",
    shape: { files: "*" },
    refused: [],
    lines: [{ ...LINE, businessDate: "2025-01-01" }],
  };
  const before = await daySales(db, ALL);
  const { importId } = await importSales(db, { ...more, ...DOING });
  // Between working it out and writing it, another program reads a file in.
  const begin = db.sqlite.transaction.bind(db.sqlite);
  let isFirst = true;
  db.sqlite.transaction = ((act: () => unknown) => {
    const made = begin(act);
    if (!isFirst) return made;
    return Object.assign(() => made(), {
      ...made,
      deferred: () => {
        const planned = made.deferred();
        isFirst = false;
        void importSales(other, {
          ...more,
          file: "late.csv",
          lines: [{ ...LINE, businessDate: "2025-01-01", quantity: 1000 }],
          ...DOING,
        });
        return planned;
      },
    });
  }) as typeof db.sqlite.transaction;
  await undoImport(db, importId, DOING);
  db.sqlite.transaction = begin;
  closeDatabase(other);
  const [was, is] = [before[0], (await daySales(db, ALL))[0]];
  expect(is?.quantity).toBe((was?.quantity ?? 0) + 1000);
});
