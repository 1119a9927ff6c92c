import { basename } from "node:path";
import type { Db } from "#db/open.ts";
import { closeDatabase } from "#db/open.ts";
import { undoImport } from "#db/sales-repository.ts";
import { salesOfDay } from "#db/staff-repository.ts";
import type { SalesShape } from "#engine/sales/read/shape.ts";
import { BusinessDate } from "#engine/time.ts";
import {
  datesShown,
  filesSection,
  movedSection,
  unlikeSection,
  unmappedSection,
} from "#server/cli/import-view.ts";
import { printReport, type Report, section } from "#server/cli/output.ts";
import { type CommonOptions, formatOf } from "#server/cli/program.ts";
import { progress } from "#server/cli/progress.ts";
import { openExisting } from "#server/cli/session.ts";
import { InputError } from "#server/input-error.ts";
import { localMinuteOrNull } from "#server/local-time.ts";
import { type DayLine, dayLines } from "#server/reports/day-lines.ts";
import {
  type FileReading,
  type ImportReport,
  importReading,
  readForImport,
  textsFor,
} from "#server/sales-import.ts";
import { openWorld, type World } from "#server/world.ts";

type SalesOptions = CommonOptions & {
  shape?: string;
  undo?: string;
  lines?: string;
  dryRun?: boolean;
  add?: boolean;
};

export async function salesCommand(options: SalesOptions, files: string[]): Promise<undefined> {
  const db = openExisting(options);
  try {
    if (options.undo !== undefined) await undo(db, options.undo);
    else if (options.lines !== undefined) printReport(await linesView(db, options.lines), formatOf(options));
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

/** A day's lines as they count, from all files together; who rang them stands there only where the owner keeps that. */
async function linesView(db: Db, given: string): Promise<Report> {
  const date = BusinessDate.safeParse(given);
  if (!date.success) throw new InputError(`--lines: "${given}" is no date; write YYYY-MM-DD.`);
  const { venue } = (await openWorld(db)).facts.catalogue;
  const lines = dayLines(await salesOfDay(db, date.data), venue.currency);
  const hasStaff = lines.some(({ staff }) => staff !== "");
  return {
    json: { date: date.data, lines },
    sections: [
      section({
        columns: [
          { head: "sold at", cell: ({ at }) => localMinuteOrNull(at, venue) ?? "" },
          { head: "check", cell: ({ check }) => check ?? "" },
          { head: "line", cell: ({ lineNo }) => lineNo ?? "" },
          { head: "ring name", cell: ({ ringName }) => ringName },
          { head: "modifiers", cell: ({ modifiers }) => modifiers },
          { head: "quantity", cell: ({ quantity }) => quantity, digits: 2 },
          { head: "gross", cell: ({ gross }) => gross, digits: 2 },
          { head: "net", cell: ({ net }) => net, digits: 2 },
          ...(hasStaff ? [{ head: "rung by", cell: ({ staff }: DayLine) => staff }] : []),
        ],
        rows: lines,
        empty: `No sale is known of ${date.data}.`,
        notes: hasStaff
          ? ["Whose key was used is not who poured; a variance is never laid at a person's door."]
          : [],
      }),
    ],
  };
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
    sections: [
      filesSection(
        done,
        [IMPORT_NUMBER],
        done.flatMap((file) => notesOf(file, isDryRun)),
      ),
      ...refusedSection(done),
      ...done.flatMap(explanation),
    ],
  };
}

const IMPORT_NUMBER = {
  head: "import",
  cell: (row: ImportReport) => (row.importId === null ? "–" : String(row.importId)),
};

function notesOf({ file, notices, daysMissing, daysTouched }: ImportReport, isDryRun: boolean): string[] {
  const first = daysTouched[0];
  const days =
    first === undefined
      ? [`${file}: there is no sale in it.`]
      : [`${file}: business days ${first} to ${daysTouched.at(-1)}.`];
  const gap = isDryRun ? "would still be missing" : "are missing";
  return [
    ...days,
    ...notices.map((notice) => `${file}: ${notice}`),
    ...(daysMissing.length === 0
      ? []
      : [`${file}: sales of these days ${gap} between the files: ${datesShown(daysMissing)}.`]),
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

function explanation({ file, unmapped, daysUnlike, moved }: ImportReport) {
  return [
    ...unmappedSection(`Sold, but not known to the book (${file})`, unmapped),
    ...unlikeSection(`Days unlike themselves (${file}): part of an export, or a party?`, daysUnlike),
    ...movedSection(`What moved most in expected use (${file})`, moved),
  ];
}
