/** How many backups are kept: the last of each of so many days, and of so many weeks. */
export type Keep = { daily: number; weekly: number };

const NAME = /^(.+)-(\d{8}T\d{6})Z\.db$/;
const DAY_MS = 86_400_000;

/** A scheduled backup's file name; they sort by time. ("bar", 2026-11-23T10:00:00Z) → "bar-20261123T100000Z.db" */
export function backupName(bar: string, at: Date): string {
  return `${bar}-${at.toISOString().replace(/[-:]/g, "").slice(0, 15)}Z.db`;
}

/** When a scheduled backup of a bar was made, by its name; undefined for any other file. */
export function backupTime(bar: string, name: string): Date | undefined {
  const [, of, stamp = ""] = NAME.exec(name) ?? [];
  if (of !== bar) return undefined;
  const iso = stamp.replace(/^(....)(..)(..)T(..)(..)(..)$/, "$1-$2-$3T$4:$5:$6Z");
  const at = new Date(iso);
  return Number.isNaN(at.getTime()) ? undefined : at;
}

/**
 * Which scheduled backups of a bar may go: all but the newest, those of the last day, the last one of each of the latest
 * `daily` days that have one, and of each of the latest `weekly` weeks (from Monday, UTC). Other files are never named.
 *
 * With one a day and { daily: 7, weekly: 4 }, 7 to 10 stay.
 */
export function superfluous(bar: string, names: readonly string[], keep: Keep): string[] {
  const backups = names
    .flatMap((name) => {
      const at = backupTime(bar, name);
      return at === undefined ? [] : [{ name, atMs: at.getTime() }];
    })
    .sort((a, b) => b.atMs - a.atMs);
  const newestMs = backups[0]?.atMs ?? 0;
  const kept = new Set([
    ...backups.filter(({ atMs }, place) => place === 0 || newestMs - atMs < DAY_MS).map(({ name }) => name),
    ...lastOfEach(backups, keep.daily, ({ atMs }) => Math.floor(atMs / DAY_MS)),
    ...lastOfEach(backups, keep.weekly, ({ atMs }) => weekOf(atMs)),
  ]);
  return backups.map(({ name }) => name).filter((name) => !kept.has(name));
}

/** The first day of 1970 was a Thursday: three days after a Monday. */
function weekOf(atMs: number): number {
  return Math.floor((atMs / DAY_MS + 3) / 7);
}

type Backup = { name: string; atMs: number };

function lastOfEach(
  newestFirst: readonly Backup[],
  spans: number,
  spanOf: (backup: Backup) => number,
): string[] {
  const last = new Map<number, string>();
  for (const backup of newestFirst) {
    const span = spanOf(backup);
    if (!last.has(span)) last.set(span, backup.name);
  }
  return [...last.values()].slice(0, spans);
}
