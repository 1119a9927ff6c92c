import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterEach, beforeEach, expect, it } from "vitest";
import { replaceBook } from "#db/book-repository.ts";
import { closeDatabase, type Db, openDatabase } from "#db/open.ts";
import { listImports } from "#db/sales-repository.ts";
import { createApp } from "#server/app.ts";
import type { ImportJob } from "#server/import-jobs.ts";
import { DEMO_OWNER } from "#server/people/actor.ts";
import { handBook } from "#tests/support/hand-bar.ts";

let folder: string;
let db: Db;

beforeEach(async () => {
  folder = mkdtempSync(join(tmpdir(), "jobs-"));
  db = openDatabase(join(folder, "bar.db"));
  await replaceBook(db, handBook(), [], { now: "2026-03-09T12:00:00Z", by: "test" });
});
afterEach(() => {
  closeDatabase(db);
  rmSync(folder, { recursive: true, force: true });
});

/** As a page of the server itself sends it. */
const HERE = { origin: "http://localhost" };

function server() {
  const app = createApp({
    db,
    now: () => new Date("2026-03-09T12:00:00Z"),
    webFolder: "/nowhere",
    signIn: { openAs: DEMO_OWNER },
  });
  const read = async (response: Response | Promise<Response>) =>
    (await response).json() as Promise<ImportJob>;
  return {
    app,
    start: (text: string) =>
      read(
        app.request("/api/sales/jobs?name=till.csv", {
          method: "POST",
          body: text,
          headers: { ...HERE, "content-type": "text/csv" },
        }),
      ),
    look: (text: string, name: string) =>
      read(
        app.request(`/api/sales/jobs?look=yes&name=${name}`, {
          method: "POST",
          body: text,
          headers: { ...HERE, "content-type": "text/csv" },
        }),
      ),
    goOn: (id: string, act: "look" | "import", wish: object) =>
      read(
        app.request(`/api/sales/jobs/${id}/${act}`, {
          method: "POST",
          body: JSON.stringify(wish),
          headers: { ...HERE, "content-type": "application/json" },
        }),
      ),
    job: (id: string) => read(app.request(`/api/sales/jobs/${id}`)),
    cancel: (id: string) =>
      read(app.request(`/api/sales/jobs/${id}/cancel`, { method: "POST", headers: HERE })),
  };
}

async function ended(job: (id: string) => Promise<ImportJob>, id: string): Promise<ImportJob> {
  for (;;) {
    const found = await job(id);
    if (found.state !== "reading" && found.state !== "writing") return found;
    await new Promise((resolve) => setTimeout(resolve, 50));
  }
}

function till(lines: number): string {
  const rows = Array.from(
    { length: lines },
    (_, at) => `2026-03-0${1 + (at % 7)} 20:00:${String(at % 60).padStart(2, "0")},${at},House sour,1,12.50`,
  );
  return `Sold at,Check,Item,Qty,Net\n${rows.join("\n")}\n`;
}

it("reads a long file in beside the server, which goes on answering, and says what came of it", async () => {
  const { app, start, job } = server();
  const begun = await start(till(60_000));
  expect(begun).toMatchObject({ file: "till.csv", state: "reading", report: null });
  expect((await app.request("/api/sales/imports")).status).toBe(200);
  const done = await ended(job, begun.id);
  expect(done).toMatchObject({ state: "done", problems: [] });
  expect(done.report).toMatchObject({
    lines: 60_000,
    new: 60_000,
    known: 0,
    coverage: { quantity: 1, money: 1 },
  });
  expect(await listImports(db)).toMatchObject([{ file: "till.csv", lines: 60_000, importedBy: "screen" }]);
  const again = await start(till(60_000));
  const known = await ended(job, again.id);
  expect(known.report).toMatchObject({ lines: 60_000, new: 0, known: 60_000 });
  expect(known.report?.notices[0]).toContain("read in before, as import 1");
});

it("says what is wrong with a file, and keeps nothing of it", async () => {
  const { start, job } = server();
  const begun = await start("no list at all");
  const failed = await ended(job, begun.id);
  expect(failed.state).toBe("failed");
  expect(failed.problems[0]).toContain("till.csv");
  expect(await listImports(db)).toEqual([]);
});

it("stops on request, and then nothing is kept", async () => {
  const { start, job, cancel } = server();
  const begun = await start(till(400_000));
  await cancel(begun.id);
  const found = await ended(job, begun.id);
  expect(found.state).toBe("cancelled");
  expect(await listImports(db)).toEqual([]);
});

it("knows no job that was never begun, and no file without a byte", async () => {
  const { app, start } = server();
  expect((await app.request("/api/sales/jobs/7")).status).toBe(404);
  expect(await start("")).toMatchObject({ problems: [{ message: expect.stringContaining("empty") }] });
});

it("looks at a file, takes its columns as a person says, reads it in and remembers how", async () => {
  const { look, goOn, job } = server();
  const odd = (date: string) => `Rung;Kind of drink;Count of it;Paid\n${date} 18:00;House sour;2;25.00\n`;
  const begun = await look(odd("2026-03-05"), "odd-0305.csv");
  const asked = await ended(job, begun.id);
  expect(asked).toMatchObject({ state: "looked", look: { report: null } });
  expect(asked.look?.question).toContain("odd-0305.csv:");
  const columns = { when: "Rung", item: "Kind of drink", quantity: "Count of it", net: "Paid" };
  const shape = { files: "odd-0305.csv", columns };
  await goOn(begun.id, "look", { shape });
  expect(await ended(job, begun.id)).toMatchObject({
    state: "looked",
    look: { question: null, report: { lines: 1, new: 1, importId: null } },
  });
  expect(await listImports(db)).toEqual([]);
  await goOn(begun.id, "import", { shape, rememberFor: "odd-*.csv" });
  expect(await ended(job, begun.id)).toMatchObject({ state: "done", report: { new: 1, importId: 1 } });
  const next = await look(odd("2026-03-06"), "odd-0306.csv");
  expect((await ended(job, next.id)).look).toMatchObject({ question: null, report: { lines: 1, new: 1 } });
});

it("leaves a waiting file when told to, and keeps nothing of it", async () => {
  const { look, job, cancel, goOn } = server();
  const begun = await look(till(3), "till.csv");
  expect((await ended(job, begun.id)).state).toBe("looked");
  expect(await cancel(begun.id)).toMatchObject({ state: "cancelled" });
  expect(await goOn(begun.id, "import", {})).toMatchObject({
    problems: [{ message: expect.stringContaining("choose the file again") }],
  });
  expect(await listImports(db)).toEqual([]);
});
