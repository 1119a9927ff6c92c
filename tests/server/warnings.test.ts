import { afterEach, beforeEach, expect, it } from "vitest";
import { closeDatabase, type Db } from "#db/open.ts";
import { createApp } from "#server/app.ts";
import type { BackupTrouble } from "#server/backups/schedule.ts";
import { DEMO_OWNER, type Role } from "#server/people/actor.ts";
import { DOING } from "#tests/support/acts.ts";
import { handBook } from "#tests/support/hand-bar.ts";
import { aTestApp } from "#tests/support/test-app.ts";

let db: Db;
beforeEach(async () => {
  ({ db } = await aTestApp(handBook()));
});
afterEach(() => closeDatabase(db));

const TROUBLE: BackupTrouble = {
  since: "2026-03-09T04:00:00Z",
  problem: "The disk is full. Nothing was changed; make room and try again.",
  lastBackupAt: "2026-03-07T04:00:00Z",
};

async function warnings(now: string, trouble: BackupTrouble | null = null, role: Role = "owner") {
  const app = createApp({
    db,
    now: () => new Date(now),
    webFolder: "/nowhere",
    signIn: { openAs: { ...DEMO_OWNER, role } },
    backupTrouble: () => trouble,
  });
  const answer = await app.request("/api/week");
  expect(answer.status).toBe(200);
  return ((await answer.json()) as { warnings: unknown }).warnings;
}

it("the week has no warnings while all is well", async () => {
  expect(await warnings(DOING.now)).toEqual([]);
});

it("the week tells of backups that fail and of a clock set back, to whoever runs the bar", async () => {
  const both = [
    { kind: "backup-failed", ...TROUBLE },
    { kind: "clock-set-back", clock: "2020-01-01T00:00:00Z", lastActAt: DOING.now },
  ];
  for (const role of ["owner", "manager"] as const)
    expect(await warnings("2020-01-01T00:00:00Z", TROUBLE, role)).toEqual(both);
  expect(await warnings(DOING.now, TROUBLE)).toEqual(both.slice(0, 1));
});

it("who counts or preps is told nothing of the machine and its files", async () => {
  for (const role of ["counter", "prep"] as const)
    expect(await warnings("2020-01-01T00:00:00Z", TROUBLE, role)).toEqual([]);
});
