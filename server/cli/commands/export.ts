import { writeBookFolder } from "#db/book/folder.ts";
import { exportBook } from "#db/book-repository.ts";
import { closeDatabase } from "#db/open.ts";
import type { CommonOptions } from "#server/cli/program.ts";
import { openExisting } from "#server/cli/session.ts";

export async function exportCommand(options: CommonOptions, dir: string): Promise<undefined> {
  const db = openExisting(options);
  try {
    const exported = await exportBook(db);
    writeBookFolder(dir, exported);
    process.stdout.write(`Wrote the book of "${exported.book.venue.name}" to ${dir}.\n`);
  } finally {
    closeDatabase(db);
  }
  return undefined;
}
