import { cpSync, existsSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import Database from "better-sqlite3";
import { drizzle } from "drizzle-orm/better-sqlite3";
import { migrate } from "drizzle-orm/better-sqlite3/migrator";
import { afterEach, beforeEach, describe, expect, it } from "vitest";
import { DatabaseFileError } from "#db/errors.ts";
import { closeDatabase, IN_MEMORY, openDatabase } from "#db/open.ts";

let dir: string;
beforeEach(() => {
  dir = mkdtempSync(join(tmpdir(), "ullage-open-"));
});
afterEach(() => rmSync(dir, { recursive: true, force: true }));

const MIGRATIONS = "db/migrations";

/** The migrations up to and with one of them, as an older version of the program had them. */
function migrationsUntil(tag: string): string {
  const folder = join(dir, "older");
  cpSync(MIGRATIONS, folder, { recursive: true });
  const journalFile = join(folder, "meta", "_journal.json");
  const journal: { entries: { tag: string }[] } = JSON.parse(readFileSync(journalFile, "utf8"));
  const last = journal.entries.findIndex((entry) => entry.tag === tag);
  expect(last).toBeGreaterThanOrEqual(0);
  journal.entries.length = last + 1;
  writeFileSync(journalFile, JSON.stringify(journal));
  return folder;
}

/** A file as the first version of the program left it, with a row that refers to others. */
function oldFile(): string {
  const file = join(dir, "bar.db");
  const sqlite = new Database(file);
  migrate(drizzle(sqlite), { migrationsFolder: migrationsUntil("0000_tables") });
  sqlite.exec(`
    insert into items (id, name, folded, category, base, allergens_json, in_house, stocked, pour, note)
      values (1, 'Dry gin', 'dry gin', 'spirit', 'ml', '[]', 0, 1, 'jigger', '');
    insert into packs (id, item_id, name, folded) values (1, 1, '1 L', '1 l');
    insert into suppliers (id, name, folded, email) values (1, 'Quayside Drinks', 'quayside drinks', '');
    insert into deliveries (at, supplier_id, invoice, pack_id, quantity, of, by, entered_at, entered_by)
      values ('2026-03-05T10:40:00Z', 1, 'Q-118', 1, 6, 'container', 'Rui', '2026-03-05T10:41:00Z', 'Rui');
  `);
  sqlite.close();
  return file;
}

describe("opening a database", () => {
  it("has the tables, checks, keys and triggers of the snapshot", async () => {
    const db = openDatabase(IN_MEMORY);
    const made = db.sqlite
      .prepare(
        "select sql from sqlite_master where sql is not null and name not like '\\_\\_%' escape '\\' order by type desc, tbl_name, name",
      )
      .pluck()
      .all() as string[];
    closeDatabase(db);
    await expect(`${made.join(";\n\n")};\n`).toMatchFileSnapshot("schema.snap");
  });

  it("makes the folder and the file, with write-ahead log and foreign keys on", () => {
    const file = join(dir, "deep", "er", "bar.db");
    const db = openDatabase(file);
    expect(existsSync(file)).toBe(true);
    expect(db.sqlite.pragma("journal_mode", { simple: true })).toBe("wal");
    expect(db.sqlite.pragma("foreign_keys", { simple: true })).toBe(1);
    expect(db.sqlite.pragma("busy_timeout", { simple: true })).toBe(5000);
    closeDatabase(db);
  });

  it("brings an older file up to date with all its rows, and keeps a copy of it as it was", () => {
    const file = oldFile();
    const db = openDatabase(file);
    const rows = db.sqlite.prepare("select invoice, quantity from deliveries").all();
    expect(rows).toEqual([{ invoice: "Q-118", quantity: 6 }]);
    expect(db.sqlite.pragma("foreign_key_check")).toEqual([]);
    expect(() => db.sqlite.exec("delete from deliveries")).toThrow("Deliveries are only ever added");
    closeDatabase(db);
    const copies = readdirSync(dir).filter((name) => name.startsWith("bar.db.before-"));
    expect(copies).toHaveLength(1);
    const copy = new Database(join(dir, copies[0] ?? ""), { readonly: true });
    expect(copy.prepare("select count(*) from sqlite_master where type = 'trigger'").pluck().get()).toBe(0);
    expect(copy.prepare("select count(*) from deliveries").pluck().get()).toBe(1);
    copy.close();
  });

  it("makes no copy when there is nothing to bring up to date", () => {
    const file = join(dir, "bar.db");
    closeDatabase(openDatabase(file));
    closeDatabase(openDatabase(file));
    expect(readdirSync(dir).filter((name) => name.includes("before"))).toEqual([]);
  });

  it("refuses a file of a newer version of the program, and leaves it as it is", () => {
    const file = join(dir, "bar.db");
    const db = openDatabase(file);
    db.sqlite.exec("insert into __drizzle_migrations (hash, created_at) values ('later', 99999999999999)");
    closeDatabase(db);
    expect(() => openDatabase(file)).toThrow(DatabaseFileError);
    expect(() => openDatabase(file)).toThrow(
      `${file} was written by a newer version of ullage; update the program to open it.`,
    );
  });

  it("refuses what is no database, and databases of other programs", () => {
    const text = join(dir, "notes.db");
    writeFileSync(text, "Dear diary, ".repeat(500));
    expect(() => openDatabase(text)).toThrow(`${text} is no database; name another file.`);
    const other = join(dir, "other.db");
    const sqlite = new Database(other);
    sqlite.exec("create table songs (name text)");
    sqlite.close();
    expect(() => openDatabase(other)).toThrow(
      `${other} is a database, but not one of ullage; name another file.`,
    );
    expect(() => openDatabase(dir)).toThrow(DatabaseFileError);
  });
});

describe("the tables themselves", () => {
  it.each(["count_entries", "deliveries", "batches", "losses", "transfers"])(
    "refuse that a row of %s is changed or deleted",
    (table) => {
      const db = openDatabase(IN_MEMORY);
      db.sqlite.pragma("foreign_keys = OFF");
      const columns = db.sqlite
        .prepare('select name, type, dflt_value, "notnull" from pragma_table_info(?)')
        .all(table) as {
        name: string;
        type: string;
        dflt_value: string | null;
        notnull: number;
      }[];
      const value = ({ name, type, notnull, dflt_value }: (typeof columns)[number]) => {
        if (/at$/.test(name)) return "'2026-03-05T10:40:00Z'";
        const known: Record<string, string> = {
          unit: "'ml'",
          of: "'case'",
          kind: "'spill'",
          direction: "'in'",
          item_id: "1",
        };
        if (known[name] !== undefined) return known[name];
        if (notnull === 0 || dflt_value !== null) return undefined;
        return type === "TEXT" || type === "text" ? "'[]'" : "1";
      };
      const given = columns
        .map((column) => [column.name, value(column)])
        .filter(([, text]) => text !== undefined);
      db.sqlite.exec(
        `insert into ${table} (${given.map(([name]) => `"${name}"`).join(", ")}) values (${given.map(([, text]) => text).join(", ")})`,
      );
      expect(() => db.sqlite.exec(`update ${table} set entered_by = 'someone else'`)).toThrow(
        "only ever added",
      );
      expect(() => db.sqlite.exec(`delete from ${table}`)).toThrow("only ever added");
      expect(db.sqlite.prepare(`select count(*) from ${table}`).pluck().get()).toBe(1);
      closeDatabase(db);
    },
  );

  it("are strict, so that no text stands where a number should", () => {
    const db = openDatabase(IN_MEMORY);
    const loose = db.sqlite
      .prepare(
        "select name from pragma_table_list where schema = 'main' and type = 'table' and strict = 0 and name not like 'sqlite_%' and name not like '\\_\\_%' escape '\\'",
      )
      .pluck()
      .all();
    expect(loose).toEqual([]);
    closeDatabase(db);
  });
});
