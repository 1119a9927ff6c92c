import { type ChildProcess, spawn } from "node:child_process";
import {
  createReadStream,
  existsSync,
  mkdirSync,
  mkdtempSync,
  readFileSync,
  renameSync,
  rmSync,
} from "node:fs";
import { availableParallelism, loadavg, tmpdir } from "node:os";
import { join } from "node:path";
import { Readable } from "node:stream";
import { fileURLToPath } from "node:url";
import Papa from "papaparse";
import { writeBigTill } from "#tests/bench/big-till.ts";
import { type Random, randomStream } from "#tests/simulate/random.ts";

/**
 * Measures what 30 phones that count wait for while a million sales lines are read in on the same server:
 * `npm run bench:load [-- --lines N] [--phones N] [--rounds N] [--keep FOLDER]`.
 *
 * The server is the compiled program on the sample bar, in a process of its own; every phone enters a bottle every one to
 * three seconds (faster than anybody counts) and now and then reads what the others counted. Ends with 1 when an entry
 * fails, or when one in a hundred waits longer than 250 ms.
 */
const P99_MOST_MS = 250;
const SEED = 20_261_125;
const root = fileURLToPath(new URL("../../", import.meta.url));

type Options = { lines: number; phones: number; rounds: number; folder: string | undefined };

function readOptions(args: readonly string[]): Options {
  const of = (name: string): string | undefined => {
    const at = args.indexOf(`--${name}`);
    return at < 0 ? undefined : args[at + 1];
  };
  return {
    lines: Number(of("lines") ?? 1_000_000),
    phones: Number(of("phones") ?? 30),
    rounds: Number(of("rounds") ?? 3),
    folder: of("keep"),
  };
}

/** The till of the sample bar, as far back as so many lines take. */
function tillFile(folder: string, lines: number, round: number): string {
  const file = join(folder, `till-${lines}-${round}.csv`);
  if (existsSync(file)) return file;
  const text = readFileSync(join(root, "sample-sales", "drinks.csv"), "utf8");
  const rows = Papa.parse<Record<string, string>>(text, { header: true, skipEmptyLines: true }).data;
  const drinks = rows.map(({ drink = "", price = "" }) => ({ name: drink, price: Number(price) || 10 }));
  const bar = {
    firstDate: "2024-01-01",
    timeZone: "Europe/Lisbon",
    dayEnds: "04:00",
    drinks,
    modifiers: ["No ice"],
  };
  writeBigTill(`${file}.part`, bar, lines, SEED + round);
  renameSync(`${file}.part`, file);
  return file;
}

/** Runs the compiled program to its end. */
function ullage(...args: string[]): Promise<void> {
  const child = spawn(process.execPath, [join(root, "tests", "bench", "ullage.mjs"), ...args], {
    stdio: ["ignore", "ignore", "inherit"],
  });
  return new Promise((resolve, reject) =>
    child.once("exit", (status) =>
      status === 0 ? resolve() : reject(new Error(`ullage ${args.join(" ")} ended with ${status}`)),
    ),
  );
}

async function serve(db: string): Promise<{ server: ChildProcess; url: string }> {
  const server = spawn(process.execPath, [join(root, "tests", "browser", "serve-open.mjs"), db], {
    cwd: root,
    stdio: ["ignore", "pipe", "inherit"],
  });
  const url = await new Promise<string>((resolve, reject) => {
    server.stdout?.once("data", (chunk: Buffer) => resolve(chunk.toString().trim()));
    server.once("exit", (status) => reject(new Error(`the server ended with ${status}`)));
  });
  return { server, url };
}

/** The most memory a process had at once. */
function peakMb({ pid }: ChildProcess): number {
  const status = existsSync(`/proc/${pid}/status`) ? readFileSync(`/proc/${pid}/status`, "utf8") : "";
  return Number(/VmHWM:\s+(\d+)/.exec(status)?.[1] ?? Number.NaN) / 1024;
}

type Entry = { item: string; pack: string };
type Waited = { startedMs: number; ms: number; isError: boolean };

const pause = (ms: number): Promise<void> => new Promise((resolve) => setTimeout(resolve, ms));

async function post(url: string, path: string, body: unknown): Promise<Response> {
  return fetch(`${url}${path}`, {
    method: "POST",
    headers: { "content-type": "application/json", origin: url },
    body: JSON.stringify(body),
  });
}

/** One person with a phone, until told to stop. */
async function count(
  url: string,
  phone: number,
  shelves: readonly Entry[],
  random: Random,
  waited: Waited[],
  isOver: () => boolean,
): Promise<void> {
  await pause(random.uniform() * 2000);
  for (let entry = 0; !isOver(); entry += 1) {
    const on = shelves[(phone * 7 + entry) % shelves.length];
    if (on === undefined) throw new Error("The bar has nothing to count.");
    const row = {
      count: "The big count",
      at: "2026-11-30T09:00:00Z",
      area: `Area ${phone}`,
      item: on.item,
      pack: on.pack,
      full: random.whole(0, 12),
      parts: [Math.round(random.uniform() * 10) / 10],
      grossG: [],
      amount: null,
      unit: null,
      by: `Phone ${phone}`,
    };
    const startedMs = performance.now();
    let isError = false;
    try {
      const answer = await post(url, "/api/counts/entries", row);
      isError = !answer.ok;
      const text = await answer.text();
      if (isError) process.stderr.write(`${answer.status} ${text.slice(0, 200)}\n`);
    } catch (error) {
      isError = true;
      process.stderr.write(`${error instanceof Error ? error.message : error}\n`);
    }
    waited.push({ startedMs, ms: performance.now() - startedMs, isError });
    if (entry % 10 === 9)
      await fetch(`${url}/api/counts/rows/${encodeURIComponent(row.count)}`).then((r) => r.text());
    await pause(1000 + random.uniform() * 2000);
  }
}

type Job = {
  id: string;
  state: string;
  problems: string[];
  report: { importId: number; lines: number } | null;
};

/** As the screen does it: looks at the file, then reads it in. */
async function importFile(
  url: string,
  file: string,
): Promise<{ job: Job; spans: Map<string, [number, number]> }> {
  const spans = new Map<string, [number, number]>();
  const look = await fetch(`${url}/api/sales/jobs?name=till.csv&look=yes`, {
    method: "POST",
    headers: { origin: url, "content-type": "text/csv" },
    body: Readable.toWeb(createReadStream(file)) as ReadableStream,
    duplex: "half",
  } as RequestInit);
  let job = (await look.json()) as Job;
  const follow = async (done: string, as: string): Promise<void> => {
    for (;;) {
      const startedMs = performance.now();
      job = (await (await fetch(`${url}/api/sales/jobs/${job.id}`)).json()) as Job;
      const name = `${as} ${job.state}`;
      spans.set(name, [spans.get(name)?.[0] ?? startedMs, performance.now()]);
      if (job.state === done) return;
      if (job.state === "failed" || job.state === "cancelled") throw new Error(job.problems.join("\n"));
      await pause(200);
    }
  };
  await follow("looked", "look");
  job = (await (await post(url, `/api/sales/jobs/${job.id}/import`, {})).json()) as Job;
  await follow("done", "import");
  return { job, spans };
}

function quantile(values: readonly number[], share: number): number {
  const sorted = [...values].sort((a, b) => a - b);
  return sorted[Math.min(sorted.length - 1, Math.floor(share * sorted.length))] ?? Number.NaN;
}

function say(what: string, waited: readonly Waited[]): void {
  if (waited.length === 0) return;
  const times = waited.map(({ ms }) => ms);
  const [p50, p99, most] = [quantile(times, 0.5), quantile(times, 0.99), Math.max(0, ...times)];
  const errors = waited.filter(({ isError }) => isError).length;
  const figures = `p50 ${p50.toFixed(0)} ms, p99 ${p99.toFixed(0)} ms, longest ${most.toFixed(0)} ms, ${errors} errors`;
  process.stdout.write(`${what.padEnd(34)} ${String(times.length).padStart(5)} entries: ${figures}\n`);
}

async function main({ lines, phones, rounds, folder }: Options): Promise<number> {
  const work = folder ?? mkdtempSync(join(tmpdir(), "ullage-load-"));
  mkdirSync(work, { recursive: true });
  const db = join(work, "load.db");
  for (const end of ["", "-wal", "-shm"]) rmSync(db + end, { force: true });
  const tills = Array.from({ length: rounds }, (_, round) => tillFile(work, lines, round));
  await ullage("load", join(root, "sample-sales"), "--db", db);
  const { server, url } = await serve(db);
  try {
    const { packs } = (await (await fetch(`${url}/api/catalogue`)).json()) as {
      packs: { item: string; pack: string }[];
    };
    const shelves = packs.map(({ item, pack }) => ({ item, pack }));
    const waited: Waited[] = [];
    let isOver = false;
    const counting = Array.from({ length: phones }, (_, phone) =>
      count(url, phone, shelves, randomStream(SEED, `phone ${phone}`), waited, () => isOver),
    );
    await pause(15_000);
    const aloneUntilMs = performance.now();
    process.stdout.write(
      `${phones} phones, ${lines.toLocaleString("en")} lines (load ${loadavg()[0]?.toFixed(1)} on ${availableParallelism()} cores)\n\n`,
    );
    say("phones alone", waited);
    for (const [round, till] of tills.entries()) {
      const startedMs = performance.now();
      const { job, spans } = await importFile(url, till);
      const read = job.report?.lines;
      if (read !== lines) throw new Error(`${read} lines were read of ${lines}`);
      for (const [name, [from, to]] of spans) {
        const during = waited.filter((each) => each.startedMs + each.ms >= from && each.startedMs <= to);
        say(`${name} (${((to - from) / 1000).toFixed(1)} s)`, during);
      }
      const undoneMs = performance.now();
      const undo = await post(url, `/api/sales/imports/${job.report?.importId}/undo`, {});
      if (!undo.ok) throw new Error(`undo: ${undo.status} ${await undo.text()}`);
      say(
        `undo (${((performance.now() - undoneMs) / 1000).toFixed(1)} s)`,
        waited.filter((each) => each.startedMs + each.ms >= undoneMs),
      );
      say(
        `round ${round + 1} (${((performance.now() - startedMs) / 1000).toFixed(0)} s)`,
        waited.filter((each) => each.startedMs >= startedMs),
      );
    }
    isOver = true;
    await Promise.all(counting);
    const beside = waited.filter(({ startedMs }) => startedMs >= aloneUntilMs);
    process.stdout.write("\n");
    say("all beside imports", beside);
    process.stdout.write(
      `peak memory of the server, import thread included: ${peakMb(server).toFixed(0)} MB\n`,
    );
    const p99 = quantile(
      beside.map(({ ms }) => ms),
      0.99,
    );
    const errors = waited.filter(({ isError }) => isError).length;
    return errors === 0 && p99 < P99_MOST_MS ? 0 : 1;
  } finally {
    server.kill("SIGTERM");
    if (folder === undefined) rmSync(work, { recursive: true, force: true });
  }
}

process.exitCode = await main(readOptions(process.argv.slice(2)));
