import { isHeading } from "#engine/sales/read/header.ts";
import { foldHeading, type Role, roleOf } from "#engine/sales/read/headings.ts";
import { readMoment, readTimeOfDay } from "#engine/sales/read/moment.ts";
import { isEmptyMoney, readMoneyMinor, readQuantity } from "#engine/sales/read/number.ts";
import type { SheetRows } from "#engine/sales/read/rows.ts";
import type { SalesColumns, SalesShape } from "#engine/sales/read/shape.ts";
import { kindOf } from "#engine/sales/read/words.ts";

export type SingleRole = Exclude<Role, "modifiers" | "staff" | "other">;
/** Which column, counted from 0, holds what. Columns of staff and guests are in none of them: they are not read. */
export type ColumnMap = Partial<Record<SingleRole, number>> & { modifiers: number[] };

/** What one column was taken for, and how sure that is (0 to 1; 1 where the shape says so). */
export type ColumnFinding = { heading: string; role: Role | "unknown"; confidence: number };

export type ColumnsFound = { map: ColumnMap; findings: ColumnFinding[]; question: string | null };

const SINGLE: SingleRole[] = [
  "when",
  "date",
  "time",
  "businessDate",
  "item",
  "parent",
  "quantity",
  "gross",
  "discount",
  "net",
  "unitPrice",
  "check",
  "lineNo",
  "till",
  "kind",
];
/** Roles where two columns of the same heading must not be chosen between. */
const MUST_BE_ONE: ReadonlySet<Role> = new Set(["when", "date", "item", "quantity", "gross", "net"]);
const SAMPLE_CELLS = 400;
const FIT_LEAST = 0.3;

/** What the cells of a column look like: shares of the cells that are not blank. */
type Profile = {
  filled: number;
  moments: number;
  dated: number;
  times: number;
  numbers: number;
  whole: number;
  letters: number;
};

function profileOf(rows: SheetRows, column: number): Profile {
  const profile = { filled: 0, moments: 0, dated: 0, times: 0, numbers: 0, whole: 0, letters: 0 };
  for (const row of rows) {
    const cell = row[column]?.trim() ?? "";
    if (cell === "") continue;
    profile.filled += 1;
    const moment = readMoment(cell);
    if (moment !== undefined) profile.moments += 1;
    if (moment !== undefined && (moment.date !== null || moment.epochS !== null)) profile.dated += 1;
    if (readTimeOfDay(cell) !== undefined) profile.times += 1;
    if (isNumber(cell)) profile.numbers += 1;
    if (/^-?\d{1,4}$/.test(cell)) profile.whole += 1;
    if (/\p{L}/u.test(cell)) profile.letters += 1;
    if (profile.filled >= SAMPLE_CELLS) break;
  }
  return profile;
}

function isNumber(cell: string): boolean {
  if (isEmptyMoney(cell)) return true;
  return [".", ","].some(
    (mark) =>
      readQuantity(cell, mark as "." | ",") !== undefined ||
      readMoneyMinor(cell, mark as "." | ",", 2) !== undefined,
  );
}

/** How well the cells of a column fit a role, 0 to 1. A column without cells fits anything a little. */
function fit(role: Role, profile: Profile): number {
  if (profile.filled === 0) return 0.5;
  const share = (count: number): number => (count / profile.filled < FIT_LEAST ? 0 : count / profile.filled);
  if (role === "when") return share(profile.moments);
  if (role === "date" || role === "businessDate") return share(profile.dated);
  if (role === "time") return share(profile.times);
  if (role === "item") return profile.letters / profile.filled >= 0.5 ? 1 : 0.5;
  if (["quantity", "gross", "net", "discount", "unitPrice"].includes(role)) return share(profile.numbers);
  return 1;
}

/** Headings whose words mean two things, decided by what stands below them. */
function byContents(heading: string, role: Role | undefined, profile: Profile): Role | undefined {
  const share = (count: number): number => (profile.filled === 0 ? 0 : count / profile.filled);
  const word = foldHeading(heading);
  if (role === "when" && share(profile.dated) < 0.5 && share(profile.whole) > 0.8)
    return word.startsWith("sold") ? "quantity" : role;
  if (role === "when" && share(profile.dated) < 0.5 && share(profile.times) > 0.5) return "time";
  if (role === "time" && share(profile.dated) > 0.5) return "when";
  if (role === "lineNo" && /^pos/.test(word) && share(profile.letters) > 0.8) return "item";
  return role;
}

/** A column of kinds must say void, refund, modifier or sale somewhere; "Type" is often only a category. */
function isKindColumn(rows: SheetRows, column: number, heading: string): boolean {
  let known = 0;
  for (const row of rows) {
    const cell = row[column]?.trim() ?? "";
    if (cell !== "" && kindOf(cell, heading) !== undefined) known += 1;
  }
  return known > 0;
}

/**
 * What each column of a file holds: as the shape says, else by its heading and its cells together.
 *
 * Asks instead where the item is not certain, where two columns have the same heading, or the shape names one that is not there.
 */
export function findColumns(
  headings: readonly string[],
  rows: SheetRows,
  shape: SalesShape | undefined,
): ColumnsFound {
  const stated = statedColumns(headings, shape?.columns ?? {});
  const sample = rows.slice(0, 5 * SAMPLE_CELLS);
  const roles = new Map(
    [...stated.columns].flatMap(([role, columns]) => columns.map((column) => [column, role])),
  );
  const findings = headings.map((heading, column): ColumnFinding => {
    const role = roles.get(column);
    return role === undefined ? detect(heading, sample, column, rows) : { heading, role, confidence: 1 };
  });
  const map: ColumnMap = { modifiers: stated.columns.get("modifiers") ?? [] };
  let question = stated.question;
  for (const role of SINGLE) {
    const given = stated.columns.get(role)?.[0];
    if (given !== undefined) map[role] = given;
    else if (!stated.settled.has(role)) question ??= choose(role, map, findings, new Set(roles.keys()));
  }
  if (map.modifiers.length === 0 && !stated.settled.has("modifiers"))
    map.modifiers = findings.flatMap(({ role }, column) => (role === "modifiers" ? [column] : []));
  return { map, findings, question: question ?? askForItem(map, findings) };
}

function detect(heading: string, sample: SheetRows, column: number, rows: SheetRows): ColumnFinding {
  const named = roleOf(heading);
  const profile = profileOf(sample, column);
  const role = byContents(heading, named?.role, profile);
  if (named === undefined || role === undefined) return { heading, role: "unknown", confidence: 0 };
  if (role === "kind" && !isKindColumn(rows, column, heading))
    return { heading, role: "other", confidence: 0.6 };
  const confidence = named.score * fit(role, profile);
  return confidence < FIT_LEAST ? { heading, role: "unknown", confidence: 0 } : { heading, role, confidence };
}

function choose(
  role: SingleRole,
  map: ColumnMap,
  findings: ColumnFinding[],
  taken: Set<number>,
): string | null {
  const [best, next] = findings
    .map((finding, column) => ({ ...finding, column }))
    .filter((finding) => finding.role === role && !taken.has(finding.column))
    .sort((one, other) => other.confidence - one.confidence);
  if (best === undefined) return null;
  map[role] = best.column;
  const isTwin = next !== undefined && foldHeading(next.heading) === foldHeading(best.heading);
  if (!isTwin || !MUST_BE_ONE.has(role)) return null;
  return `two columns are headed "${best.heading}" (columns ${best.column + 1} and ${next.column + 1}): which one is the ${role}? Name it in sales-shapes.json as "#${best.column + 1}" or "#${next.column + 1}".`;
}

function askForItem(map: ColumnMap, findings: ColumnFinding[]): string | null {
  const item = map.item === undefined ? undefined : findings[map.item];
  if (item !== undefined && item.confidence >= 0.45) return null;
  const headings = findings.map(({ heading }) => `"${heading}"`).join(", ");
  return `which column holds the name of what was sold? The columns are ${headings.slice(0, 600)}. Name it as "item" under columns in sales-shapes.json.`;
}

/** What the shape says: columns by role, and the roles that are settled so that nothing is to be detected for them. */
type StatedColumns = { columns: Map<Role, number[]>; settled: Set<Role>; question: string | null };

function statedColumns(headings: readonly string[], columns: SalesColumns): StatedColumns {
  const stated: StatedColumns = { columns: new Map(), settled: new Set(), question: null };
  for (const [role, named] of Object.entries(columns) as [Role, string | string[] | undefined][]) {
    for (const heading of [named ?? []].flat()) {
      stated.settled.add(role);
      if (heading !== "") place(role, heading);
    }
  }
  // A shape that says where the time is has said it: a second clock elsewhere in the file must not join in.
  if (stated.columns.has("when")) for (const role of ["date", "time"] as const) stated.settled.add(role);
  if (stated.columns.has("date") || stated.columns.has("time")) stated.settled.add("when");
  return stated;

  function place(role: Role, heading: string): void {
    const number = /^#(\d+)$/.exec(heading)?.[1];
    const column =
      number === undefined ? headings.findIndex((cell) => isHeading(cell, heading)) : Number(number) - 1;
    if (column >= 0 && column < headings.length)
      stated.columns.set(role, [...(stated.columns.get(role) ?? []), column]);
    else stated.question ??= missingHeading(role, heading, headings);
  }
}

function missingHeading(role: Role, heading: string, headings: readonly string[]): string {
  const list = headings.map((cell) => `"${cell}"`).join(", ");
  return `the shape says that ${role} is in the column "${heading}", which the file does not have; it has ${list.slice(0, 600)}. Which one is it?`;
}
