import {
  existsSync,
  mkdirSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  renameSync,
  rmSync,
  statSync,
  writeFileSync,
} from "node:fs";
import { join, resolve } from "node:path";
import { BookError } from "#db/book/problem.ts";
import { readBook } from "#db/book/read-book.ts";
import { BOOK_FILES, VENUE_FILE } from "#db/book/sheets/all.ts";
import { didYouMean } from "#db/book/suggest.ts";
import type { Book } from "#engine/book.ts";
import { isCanonical } from "#engine/sales/read/canonical.ts";

const SALES_FOLDER = "sales";
const BYTES_MOST = 160 * 1024 * 1024;

export type SalesFile = { name: string; bytes: Uint8Array };

export type BookFolder = { book: Book; salesFiles: SalesFile[]; notices: string[] };

/** The texts of a book's sheets and sales files, by name. */
export type WrittenBook = {
  files: ReadonlyMap<string, string>;
  salesFiles: readonly { name: string; text: string }[];
};

/**
 * Reads a folder that holds a book: its sheets checked, its sales files as they are, in name order.
 *
 * Throws BookError with one line a problem.
 */
export function readBookFolder(dir: string): BookFolder {
  const names = listFiles(dir);
  if (names === undefined)
    throw new BookError([`there is no folder ${dir}; name the folder that holds ${VENUE_FILE}`]);
  const problems: string[] = [];
  const files = new Map<string, string>();
  const strangers: string[] = [];
  for (const name of names) {
    const file = BOOK_FILES.find((known) => known === name.toLowerCase());
    if (file === undefined) {
      if (/\.(?:csv|json)$/i.test(name))
        strangers.push(`${name}: it is no sheet of the book and was not read${didYouMean(name, BOOK_FILES)}`);
      continue;
    }
    const text = readText(join(dir, name), file, problems);
    if (text !== undefined) files.set(file, text);
  }
  if (problems.length > 0) throw new BookError(problems);
  const { book, notices } = readBook(files);
  const sales = join(dir, SALES_FOLDER);
  return {
    book,
    salesFiles: readSalesFiles(sales),
    notices: [...strangers, ...strangersInSales(sales), ...notices],
  };
}

/**
 * Writes a book and its sales files into a folder, which is made if need be.
 *
 * All is first written elsewhere, then moved into place, so that there is never half a book. The sheets of a book that
 * is already there are replaced; files of other names stay, and a till's own sales files are kept in "sales-before".
 * Throws BookError when the folder holds something else.
 */
export function writeBookFolder(dir: string, { files, salesFiles }: WrittenBook): void {
  const target = resolve(dir);
  const held = listFiles(target) ?? refuseFile(target);
  if (held.length > 0 && !held.includes(VENUE_FILE)) {
    throw new BookError([`${dir} is not empty and holds no ${VENUE_FILE}; name an empty or a new folder`]);
  }
  mkdirSync(target, { recursive: true });
  const work = mkdtempSync(join(target, ".export-"));
  const made = join(work, "made");
  try {
    mkdirSync(join(made, SALES_FOLDER), { recursive: true });
    for (const [name, text] of files) writeFileSync(join(made, name), text);
    for (const { name, text } of salesFiles) writeFileSync(join(made, SALES_FOLDER, name), text);
    swapIn(target, made, join(work, "old"));
  } finally {
    rmSync(work, { recursive: true, force: true });
  }
}

/** Moves the old book aside and the new one in; when a move fails, what was moved goes back. */
function swapIn(target: string, made: string, old: string): void {
  mkdirSync(old);
  const moves: { from: string; to: string }[] = [];
  const move = (from: string, to: string) => {
    renameSync(from, to);
    moves.push({ from, to });
  };
  try {
    for (const name of listFiles(target) ?? []) {
      if (name === SALES_FOLDER) move(join(target, name), placeForOldSales(target, old));
      else if (BOOK_FILES.includes(name)) move(join(target, name), join(old, name));
    }
    for (const name of listFiles(made) ?? []) move(join(made, name), join(target, name));
  } catch (error) {
    for (const { from, to } of moves.reverse()) renameSync(to, from);
    throw error;
  }
}

/** Our own exports can be made again; what a till wrote cannot. */
function placeForOldSales(target: string, old: string): string {
  const sales = join(target, SALES_FOLDER);
  const isOurs = filesIn(sales).every((name) =>
    isCanonical(new TextDecoder().decode(readFileSync(join(sales, name)).subarray(0, 200))),
  );
  if (isOurs) return join(old, SALES_FOLDER);
  let place = join(target, `${SALES_FOLDER}-before`);
  for (let time = 2; existsSync(place); time += 1) place = join(target, `${SALES_FOLDER}-before-${time}`);
  return place;
}

function listFiles(dir: string): string[] | undefined {
  if (!existsSync(dir) || !statSync(dir).isDirectory()) return undefined;
  return readdirSync(dir)
    .filter((name) => !name.startsWith("."))
    .sort();
}

function refuseFile(path: string): string[] {
  if (existsSync(path)) throw new BookError([`${path} is a file; name a folder to write the book to`]);
  return [];
}

function readText(path: string, file: string, problems: string[]): string | undefined {
  const { size } = statSync(path);
  if (size > BYTES_MOST) {
    problems.push(
      `${file}: the file is larger than ${BYTES_MOST / 1024 / 1024} MB; check that it is the right one`,
    );
    return undefined;
  }
  try {
    return new TextDecoder("utf-8", { fatal: true }).decode(readFileSync(path));
  } catch {
    problems.push(`${file}: the file is not UTF-8; save it as CSV UTF-8`);
    return undefined;
  }
}

/** What tills call their exports; a note or a picture beside them is none. */
const SALES_FILE = /\.(?:csv|tsv|tab|txt|dat|asc)$/i;

function readSalesFiles(dir: string): SalesFile[] {
  return filesIn(dir)
    .filter((name) => SALES_FILE.test(name))
    .map((name) => ({ name, bytes: readFileSync(join(dir, name)) }));
}

function strangersInSales(dir: string): string[] {
  return filesIn(dir)
    .filter((name) => !SALES_FILE.test(name))
    .map((name) => `${SALES_FOLDER}/${name}: it is no sales file (.csv, .tsv, .txt) and was not read`);
}

function filesIn(dir: string): string[] {
  return (listFiles(dir) ?? []).filter((name) => statSync(join(dir, name)).isFile());
}
