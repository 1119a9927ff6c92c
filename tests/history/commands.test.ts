import { mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, beforeAll, expect, it } from "vitest";
import { jsonOf, runUllage } from "#tests/support/run-ullage.ts";
import { smallBook } from "#tests/support/small-book.ts";

let dir: string;
let file: string;
beforeAll(async () => {
  dir = mkdtempSync(join(tmpdir(), "ullage-closing-"));
  file = join(dir, "bar.db");
  for (const [name, text] of smallBook()) writeFileSync(join(dir, name), text);
  expect((await runUllage("load", dir, "--db", file)).status).toBe(0);
});
afterAll(() => rmSync(dir, { recursive: true, force: true }));

it("closes the past, refuses what lies in it, lists who did what, and reopens it with a reason", async () => {
  const run = (...args: string[]) => runUllage(...args, "--db", file);
  expect(await run("close")).toMatchObject({ status: 2, err: expect.stringContaining("name the last day") });
  expect((await run("close", "--to", "2026-03-08")).out).toContain("Closed up to 2026-03-08");

  const sales = join(dir, "week.csv");
  writeFileSync(sales, "date,item,quantity,net\n2026-03-06,Gimlet,3,34.50\n2026-03-10,Gimlet,2,23.00\n");
  for (const more of [[], ["--dry-run"]]) {
    const refused = await run("sales", sales, ...more);
    expect(refused.status).toBe(2);
    expect(refused.err).toContain("sales of week.csv on 2026-03-06: the week to 2026-03-08 is closed");
  }
  const loaded = await run("load", dir);
  expect(loaded).toMatchObject({
    status: 2,
    err: expect.stringContaining("a whole book in place of this one"),
  });

  expect((await run("reopen")).err).toContain("--reason");
  expect((await run("reopen", "--reason", "new till")).out).toBe("Reopened; nothing is closed now.\n");
  expect((await run("sales", sales)).status).toBe(0);
  expect((await run("history", "--undo", "4")).out).toContain("Undone: week.csv");

  const { acts } = (await jsonOf("history", "--db", file)) as {
    acts: { act: string; who: string; reason: string }[];
  };
  expect(acts.map(({ act }) => act)).toEqual([
    "undone",
    "sales imported",
    "week reopened",
    "week closed",
    "book loaded",
  ]);
  expect(acts.every(({ who }) => who !== "")).toBe(true);
  expect(acts[2]?.reason).toBe("new till");
  expect((await run("history", "--subject", "2026-03-08", "--csv")).out).toContain("week closed");
  expect((await run("load", dir)).status).toBe(0);
});
