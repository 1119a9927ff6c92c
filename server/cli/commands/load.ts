import { keepCopy } from "#db/backup.ts";
import { readBookFolder } from "#db/book/folder.ts";
import { loadBook, replaceBook } from "#db/book-repository.ts";
import { refuseLoadOverClosed } from "#db/closings-repository.ts";
import { closeDatabase, openDatabase } from "#db/open.ts";
import {
  datesShown,
  filesSection,
  percent,
  unlikeSection,
  unmappedSection,
} from "#server/cli/import-view.ts";
import { type Report, reportText } from "#server/cli/output.ts";
import { type CommonOptions, formatOf } from "#server/cli/program.ts";
import { progress } from "#server/cli/progress.ts";
import { databaseFile } from "#server/cli/session.ts";
import { unknownPlace } from "#server/holidays.ts";
import { explainLoad, type LoadedSales } from "#server/load-explained.ts";
import { readSalesFiles } from "#server/sales-files.ts";

export async function loadCommand(options: CommonOptions, dir: string): Promise<undefined> {
  const format = formatOf(options);
  const { said, sales } = await loadFolder(dir, databaseFile(options));
  if (format === "table") for (const line of said) process.stdout.write(`${line}\n`);
  if (format !== "table" || sales.files.length > 0)
    process.stdout.write(`${reportText(salesView(said, sales), format, process.stdout.isTTY)}\n`);
  return undefined;
}

/** What was loaded: a line for each thing said of it, and its sales explained. */
export type LoadedFolder = { said: string[]; sales: LoadedSales };

/**
 * Reads a book folder into a database file, all or nothing, and says what it read.
 * Throws BookError, with every wrong cell, before anything is touched.
 */
export async function loadFolder(dir: string, file: string): Promise<LoadedFolder> {
  const shown = progress("Loading");
  try {
    shown.step("the sheets …");
    const { book, salesFiles, notices } = readBookFolder(dir);
    const sales = readSalesFiles(salesFiles, book, (text) => shown.step(text));
    const placeNotice = await unknownPlace(book.venue);
    shown.step("into the database …");
    const db = openDatabase(file);
    try {
      await refuseLoadOverClosed(db);
      const kept =
        (await loadBook(db)) !== undefined
          ? await keepCopy(db, file, "before-load", new Date().toISOString())
          : undefined;
      const doing = { now: new Date().toISOString(), by: "load" };
      const changes = await replaceBook(db, book, sales.imports, doing);
      const lines = sales.imports.reduce((sum, { count }) => sum + count, 0);
      const said = [
        `Loaded "${book.venue.name}": ${book.items.length} items, ${book.drinks.length} drinks, ` +
          `${new Set(book.counts.map(({ count }) => count)).size} counts, ${lines} sales lines from ${sales.imports.length} files.`,
        ...notices,
        ...(placeNotice === null ? [] : [placeNotice]),
        ...sales.notices,
        ...(kept === undefined ? [] : [`What was there before is kept in ${kept}.`]),
      ];
      return { said, sales: await explainLoad(db, book, sales.imports, changes) };
    } finally {
      closeDatabase(db);
    }
  } finally {
    shown.done();
  }
}

function salesView(said: readonly string[], sales: LoadedSales): Report {
  const { files, coverage, unmapped, daysUnlike } = sales;
  return {
    json: { said, ...sales, files: files.map((file) => ({ ...file, days: file.daysTouched.length })) },
    head: [
      "",
      `Its sales files; the book knows ${percent(coverage.quantity)} of what was sold, ${percent(coverage.money)} of the money.`,
    ],
    sections: [
      filesSection(files, [], notesOf(sales)),
      ...unmappedSection("Sold, but not known to the book", unmapped),
      ...unlikeSection("Days unlike themselves: part of an export, or a party?", daysUnlike),
    ],
  };
}

function notesOf({ files, daysMissing }: LoadedSales): string[] {
  const dates = files.flatMap(({ daysTouched }) => daysTouched).sort();
  return [
    ...(dates.length === 0 ? [] : [`Business days ${dates[0]} to ${dates.at(-1)}.`]),
    ...files.flatMap(({ file, notices }) => notices.map((notice) => `${file}: ${notice}`)),
    ...(daysMissing.length === 0
      ? []
      : [`Sales of these days are missing between the files: ${datesShown(daysMissing)}.`]),
  ];
}
