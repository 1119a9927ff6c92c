import {
  copyFileSync,
  existsSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  rmSync,
  writeFileSync,
} from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import Database from "better-sqlite3";
import { afterAll, beforeAll, describe, expect, it, vi } from "vitest";
import { rowCounts } from "#db/backup-proof.ts";
import { closeDatabase, openDatabase } from "#db/open.ts";
import { addDelivery } from "#db/stock-repository.ts";
import { newestBackup } from "#server/backups/back-up.ts";
import { planBackups } from "#server/backups/plan.ts";
import { keepBackingUp } from "#server/backups/schedule.ts";
import { PROGRAM_VERSION } from "#server/version.ts";
import { runUllage } from "#tests/support/run-ullage.ts";

// What a backup must be able to show, after sqlite.org/backup.html and sqlite.org/howtocorrupt.html (1.3, 1.4, 2.4).
let dir: string;
let bar: string;
let backup: string;

beforeAll(async () => {
  dir = mkdtempSync(join(tmpdir(), "ullage-backup-"));
  bar = join(dir, "bar.db");
  backup = join(dir, "backup.db");
  expect((await runUllage("load", "sample-sales", "--db", bar)).status).toBe(0);
  expect(await runUllage("backup", backup, "--db", bar)).toMatchObject({ status: 0, err: "" });
}, 60_000);
afterAll(() => rmSync(dir, { recursive: true, force: true }));

let made = 0;
/** A database or backup of one's own to spoil. */
function copyOf(file: string): string {
  made += 1;
  const copy = join(dir, `${made}.db`);
  copyFileSync(file, copy);
  return copy;
}

function change(file: string, statements: string): string {
  const sqlite = new Database(file);
  sqlite.exec(statements);
  sqlite.close();
  return file;
}

const WITHOUT_GUARDS = "drop trigger if exists deliveries_stay; drop trigger if exists deliveries_are_kept;";

function triggersOf(file: string, table: string): string {
  const sqlite = new Database(file, { readonly: true });
  const names = sqlite
    .prepare("select name from sqlite_master where type = 'trigger' and tbl_name = ?")
    .pluck()
    .all(table) as string[];
  sqlite.close();
  return WITHOUT_GUARDS + names.map((name) => `drop trigger if exists "${name}";`).join("");
}

describe("a backup that is brought back", () => {
  it("proves pages, keys, rows, history and the latest variance before it takes the place of anything", async () => {
    const target = copyOf(bar);
    const { status, out } = await runUllage("restore", backup, "--db", target);
    expect(status).toBe(0);
    expect(out).toMatch(
      /Pages, keys and the history of \d+ acts are whole; \d+ rows in \d+ tables, as when it was made/,
    );
    expect(out).toMatch(/the variance .+ to .+ is -?\d+(\.\d+)?, as then/);
    const [restored, original] = [openDatabase(target), openDatabase(bar)];
    expect(rowCounts(restored)).toEqual(rowCounts(original));
    // The proof belongs to the backup; a database in use has none that could grow old.
    expect(
      restored.sqlite.prepare("select 1 from sqlite_master where name = 'backup_proof'").get(),
    ).toBeUndefined();
    closeDatabase(restored);
    closeDatabase(original);
  });

  it("is refused when a row is missing, and the table is named", async () => {
    const spoilt = copyOf(backup);
    change(
      spoilt,
      `${triggersOf(spoilt, "deliveries")} pragma foreign_keys = off; delete from deliveries where id = (select max(id) from deliveries)`,
    );
    const target = copyOf(bar);
    const before = readFileSync(target);
    const { status, err } = await runUllage("restore", spoilt, "--db", target, "--anyway");
    expect(status).toBe(2);
    expect(err).toMatch(/deliveries has \d+ rows, and had \d+ when it was backed up/);
    expect(readFileSync(target).equals(before)).toBe(true);
  });

  it("is refused when it tells another variance than it did, unless that is wanted", async () => {
    const spoilt = change(copyOf(backup), "update pack_versions set price = price * 3");
    const target = copyOf(bar);
    const refused = await runUllage("restore", spoilt, "--db", target);
    expect(refused.status).toBe(2);
    expect(refused.err).toContain("another variance than when it was made");
    expect(refused.err).toContain("--anyway");
    const { status, out } = await runUllage("restore", spoilt, "--db", target, "--anyway");
    expect(status).toBe(0);
    expect(out).toContain("reckoned otherwise then");
  });

  it("is refused when any of its pages is broken or missing, and what is there stays", async () => {
    const whole = readFileSync(backup);
    const pages = Math.floor(whole.length / 4096);
    const target = copyOf(bar);
    const before = readFileSync(target);
    const broken: [string, Buffer][] = [
      ["cut off in the middle", whole.subarray(0, 4096 * Math.floor(pages / 2))],
      ["cut off in a page", whole.subarray(0, whole.length - 1000)],
      ...[1, Math.floor(pages / 2)].map((page): [string, Buffer] => {
        const spoilt = Buffer.from(whole);
        spoilt.fill(0xa5, page * 4096, page * 4096 + 4096);
        return [`page ${page} overwritten`, spoilt];
      }),
    ];
    for (const [what, bytes] of broken) {
      const file = join(dir, "broken.db");
      writeFileSync(file, bytes);
      const { status, err } = await runUllage("restore", file, "--db", target);
      expect([what, status]).toEqual([what, 2]);
      expect(err, what).toContain(file);
      expect(readFileSync(target).equals(before), what).toBe(true);
    }
    expect(readdirSync(dir).filter((name) => /restoring|\.part/.test(name))).toEqual([]);
  });

  it("is not put under a server that is running", async () => {
    const target = copyOf(bar);
    const served = openDatabase(target);
    const { status, err } = await runUllage("restore", backup, "--db", target);
    expect(status).toBe(2);
    expect(err).toContain("in use by another program");
    expect(err).toContain("stop that program first");
    expect(served.sqlite.pragma("integrity_check", { simple: true })).toBe("ok");
    closeDatabase(served);
    expect((await runUllage("restore", backup, "--db", target)).status).toBe(0);
  });

  it("takes the place of a database too damaged to be opened, which is kept", async () => {
    const target = join(dir, "ruin.db");
    writeFileSync(target, "not a database at all, ".repeat(400));
    const { status, out } = await runUllage("restore", backup, "--db", target);
    expect(status).toBe(0);
    const kept = /kept in (\S+)\./.exec(out)?.[1] ?? "";
    expect(readFileSync(kept, "utf8")).toMatch(/^not a database/);
    expect((await runUllage("check", "--db", target)).status).toBe(0);
  });

  it("signs everybody out, as sessions that ended since then would be back", async () => {
    const spoilt = copyOf(backup);
    change(
      spoilt,
      `insert into people (id, name, folded, role, added_at) values (900, 'Ana', 'ana', 'owner', '2026-03-09T12:00:00Z');
       insert into sessions (secret_hash, person_id, via, started_at, last_seen_at)
       values ('${"a".repeat(64)}', 900, 'password', '2026-03-09T12:00:00Z', '2026-03-09T12:00:00Z');
       drop table backup_proof`,
    );
    const target = join(dir, "signed-out.db");
    const { out } = await runUllage("restore", spoilt, "--db", target);
    expect(out).toContain("has to sign in again");
    expect(out).toContain("carries no proof");
    const db = openDatabase(target);
    expect(db.sqlite.prepare("select count(*) from sessions").pluck().get()).toBe(0);
    expect(db.sqlite.prepare("select count(*) from people").pluck().get()).toBe(1);
    closeDatabase(db);
  });
});

describe("backups while the bar is served", () => {
  const NOW = new Date("2026-11-30T05:00:00Z");

  it("are made when due, whole, of a database that is written to meanwhile", async () => {
    const file = copyOf(bar);
    const db = openDatabase(file);
    const plan = planBackups(file, { backupEvery: "1h" });
    if (plan === null) throw new Error("A plan was wanted.");
    const said: string[] = [];
    const backups = keepBackingUp(db, plan, {
      now: () => NOW,
      say: (line) => said.push(line),
      lookEveryMs: 20,
    });
    const { items } = { items: db.sqlite.prepare("select name from items limit 1").pluck().get() as string };
    const [pack, supplier] = db.sqlite
      .prepare(
        "select packs.name, suppliers.name from packs join items on items.id = packs.item_id, suppliers where items.name = ? limit 1",
      )
      .raw()
      .get(items) as [string, string];
    let entered = 0;
    await vi.waitFor(
      async () => {
        entered += 1;
        await addDelivery(
          db,
          {
            at: "2026-11-29T10:00:00Z",
            supplier,
            invoice: `Q-${entered}`,
            item: items,
            pack,
            quantity: 1,
            of: "container",
            priceTotalMinor: 100,
            depositMinor: null,
            empties: null,
            by: "Ana",
          },
          { now: "2026-11-30T05:00:00Z", by: "Ana" },
        );
        expect(newestBackup(plan)).toEqual(NOW);
      },
      { timeout: 20_000, interval: 5 },
    );
    await backups.stop();
    closeDatabase(db);
    expect(said).toEqual([]);
    const [name = ""] = readdirSync(plan.folder);
    const target = join(dir, "from-schedule.db");
    const { status, out } = await runUllage("restore", join(plan.folder, name), "--db", target);
    expect([status, out]).toEqual([0, expect.stringContaining("as then")]);
  });

  it("that cannot be made are told of once, and the server goes on", async () => {
    const file = copyOf(bar);
    const db = openDatabase(file);
    const inTheWay = join(dir, "in-the-way");
    writeFileSync(inTheWay, "");
    const plan = planBackups(file, { backupDir: join(inTheWay, "backups") });
    if (plan === null) throw new Error("A plan was wanted.");
    const said: string[] = [];
    const backups = keepBackingUp(db, plan, {
      now: () => NOW,
      say: (line) => said.push(line),
      lookEveryMs: 20,
    });
    await vi.waitFor(() => expect(said).toHaveLength(1), { timeout: 20_000 });
    await new Promise((resolve) => setTimeout(resolve, 100));
    const trouble = {
      since: "2026-11-30T05:00:00Z",
      problem: expect.stringContaining("in-the-way"),
      lastBackupAt: null,
    };
    expect(backups.trouble()).toEqual(trouble);
    // Once the way is free, the next look makes it and nothing is wrong any more.
    rmSync(inTheWay);
    await vi.waitFor(() => expect(backups.trouble()).toBeNull(), { timeout: 20_000 });
    await backups.stop();
    expect(newestBackup(plan)).toEqual(NOW);
    expect(said).toEqual([expect.stringMatching(/^No backup was made: .*in-the-way/)]);
    closeDatabase(db);
  });
});

it("the version that a backup names is the package's own", () => {
  const { version } = JSON.parse(readFileSync("package.json", "utf8")) as { version: string };
  expect(PROGRAM_VERSION).toBe(version);
  expect(existsSync(backup)).toBe(true);
});
