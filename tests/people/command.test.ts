import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, describe, expect, it } from "vitest";
import { jsonOf, runUllage } from "#tests/support/run-ullage.ts";

const folder = mkdtempSync(join(tmpdir(), "ullage-people-"));
afterAll(() => rmSync(folder, { recursive: true, force: true }));
let made = 0;
function aFile(): string {
  made += 1;
  return join(folder, `${made}.db`);
}

describe("ullage people", () => {
  it("adds somebody with a link, lists, shuts out, lets in again, and makes another link", async () => {
    const db = aFile();
    const added = await runUllage("people", "add", "Ines", "--role", "owner", "--db", db);
    expect(added.status).toBe(0);
    expect(added.out).toMatch(/http:\/\/127\.0\.0\.1:4680\/welcome#[\w-]{43}/);
    expect(await jsonOf("people", "--db", db)).toEqual([
      { name: "Ines", role: "owner", signsInWith: null, isActive: true },
    ]);
    await runUllage("people", "disable", "ines", "--db", db);
    expect(await jsonOf("people", "--db", db)).toMatchObject([{ isActive: false }]);
    await runUllage("people", "enable", "Ines", "--db", db);
    const again = await runUllage("people", "link", "Ines", "--db", db);
    expect(again.out).toMatch(/before \d{4}-\d\d-\d\d \d\d:\d\d UTC/);
    expect(again.out).not.toBe(added.out);
  });

  it.each([
    [["add", "Kit"], "--role: write one of owner, manager, counter, prep"],
    [["add"], "Say whom or what"],
    [["link", "Nobody"], 'Nobody is named "Nobody"'],
    [["hire", "Kit"], '"hire" is nothing to do with people'],
  ])("says what is wrong with %j", async (args, why) => {
    const db = aFile();
    await runUllage("people", "add", "Kit", "--role", "prep", "--db", db);
    const { status, err } = await runUllage("people", ...args, "--db", db);
    expect(status).toBe(2);
    expect(err).toContain(why);
  });
});

describe("ullage token", () => {
  it("makes one that reads, shows it once, lists it without its secret, and revokes it", async () => {
    const db = aFile();
    const { out } = await runUllage("token", "add", "till import", "--role", "manager", "--db", db);
    expect(out).toMatch(/^ullage_[\w-]{43}\n/);
    const listed = await runUllage("token", "--db", db);
    expect(listed.out).not.toContain("ullage_");
    expect(await jsonOf("token", "--db", db)).toMatchObject([
      { name: "till import", role: "manager", scope: "read", lastUsedAt: null },
    ]);
    const twice = await runUllage("token", "add", "Till Import", "--role", "prep", "--db", db);
    expect(twice.err).toContain("works already");
    await runUllage("token", "revoke", "till import", "--db", db);
    expect(await jsonOf("token", "--db", db)).toEqual([]);
    expect((await runUllage("token", "add", "till import", "--role", "prep", "--db", db)).status).toBe(0);
    expect((await runUllage("token", "revoke", "another", "--db", db)).err).toContain("No token that works");
    expect(
      (await runUllage("token", "add", "x", "--role", "prep", "--scope", "all", "--db", db)).status,
    ).toBe(2);
  });
});
