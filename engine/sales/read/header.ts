import { foldName } from "#engine/name.ts";
import { foldHeading, roleOf } from "#engine/sales/read/headings.ts";
import { readDate } from "#engine/sales/read/moment.ts";
import {
  DELIMITERS,
  firstRowsOf,
  isBlank,
  type SheetRows,
  statedDelimiter,
} from "#engine/sales/read/rows.ts";
import type { SalesColumns, SalesShape } from "#engine/sales/read/shape.ts";

const ROWS_SEARCHED = 80;
const HEADINGS_MOST = 400;

/** Where the headings stand. `strength` tells how much they look like headings of a sales list. */
export type FoundHeader = { index: number; strength: number };

/** All headings a shape names, without the columns it names by number or says are missing. */
export function namedHeadings(columns: SalesColumns | undefined): string[] {
  return Object.values(columns ?? {})
    .flat()
    .filter((heading) => heading !== undefined)
    .filter((heading) => heading !== "" && !/^#\d+$/.test(heading));
}

/** Whether a heading in a file is the one a shape names: without regard to case, spaces and Unicode form. */
export function isHeading(cell: string, named: string): boolean {
  return foldName(cell) === foldName(named);
}

/**
 * The row of the headings: where the shape's headings stand, else the row whose cells name most of what a sale has.
 *
 * Undefined where no row looks like it.
 */
export function findHeader(rows: SheetRows, shape: SalesShape | undefined): FoundHeader | undefined {
  const named = namedHeadings(shape?.columns);
  let best: FoundHeader | undefined;
  for (const [index, row] of rows.slice(0, ROWS_SEARCHED).entries()) {
    const strength = named.length > 0 ? strengthByNames(row, named) : strengthByWords(row);
    if (strength > 0 && (best === undefined || strength > best.strength)) best = { index, strength };
  }
  return best ?? (named.length > 0 ? undefined : firstRowOfWords(rows));
}

function strengthByNames(row: readonly string[], named: string[]): number {
  const found = named.filter((heading) => row.some((cell) => isHeading(cell, heading))).length;
  return found === 0 ? 0 : found + strengthByWords(row) / 100;
}

function strengthByWords(row: readonly string[]): number {
  const filled = row.filter((cell) => cell.trim() !== "");
  if (filled.length < 2 || filled.length > HEADINGS_MOST || filled.some((cell) => cell.length > 200))
    return 0;
  const found = new Map<string, number>();
  let dates = 0;
  for (const cell of filled) {
    const role = roleOf(cell);
    if (role !== undefined) found.set(role.role, Math.max(found.get(role.role) ?? 0, role.score));
    else if (readDate(cell.trim()) !== undefined) dates += 1;
  }
  const isList = found.size >= 2 || (found.size === 1 && dates >= 1);
  const numbers = filled.filter((cell) => /^[\s\d.,:/-]*\d[\s\d.,:/-]*$/.test(cell)).length - dates;
  if (!isList || numbers > filled.length / 2) return 0;
  let strength = dates > 1 ? 1 : 0;
  for (const score of found.values()) strength += score;
  return strength;
}

/** In a language we do not know: the first row of several different words with rows as wide below it. */
function firstRowOfWords(rows: SheetRows): FoundHeader | undefined {
  const index = rows.slice(0, ROWS_SEARCHED).findIndex((row, at) => {
    if (row.length > HEADINGS_MOST) return false;
    const filled = row.map(foldHeading).filter((cell) => cell !== "");
    const below = rows[at + 1];
    const areWords = filled.length >= 2 && filled.every((cell) => /\p{L}/u.test(cell) && !/\d{2}/.test(cell));
    return (
      areWords && new Set(filled).size === filled.length && below !== undefined && below.length >= row.length
    );
  });
  return index < 0 ? undefined : { index, strength: 0.1 };
}

/**
 * The character between the cells: as stated, else the one by which the file has the best headings, else the one
 * that cuts most rows evenly. Undefined where none cuts anything.
 */
export function findDelimiter(text: string, shape: SalesShape | undefined): string | undefined {
  const stated = shape?.delimiter ?? statedDelimiter(text);
  if (stated !== undefined) return stated;
  const tried = DELIMITERS.map((delimiter) => {
    const rows = firstRowsOf(text, delimiter, 200).filter((row) => !isBlank(row));
    return { delimiter, strength: findHeader(rows, shape)?.strength ?? 0, evenness: evenness(rows) };
  });
  const [best] = tried
    .filter(({ evenness }) => evenness > 0)
    .sort((one, other) => other.strength - one.strength || other.evenness - one.evenness);
  return best?.delimiter;
}

function evenness(rows: SheetRows): number {
  const counts = new Map<number, number>();
  for (const row of rows) if (row.length > 1) counts.set(row.length, (counts.get(row.length) ?? 0) + 1);
  return rows.length === 0 ? 0 : Math.max(0, ...counts.values()) / rows.length;
}
