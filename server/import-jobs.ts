import { randomUUID } from "node:crypto";
import { createWriteStream } from "node:fs";
import { mkdtemp, rm } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { Readable, Transform } from "node:stream";
import { pipeline } from "node:stream/promises";
import { Worker } from "node:worker_threads";
import { NotFoundError } from "#db/errors.ts";
import type { Db } from "#db/open.ts";
import { problemsOf } from "#server/cli/fault.ts";
import { GO_ON, type ImportTask, type ImportWord, runImport, STOP } from "#server/import-task.ts";
import { InputError } from "#server/input-error.ts";
import type { ImportReport } from "#server/sales-import.ts";

/** How far an import is. `share` is of the file that is read; `report` and `problems` come at the end. */
export type ImportJob = {
  id: string;
  file: string;
  state: "reading" | "writing" | "done" | "failed" | "cancelled";
  share: number;
  report: ImportReport | null;
  problems: readonly string[];
};

const JOBS_KEPT = 50;
const FILE_BYTES_MOST = 4 * 1024 ** 3;

/** Imports that run beside the server, each in a thread of its own. */
export class ImportJobs {
  readonly #db: Db;
  readonly #jobs = new Map<string, { job: ImportJob; flag: SharedArrayBuffer }>();

  constructor(db: Db) {
    this.#db = db;
  }

  /** Keeps what is sent in a file and begins to import it. Throws InputError when it is empty or beyond any till. */
  async start(
    name: string,
    body: ReadableStream<Uint8Array> | null,
    doing: { now: string; by: string },
  ): Promise<ImportJob> {
    if (body === null) throw new InputError(`${name}: nothing was sent; send the file as the body.`);
    const folder = await mkdtemp(join(tmpdir(), "ullage-import-"));
    const path = join(folder, "sales");
    try {
      await keepBody(name, body, path);
    } catch (error) {
      await rm(folder, { recursive: true, force: true });
      throw error;
    }
    const job: ImportJob = {
      id: randomUUID(),
      file: name,
      state: "reading",
      share: 0,
      report: null,
      problems: [],
    };
    const flag = new SharedArrayBuffer(4);
    this.#jobs.set(job.id, { job, flag });
    this.#forgetOld();
    const isDone = this.#run(job, { name, path, flag, ...doing });
    void isDone.finally(() => rm(folder, { recursive: true, force: true }));
    return { ...job };
  }

  /** Throws NotFoundError. */
  of(id: string): ImportJob {
    return { ...this.#find(id).job };
  }

  /** Stops an import that is still reading; one that writes already is let finish, as it takes a moment. Throws NotFoundError. */
  cancel(id: string): ImportJob {
    const { job, flag } = this.#find(id);
    if (job.state === "reading") Atomics.compareExchange(new Int32Array(flag), 0, GO_ON, STOP);
    return { ...job };
  }

  #find(id: string) {
    const held = this.#jobs.get(id);
    if (held === undefined)
      throw new NotFoundError(
        "There is no such import under way; the list of imports shows what was read in.",
      );
    return held;
  }

  #forgetOld(): void {
    const ended = [...this.#jobs].filter(([, { job }]) => job.state !== "reading" && job.state !== "writing");
    for (const [id] of ended.slice(0, Math.max(0, this.#jobs.size - JOBS_KEPT))) this.#jobs.delete(id);
  }

  async #run(job: ImportJob, task: ImportTask): Promise<void> {
    const hear = (word: ImportWord): void => {
      const isStopped = word.state === "failed" && Atomics.load(new Int32Array(task.flag), 0) === STOP;
      Object.assign(job, word, isStopped ? { state: "cancelled" } : {});
    };
    try {
      if (this.#db.sqlite.memory) hear({ state: "done", report: await inThisThread(this.#db, task, hear) });
      else await inThread(this.#db.sqlite.name, task, hear);
    } catch (error) {
      const problems = problemsOf(error);
      if (problems === undefined) console.error(error);
      hear({
        state: "failed",
        problems: problems ?? ["Something went wrong in the program. Nothing was changed."],
      });
    }
  }
}

/** A database in memory can be seen by its own thread only. */
async function inThisThread(
  db: Db,
  task: ImportTask,
  hear: (word: ImportWord) => void,
): Promise<ImportReport> {
  await new Promise((resolve) => setImmediate(resolve));
  return runImport(db, task, hear);
}

function inThread(databaseFile: string, task: ImportTask, hear: (word: ImportWord) => void): Promise<void> {
  const worker = threadFor({ ...task, databaseFile });
  return new Promise((resolve, reject) => {
    worker.on("message", hear);
    worker.on("error", reject);
    worker.on("exit", () => resolve());
  });
}

function threadFor(workerData: ImportTask & { databaseFile: string }): Worker {
  if (!import.meta.url.endsWith(".ts"))
    return new Worker(new URL("./import-worker.js", import.meta.url), { workerData });
  // In development the sources run as they are, which a thread has to learn before it can read its first.
  const source = JSON.stringify(new URL("./import-worker.ts", import.meta.url).href);
  const start = `import("tsx/esm/api").then(({ register }) => { register(); return import(${source}); });`;
  return new Worker(start, { workerData, eval: true, execArgv: ["--conditions=ullage-source"] });
}

async function keepBody(name: string, body: ReadableStream<Uint8Array>, path: string): Promise<void> {
  let bytes = 0;
  const counted = new Transform({
    transform(chunk: Uint8Array, _, done) {
      bytes += chunk.length;
      if (bytes > FILE_BYTES_MOST)
        done(new InputError(`${name}: that is more than 4 GB; split it by month.`));
      else done(null, chunk);
    },
  });
  await pipeline(
    Readable.fromWeb(body as Parameters<typeof Readable.fromWeb>[0]),
    counted,
    createWriteStream(path),
  );
  if (bytes === 0) throw new InputError(`${name}: the file is empty; export the sales again.`);
}
