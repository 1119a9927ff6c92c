import { spawnSync } from "node:child_process";
import { existsSync, mkdtempSync, rmSync } from "node:fs";
import { availableParallelism, loadavg, tmpdir } from "node:os";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { FIRST_DATE } from "#tests/bench/big-bar.ts";
import { writeBills } from "#tests/bench/bills.ts";
import { BUDGETS } from "#tests/bench/budgets.ts";
import { type BenchFiles, benchFiles } from "#tests/bench/generate.ts";

/**
 * Measures `ullage sales` beside papaparse alone and DuckDB: `npm run bench [-- LINES…] [--rounds N] [--keep FOLDER]`.
 * `npm run bench -- causes` measures the causes of the variance instead (causes.ts), `npm run bench -- orders` pars and
 * forecasts (orders.ts), `npm run bench -- spec` the reading of recipe text (spec-text.ts).
 *
 * Every measurement is a process of its own on the compiled program; the candidates take turns, so that a machine that is busy
 * for a while is busy for all of them; shown are medians.
 */
const root = fileURLToPath(new URL("../../", import.meta.url));
const here = (name: string): string => join(root, "tests", "bench", name);

type Took = { ms: number; cpuMs: number; maxRssMb: number };

/** Runs a Node program and measures the whole process, from outside by the clock and from inside by its peak. */
function measured(script: string, args: string[], env: Record<string, string> = {}): Took & { out: string } {
  const startedMs = performance.now();
  const { status, stdout, stderr } = spawnSync(
    process.execPath,
    ["--import", here("peak.mjs"), script, ...args],
    {
      encoding: "utf8",
      env: { ...process.env, ...env },
      maxBuffer: 1 << 28,
    },
  );
  const ms = performance.now() - startedMs;
  if (status !== 0) throw new Error(`${script} ended with ${status}: ${stderr}`);
  const peak = JSON.parse(stderr.trim().split("\n").at(-1) ?? "") as { maxRssMb: number; cpuMs: number };
  return { ms, ...peak, out: stdout };
}

function ullage(...args: string[]): Took & { out: string } {
  return measured(here("ullage.mjs"), args);
}

type Row = { what: string; took: Took[] };

function measureSize(lines: number, rounds: number, folder: string, files: BenchFiles): Row[] {
  const bills = join(folder, "bills.csv");
  if (!existsSync(bills)) writeBills(files.book, bills);
  const rows = {
    floor: { what: "papaparse alone", took: [] as Took[] },
    first: { what: "ullage sales", took: [] as Took[] },
    again: { what: "ullage sales, the same file again", took: [] as Took[] },
    duck: { what: "DuckDB, the whole job", took: [] as Took[] },
    duckAgain: { what: "DuckDB, the same file again", took: [] as Took[] },
  };
  const hasDuckDb = existsSync(join(root, "node_modules", "@duckdb", "node-api"));
  for (let round = 0; round < rounds; round += 1) {
    const db = join(folder, "bench.db");
    const duck = join(folder, "bench.duckdb");
    for (const file of [db, `${db}-wal`, `${db}-shm`, duck, `${duck}.wal`]) rmSync(file, { force: true });
    ullage("load", files.book, "--db", db);
    rows.floor.took.push(measured(here("floor.mjs"), [files.sales]));
    const first = ullage("sales", files.sales, "--db", db, "--json");
    rows.first.took.push(first);
    refuseWrong(first.out, { lines, new: lines });
    const again = ullage("sales", files.sales, "--db", db, "--json");
    rows.again.took.push(again);
    refuseWrong(again.out, { lines, new: 0 });
    if (!hasDuckDb) continue;
    const whole = measured(here("duckdb.mjs"), [files.sales, bills, duck]);
    rows.duck.took.push(whole);
    rows.duckAgain.took.push(measured(here("duckdb.mjs"), [files.sales, bills, duck]));
    if (round === 0) refuseDifferent(first.out, whole.out);
  }
  if (!hasDuckDb) process.stdout.write("DuckDB is left out: its package has no binary for this machine.\n");
  return Object.values(rows).filter(({ took }) => took.length > 0);
}

type Printed = { files: { lines: number; new: number; moved: { after: number }[] }[] };

function refuseWrong(out: string, wanted: { lines: number; new: number }): void {
  const [file] = (JSON.parse(out) as Printed).files;
  if (file?.lines !== wanted.lines || file.new !== wanted.new)
    throw new Error(
      `Read ${file?.lines} lines, ${file?.new} new; ${wanted.lines} and ${wanted.new} were wanted.`,
    );
}

/** Both must have come to the same use, else one of them did another job. */
function refuseDifferent(out: string, duckOut: string): void {
  const [file] = (JSON.parse(out) as Printed).files;
  const ours = (file?.moved ?? []).reduce((sum, { after }) => sum + after, 0);
  const theirs = (JSON.parse(duckOut) as { used: number }).used;
  if (Math.abs(ours / theirs - 1) > 1e-6)
    throw new Error(`Expected use is ${ours} here and ${theirs} in DuckDB.`);
}

function median(values: number[]): number {
  return [...values].sort((a, b) => a - b)[Math.floor(values.length / 2)] ?? Number.NaN;
}

function table(lines: number, rows: Row[]): void {
  const floor = rows[0]?.took ?? [];
  process.stdout.write(
    `\n${lines.toLocaleString("en")} lines, median of ${floor.length} (load ${loadavg()[0]?.toFixed(1)} on ${availableParallelism()} cores)\n\n`,
  );
  const head = ["", "seconds", "ratio", "processor s", "ratio", "peak MB"];
  const body = rows.map(({ what, took }) => {
    const of = (key: keyof Took): number => median(took.map((each) => each[key]));
    const ratioOf = (key: keyof Took): number =>
      median(took.map((each, round) => each[key] / (floor[round]?.[key] ?? Number.NaN)));
    return [
      what,
      (of("ms") / 1000).toFixed(2),
      ratioOf("ms").toFixed(2),
      (of("cpuMs") / 1000).toFixed(2),
      ratioOf("cpuMs").toFixed(2),
      of("maxRssMb").toFixed(0),
    ];
  });
  for (const [what = "", ...cells] of [head, ...body])
    process.stdout.write(`${what.padEnd(36)}${cells.map((cell) => cell.padStart(13)).join("")}\n`);
}

/** Holds what was measured against the budgets; says each that is broken. */
function broken(lines: number, rows: Row[]): string[] {
  const ratioOf = (what: string): number => {
    const took = rows.find((row) => row.what === what)?.took ?? [];
    return median(took.map(({ ms }, round) => ms / (rows[0]?.took[round]?.ms ?? Number.NaN)));
  };
  const memory = Math.max(
    ...rows
      .filter(({ what }) => what.startsWith("ullage"))
      .flatMap(({ took }) => took.map(({ maxRssMb }) => maxRssMb)),
  );
  const most = BUDGETS.memoryMostMb.get(lines);
  const problems =
    most !== undefined && memory > most ? [`peak memory ${memory.toFixed(0)} MB, at most ${most}`] : [];
  if (lines !== BUDGETS.heldAtLines) return problems;
  const first = ratioOf("ullage sales");
  const again = ratioOf("ullage sales, the same file again");
  const duck = ratioOf("DuckDB, the whole job");
  if (first > BUDGETS.importRatioMost)
    problems.push(`ratio ${first.toFixed(2)}, at most ${BUDGETS.importRatioMost}`);
  if (again > BUDGETS.againRatioMost)
    problems.push(`ratio of the same file again ${again.toFixed(2)}, at most ${BUDGETS.againRatioMost}`);
  if (BUDGETS.isAheadOfDuckDb && first > duck)
    problems.push(`ratio ${first.toFixed(2)} is behind DuckDB with ${duck.toFixed(2)}`);
  return problems;
}

function main(args: string[]): void {
  const option = (name: string): string | undefined => {
    const at = args.indexOf(name);
    return at < 0 ? undefined : args.splice(at, 2)[1];
  };
  const rounds = Number(option("--rounds") ?? 5);
  const kept = option("--keep");
  const sizes = args.length === 0 ? [100_000, 1_000_000, 5_000_000] : args.map(Number);
  const folder = kept ?? mkdtempSync(join(tmpdir(), "bench-"));
  const problems: string[] = [];
  try {
    for (const lines of sizes) {
      const rows = measureSize(lines, rounds, folder, benchFiles(folder, lines));
      table(lines, rows);
      problems.push(...broken(lines, rows).map((problem) => `${lines} lines: ${problem}`));
      if (lines === BUDGETS.heldAtLines) problems.push(...useOfYear(join(folder, "bench.db")));
    }
  } finally {
    if (kept === undefined) rmSync(folder, { recursive: true, force: true });
  }
  for (const problem of problems) process.stdout.write(`Over budget: ${problem}\n`);
  process.exitCode = problems.length === 0 ? 0 : 1;
}

function useOfYear(db: string): string[] {
  const { out } = measured(here("use-of-year.mjs"), [db, FIRST_DATE]);
  const { ms, firstMs, cpuMs } = JSON.parse(out) as { ms: number; firstMs: number; cpuMs: number };
  process.stdout.write(
    `\nExpected use of 52 weeks from tallies after a spec edit: ${ms.toFixed(1)} ms, ${cpuMs.toFixed(1)} ms of processor (the first in a process ${firstMs.toFixed(1)} ms)\n`,
  );
  // On a busy machine the clock says how busy it is; the processor's time says how much work it was.
  return Math.min(ms, cpuMs) > BUDGETS.useOfYearMostMs
    ? [`expected use of 52 weeks took ${ms.toFixed(1)} ms, at most ${BUDGETS.useOfYearMostMs}`]
    : [];
}

const [what, ...rest] = process.argv.slice(2);
if (what === "causes") (await import("#tests/bench/causes.ts")).benchCauses(rest);
else if (what === "orders") (await import("#tests/bench/orders.ts")).benchOrders(rest);
else if (what === "spec") (await import("#tests/bench/spec-text.ts")).benchSpecText();
else main(process.argv.slice(2));
