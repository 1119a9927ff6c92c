import { spawnSync } from "node:child_process";
import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import Database from "better-sqlite3";
import { afterAll, afterEach, beforeEach, describe, expect, it } from "vitest";
import { readBook } from "#db/book/read-book.ts";
import { loadBook, replaceBook } from "#db/book-repository.ts";
import { verifyChain } from "#db/history/chain.ts";
import { closeDatabase, type Db, openDatabase } from "#db/open.ts";
import { addDelivery } from "#db/stock-repository.ts";
import { StorageError, storageFaultOf } from "#db/storage-fault.ts";
import { createApp } from "#server/app.ts";
import { clockWarning } from "#server/clock-set-back.ts";
import { DEMO_OWNER } from "#server/people/actor.ts";
import { DELIVERY, DOING } from "#tests/support/acts.ts";
import { runUllage } from "#tests/support/run-ullage.ts";
import { smallBook } from "#tests/support/small-book.ts";

let dir: string;
let mounted: string[] = [];
beforeEach(() => {
  dir = mkdtempSync(join(tmpdir(), "ullage-disk-"));
});
afterEach(() => {
  for (const place of mounted) spawnSync("umount", [place]);
  mounted = [];
  rmSync(dir, { recursive: true, force: true });
});

/** A disk of its own with so much room; undefined where this account may mount none. */
function smallDisk(kilobytes: number): string | undefined {
  const place = join(dir, "disk");
  mkdirSync(place);
  const { status } = spawnSync("mount", ["-t", "tmpfs", "-o", `size=${kilobytes}k`, "tmpfs", place]);
  if (status !== 0) return undefined;
  mounted.push(place);
  return place;
}

const mayMount = (() => {
  const place = mkdtempSync(join(tmpdir(), "ullage-mount-"));
  const may = spawnSync("mount", ["-t", "tmpfs", "-o", "size=64k", "tmpfs", place]).status === 0;
  if (may) spawnSync("umount", [place]);
  rmSync(place, { recursive: true, force: true });
  return may;
})();
afterAll(() => {
  if (!mayMount)
    process.stdout.write(
      "This account may mount no disk; a full and a read-only disk were tried without one.\n",
    );
});

async function aBar(file: string): Promise<Db> {
  const db = openDatabase(file);
  await replaceBook(db, readBook(smallBook()).book, [], DOING);
  return db;
}

function serverOn(db: Db) {
  const app = createApp({
    db,
    now: () => new Date(DOING.now),
    webFolder: "/nowhere",
    signIn: { openAs: DEMO_OWNER },
  });
  return async (invoice: string) => {
    const response = await app.request("/api/deliveries", {
      method: "POST",
      headers: { "content-type": "application/json", origin: "http://localhost" },
      body: JSON.stringify([{ ...DELIVERY, invoice }]),
    });
    const { problems = [] } = (await response.json()) as { problems?: { message: string }[] };
    return { status: response.status, said: problems.map(({ message }) => message).join("\n") };
  };
}

/** Enters deliveries until one is not taken; gives how many were acknowledged, and what was said then. */
async function untilRefused(enter: ReturnType<typeof serverOn>) {
  for (let acknowledged = 0; acknowledged < 5_000; acknowledged += 1) {
    const { status, said } = await enter(`Q-${acknowledged}`);
    if (status !== 200) return { acknowledged, status, said };
  }
  throw new Error("It was never refused.");
}

async function expectAllKept(file: string, acknowledged: number): Promise<void> {
  const db = openDatabase(file);
  expect(db.sqlite.pragma("integrity_check", { simple: true })).toBe("ok");
  const book = await loadBook(db);
  const invoices =
    book?.deliveries.map(({ invoice }) => invoice).filter((invoice) => invoice.startsWith("Q-")) ?? [];
  const due = Array.from({ length: acknowledged }, (_, at) => `Q-${at}`);
  expect(invoices.filter((invoice) => due.includes(invoice))).toHaveLength(acknowledged);
  expect(verifyChain(db).broken).toBeNull();
  closeDatabase(db);
}

describe("a disk without room", () => {
  it("is told of with 507, nothing acknowledged is lost, and with room again all goes on", async () => {
    const file = join(dir, "bar.db");
    const db = await aBar(file);
    const before = (await loadBook(db))?.deliveries.length ?? 0;
    const pages = Number(db.sqlite.pragma("page_count", { simple: true }));
    db.sqlite.pragma(`max_page_count = ${pages + 8}`);
    const enter = serverOn(db);
    const { acknowledged, status, said } = await untilRefused(enter);
    expect([status, acknowledged]).toEqual([507, expect.any(Number)]);
    expect(acknowledged).toBeGreaterThan(0);
    expect(said).toContain("no room left on the disk");
    expect(said).toContain(file);
    expect(said).toContain("Make room");
    db.sqlite.pragma("max_page_count = 1000000");
    expect((await enter(`Q-${acknowledged}`)).status).toBe(200);
    closeDatabase(db);
    await expectAllKept(file, acknowledged + 1);
    const whole = openDatabase(file);
    expect((await loadBook(whole))?.deliveries).toHaveLength(before + acknowledged + 1);
    closeDatabase(whole);
  });

  it.runIf(mayMount)("of its own says the same, to the server and on the command line", async () => {
    const disk = smallDisk(2_000) ?? "";
    const file = join(disk, "bar.db");
    const db = await aBar(file);
    const { acknowledged, status, said } = await untilRefused(serverOn(db));
    expect([status, said]).toEqual([507, expect.stringContaining(`no room left on the disk with ${file}`)]);
    const backup = await runUllage("backup", join(disk, "backup.db"), "--db", file);
    expect([backup.status, backup.err]).toEqual([2, expect.stringMatching(/no room left|disk is full/)]);
    const load = await runUllage("load", "sample-sales", "--db", file);
    expect([load.status, load.err]).toEqual([2, expect.stringMatching(/no room left|disk is full/)]);
    closeDatabase(db);
    spawnSync("mount", ["-o", "remount,size=20000k", disk]);
    await expectAllKept(file, acknowledged);
  });
});

describe("a place that may only be read", () => {
  it.runIf(mayMount)(
    "is told of with 503 and with exit status 2, and what was there stays readable",
    async () => {
      const disk = smallDisk(8_000) ?? "";
      const file = join(disk, "bar.db");
      const db = await aBar(file);
      const enter = serverOn(db);
      expect((await enter("Q-0")).status).toBe(200);
      closeDatabase(db);
      expect(spawnSync("mount", ["-o", "remount,ro", disk]).status).toBe(0);
      const { status, err } = await runUllage("cost", "--db", file);
      expect(status).toBe(2);
      expect(err).toMatch(/may only be read|cannot be read or written/);
      expect(err).toContain(file);
      const made = await runUllage("load", "sample-sales", "--db", join(disk, "new", "bar.db"));
      expect([made.status, made.err]).toEqual([
        2,
        expect.stringContaining("cannot be made one; see that its place may be written to"),
      ]);
      spawnSync("mount", ["-o", "remount,rw", disk]);
      await expectAllKept(file, 1);
    },
  );

  it("a database that turns read-only under the server is told of with 503", async () => {
    const file = join(dir, "bar.db");
    const db = await aBar(file);
    db.sqlite.pragma("query_only = ON");
    const { status, said } = await serverOn(db)("Q-0");
    expect(status).toBe(503);
    expect(said).toContain(`${file}, or its folder, may only be read`);
    db.sqlite.pragma("query_only = OFF");
    expect((await serverOn(db)("Q-0")).status).toBe(200);
    closeDatabase(db);
  });
});

describe("a database held by another program", () => {
  it("is waited for, then told of with 503; when that lets go, all goes on", async () => {
    const file = join(dir, "bar.db");
    const db = await aBar(file);
    db.sqlite.pragma("busy_timeout = 50");
    const other = new Database(file);
    other.exec("begin immediate");
    const enter = serverOn(db);
    const { status, said } = await enter("Q-0");
    expect(status).toBe(503);
    expect(said).toContain(`${file} is in use by another program`);
    other.exec("commit");
    other.close();
    expect((await enter("Q-0")).status).toBe(200);
    closeDatabase(db);
  });
});

describe("a damaged file", () => {
  it("is told of with 503 and how to bring a backup back", async () => {
    const file = join(dir, "bar.db");
    const db = await aBar(file);
    db.sqlite.pragma("wal_checkpoint(TRUNCATE)");
    closeDatabase(db);
    const sqlite = new Database(file);
    const page = Number(
      sqlite.prepare("select rootpage from sqlite_master where name = 'deliveries'").pluck().get(),
    );
    const size = Number(sqlite.pragma("page_size", { simple: true }));
    sqlite.close();
    const { openSync, writeSync, closeSync } = await import("node:fs");
    const handle = openSync(file, "r+");
    writeSync(handle, Buffer.alloc(size, 0xa5), 0, size, (page - 1) * size);
    closeSync(handle);
    const damaged = openDatabase(file);
    const { status, said } = await serverOn(damaged)("Q-0");
    expect(status).toBe(503);
    expect(said).toContain("is damaged");
    expect(said).toContain("ullage restore FILE");
    closeDatabase(damaged);
    expect((await runUllage("check", "--db", file)).status).toBe(1);
  });

  it.each([
    ["a text", "Dear diary, ".repeat(500)],
    ["half a header", "SQLite format 3\u0000 and then nothing more"],
    ["zeroes", "\u0000".repeat(8192)],
  ])("that is %s is no database, and is left as it is", async (_, text) => {
    const file = join(dir, "bar.db");
    writeFileSync(file, text);
    const { status, err } = await runUllage("cost", "--db", file);
    expect(status).toBe(2);
    expect(err).toContain(file);
    expect(err.trim().split("\n").length).toBeLessThanOrEqual(2);
  });
});

describe("a clock that was set back", () => {
  it("is warned of, and acts keep the order in which they were done", async () => {
    const db = await aBar(join(dir, "bar.db"));
    await addDelivery(db, { ...DELIVERY, invoice: "Q-1" }, { now: "2026-03-09T12:00:00Z", by: "Ana" });
    await addDelivery(db, { ...DELIVERY, invoice: "Q-2" }, { now: "2025-03-09T12:00:00Z", by: "Ana" });
    await addDelivery(db, { ...DELIVERY, invoice: "Q-3" }, { now: "2026-03-09T12:00:01Z", by: "Ana" });
    const entered = (await loadBook(db))?.deliveries.map(({ invoice }) => invoice).slice(-3);
    expect(entered).toEqual(["Q-1", "Q-2", "Q-3"]);
    expect(verifyChain(db).broken).toBeNull();
    expect(clockWarning(db, new Date("2026-03-09T12:01:00Z"))).toBeUndefined();
    expect(clockWarning(db, new Date("2026-03-09T11:58:00Z"))).toBeUndefined();
    const warning = clockWarning(db, new Date("2020-01-01T00:00:00Z"));
    expect(warning).toContain("clock says 2020-01-01T00:00Z");
    expect(warning).toContain("the last act");
    // An act under the wrong clock does not hide that it is wrong.
    await addDelivery(db, { ...DELIVERY, invoice: "Q-4" }, { now: "2020-01-01T00:00:00Z", by: "Ana" });
    expect(clockWarning(db, new Date("2020-01-01T00:01:00Z"))).toContain("2026-03-09T12:00Z");
    closeDatabase(db);
  });
});

// After sqlite.org/rescode.html.
it.each([
  ["SQLITE_FULL", "full"],
  ["SQLITE_IOERR_SHMSIZE", "full"],
  ["SQLITE_BUSY", "busy"],
  ["SQLITE_BUSY_SNAPSHOT", "busy"],
  ["SQLITE_LOCKED_SHAREDCACHE", "busy"],
  ["SQLITE_READONLY_DIRECTORY", "read-only"],
  ["SQLITE_READONLY_DBMOVED", "moved"],
  ["SQLITE_IOERR_FSYNC", "unreadable"],
  ["SQLITE_IOERR_WRITE", "unreadable"],
  ["SQLITE_CANTOPEN_ISDIR", "unreadable"],
])("%s, however deep, is %s", (code, trouble) => {
  const inner = Object.assign(new Error("detail"), { code });
  const fault = storageFaultOf(new Error("Failed query", { cause: inner }), "bar.db");
  expect(fault).toBeInstanceOf(StorageError);
  expect(fault).toMatchObject({ trouble, message: expect.stringContaining("bar.db") });
});

it.each(["SQLITE_CONSTRAINT_UNIQUE", "SQLITE_ERROR", "SQLITE_MISUSE"])(
  "%s is no fault of the disk",
  (code) => {
    expect(storageFaultOf(Object.assign(new Error("detail"), { code }))).toBeUndefined();
  },
);
