import { randomUUID } from "node:crypto";
import { createWriteStream } from "node:fs";
import { mkdtemp, rm } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { Readable, Transform } from "node:stream";
import { pipeline } from "node:stream/promises";
import type { Worker } from "node:worker_threads";
import { ConflictError, NotFoundError } from "#db/errors.ts";
import { acting } from "#db/history/acting.ts";
import type { Db } from "#db/open.ts";
import { problemsOf } from "#server/cli/fault.ts";
import { faultText } from "#server/fault-text.ts";
import {
  GO_ON,
  type ImportTask,
  type ImportWord,
  type ReadingWish,
  runImport,
  STOP,
  TOO_LATE,
} from "#server/import-task.ts";
import { InputError } from "#server/input-error.ts";
import type { ImportReport } from "#server/sales-import.ts";
import type { SalesLook } from "#server/sales-look.ts";
import { startThread } from "#server/thread.ts";

/**
 * How far the reading of a file is. `share` is of the file that is read; `look` comes at the end of a look, after which the file
 * waits to be read in or left; `report` and `problems` come at the end.
 */
export type ImportJob = {
  id: string;
  file: string;
  bytes: number;
  state: "reading" | "looked" | "writing" | "done" | "failed" | "cancelled";
  share: number;
  look: SalesLook | null;
  report: ImportReport | null;
  problems: readonly string[];
};

type Doing = { now: string; by: string };
type Held = { job: ImportJob; folder: string; flag: SharedArrayBuffer; worker: Worker | null };

const JOBS_KEPT = 50;
const FILE_BYTES_MOST = 4 * 1024 ** 3;
/** A file as short as that is read at once; to start a thread would take longer. */
const SHORT_BYTES = 1 << 17;

/** Files that are looked at and imported beside the server, long ones each in a thread of its own. */
export class ImportJobs {
  readonly #db: Db;
  readonly #jobs = new Map<string, Held>();

  constructor(db: Db) {
    this.#db = db;
  }

  /** Keeps what is sent in a file and begins to look at it or to import it. Throws InputError when it is empty or beyond any till. */
  async start(
    name: string,
    body: ReadableStream<Uint8Array> | null,
    { isLook = false, ...wish }: ReadingWish & { isLook?: boolean },
    doing: Doing,
  ): Promise<ImportJob> {
    if (body === null) throw new InputError(`${name}: nothing was sent; send the file as the body.`);
    const folder = await mkdtemp(join(tmpdir(), "ullage-import-"));
    let bytes: number;
    try {
      bytes = await keepBody(name, body, join(folder, "sales"));
    } catch (error) {
      await rm(folder, { recursive: true, force: true });
      throw error;
    }
    const job: ImportJob = {
      id: randomUUID(),
      file: name,
      bytes,
      state: "reading",
      share: 0,
      look: null,
      report: null,
      problems: [],
    };
    this.#jobs.set(job.id, { job, folder, flag: new SharedArrayBuffer(4), worker: null });
    this.#forgetOld();
    void this.#run(job.id, { isLook, ...wish }, doing);
    return { ...job };
  }

  /** Looks again at a file that was looked at, as a person has it; or reads it in. Throws NotFoundError, ConflictError. */
  again(id: string, wish: ReadingWish & { isLook: boolean }, doing: Doing): ImportJob {
    const held = this.#find(id);
    if (held.job.state !== "looked")
      throw new ConflictError(`${held.job.file} is not waiting to be read; choose the file again.`);
    held.flag = new SharedArrayBuffer(4);
    Object.assign(held.job, { state: "reading", share: 0, problems: [] });
    void this.#run(id, wish, doing);
    return { ...held.job };
  }

  /** Throws NotFoundError. */
  of(id: string): ImportJob {
    return { ...this.#find(id).job };
  }

  /**
   * Stops an import that is still reading, and forgets a file that waits; one that writes already is let finish, as it takes a
   * moment. Throws NotFoundError.
   */
  cancel(id: string): ImportJob {
    const held = this.#find(id);
    const { job, flag, worker } = held;
    if (job.state === "looked") this.#end(held, { state: "cancelled" });
    else if (job.state === "reading") {
      const isStopped = Atomics.compareExchange(new Int32Array(flag), 0, GO_ON, STOP) !== TOO_LATE;
      // Stopped for good: with the flag raised it can no longer begin to write.
      if (isStopped && worker !== null) void worker.terminate();
      if (isStopped) this.#end(held, { state: "cancelled" });
    }
    return { ...job };
  }

  #find(id: string): Held {
    const held = this.#jobs.get(id);
    if (held === undefined)
      throw new NotFoundError(
        "There is no such import under way; the list of imports shows what was read in.",
      );
    return held;
  }

  #forgetOld(): void {
    const ended = [...this.#jobs].filter(([, { job }]) => job.state !== "reading" && job.state !== "writing");
    for (const [id, held] of ended.slice(0, Math.max(0, this.#jobs.size - JOBS_KEPT))) {
      void rm(held.folder, { recursive: true, force: true });
      this.#jobs.delete(id);
    }
  }

  #end({ job, folder }: Held, word: Partial<ImportJob>): void {
    Object.assign(job, word);
    void rm(folder, { recursive: true, force: true });
  }

  async #run(id: string, wish: ReadingWish & { isLook: boolean }, doing: Doing): Promise<void> {
    const held = this.#find(id);
    const { job, folder, flag } = held;
    const wasLookedAt = job.look !== null;
    const task: ImportTask = {
      name: job.file,
      path: join(folder, "sales"),
      flag,
      acting: acting(),
      ...wish,
      ...doing,
    };
    const hear = (word: ImportWord): void => {
      if (job.state === "cancelled") return;
      // What was looked at and could not be written is still there to be read otherwise.
      if (word.state === "failed" && wasLookedAt) Object.assign(job, word, { state: "looked" });
      else if (word.state === "done" || word.state === "failed") this.#end(held, word);
      else Object.assign(job, word);
    };
    try {
      const isShort = this.#db.sqlite.memory || job.bytes <= SHORT_BYTES;
      if (isShort) hear(await inThisThread(this.#db, task, hear));
      else await inThread(this.#db.sqlite.name, task, hear, held);
    } catch (error) {
      const problems = problemsOf(error);
      if (problems === undefined) console.error(faultText(error));
      hear({
        state: "failed",
        problems: problems ?? ["Something went wrong in the program. Nothing was changed."],
      });
    }
  }
}

/** A database in memory can be seen by its own thread only. */
async function inThisThread(db: Db, task: ImportTask, hear: (word: ImportWord) => void): Promise<ImportWord> {
  await new Promise((resolve) => setImmediate(resolve));
  return runImport(db, task, hear);
}

async function inThread(
  databaseFile: string,
  task: ImportTask,
  hear: (word: ImportWord) => void,
  held: Held,
): Promise<void> {
  const worker = startThread(new URL("./import-worker.js", import.meta.url), { ...task, databaseFile });
  held.worker = worker;
  try {
    await new Promise<void>((resolve, reject) => {
      worker.on("message", hear);
      worker.on("error", reject);
      worker.on("exit", () => resolve());
    });
  } finally {
    held.worker = null;
  }
}

/** Gives how many bytes it kept. */
async function keepBody(name: string, body: ReadableStream<Uint8Array>, path: string): Promise<number> {
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
  return bytes;
}
