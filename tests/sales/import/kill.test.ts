import { type ChildProcess, spawn } from "node:child_process";
import { copyFileSync, mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, beforeAll, expect, it } from "vitest";
import { replaceBook } from "#db/book-repository.ts";
import { closeDatabase, openDatabase } from "#db/open.ts";
import { daySales, listImports } from "#db/sales-repository.ts";
import { randomStream } from "#tests/simulate/random.ts";
import { buildStale, root } from "#tests/support/build.ts";
import { handBook } from "#tests/support/hand-bar.ts";

/** What SQLite promises of a transaction (sqlite.org/atomiccommit.html), asked of the whole program. */
const KILLS = 30;
const LINES = 60_000;

let folder: string;
let sales: string;
let seed: string;

beforeAll(async () => {
  buildStale();
  folder = mkdtempSync(join(tmpdir(), "killed-"));
  sales = join(folder, "till.csv");
  const rows = Array.from({ length: LINES }, (_, at) => {
    const day = String(1 + (at % 28)).padStart(2, "0");
    const month = String(1 + (Math.floor(at / 28) % 2)).padStart(2, "0");
    return `2026-${month}-${day} 20:00:${String(at % 60).padStart(2, "0")},${at},House sour,1,12.50`;
  });
  writeFileSync(sales, `Sold at,Check,Item,Qty,Net\n${rows.join("\n")}\n`);
  seed = join(folder, "seed.db");
  const db = openDatabase(seed);
  const line = {
    businessDate: "2025-12-01",
    at: null,
    ringName: "House sour",
    modifiers: "",
    quantity: 5,
    grossMinor: null,
    netMinor: null,
    check: null,
    lineNo: null,
  };
  const before = { file: "before.csv", lines: [line], shape: { files: "before.csv" }, refused: [] };
  await replaceBook(db, handBook(), [before], { now: "2026-03-09T12:00:00Z", by: "test" });
  closeDatabase(db);
}, 120_000);

afterAll(() => rmSync(folder, { recursive: true, force: true }));

function importing(db: string): ChildProcess {
  const program = join(root, "tests", "bench", "ullage.mjs");
  return spawn(process.execPath, [program, "sales", sales, "--db", db], { stdio: "ignore" });
}

function ended(child: ChildProcess): Promise<void> {
  return new Promise((resolve) => child.on("exit", () => resolve()));
}

async function stateOf(file: string) {
  const db = openDatabase(file);
  try {
    const whole = db.sqlite.pragma("integrity_check", { simple: true });
    const days = await daySales(db, { from: "0001-01-01", to: "9999-12-31" });
    const quantity = days.reduce((sum, day) => sum + day.quantity, 0);
    return { whole, imports: (await listImports(db)).length, quantity };
  } finally {
    closeDatabase(db);
  }
}

it("keeps all of a file or nothing of it, whenever the import is killed", { timeout: 180_000 }, async () => {
  const random = randomStream(7, "kills");
  const trial = join(folder, "whole.db");
  copyFileSync(seed, trial);
  const startedMs = performance.now();
  await ended(importing(trial));
  const wholeMs = performance.now() - startedMs;
  expect(await stateOf(trial)).toEqual({ whole: "ok", imports: 2, quantity: LINES + 5 });
  const seen = { nothing: 0, all: 0 };
  // Two at a time, each with a database of its own; most of the moments lie where the writing is.
  const killed = async (at: number): Promise<void> => {
    const file = join(folder, `${at}.db`);
    copyFileSync(seed, file);
    const child = importing(file);
    const isEnded = ended(child);
    const timer = setTimeout(() => child.kill("SIGKILL"), wholeMs * (0.35 + 0.85 * random.uniform()));
    await isEnded;
    clearTimeout(timer);
    const { whole, imports, quantity } = await stateOf(file);
    expect(whole).toBe("ok");
    expect([
      [1, 5],
      [2, LINES + 5],
    ]).toContainEqual([imports, quantity]);
    seen[imports === 1 ? "nothing" : "all"] += 1;
    for (const end of ["", "-wal", "-shm"]) rmSync(file + end, { force: true });
  };
  for (let at = 0; at < KILLS; at += 2) await Promise.all([killed(at), killed(at + 1)]);
  expect(seen.nothing).toBeGreaterThan(0);
  expect(seen.nothing + seen.all).toBe(KILLS);
});
