import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import Database from "better-sqlite3";
import { drizzle } from "drizzle-orm/better-sqlite3";
import fc from "fast-check";
import { afterEach, beforeEach, describe, expect, it } from "vitest";
import { checkedCatalogue, type NewEntries, problemsIn, problemsWith } from "#db/book/check-facts.ts";
import { readBook } from "#db/book/read-book.ts";
import { replaceBook } from "#db/book-repository.ts";
import { saveArea, saveDrink, saveItem, savePack } from "#db/catalogue-repository.ts";
import { CHANGEABLE } from "#db/history/change.ts";
import { listHistory, undoAct } from "#db/history-repository.ts";
import { closeDatabase, type Db, openDatabase } from "#db/open.ts";
import { addCountRows, addDelivery } from "#db/stock-repository.ts";
import { readWithoutEntries } from "#db/stored/book.ts";
import { writeCountRows } from "#db/stored/entry-writes.ts";
import { keptCatalogue } from "#db/stored/kept-catalogue.ts";
import { loadRegisters } from "#db/stored/register.ts";
import { inTransaction } from "#db/stored/transaction.ts";
import { saveVenue } from "#db/venue-repository.ts";
import type { Book } from "#engine/book.ts";
import { DELIVERY, DOING, ROW } from "#tests/support/acts.ts";
import { bookArbitrary } from "#tests/support/book-arbitrary.ts";
import { smallBook } from "#tests/support/small-book.ts";

const book: Book = readBook(smallBook()).book;
const [gin, rum] = book.items as [Book["items"][0], Book["items"][0]];
const NO_ENTRIES = { counts: [], deliveries: [], batches: [], batchInputs: [], losses: [], transfers: [] };

let dir: string;
let file: string;
let db: Db;
/** As the command line would have it open beside the server. */
let other: Db;
beforeEach(async () => {
  dir = mkdtempSync(join(tmpdir(), "ullage-kept-"));
  file = join(dir, "bar.db");
  db = openDatabase(file);
  other = openDatabase(file);
  await replaceBook(db, book, [], DOING);
  await addCountRows(db, [ROW], DOING);
});
afterEach(() => {
  closeDatabase(db);
  closeDatabase(other);
  rmSync(dir, { recursive: true, force: true });
});

/** What is kept is what the tables hold: every fact, every number of every name. */
function expectFresh(of: Db): void {
  const registers = loadRegisters(of);
  const now = readWithoutEntries(of, registers);
  const kept = keptCatalogue(of);
  expect(kept?.venue).toEqual(now?.venue);
  expect(kept?.registers).toEqual(registers);
  const { units: _, findings: __, ...seen } = checkedCatalogue(now as Book).context;
  expect(kept?.checked.context).toMatchObject(seen);
}

let turn = 0;
const count = (of: Db, more: Partial<typeof ROW> = {}) => {
  turn += 1;
  return addCountRows(of, [{ ...ROW, full: turn, ...more }], DOING);
};

/** Each writes something that a count entry is checked against, or takes something of it away. */
const CHANGES: Record<string, (on: Db) => Promise<unknown>> = {
  "an item that changed": (on) => saveItem(on, { ...gin, abv: 41 + turn, note: `No. ${turn}` }),
  "an item that is new": (on) => saveItem(on, { ...gin, name: `Gin ${turn}` }),
  "a pack that is new": (on) => savePack(on, { ...(book.packs[0] as Book["packs"][0]), pack: `${turn} L` }),
  "a drink that changed": (on) =>
    saveDrink(on, { ...(book.drinks[0] as Book["drinks"][0]), glassMl: 100 + turn }),
  "another venue": (on) => saveVenue(on, { ...book.venue, name: `The Heron ${turn}` }),
  "other shelves": (on) => saveArea(on, `Shelf ${turn}`, [{ item: gin.name, shelf: 1 }]),
  "an act undone": async (on) => {
    await saveItem(on, { ...rum, note: `No. ${turn}` });
    const [act] = await listHistory(on);
    await undoAct(on, act?.seq ?? 0, DOING);
  },
  "another book": (on) =>
    replaceBook(on, { ...book, items: turn % 2 === 0 ? book.items : [...book.items].reverse() }, [], DOING),
  "rows written by hand": async (on) => {
    on.sqlite.exec(`update items set name = 'Dry Gin' where folded = 'dry gin'`);
    on.sqlite.exec("delete from shelves");
  },
  "what a person took back before it was written": async (on) => {
    const changed = () =>
      inTransaction(on, () => {
        on.sqlite.exec(`update items set base = 'each', name = 'DRY GIN' where folded = 'dry gin'`);
        on.sqlite.exec(`update venues set name = 'Nowhere'`);
        // Within it the catalogue is read as it stands there.
        expect(keptCatalogue(on)?.venue.name).toBe("Nowhere");
        writeCountRows(on, [{ ...ROW, area: `Never ${turn}`, count: `Never ${turn}`, full: 1 }], DOING);
        throw new Error("no");
      });
    expect(changed).toThrow("no");
  },
};

describe("the catalogue that is kept between entries", () => {
  it("is read once for entries that follow each other", async () => {
    const first = keptCatalogue(db)?.checked;
    await count(db);
    await addDelivery(db, DELIVERY, DOING);
    expect(keptCatalogue(db)?.checked).toBe(first);
    await count(other);
    expect(keptCatalogue(db)?.checked).toBe(first);
  });

  it.each(Object.keys(CHANGES))("is never older than %s, of its own program or another", async (name) => {
    for (const on of [db, other]) {
      await count(db);
      await CHANGES[name]?.(on);
      expectFresh(db);
      expectFresh(other);
      await count(db);
      expectFresh(db);
    }
  });

  it("is never out of date, whatever follows what", async () => {
    const step = fc.tuple(fc.constantFrom(...Object.keys(CHANGES), "an entry"), fc.boolean());
    await fc.assert(
      fc.asyncProperty(fc.array(step, { minLength: 2, maxLength: 6 }), async (steps) => {
        for (const [name, isOther] of steps) {
          await (CHANGES[name] ?? count)(isOther ? other : db);
          expectFresh(db);
        }
      }),
      { numRuns: 15 },
    );
  });

  it("knows an item that another program has just added, and one that it has just taken out", async () => {
    await saveItem(other, { ...gin, name: "Plum gin" });
    await savePack(other, { ...(book.packs[0] as Book["packs"][0]), item: "Plum gin" });
    await count(db, { item: "Plum gin" });
    await saveItem(other, { ...gin, name: "Pear gin" });
    await savePack(other, { ...(book.packs[0] as Book["packs"][0]), item: "Pear gin" });
    expectFresh(db);
    const [act] = (await listHistory(other)).filter(({ subjects }) => subjects[0]?.name === "Pear gin");
    await undoAct(other, act?.seq ?? 0, DOING);
    await undoAct(other, (act?.seq ?? 0) - 1, DOING);
    await expect(count(db, { item: "Pear gin" })).rejects.toThrow('There is no item "Pear gin"');
  });

  it("forgets names of areas and counts with the act that was to add them", async () => {
    const wrong = { ...ROW, area: "Attic", count: "Never taken" };
    await expect(addCountRows(db, [wrong, { ...wrong, item: "No such gin" }], DOING)).rejects.toThrow();
    expectFresh(db);
    await count(db, { area: "Attic", count: "Never taken" });
    expect(db.sqlite.pragma("foreign_key_check")).toEqual([]);
  });
});

describe("the stamp", () => {
  const READ_EACH_TIME = ["counts", "ledger_state"];
  const STAMPED = [...CHANGEABLE, "packs", "areas"];

  it("stands on every table that is read to keep a catalogue", () => {
    const read = new Set<string>();
    const sqlite = new Database(file, {
      verbose: (text) => {
        for (const [, table = ""] of String(text).matchAll(/\b(?:from|join) "?(\w+)"?/g)) read.add(table);
      },
    });
    keptCatalogue({ sqlite, orm: drizzle(sqlite) });
    sqlite.close();
    expect(read.size).toBeGreaterThan(15);
    expect([...read].filter((table) => ![...STAMPED, ...READ_EACH_TIME].includes(table))).toEqual([]);
  });

  it("is another after any row of them is added, changed or taken out", () => {
    const { sqlite } = db;
    const stamp = () => sqlite.prepare("select catalogue_stamp from ledger_state").pluck().get();
    const seen = new Set([stamp()]);
    sqlite.pragma("foreign_keys = OFF");
    for (const table of STAMPED) {
      const row = sqlite.prepare(`select * from ${table}`).get() as Record<string, unknown> | undefined;
      expect(row, table).toBeDefined();
      const columns = Object.keys(row ?? {});
      sqlite.exec(`update ${table} set id = id`);
      seen.add(stamp());
      sqlite.exec(`delete from ${table}`);
      seen.add(stamp());
      sqlite
        .prepare(
          `insert into ${table} (${columns.map((one) => `"${one}"`)}) values (${columns.map(() => "?")})`,
        )
        .run(...Object.values(row ?? {}));
      seen.add(stamp());
    }
    expect(seen.size).toBe(1 + 3 * STAMPED.length);
  });
});

describe("entries checked against a catalogue", () => {
  const entriesOf = ({ counts, deliveries, batches, batchInputs, losses, transfers }: Book): NewEntries => ({
    counts,
    deliveries,
    batches,
    batchInputs,
    losses,
    transfers,
  });

  it("have the problems that the whole book would have, and leave the catalogue as it was", () => {
    let found = 0;
    fc.assert(
      fc.property(bookArbitrary, bookArbitrary, fc.boolean(), (one, two, isForeign) => {
        const catalogue = { ...one, ...NO_ENTRIES, areas: [] };
        const entries = isForeign ? entriesOf(two) : entriesOf(one);
        const whole = problemsIn({ ...catalogue, ...entries });
        const checked = checkedCatalogue(catalogue);
        expect(problemsWith(checked, entries)).toEqual(whole);
        expect(problemsWith(checked, {})).toEqual(problemsIn(catalogue));
        expect(problemsWith(checked, entries)).toEqual(whole);
        found += whole.length;
      }),
      { numRuns: 40 },
    );
    expect(found).toBeGreaterThan(20);
  });
});
