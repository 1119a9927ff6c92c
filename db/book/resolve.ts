import type { Refers } from "#db/book/cell.ts";
import { type Names, type Spellings, unknownName, unknownPack } from "#db/book/names.ts";
import type { Findings } from "#db/book/problem.ts";
import type { Column, Row } from "#db/book/sheet.ts";
import { ENTRY_SHEETS, type Rows, SHEET_KEYS, SHEETS, type SheetKey } from "#db/book/sheets/all.ts";
import { foldName } from "#engine/name.ts";

/**
 * Puts every name as its defining sheet spells it; names that no sheet defines are noted, and their cells taken out.
 *
 * Afterwards `names.packs` holds the packs of each item.
 */
export function resolveNames(rows: Rows, names: Names, findings: Findings): void {
  for (const key of SHEET_KEYS) resolveSheet(key, rows, names, findings);
  collectPacks(rows, names);
  for (const key of ["counts", "deliveries", "orders"] as const) resolvePacks(key, rows, names, findings);
  spellAlike(rows.counts, "count");
  spellAlike(rows.orders, "order");
  spellAlike([...rows.areas, ...rows.counts] as Row<{ area: string }>[], "area");
}

/** The same for entries alone, the packs of each item being known. */
export function resolveEntryNames(rows: Rows, names: Names, findings: Findings): void {
  for (const key of ENTRY_SHEETS) resolveSheet(key, rows, names, findings);
  for (const key of ["counts", "deliveries"] as const) resolvePacks(key, rows, names, findings);
  spellAlike(rows.counts, "count");
  spellAlike(rows.counts, "area");
}

function resolveSheet(key: SheetKey, rows: Rows, names: Names, findings: Findings): void {
  const { file, columns } = SHEETS[key];
  for (const [field, column] of Object.entries(columns) as [string, Column<unknown>][]) {
    const kind = column.cell.refers;
    if (kind === undefined) continue;
    for (const row of rows[key] as Row<Record<string, unknown>>[]) {
      resolveCell(row, field, kind, names, (message) =>
        findings.problem({ file, row: row.row, column: column.heading }, message),
      );
    }
  }
}

function resolvePacks(
  key: "counts" | "deliveries" | "orders",
  rows: Rows,
  names: Names,
  findings: Findings,
): void {
  const { file } = SHEETS[key];
  for (const row of rows[key] as Row<{ item: string; pack: string | null }>[]) {
    resolvePack(row, names, (message) => findings.problem({ file, row: row.row, column: "pack" }, message));
  }
}

/** Takes out a cell that turned out wrong. */
export function takeOut<T>(row: Row<T>, field: keyof T): void {
  delete row.cells[field];
  row.isWhole = false;
}

function resolveCell(
  row: Row<Record<string, unknown>>,
  field: string,
  kind: Refers,
  names: Names,
  problem: (message: string) => void,
): void {
  const value = row.cells[field];
  if (typeof value === "string") {
    const spelled = names[kind].get(foldName(value));
    if (spelled !== undefined) row.cells[field] = spelled;
    else {
      problem(unknownName(kind, value, names));
      takeOut(row, field);
    }
  } else if (Array.isArray(value)) {
    const { found, unknown } = resolveList(value.join(";"), names[kind]);
    row.cells[field] = found;
    for (const name of unknown) problem(unknownName(kind, name, names));
    if (unknown.length > 0) takeOut(row, field);
  }
}

/** Names with `;` between them. A name may hold a `;` itself: the longest run of pieces that is a name is that name. */
function resolveList(text: string, known: Spellings): { found: string[]; unknown: string[] } {
  const pieces = text.split(";");
  const found: string[] = [];
  const unknown: string[] = [];
  let at = 0;
  while (at < pieces.length) {
    const { spelled, next } = longestName(pieces, at, known);
    const piece = pieces[at]?.trim() ?? "";
    if (spelled !== undefined) found.push(spelled);
    else if (piece !== "") unknown.push(piece);
    at = next;
  }
  return { found, unknown };
}

const PIECES_MOST = 8;

function longestName(pieces: readonly string[], at: number, known: Spellings) {
  for (let end = Math.min(pieces.length, at + PIECES_MOST); end > at; end -= 1) {
    const spelled = known.get(foldName(pieces.slice(at, end).join(";")));
    if (spelled !== undefined) return { spelled, next: end };
  }
  return { spelled: undefined, next: at + 1 };
}

function collectPacks(rows: Rows, names: Names): void {
  for (const { cells } of rows.packs) {
    if (cells.item === undefined || cells.pack === undefined) continue;
    const packs = names.packs.get(cells.item) ?? new Map<string, string>();
    names.packs.set(cells.item, packs);
    const folded = foldName(cells.pack);
    if (!packs.has(folded)) packs.set(folded, cells.pack);
    cells.pack = packs.get(folded) ?? cells.pack;
  }
}

function resolvePack(
  row: Row<{ item: string; pack: string | null }>,
  names: Names,
  problem: (message: string) => void,
): void {
  const { item, pack } = row.cells;
  if (item === undefined || pack === undefined || pack === null) return;
  const spelled = names.packs.get(item)?.get(foldName(pack));
  if (spelled !== undefined) row.cells.pack = spelled;
  else {
    problem(unknownPack(item, pack, names));
    takeOut(row, "pack");
  }
}

/** Names that no sheet defines (of counts, areas, orders) are spelled as where they first stand. */
function spellAlike<Field extends string>(rows: readonly Row<Record<Field, string>>[], field: Field): void {
  const first = new Map<string, string>();
  for (const { cells } of rows) {
    const name: string | undefined = cells[field];
    if (name === undefined) continue;
    const folded = foldName(name);
    const spelled = first.get(folded) ?? name;
    first.set(folded, spelled);
    (cells as Record<string, string>)[field] = spelled;
  }
}
