import type { Db } from "#db/open.ts";
import type { BackupTrouble } from "#server/backups/schedule.ts";
import { type ClockSetBack, clockSetBack } from "#server/clock-set-back.ts";

/** What whoever runs the bar should know of the machine it runs on, worst first. */
export type Warning =
  | ({ kind: "backup-failed" } & BackupTrouble)
  | ({ kind: "clock-set-back" } & ClockSetBack);

/** What is wrong now; empty while all is well. `backups` is null while they are made as they should, or not at all. */
export function warningsOf(db: Db, now: Date, backups: BackupTrouble | null): Warning[] {
  const late = clockSetBack(db, now);
  return [
    ...(backups === null ? [] : [{ kind: "backup-failed" as const, ...backups }]),
    ...(late === undefined ? [] : [{ kind: "clock-set-back" as const, ...late }]),
  ];
}
