import { existsSync, readFileSync } from "node:fs";
import { loadBook } from "#db/book-repository.ts";
import { closeDatabase, openDatabase } from "#db/open.ts";
import { readSpecText } from "#engine/specs/text/read.ts";
import { printReport, type Report, section } from "#server/cli/output.ts";
import { type CommonOptions, formatOf } from "#server/cli/program.ts";
import { databaseFile } from "#server/cli/session.ts";
import { InputError } from "#server/input-error.ts";

/** Reads recipe text; with a database its items are matched, without one their names stay as written. */
export async function specCommand(options: CommonOptions, file: string): Promise<undefined> {
  const text = readFileSync(file === "-" ? 0 : file, "utf8");
  const items = await knownItems(options);
  printReport(specView(readSpecText(text, items === undefined ? {} : { items })), formatOf(options));
  return undefined;
}

async function knownItems(options: CommonOptions): Promise<string[] | undefined> {
  const file = databaseFile(options);
  if (!existsSync(file)) {
    if (options.db !== undefined) throw new InputError(`${file}: there is no database here.`);
    return undefined;
  }
  const db = openDatabase(file);
  try {
    return (await loadBook(db))?.items.map(({ name }) => name);
  } finally {
    closeDatabase(db);
  }
}

function specView(lines: ReturnType<typeof readSpecText>): Report {
  return {
    json: lines,
    sections: [
      section({
        columns: [
          { head: "line", cell: (row) => row.line },
          { head: "amount", cell: (row) => row.amount, digits: digitsOf(lines) },
          { head: "unit", cell: (row) => row.unit },
          {
            head: "item",
            cell: (row) => [row.item, ...row.orItems].filter((name) => name !== null).join(" or "),
          },
          { head: "note", cell: (row) => row.note },
          { head: "not understood", cell: (row) => row.error, style: () => "yellow" as const },
        ],
        rows: lines,
        empty: "There are no lines in this text.",
      }),
    ],
  };
}

/** As many digits as the amounts need, so that ¾ is not shown as 0.8; a third has three. */
function digitsOf(lines: ReturnType<typeof readSpecText>): number {
  const digits = lines.map(({ amount }) => String(Number((amount ?? 0).toFixed(3))).split(".")[1]?.length);
  return Math.max(0, ...digits.map((count) => count ?? 0));
}
