import { saveSalesShapes } from "#db/catalogue-repository.ts";
import { type Acting, actingAs } from "#db/history/acting.ts";
import type { Db } from "#db/open.ts";
import type { SalesShape } from "#engine/sales/read/shape.ts";
import { InputError } from "#server/input-error.ts";
import type { ReadHow } from "#server/sales-bytes.ts";
import {
  type ImportReport,
  importReading,
  readForImport,
  refuseEmpty,
  textsFor,
} from "#server/sales-import.ts";
import { lookAtSales, type SalesLook } from "#server/sales-look.ts";
import { openWorld } from "#server/world.ts";

/** How a person wants one file read. */
export type ReadingWish = {
  /** How its columns are to be taken; left out, as the venue's shapes say or as detected. */
  shape?: SalesShape | undefined;
  /** Sums of days that have sums already are added to them. */
  addsSums?: boolean | undefined;
  /** Keeps the shape for files of these names (a glob), so that the next one is read without help. */
  rememberFor?: string | undefined;
};

/** One file to be looked at or imported, with a flag that is raised to stop it. */
export type ImportTask = ReadingWish & {
  name: string;
  path: string;
  now: string;
  by: string;
  /** On whose behalf; a thread does not know by itself. */
  acting: Acting;
  isLook: boolean;
  /** One number: 0 go on; 1 stop; 2 too late, the lines are being written. */
  flag: SharedArrayBuffer;
};

/** What the import says of itself on the way. */
export type ImportWord =
  | { state: "reading"; share: number }
  | { state: "looked"; look: SalesLook }
  | { state: "writing" }
  | { state: "done"; report: ImportReport }
  | { state: "failed"; problems: readonly string[] };

export const [GO_ON, STOP, TOO_LATE] = [0, 1, 2] as const;

/**
 * Reads a file and looks at it or writes it in, saying how far it is; the last word says what came of it. Throws InputError when
 * it was stopped; then nothing is written.
 */
export async function runImport(
  db: Db,
  task: ImportTask,
  say: (word: ImportWord) => void,
): Promise<ImportWord> {
  const { name, path, now, by, flag, shape, addsSums = false } = task;
  const state = new Int32Array(flag);
  const world = await openWorld(db);
  const how: ReadHow = {
    book: world.facts.book,
    texts: await textsFor(db),
    shape,
    onProgress: progressOf(name, state, say),
  };
  if (task.isLook)
    return { state: "looked", look: await lookAtSales(db, world, { name, path }, how, { addsSums }) };
  const file = await readForImport(db, { name, path }, how);
  refuseEmpty(file);
  if (Atomics.compareExchange(state, 0, GO_ON, TOO_LATE) === STOP) throw stopped(name);
  say({ state: "writing" });
  return actingAs(task.acting, async () => {
    const report = await importReading(db, world, file, { now, by }, { addsSums });
    const { shape: used } = "sameAs" in file ? file.sameAs : file.reading;
    await remember(db, world.facts.book.salesShapes, task, used);
    return { state: "done", report };
  });
}

function progressOf(name: string, state: Int32Array, say: (word: ImportWord) => void) {
  let shown = -1;
  return (share: number): void => {
    if (Atomics.load(state, 0) === STOP) throw stopped(name);
    const percent = Math.floor(share * 100);
    if (percent === shown) return;
    shown = percent;
    say({ state: "reading", share });
  };
}

/** The first shape that fits a file is used, so the newest stands first; an older one for the same names gives way. */
async function remember(
  db: Db,
  shapes: readonly SalesShape[],
  { rememberFor, shape }: ReadingWish,
  used: SalesShape,
): Promise<void> {
  if (rememberFor === undefined) return;
  const kept = { ...used, ...shape, files: rememberFor };
  await saveSalesShapes(db, [kept, ...shapes.filter(({ files }) => files !== rememberFor)]);
}

function stopped(name: string): InputError {
  return new InputError(`${name}: stopped before anything was written.`);
}
