import { mkdirSync, mkdtempSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { dirname, join } from "node:path";
import { type Ran, runUllage } from "#tests/support/run-ullage.ts";

export const HERON = {
  name: "The Heron",
  currency: "EUR",
  timeZone: "Europe/Lisbon",
  dayEnds: "04:00",
  oz: "us",
};

// biome-ignore lint/suspicious/noExplicitAny: what a report prints is checked by the tests that read it.
export type Printed = any;

/** A book written to disk and loaded, and the commands run on it. */
export type BarOnDisk = {
  dir: string;
  db: string;
  load: Ran;
  run: (...args: string[]) => Promise<Ran>;
  /** What a report prints as JSON; throws with what it said when it did not end well. */
  json: (...args: string[]) => Promise<Printed>;
  /** Expected use by item over business dates. */
  use: (from: string, to?: string, ...more: string[]) => Promise<Record<string, number>>;
  /** The variance's items by name. */
  variance: (...args: string[]) => Promise<Record<string, Printed>>;
};

const root = mkdtempSync(join(tmpdir(), "ullage-format-"));
let made = 0;

/** A path of one's own, in a folder that goes when the run ends. */
export function freshPath(name: string): string {
  made += 1;
  return join(root, `${made}-${name}`);
}

/** Writes files into a folder of their own and names it. */
export function writtenBook(files: Record<string, string>): string {
  const dir = freshPath("book");
  for (const [name, text] of Object.entries(files)) {
    const path = join(dir, name);
    mkdirSync(dirname(path), { recursive: true });
    writeFileSync(path, text);
  }
  return dir;
}

/** Writes a book's files, with the Heron as its venue, and loads them into a database of their own. */
export async function barOnDisk(
  files: Record<string, string>,
  venue: Record<string, unknown> = {},
): Promise<BarOnDisk> {
  return barFrom(writtenBook({ "venue.json": JSON.stringify({ ...HERON, ...venue }), ...files }));
}

/** Loads a folder into a database of its own. */
export async function barFrom(dir: string): Promise<BarOnDisk> {
  const db = freshPath("bar.db");
  const load = await runUllage("load", dir, "--db", db);
  const run = (...args: string[]) => runUllage(...args, "--db", db);
  const json = async (...args: string[]) => {
    const { status, out, err } = await run(...args, "--json");
    if (status !== 0) throw new Error(`ullage ${args.join(" ")} ended with ${status}: ${load.err}${err}`);
    return JSON.parse(out);
  };
  return {
    dir,
    db,
    load,
    run,
    json,
    use: async (from, to = from, ...more) => {
      const { items } = await json("use", "--from", from, "--to", to, ...more);
      return Object.fromEntries(
        items.map(({ item, expected }: Printed) => [item, Number(expected.toFixed(9))]),
      );
    },
    variance: async (...args) => {
      const { items } = await json("variance", ...args);
      return Object.fromEntries(items.map((row: Printed) => [row.item, row]));
    },
  };
}
