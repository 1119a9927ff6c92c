import type { CountRow } from "#engine/stock/movement.ts";
import type { ServedRow } from "./sheet.ts";

/** One place of the bar with findings that cannot all be right; the first is the one that stands. */
export type Difference = {
  area: string;
  item: string;
  kind: "counted-twice" | "two-ways";
  findings: readonly CountRow[];
};

/**
 * Where two people counted the same shelf and found different things, or one counted containers and the other an
 * amount, which would stand beside each other. Each is for a person to choose.
 */
export function differencesIn(rows: readonly ServedRow[]): Difference[] {
  const apart = rows
    .filter((row) => (row.apart ?? []).length > 0)
    .map((row) => ({
      area: row.area,
      item: row.item,
      kind: "counted-twice" as const,
      findings: [row, ...(row.apart ?? [])],
    }));
  return [...apart, ...countedTwoWays(rows)];
}

function countedTwoWays(rows: readonly ServedRow[]): Difference[] {
  const amounts = rows.filter(({ pack, amount }) => pack === null && amount !== null && amount > 0);
  return amounts.flatMap((row) => {
    const contained = rows.filter(
      (other) =>
        other.area === row.area && other.item === row.item && other.pack !== null && holdsAnything(other),
    );
    if (contained.length === 0) return [];
    return [{ area: row.area, item: row.item, kind: "two-ways" as const, findings: [row, ...contained] }];
  });
}

function holdsAnything({ full, parts, grossG }: CountRow): boolean {
  return (full ?? 0) > 0 || parts.some((part) => part > 0) || grossG.length > 0;
}

/** The same entry with nothing in it. */
export function emptied({ amount, unit }: CountRow) {
  const nothing = { parts: [], grossG: [] };
  return amount === null
    ? { ...nothing, full: 0, amount: null, unit: null }
    : { ...nothing, full: null, amount: 0, unit };
}

/** The row alone, without what the server says about it. */
export function bare(row: ServedRow): CountRow {
  const { count, at, area, item, pack, full, parts, grossG, amount, unit, by } = row;
  return { count, at, area, item, pack, full, parts, grossG, amount, unit, by };
}
