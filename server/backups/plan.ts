import { basename, dirname, extname, join, resolve } from "node:path";
import type { Keep } from "#server/backups/rotation.ts";
import { InputError } from "#server/input-error.ts";

/** How often a database is backed up while it is served, where to, and what is kept. */
export type BackupPlan = { folder: string; bar: string; everyMs: number; keep: Keep };

/** How `serve` was asked to back up. */
export type BackupOptions = { backupDir?: string; backupEvery?: string; keep?: string };

const UNIT_MS: Readonly<Record<string, number>> = { m: 60_000, h: 3_600_000, d: 86_400_000 };
const SHORTEST_MS = 60_000;
const LONGEST_MS = 31 * 86_400_000;

/**
 * The plan for a database: once a day into "backups" beside it, the last 7 days and 8 weeks kept, unless asked otherwise;
 * null when asked for none (`--backup-every never`). Throws InputError for what cannot be understood.
 */
export function planBackups(
  file: string,
  { backupDir, backupEvery = "1d", keep = "7,8" }: BackupOptions,
): BackupPlan | null {
  if (backupEvery === "never") return null;
  const folder = backupDir ?? join(dirname(resolve(file)), "backups");
  const bar = basename(file, extname(file));
  return { folder, bar, everyMs: readEvery(backupEvery), keep: readKeep(keep) };
}

function readEvery(text: string): number {
  const [, amount, unit = ""] = /^(\d{1,6})\s*([mhd])$/.exec(text.trim()) ?? [];
  const everyMs = Number(amount) * (UNIT_MS[unit] ?? Number.NaN);
  if (!(everyMs >= SHORTEST_MS && everyMs <= LONGEST_MS)) {
    throw new InputError(
      `--backup-every: "${text}" is no time between backups; write it like 6h, 1d or 30m, or never.`,
    );
  }
  return everyMs;
}

function readKeep(text: string): Keep {
  const [, daily, weekly = "0"] = /^(\d{1,4})(?:,(\d{1,4}))?$/.exec(text.replace(/\s/g, "")) ?? [];
  if (daily === undefined || Number(daily) + Number(weekly) === 0) {
    throw new InputError(
      `--keep: "${text}" does not say how many; write days and weeks, as 7,8: the last 7 days and 8 weeks.`,
    );
  }
  return { daily: Number(daily), weekly: Number(weekly) };
}
