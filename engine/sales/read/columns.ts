import { isCheckTotal } from "#engine/sales/read/check-total.ts";
import { foldHeading, isPlainItem, isStaffHeading, type Role, roleOf } from "#engine/sales/read/headings.ts";
import { readMoment, readTimeOfDay } from "#engine/sales/read/moment.ts";
import { isEmptyMoney, readMoneyMinor, readQuantity } from "#engine/sales/read/number.ts";
import type { SheetRows } from "#engine/sales/read/rows.ts";
import type { SalesShape } from "#engine/sales/read/shape.ts";
import { statedColumns } from "#engine/sales/read/stated-columns.ts";
import { isMeansOfPayment, kindOf } from "#engine/sales/read/words.ts";

export type SingleRole = Exclude<Role, "modifiers" | "other">;
/** Which column, counted from 0, holds what. Guests are in none of them, and staff only where the venue keeps it. */
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
const RIVAL_SHARE = 0.8;

/** What the cells of a column look like: shares of the cells that are not blank. */
type Profile = {
  filled: number;
  moments: number;
  dated: number;
  times: number;
  numbers: number;
  whole: number;
  letters: number;
  /** Words without a digit: no number of anything. */
  words: number;
};

function profileOf(rows: SheetRows, column: number): Profile {
  const profile = { filled: 0, moments: 0, dated: 0, times: 0, numbers: 0, whole: 0, letters: 0, words: 0 };
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
    if (/^[^\p{N}]*\p{L}[^\p{N}]*$/u.test(cell)) profile.words += 1;
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
function suits(role: Role, profile: Profile): number {
  if (profile.filled === 0) return 0.5;
  const share = (count: number): number => (count / profile.filled < FIT_LEAST ? 0 : count / profile.filled);
  if (role === "when") return share(profile.moments);
  if (role === "date" || role === "businessDate") return share(profile.dated);
  if (role === "time") return share(profile.times);
  if (role === "item") return profile.letters / profile.filled >= 0.5 ? 1 : 0.5;
  // A column headed "Qty" stays the quantity though its cells are unreadable: else each row would count as one sale.
  if (role === "quantity") return Math.max(0.5, share(profile.numbers));
  if (["gross", "net", "discount", "unitPrice"].includes(role)) return share(profile.numbers);
  return 1;
}

/** Headings whose words mean two things, decided by what stands below them. */
function byContents(heading: string, role: Role, profile: Profile): Role {
  const share = (count: number): number => (profile.filled === 0 ? 0 : count / profile.filled);
  const word = foldHeading(heading);
  if (role === "when" && share(profile.dated) < 0.5 && share(profile.whole) > 0.8)
    return word.startsWith("sold") ? "quantity" : role;
  if (role === "when" && share(profile.dated) < 0.5 && share(profile.times) > 0.5) return "time";
  if (role === "time" && share(profile.dated) > 0.5) return "when";
  if (role === "lineNo" && /^pos|item/.test(word) && share(profile.letters) > 0.8) return "item";
  if (role === "lineNo" && share(profile.words) > 0.5) return "other";
  return role;
}

/** A column of kinds must say void, refund, modifier or sale somewhere; "Type" is often only a category. */
function isKindColumn(rows: SheetRows, column: number, heading: string): boolean {
  const seen = new Set<string>();
  let isPaid = false;
  for (const row of rows) {
    const cell = row[column]?.trim() ?? "";
    if (cell === "" || seen.has(cell)) continue;
    if (isMeansOfPayment(cell)) isPaid = true;
    else if (kindOf(cell, heading) !== undefined) return true;
    // A column of more words than tills have kinds is something else.
    if (seen.add(cell).size > 500) return false;
  }
  return isPaid && !saysHowPaid(rows, column);
}

/** Whether rows that say "Cash" are as full as the others: then the column says how a sale was paid, not that it is a payment. */
function saysHowPaid(rows: SheetRows, column: number): boolean {
  const filled = { paid: [] as number[], others: [] as number[] };
  for (const row of rows.slice(0, 5 * SAMPLE_CELLS)) {
    const cells = row.filter((cell, at) => at !== column && cell.trim() !== "").length;
    if (cells === 0) continue;
    filled[isMeansOfPayment(row[column]?.trim() ?? "") ? "paid" : "others"].push(cells);
  }
  const mean = (list: number[]): number => list.reduce((sum, cells) => sum + cells, 0) / list.length;
  return filled.others.length === 0 || mean(filled.paid) >= 0.85 * mean(filled.others);
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
  keepsStaff: boolean,
): ColumnsFound {
  const { staff, ...columns } = shape?.columns ?? {};
  const stated = statedColumns(headings, keepsStaff && staff !== undefined ? { ...columns, staff } : columns);
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
    else if (!stated.settled.has(role))
      question ??= choose(role, map, findings, new Set(roles.keys()), sample);
  }
  if (map.gross !== undefined && !stated.columns.has("gross") && isCheckTotal(sample, map)) {
    findings[map.gross] = { heading: headings[map.gross] ?? "", role: "other", confidence: 0.8 };
    delete map.gross;
  }
  // A shape may call a column of bare times "when" beside a date.
  if (
    map.when !== undefined &&
    map.date !== undefined &&
    map.time === undefined &&
    isBareTimes(sample, map.when)
  ) {
    map.time = map.when;
    delete map.when;
  }
  // The book's shapes have one word for dates; a heading that says "business date" is taken at its word.
  if (
    map.date !== undefined &&
    map.businessDate === undefined &&
    roleOf(headings[map.date] ?? "")?.role === "businessDate"
  ) {
    map.businessDate = map.date;
    delete map.date;
  }
  if (map.modifiers.length === 0 && !stated.settled.has("modifiers"))
    map.modifiers = findings.flatMap(({ role }, column) => (role === "modifiers" ? [column] : []));
  const staffAt = stated.columns.get("staff")?.[0] ?? staffColumn(findings, stated.settled);
  if (keepsStaff && staffAt !== undefined) map.staff = staffAt;
  return { map, findings, question: question ?? askForItem(map, findings) };
}

/** The column that most plainly names who rang a line; "" in the shape says that there is none. */
function staffColumn(findings: readonly ColumnFinding[], settled: ReadonlySet<Role>): number | undefined {
  if (settled.has("staff")) return undefined;
  const [best] = findings
    .map((finding, column) => ({ ...finding, column }))
    .filter(({ role, heading }) => role === "staff" && isStaffHeading(heading))
    .sort((one, other) => other.confidence - one.confidence);
  return best?.column;
}

function isBareTimes(sample: SheetRows, column: number): boolean {
  const { filled, times, dated } = profileOf(sample, column);
  return times > filled / 2 && dated < filled / 2;
}

function detect(heading: string, sample: SheetRows, column: number, rows: SheetRows): ColumnFinding {
  const named = roleOf(heading);
  if (named === undefined) return { heading, role: "unknown", confidence: 0 };
  const profile = profileOf(sample, column);
  const role = byContents(heading, named.role, profile);
  if (role === "kind" && !isKindColumn(rows, column, heading))
    return { heading, role: "other", confidence: 0.6 };
  const confidence = named.score * suits(role, profile);
  return confidence < FIT_LEAST ? { heading, role: "unknown", confidence: 0 } : { heading, role, confidence };
}

function choose(
  role: SingleRole,
  map: ColumnMap,
  findings: ColumnFinding[],
  taken: ReadonlySet<number>,
  sample: SheetRows,
): string | null {
  const [best, ...others] = findings
    .map((finding, column) => ({ ...finding, column }))
    .filter((finding) => finding.role === role && !taken.has(finding.column))
    .sort((one, other) => other.confidence - one.confidence);
  if (best === undefined) return null;
  const rival = others.find((other) => isRival(role, best, other, sample));
  if (rival === undefined) {
    map[role] = best.column;
    return null;
  }
  return `which column is the ${role}: "${best.heading}" (column ${best.column + 1}) or "${rival.heading}" (column ${rival.column + 1})? Name it in sales-shapes.json, by its heading or as "#${best.column + 1}" or "#${rival.column + 1}".`;
}

type Candidate = ColumnFinding & { column: number };

/** Two columns between which we must not choose: of one heading, or both plainly the item or the quantity and not alike. */
function isRival(role: Role, best: Candidate, other: Candidate, sample: SheetRows): boolean {
  if (foldHeading(best.heading) === foldHeading(other.heading)) return MUST_BE_ONE.has(role);
  if (role !== "item" && role !== "quantity") return false;
  if (role === "item" && (!isPlainItem(other.heading) || !isPlainItem(best.heading))) return false;
  const isWeak = other.confidence < 0.7 || other.confidence < RIVAL_SHARE * best.confidence;
  return !isWeak && sample.some((row) => (row[best.column] ?? "") !== (row[other.column] ?? ""));
}

function askForItem(map: ColumnMap, findings: ColumnFinding[]): string | null {
  const item = map.item === undefined ? undefined : findings[map.item];
  if (item !== undefined && item.confidence >= 0.45) return null;
  const headings = findings.map(({ heading }) => `"${heading}"`).join(", ");
  return `which column holds the name of what was sold? The columns are ${headings.slice(0, 600)}. Name it as "item" under columns in sales-shapes.json.`;
}
