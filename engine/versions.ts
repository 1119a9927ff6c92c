import type { BusinessDate } from "#engine/time.ts";

/** A fact that holds from one business date on; null = always. */
export type Dated = { from: BusinessDate | null };

/** Oldest first, the always-valid one before all; equal dates stay in the sheet's order. */
export function sortVersions<T extends Dated>(versions: readonly T[]): T[] {
  return [...versions].sort((a, b) => compareFrom(a.from, b.from));
}

function compareFrom(a: BusinessDate | null, b: BusinessDate | null): number {
  if (a === b) return 0;
  if (a === null) return -1;
  if (b === null) return 1;
  return a < b ? -1 : 1;
}

/** The version in force on a date, of versions sorted oldest first; undefined before the first. */
export function inForce<T extends Dated>(versions: readonly T[], date: BusinessDate): T | undefined {
  let found: T | undefined;
  for (const version of versions) {
    if (version.from !== null && version.from > date) break;
    found = version;
  }
  return found;
}

/** Versions grouped by a key, each group sorted oldest first. */
export function groupVersions<T extends Dated>(
  versions: readonly T[],
  keyOf: (version: T) => string,
): Map<string, T[]> {
  const groups = new Map<string, T[]>();
  for (const version of versions) {
    const key = keyOf(version);
    const group = groups.get(key);
    if (group === undefined) groups.set(key, [version]);
    else group.push(version);
  }
  return new Map([...groups].map(([key, group]) => [key, sortVersions(group)]));
}
