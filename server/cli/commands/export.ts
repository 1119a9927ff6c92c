import { exportBook } from "#db/book-repository.ts";
import { writeBookFolder } from "#db/book/folder.ts";
import type { CommonOptions } from "#server/cli/program.ts";
import { openExisting } from "#server/cli/session.ts";
import { InputError } from "#server/input-error.ts";

export async function exportCommand(options: CommonOptions, dir: string): Promise<undefined> {
  const db = openExisting(options);
  try {
    const exported = await exportBook(db);
    if (exported === undefined) throw new InputError("This database holds no venue yet; there is nothing to export.");
    writeBookFolder(dir, exported);
    process.stdout.write(`Wrote the book of "${exported.book.venue.name}" to ${dir}.\n`);
  } finally {
    db.close();
  }
  return undefined;
}
