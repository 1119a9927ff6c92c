import { spawnSync } from "node:child_process";
import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, beforeAll, expect, it } from "vitest";
import { killAgainAndAgain } from "#tests/faults/kills.ts";
import { buildStale, root } from "#tests/support/build.ts";

// What SQLite promises of a transaction (sqlite.org/atomiccommit.html), asked of the whole server; 100 times with npm run faults.
let folder: string;
let seedFile: string;

beforeAll(() => {
  buildStale();
  folder = mkdtempSync(join(tmpdir(), "ullage-seed-"));
  seedFile = join(folder, "seed.db");
  const program = join(root, "tests", "bench", "ullage.mjs");
  const load = spawnSync(process.execPath, [program, "load", "sample-sales", "--db", seedFile], {
    cwd: root,
  });
  expect(load.status).toBe(0);
}, 120_000);

afterAll(() => rmSync(folder, { recursive: true, force: true }));

it("the bar's server can be killed at any moment, and what it acknowledged is there, once and whole", {
  timeout: 120_000,
}, async () => {
  const run = await killAgainAndAgain(seedFile, { kills: 5, seed: 4703 });
  expect(run.wrong).toEqual([]);
  expect(run.kills).toBe(5);
  // A machine with other work acknowledges few before each kill.
  expect(run.acknowledged).toBeGreaterThan(0);
});
