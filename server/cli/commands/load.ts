import { keepCopy } from "#db/backup.ts";
import { readBookFolder } from "#db/book/folder.ts";
import { loadBook, replaceBook } from "#db/book-repository.ts";
import { refuseLoadOverClosed } from "#db/closings-repository.ts";
import { closeDatabase, openDatabase } from "#db/open.ts";
import type { CommonOptions } from "#server/cli/program.ts";
import { progress } from "#server/cli/progress.ts";
import { databaseFile } from "#server/cli/session.ts";
import { unknownPlace } from "#server/holidays.ts";
import { readSalesFiles } from "#server/sales-files.ts";

export async function loadCommand(options: CommonOptions, dir: string): Promise<undefined> {
  const done = await loadFolder(dir, databaseFile(options));
  for (const line of done) process.stdout.write(`${line}\n`);
  return undefined;
}

/**
 * Reads a book folder into a database file, all or nothing, and says what it read.
 * Throws BookError, with every wrong cell, before anything is touched.
 */
export async function loadFolder(dir: string, file: string): Promise<string[]> {
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
      await replaceBook(db, book, sales.imports, { now: new Date().toISOString(), by: "load" });
      const lines = sales.imports.reduce((sum, { count }) => sum + count, 0);
      return [
        `Loaded "${book.venue.name}": ${book.items.length} items, ${book.drinks.length} drinks, ` +
          `${new Set(book.counts.map(({ count }) => count)).size} counts, ${lines} sales lines from ${sales.imports.length} files.`,
        ...notices,
        ...(placeNotice === null ? [] : [placeNotice]),
        ...sales.notices,
        ...(kept === undefined ? [] : [`What was there before is kept in ${kept}.`]),
      ];
    } finally {
      closeDatabase(db);
    }
  } finally {
    shown.done();
  }
}
