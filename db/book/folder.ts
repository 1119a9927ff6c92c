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
import { basename, dirname, join, resolve } from "node:path";
import { BookError } from "#db/book/problem.ts";
import { readBook } from "#db/book/read-book.ts";
import { BOOK_FILES, VENUE_FILE } from "#db/book/sheets/all.ts";
import { didYouMean } from "#db/book/suggest.ts";
import type { Book } from "#engine/book.ts";

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
  return { book, salesFiles: readSalesFiles(join(dir, SALES_FOLDER)), notices: [...strangers, ...notices] };
}

/**
 * Writes a book and its sales files into a folder, which is made if need be.
 *
 * All is first written beside the folder, then moved into place, so that there is never half a book. The sheets of a book that
 * is already there are replaced; files of other names stay. Throws BookError when the folder holds something else.
 */
export function writeBookFolder(dir: string, { files, salesFiles }: WrittenBook): void {
  const target = resolve(dir);
  const held = listFiles(target) ?? refuseFile(target);
  if (held.length > 0 && !held.includes(VENUE_FILE)) {
    throw new BookError([`${dir} is not empty and holds no ${VENUE_FILE}; name an empty or a new folder`]);
  }
  mkdirSync(dirname(target), { recursive: true });
  const made = mkdtempSync(join(dirname(target), `.${basename(target)}-`));
  try {
    for (const [name, text] of files) writeFileSync(join(made, name), text);
    mkdirSync(join(made, SALES_FOLDER));
    for (const { name, text } of salesFiles) writeFileSync(join(made, SALES_FOLDER, name), text);
    if (held.length > 0) keepOthers(target, made);
    swapIn(target, made);
  } finally {
    rmSync(made, { recursive: true, force: true });
  }
}

/** Moves what is no sheet and no sales file over to the new folder, so that the folder can be swapped whole. */
function keepOthers(target: string, made: string): void {
  for (const name of readdirSync(target)) {
    if (name === SALES_FOLDER || BOOK_FILES.includes(name)) continue;
    renameSync(join(target, name), join(made, name));
  }
}

function swapIn(target: string, made: string): void {
  if (!existsSync(target)) {
    renameSync(made, target);
    return;
  }
  const old = mkdtempSync(join(dirname(target), `.${basename(target)}-old-`));
  renameSync(target, join(old, "book"));
  renameSync(made, target);
  rmSync(old, { recursive: true, force: true });
}

function listFiles(dir: string): string[] | undefined {
  if (!existsSync(dir) || !statSync(dir).isDirectory()) return undefined;
  return readdirSync(dir).sort();
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

function readSalesFiles(dir: string): SalesFile[] {
  const names = listFiles(dir) ?? [];
  return names
    .filter((name) => !name.startsWith(".") && statSync(join(dir, name)).isFile())
    .map((name) => ({ name, bytes: readFileSync(join(dir, name)) }));
}
