import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterEach, beforeEach, describe, expect, it } from "vitest";
import { backupTo } from "#db/backup.ts";
import { readBook } from "#db/book/read-book.ts";
import { replaceBook } from "#db/book-repository.ts";
import { actingAs } from "#db/history/acting.ts";
import { headOf, verifyChain } from "#db/history/chain.ts";
import { listHistory } from "#db/history-repository.ts";
import { closeDatabase, type Db, openDatabase } from "#db/open.ts";
import { saveEvent } from "#db/orders-repository.ts";
import { addDeliveries, addDelivery } from "#db/stock-repository.ts";
import { DELIVERY, DOING } from "#tests/support/acts.ts";
import { runUllage } from "#tests/support/run-ullage.ts";
import { smallBook } from "#tests/support/small-book.ts";

const OWNER = { who: "Ines", role: "owner", via: "screen", from: "office laptop" } as const;

let dir: string;
let file: string;
let db: Db;
beforeEach(async () => {
  dir = mkdtempSync(join(tmpdir(), "ullage-history-"));
  file = join(dir, "bar.db");
  db = openDatabase(file);
  await replaceBook(db, readBook(smallBook()).book, [], DOING);
  await actingAs(OWNER, () =>
    addDeliveries(db, [DELIVERY, { ...DELIVERY, item: "Soda", pack: "bottle" }], DOING),
  );
  await saveEvent(db, { date: "2026-03-14", event: "Regatta", factor: 1.3 });
  await addDelivery(db, { ...DELIVERY, invoice: "Q-131" }, DOING);
});
afterEach(() => {
  closeDatabase(db);
  rmSync(dir, { recursive: true, force: true });
});

/** Somebody with the file and a database tool, to whom triggers are no hindrance. */
function tamper(sql: string): void {
  db.sqlite.pragma("foreign_keys = OFF");
  const triggers = db.sqlite.prepare("select name from sqlite_master where type = 'trigger'").pluck().all();
  for (const name of triggers) db.sqlite.exec(`drop trigger "${name}"`);
  db.sqlite.exec(sql);
}

describe("the history", () => {
  it("says who did it, by which way, from where and on whose behalf an act in the small hours ran", async () => {
    const [, , act] = await listHistory(db);
    expect(act).toMatchObject({ ...OWNER, act: "delivery entered", at: DOING.now, reason: "" });
    expect(act?.subjects).toEqual([
      { kind: "item", name: "Dry gin" },
      { kind: "supplier", name: "Quayside Drinks" },
      { kind: "item", name: "Soda" },
    ]);
  });

  it("is found under each thing an act was about, however its name is written", async () => {
    const acts = await listHistory(db, { subject: "  SODA " });
    expect(acts.map(({ seq }) => seq)).toEqual([2]);
  });

  it("is refused to be changed or cut by the tables themselves", () => {
    const change = () => db.sqlite.exec("update history set who = 'Nobody'");
    const cut = () => db.sqlite.exec("delete from history_subjects");
    expect(change).toThrow("The history is only ever added to.");
    expect(cut).toThrow("The history is only ever added to.");
  });

  it("refuses to act for somebody without a name", () => {
    expect(() => actingAs({ ...OWNER, who: " " }, () => 1)).toThrow("name the person");
  });
});

describe("the chain", () => {
  it("is whole as it was written", () => {
    expect(verifyChain(db)).toEqual({ acts: 4, head: headOf(db), broken: null });
  });

  it.each([
    ["another name", "update history set who = 'Rui' where seq = 2", 2, "changed after it was written"],
    ["another reason", "update history set reason = 'late' where seq = 3", 3, "changed after it was written"],
    [
      "another amount",
      "update history set after_json = '{}' where seq = 2",
      2,
      "changed after it was written",
    ],
    [
      "another thing it was about",
      "update history_subjects set name = 'Lime' where seq = 2 and place = 2",
      2,
      "changed after it was written",
    ],
    ["an act taken out of the middle", "delete from history where seq = 3", 3, "missing"],
    ["the first act taken out", "delete from history where seq = 1", 1, "missing"],
    [
      "an act put in place of another with its own hash",
      "update history set previous_hash = hash where seq = 3",
      3,
      "does not follow",
    ],
  ])("shows %s, by the first act that is not as it was", (_, sql, seq, how) => {
    tamper(sql);
    expect(verifyChain(db).broken).toEqual({ seq, how: expect.stringContaining(how) });
  });

  it("ends sooner when the last acts were cut off, which a head noted before shows", async () => {
    const { hash } = headOf(db);
    tamper("delete from history_subjects where seq = 4; delete from history where seq = 4");
    expect(verifyChain(db).broken).toBeNull();
    const cut = await runUllage("check", "--db", file, "--head", hash);
    expect(cut.status).toBe(1);
    expect(cut.out).toContain("shorter than it was, or was written anew");
  });
});

describe("ullage check and backup", () => {
  it("print the head of the history, the same in a copy", async () => {
    const { hash } = headOf(db);
    const copy = join(dir, "copy.db");
    const backedUp = await runUllage("backup", copy, "--db", file);
    const checked = await runUllage("check", "--db", copy, "--head", hash);
    expect(backedUp.out).toContain(`Head of its history, after 4 acts: ${hash}`);
    expect(checked).toMatchObject({ status: 0 });
    expect(checked.out).toContain(`after 4 acts: ${hash}`);
  });

  it("name the first act that was changed, and end with 1", async () => {
    tamper("update history set summary = 'nothing' where seq = 3");
    const checked = await runUllage("check", "--db", file);
    expect(checked.status).toBe(1);
    expect(checked.out).toContain("the history is broken at act 3: it was changed after it was written");
  });

  it("bring a changed history back from no backup", async () => {
    tamper("update history set summary = 'nothing' where seq = 3");
    const copy = join(dir, "bad.db");
    await backupTo(db, copy);
    const restored = await runUllage("restore", copy, "--db", join(dir, "other.db"));
    expect(restored.status).toBe(2);
    expect(restored.err).toContain("broken at act 3");
  });
});
