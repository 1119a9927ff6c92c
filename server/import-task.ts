import type { Db } from "#db/open.ts";
import { InputError } from "#server/input-error.ts";
import {
  type ImportReport,
  importReading,
  readForImport,
  refuseEmpty,
  textsFor,
} from "#server/sales-import.ts";
import { openWorld } from "#server/world.ts";

/** One file to be imported, with a flag that is raised to stop it. */
export type ImportTask = {
  name: string;
  path: string;
  now: string;
  by: string;
  /** One number: 0 go on; 1 stop; 2 too late, the lines are being written. */
  flag: SharedArrayBuffer;
};

/** What the import says of itself on the way. */
export type ImportWord =
  | { state: "reading"; share: number }
  | { state: "writing" }
  | { state: "done"; report: ImportReport }
  | { state: "failed"; problems: readonly string[] };

export const [GO_ON, STOP, TOO_LATE] = [0, 1, 2] as const;

/** Reads a file and writes it in, saying how far it is. Throws InputError when it was stopped; then nothing is written. */
export async function runImport(
  db: Db,
  { name, path, now, by, flag }: ImportTask,
  say: (word: ImportWord) => void,
): Promise<ImportReport> {
  const state = new Int32Array(flag);
  const world = await openWorld(db);
  let shown = -1;
  const onProgress = (share: number): void => {
    if (Atomics.load(state, 0) === STOP) throw stopped(name);
    const percent = Math.floor(share * 100);
    if (percent === shown) return;
    shown = percent;
    say({ state: "reading", share });
  };
  const how = { book: world.facts.book, texts: await textsFor(db), onProgress };
  const file = await readForImport(db, { name, path }, how);
  refuseEmpty(file);
  if (Atomics.compareExchange(state, 0, GO_ON, TOO_LATE) === STOP) throw stopped(name);
  say({ state: "writing" });
  return importReading(db, world, file, { now, by });
}

function stopped(name: string): InputError {
  return new InputError(`${name}: stopped before anything was written.`);
}
