import { readFileSync } from "node:fs";
import { basename } from "node:path";
import type { Db } from "#db/open.ts";
import { closeDatabase } from "#db/open.ts";
import { importSales, previewImport, undoImport } from "#db/sales-repository.ts";
import type { SalesShape } from "#engine/sales/read/shape.ts";
import { printReport, type Report, section } from "#server/cli/output.ts";
import { type CommonOptions, formatOf } from "#server/cli/program.ts";
import { progress } from "#server/cli/progress.ts";
import { openExisting } from "#server/cli/session.ts";
import { InputError } from "#server/input-error.ts";
import { readSalesFile } from "#server/sales-files.ts";
import { openWorld, type World } from "#server/world.ts";

type SalesOptions = CommonOptions & { shape?: string; undo?: string; dryRun?: boolean };

/** What became of one file. */
type Imported = {
  file: string;
  importId: number | null;
  lines: number;
  new: number;
  known: number;
  refused: { row: number; reason: string }[];
  days: number;
};

export async function salesCommand(options: SalesOptions, files: string[]): Promise<undefined> {
  const db = openExisting(options);
  try {
    if (options.undo !== undefined) await undo(db, options.undo);
    else await importFiles(db, files, options);
  } finally {
    closeDatabase(db);
  }
  return undefined;
}

async function undo(db: Db, given: string): Promise<void> {
  const id = Number(given);
  if (!Number.isInteger(id))
    throw new InputError(`--undo: "${given}" is no import number; ullage sales prints them.`);
  const undone = await undoImport(db, id, { now: new Date().toISOString(), by: "command line" });
  process.stdout.write(
    `Took back import ${id}: ${undone.daysTouched.length} days are as they were before it.\n`,
  );
}

async function importFiles(db: Db, files: string[], options: SalesOptions): Promise<void> {
  if (files.length === 0) throw new InputError("Name the sales files: ullage sales week-47.csv");
  const world = await openWorld(db);
  const shape = shapeNamed(world, options.shape);
  const shown = progress("Sales");
  // Every file is read before any is written: a question about the last leaves the first out too.
  const reads = files.map((path, index) => {
    shown.step(`file ${index + 1} of ${files.length}: ${path}`);
    const name = basename(path);
    return { name, read: readSalesFile({ name, bytes: readFileSync(path) }, world.facts.book, shape) };
  });
  const done: Imported[] = [];
  for (const { name, read } of reads) {
    const facts = { file: name, lines: read.lines, shape: read.shape, refused: read.refused };
    const by = { now: new Date().toISOString(), by: "command line" };
    const result = options.dryRun
      ? { ...(await previewImport(db, facts)), importId: null }
      : await importSales(db, { ...facts, ...by });
    done.push({
      file: name,
      importId: result.importId,
      lines: result.lines,
      new: result.new,
      known: result.known,
      refused: read.refused,
      days: result.daysTouched.length,
    });
  }
  shown.done();
  printReport(salesView(done, options.dryRun ?? false), formatOf(options));
}

function shapeNamed(world: World, name: string | undefined): SalesShape | undefined {
  if (name === undefined) return undefined;
  const shapes = world.facts.book.salesShapes;
  const shape = shapes.find(({ files }) => files === name);
  if (shape !== undefined) return shape;
  const known = shapes.map(({ files }) => `"${files}"`).join(", ") || "none";
  throw new InputError(`--shape: no shape is named "${name}"; sales-shapes.json has ${known}.`);
}

function salesView(done: Imported[], isDryRun: boolean): Report {
  const refused = done.flatMap(({ file, refused }) =>
    refused.map(({ row, reason }) => ({ file, row, reason })),
  );
  return {
    json: { dryRun: isDryRun, files: done },
    head: [isDryRun ? "This is what would change; nothing was written." : "Imported."],
    sections: [
      section({
        columns: [
          { head: "import", cell: (row) => (row.importId === null ? "–" : String(row.importId)) },
          { head: "file", cell: (row) => row.file },
          { head: "lines", cell: (row) => row.lines, digits: 0 },
          { head: "new", cell: (row) => row.new, digits: 0 },
          { head: "known", cell: (row) => row.known, digits: 0 },
          { head: "refused", cell: (row) => row.refused.length, digits: 0 },
          { head: "days", cell: (row) => row.days, digits: 0 },
        ],
        rows: done,
      }),
      ...(refused.length === 0
        ? []
        : [
            section({
              title: "Rows left out",
              columns: [
                { head: "file", cell: (row) => row.file },
                { head: "row", cell: (row) => row.row, digits: 0 },
                { head: "why", cell: (row) => row.reason },
              ],
              rows: refused,
            }),
          ]),
    ],
  };
}
