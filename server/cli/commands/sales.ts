import { basename } from "node:path";
import type { Db } from "#db/open.ts";
import { closeDatabase } from "#db/open.ts";
import { undoImport } from "#db/sales-repository.ts";
import type { SalesShape } from "#engine/sales/read/shape.ts";
import { printReport, type Report, type Section, section } from "#server/cli/output.ts";
import { type CommonOptions, formatOf } from "#server/cli/program.ts";
import { progress } from "#server/cli/progress.ts";
import { openExisting } from "#server/cli/session.ts";
import { InputError } from "#server/input-error.ts";
import {
  type FileReading,
  type ImportReport,
  importReading,
  readForImport,
  textsFor,
} from "#server/sales-import.ts";
import { openWorld, type World } from "#server/world.ts";

type SalesOptions = CommonOptions & { shape?: string; undo?: string; dryRun?: boolean; add?: boolean };

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
  const texts = await textsFor(db);
  const shown = progress("Sales");
  // Every file is read before any is written: a question about the last leaves the first out too.
  const readings: FileReading[] = [];
  for (const [index, path] of files.entries()) {
    const step = `file ${index + 1} of ${files.length}: ${path}`;
    shown.step(step);
    const onProgress = (share: number): void => shown.step(`${step}, ${Math.round(share * 100)} %`);
    const how = { book: world.facts.book, texts, shape, onProgress };
    readings.push(await readForImport(db, { name: basename(path), path }, how));
  }
  const done: ImportReport[] = [];
  for (const reading of readings) {
    shown.step(`${reading.name} into the database …`);
    const doing = options.dryRun ? null : { now: new Date().toISOString(), by: "command line" };
    done.push(await importReading(db, world, reading, doing, { addsSums: options.add ?? false }));
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

function salesView(done: ImportReport[], isDryRun: boolean): Report {
  return {
    json: {
      dryRun: isDryRun,
      files: done.map((file) => ({ ...file, days: file.daysTouched.length })),
    },
    head: [isDryRun ? "This is what would change; nothing was written." : "Imported."],
    sections: [filesSection(done, isDryRun), ...refusedSection(done), ...done.flatMap(explanation)],
  };
}

function filesSection(done: ImportReport[], isDryRun: boolean): Section<ImportReport> {
  return section({
    columns: [
      { head: "import", cell: (row) => (row.importId === null ? "–" : String(row.importId)) },
      { head: "file", cell: (row) => row.file },
      { head: "lines", cell: (row) => row.lines, digits: 0 },
      { head: "new", cell: (row) => row.new, digits: 0 },
      { head: "known", cell: (row) => row.known, digits: 0 },
      { head: "changed", cell: (row) => row.changed, digits: 0 },
      { head: "refused", cell: (row) => row.refused.length, digits: 0 },
      { head: "days", cell: (row) => row.daysTouched.length, digits: 0 },
      { head: "mapped", cell: (row) => percent(row.coverage.quantity) },
      { head: "of money", cell: (row) => percent(row.coverage.money) },
    ],
    rows: done,
    notes: done.flatMap((file) => notesOf(file, isDryRun)),
  });
}

function percent(share: number): string {
  return `${(share * 100).toFixed(1)} %`;
}

const DATES_SHOWN = 12;

function notesOf({ file, notices, daysMissing, daysTouched }: ImportReport, isDryRun: boolean): string[] {
  const first = daysTouched[0];
  const days =
    first === undefined
      ? [`${file}: there is no sale in it.`]
      : [`${file}: business days ${first} to ${daysTouched.at(-1)}.`];
  const missing = daysMissing.slice(0, DATES_SHOWN).join(", ");
  const more = daysMissing.length > DATES_SHOWN ? ` and ${daysMissing.length - DATES_SHOWN} more` : "";
  const gap = isDryRun ? "would still be missing" : "are missing";
  return [
    ...days,
    ...notices.map((notice) => `${file}: ${notice}`),
    ...(daysMissing.length === 0
      ? []
      : [`${file}: sales of these days ${gap} between the files: ${missing}${more}.`]),
  ];
}

const REFUSED_SHOWN = 100;

function refusedSection(done: ImportReport[]) {
  const rows = done.flatMap(({ file, refused }) => refused.map(({ row, reason }) => ({ file, row, reason })));
  if (rows.length === 0) return [];
  return [
    section({
      title: "Rows left out",
      columns: [
        { head: "file", cell: (row) => row.file },
        { head: "row", cell: (row) => row.row, digits: 0 },
        { head: "why", cell: (row) => row.reason },
      ],
      rows: rows.slice(0, REFUSED_SHOWN),
      notes:
        rows.length > REFUSED_SHOWN
          ? [`and ${rows.length - REFUSED_SHOWN} more; ullage sales --json lists them all.`]
          : [],
    }),
  ];
}

const ITEMS_SHOWN = 10;

function explanation({ file, unmapped, daysUnlike, moved }: ImportReport) {
  return [
    ...(unmapped.length === 0
      ? []
      : [
          section({
            title: `Sold, but not known to the book (${file})`,
            columns: [
              { head: "ring name", cell: (row) => row.ringName },
              { head: "quantity", cell: (row) => row.quantity, digits: 0 },
              { head: "net", cell: (row) => row.net, digits: 2 },
            ],
            rows: unmapped.slice(0, ITEMS_SHOWN),
            notes: unmapped.length > ITEMS_SHOWN ? [`and ${unmapped.length - ITEMS_SHOWN} more.`] : [],
          }),
        ]),
    ...(daysUnlike.length === 0
      ? []
      : [
          section({
            title: `Days unlike themselves (${file}): part of an export, or a party?`,
            columns: [
              { head: "day", cell: (row) => row.date },
              { head: "sold", cell: (row) => row.quantity, digits: 0 },
              { head: "usual of the weekday", cell: (row) => row.usual, digits: 0 },
            ],
            rows: daysUnlike.slice(0, ITEMS_SHOWN),
          }),
        ]),
    ...(moved.length === 0
      ? []
      : [
          section({
            title: `What moved most in expected use (${file})`,
            columns: [
              { head: "item", cell: (row) => row.item },
              { head: "before", cell: (row) => row.before, digits: 1 },
              { head: "now", cell: (row) => row.after, digits: 1 },
              { head: "unit", cell: (row) => row.base },
            ],
            rows: moved.slice(0, ITEMS_SHOWN),
            notes: moved.length > ITEMS_SHOWN ? [`and ${moved.length - ITEMS_SHOWN} more items.`] : [],
          }),
        ]),
  ];
}
