import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import fc from "fast-check";
import { afterEach, beforeEach, describe, expect, it } from "vitest";
import { backupTo } from "#db/backup.ts";
import { readBook } from "#db/book/read-book.ts";
import { loadBook, replaceBook } from "#db/book-repository.ts";
import { saveDrink, saveItem, savePack } from "#db/catalogue-repository.ts";
import { closePast, currentClosing, reopenPast } from "#db/closings-repository.ts";
import { ClosedPastError, ConflictError } from "#db/errors.ts";
import { actingAs } from "#db/history/acting.ts";
import { listHistory, undoAct } from "#db/history-repository.ts";
import { closeDatabase, type Db, IN_MEMORY, openDatabase } from "#db/open.ts";
import { takePrices } from "#db/price-list-repository.ts";
import { acceptRingNames } from "#db/ring-names-repository.ts";
import { importSales, previewImport, undoImport } from "#db/sales-repository.ts";
import { saveCut, saveModifier, savePrep, saveVersion } from "#db/specs-repository.ts";
import {
  addBatch,
  addCountRows,
  addDelivery,
  addLoss,
  addTransfer,
  correctEntry,
  listEntries,
  withdrawEntry,
} from "#db/stock-repository.ts";
import type { Book } from "#engine/book.ts";
import type { SaleLine } from "#engine/sales/read/line.ts";
import { closedProblem, isMomentClosed } from "#engine/stock/closed-past.ts";
import { addDays } from "#engine/time.ts";
import { varianceFor } from "#server/reports/variance.ts";
import { openWorld } from "#server/world.ts";
import { DELIVERY, LINE, ROW } from "#tests/support/acts.ts";
import { smallBookAnd } from "#tests/support/small-book.ts";

/** A week later than the acts: the week to Sunday 8 March was counted on Monday the 9th at ten. */
const NOW = { now: "2026-03-16T12:00:00Z", by: "Ana" };
const CLOSED = "2026-03-08";
const OPEN = "2026-03-10";
const book: Book = readBook(
  smallBookAnd(
    "counts.csv",
    "Week 10,2026-03-09 10:00,Back bar,Dry gin,1 L,3,0.5,,,,Ana",
    "Week 10,2026-03-09 10:20,Cellar,Dry gin,,8,,,,,Ana",
    "Week 10,2026-03-09 10:02,Back bar,Old Quay rum,700 ml,1,,,,,Ana",
    "Week 10,2026-03-09 10:31,Back bar,Soda,,30,,,,,Ana",
  ),
).book;

const sold = (businessDate: string, ringName = "Gimlet", quantity = 3): SaleLine => ({
  ...LINE,
  businessDate,
  ringName,
  quantity,
});
const file = (name: string, lines: SaleLine[]) => ({ file: name, shape: { files: "*" }, refused: [], lines });

let db: Db;
beforeEach(async () => {
  db = openDatabase(IN_MEMORY);
  await replaceBook(db, book, [file("w10.csv", [sold("2026-03-06"), sold("2026-03-07", "GML")])], NOW);
});
afterEach(() => closeDatabase(db));

const of = <T>(facts: readonly T[], at = 0) => facts[at] as T;
const moment = (date: string) => `${date}T12:00:00Z`;
const gin = of(book.items);
const gimletLines = book.specs
  .filter(({ makes }) => makes === "Gimlet")
  .map(({ makes: _, from: __, ...line }) => ({ ...line, amount: 99 }));

/** Every kind of write that can be dated, on a day. */
const WRITES: Record<string, (date: string, n: number) => Promise<unknown>> = {
  "a count row": (date, n) =>
    addCountRows(db, [{ ...ROW, count: `Spot ${n}`, at: moment(date), full: n }], NOW),
  "a delivery": (date, n) => addDelivery(db, { ...DELIVERY, at: moment(date), quantity: n }, NOW),
  "a batch": (date, n) => addBatch(db, { ...of(book.batches), at: moment(date), made: 1 + n }, NOW),
  "a loss": (date, n) => addLoss(db, { ...of(book.losses), at: moment(date), amount: 1 + n }, NOW),
  "a transfer": (date, n) => addTransfer(db, { ...of(book.transfers), at: moment(date), amount: 1 + n }, NOW),
  "a spec": (date) => saveVersion(db, { makes: "Gimlet", from: date, lines: gimletLines }),
  "a prep's yield": (date, n) => savePrep(db, { ...of(book.preps), from: date, yield: 700 + n }),
  "a cut": (date, n) => saveCut(db, { ...of(book.cuts), from: date, perPiece: 20 + n }),
  "a price": (date, n) => savePack(db, { ...of(book.packs), from: date, price: 20 + n }),
  "a supplier's list": (date, n) =>
    takePrices(db, {
      supplier: "Quayside Drinks",
      items: [],
      packs: [{ ...of(book.packs), from: date, price: 30 + n }],
    }),
  sales: (date, n) => importSales(db, { ...file(`x${n}.csv`, [sold(date, "Rum Sour", 1 + n)]), ...NOW }),
};

/** Writes that have no day of their own but would change what the closed week was. */
const UNDATED: Record<string, (n: number) => Promise<unknown>> = {
  "a correction of what was delivered then": async (n) => {
    const entry = of(await listEntries(db, "delivery"));
    await correctEntry(db, "delivery", entry.id, { ...entry.fact, quantity: n }, { ...NOW, reason: "typo" });
  },
  "a correction that moves it out of the week": async () => {
    const entry = of(await listEntries(db, "delivery"));
    await correctEntry(
      db,
      "delivery",
      entry.id,
      { ...entry.fact, at: moment(OPEN) },
      { ...NOW, reason: "typo" },
    );
  },
  "taking back what was delivered then": async () =>
    withdrawEntry(db, "delivery", of(await listEntries(db, "delivery")).id, { ...NOW, reason: "twice" }),
  "taking back a row of the count that the week ends on": async () => {
    const row = (await listEntries(db, "count")).find(({ fact }) => fact.count === "Week 10");
    await withdrawEntry(db, "count", row?.id ?? 0, { ...NOW, reason: "miscounted" });
  },
  "another row in the count that the week ends on": (n) =>
    addCountRows(db, [{ ...ROW, area: "Cellar", item: "Lime", pack: null, at: moment(OPEN), full: n }], NOW),
  "a price that always held": (n) => savePack(db, { ...of(book.packs), price: 40 + n }),
  "a cut that always held": (n) => saveCut(db, { ...of(book.cuts), perPiece: 40 + n }),
  "the strength of what was poured": (n) => saveItem(db, { ...gin, abv: 50 + n }),
  "how free it is poured": () => saveItem(db, { ...gin, pour: "free" }),
  "the glass of what was sold": (n) => saveDrink(db, { ...of(book.drinks, 2), glassMl: 200 + n }),
  "what a name that was rung then means": () =>
    acceptRingNames(
      db,
      [{ ringName: "gml", soldAs: { kind: "drink", drink: "Gimlet" }, serves: 1, amount: null, unit: null }],
      NOW,
    ),
  "a drink of a name that was rung then": () => saveDrink(db, { ...of(book.drinks), name: "GML" }),
  "taking back the sales of then": () => undoImport(db, 1, NOW),
  "undoing the last act before the closing": async () => {
    const [act] = (await listHistory(db)).filter(({ canUndo }) => canUndo);
    await undoAct(db, act?.seq ?? 0, NOW);
  },
  "a whole book in place of this one": () => replaceBook(db, book, [], NOW),
};

/** What the closed week was: every figure of its variance but the causes, whose likelihood learns from later weeks. */
async function closedWeek() {
  const { causes: _, ...report } = await varianceFor(await openWorld(db), {
    count: "Week 10",
    since: "Week 9",
  });
  return report;
}

/** Runs a write and gives whether the closed past refused it. */
async function isRefused(write: () => Promise<unknown>): Promise<boolean> {
  try {
    await write();
    return false;
  } catch (error) {
    if (error instanceof ClosedPastError) return true;
    throw error;
  }
}

describe("a closed week", () => {
  beforeEach(async () => {
    await addDelivery(db, { ...DELIVERY, at: "2026-03-06T10:00:00Z" }, NOW);
    await closePast(db, CLOSED, NOW);
  });

  it("holds the count of the morning after, and what came before it was done", async () => {
    expect(await currentClosing(db)).toMatchObject({
      through: CLOSED,
      counts: ["Week 10"],
      until: "2026-03-09T10:31:00Z",
    });
    expect(await isRefused(() => addDelivery(db, { ...DELIVERY, at: "2026-03-09T10:30:00Z" }, NOW))).toBe(
      true,
    );
    expect(await isRefused(() => addDelivery(db, { ...DELIVERY, at: "2026-03-09T11:00:00Z" }, NOW))).toBe(
      false,
    );
  });

  it.each(Object.keys(WRITES))("refuses %s on one of its days, and takes it on an open one", async (name) => {
    const write = WRITES[name] as (date: string, n: number) => Promise<unknown>;
    const before = db.sqlite.serialize();
    await expect(write(CLOSED, 1)).rejects.toThrow(
      /the week to 2026-03-08 is closed; nothing was changed. The owner can reopen it with a reason/,
    );
    await expect(write("2026-03-02", 1)).rejects.toThrow(ClosedPastError);
    expect(db.sqlite.serialize().equals(before)).toBe(true);
    await write(OPEN, 1);
  });

  it.each(Object.keys(UNDATED))("refuses %s", async (name) => {
    const before = db.sqlite.serialize();
    await expect(UNDATED[name]?.(1)).rejects.toThrow(ClosedPastError);
    expect(db.sqlite.serialize().equals(before)).toBe(true);
  });

  it("lets be what no week's figures depend on", async () => {
    await saveDrink(db, { ...of(book.drinks), priceMinor: 1300 });
    await saveItem(db, { ...gin, note: "top shelf", serviceLevel: 0.99 });
    await savePack(db, { ...of(book.packs), code: "DG-1" });
    await saveItem(db, { ...gin, name: "Plum gin" });
    await savePack(db, { ...of(book.packs), item: "Plum gin", price: 30 });
    await saveModifier(db, "rocks", [
      { effect: "none", item: null, with: null, amount: null, unit: null, factor: null },
    ]);
    expect((await loadBook(db))?.items.find(({ name }) => name === "Dry gin")?.note).toBe("top shelf");
  });

  it("refuses a sales file whole, with the days, and takes it where nothing in them is new", async () => {
    const known = [sold("2026-03-06"), sold("2026-03-07", "GML")];
    const more = [sold("2026-03-05"), sold("2026-03-04", "Rum Sour"), sold(OPEN)];
    const refused = () => importSales(db, { ...file("all.csv", [...known, ...more]), ...NOW });
    await expect(refused()).rejects.toThrow(
      "sales of all.csv on 2026-03-04, 2026-03-05: the week to 2026-03-08 is closed",
    );
    await expect(previewImport(db, { lines: more })).rejects.toThrow(ClosedPastError);
    const taken = await importSales(db, { ...file("all.csv", [...known, sold(OPEN)]), ...NOW });
    expect(taken).toMatchObject({ new: 1, known: 2 });
    expect(await undoImport(db, taken.importId, NOW)).toMatchObject({ daysTouched: expect.any(Array) });
  });

  it("is as it was after whatever is tried", async () => {
    const before = await closedWeek();
    expect(before.items.length).toBeGreaterThan(2);
    const step = fc.tuple(
      fc.constantFrom(...Object.keys(WRITES), ...Object.keys(UNDATED)),
      fc.integer({ min: -8, max: 8 }),
      fc.integer({ min: 0, max: 9 }),
    );
    const tried = { refused: 0, taken: 0 };
    await fc.assert(
      fc.asyncProperty(fc.array(step, { minLength: 1, maxLength: 6 }), async (steps) => {
        for (const [name, days, n] of steps) {
          const date = addDays(CLOSED, days);
          const write = () =>
            (name in WRITES ? WRITES[name]?.(date, n) : UNDATED[name]?.(n)) as Promise<unknown>;
          try {
            tried[(await isRefused(write)) ? "refused" : "taken"] += 1;
          } catch (error) {
            // What the book itself refuses, closed or not (a name taken, an entry undone before).
            if (!(error instanceof ConflictError)) throw error;
          }
        }
        expect(await closedWeek()).toEqual(before);
      }),
      { numRuns: 12 },
    );
    expect(tried.refused).toBeGreaterThan(10);
    expect(tried.taken).toBeGreaterThan(10);
  });
});

describe("closing", () => {
  const OWNER = { who: "Ines", role: "owner", via: "screen", from: "office" } as const;

  it("is refused for a day that is not over and for one that is closed", async () => {
    await expect(closePast(db, "2026-03-16", NOW)).rejects.toThrow("close it up to 2026-03-15 at most");
    await closePast(db, CLOSED, NOW);
    await expect(closePast(db, "2026-03-01", NOW)).rejects.toThrow("closed up to 2026-03-08 already");
  });

  it("of week after week is reopened from the last, by the owner alone and with a reason", async () => {
    await closePast(db, "2026-03-01", NOW);
    await closePast(db, CLOSED, NOW);
    const manager = { ...OWNER, role: "manager" };
    await expect(actingAs(manager, () => reopenPast(db, { reason: "late" }, NOW))).rejects.toThrow(
      "Only the owner",
    );
    await expect(actingAs(OWNER, () => reopenPast(db, { reason: " " }, NOW))).rejects.toThrow("Say why");
    await actingAs(OWNER, () => reopenPast(db, { reason: "invoice Q-119 came late" }, NOW));
    expect((await currentClosing(db))?.through).toBe("2026-03-01");
    await addDelivery(db, { ...DELIVERY, at: moment("2026-03-05") }, NOW);
    const [, reopened, closed] = await listHistory(db);
    expect(reopened).toMatchObject({ act: "week reopened", who: "Ines", reason: "invoice Q-119 came late" });
    expect(closed).toMatchObject({ act: "week closed", subjects: [{ kind: "week", name: CLOSED }] });
  });

  it("can be reopened back to any day; what was closed together with it stays closed up to there", async () => {
    await closePast(db, CLOSED, NOW);
    await reopenPast(db, { reason: "gin was weighed wrong", to: "2026-03-04" }, NOW);
    expect(await isRefused(() => addDelivery(db, { ...DELIVERY, at: moment("2026-03-04") }, NOW))).toBe(true);
    expect(await isRefused(() => addDelivery(db, { ...DELIVERY, at: moment("2026-03-05") }, NOW))).toBe(
      false,
    );
    await expect(reopenPast(db, { reason: "x", to: "2026-03-04" }, NOW)).rejects.toThrow(
      "name an earlier day",
    );
  });

  it("goes into a copy and out of it again, and a book loaded afterwards needs it reopened", async () => {
    await closePast(db, CLOSED, NOW);
    const dir = mkdtempSync(join(tmpdir(), "ullage-closed-"));
    await backupTo(db, join(dir, "copy.db"));
    const copy = openDatabase(join(dir, "copy.db"));
    expect(await currentClosing(copy)).toEqual(await currentClosing(db));
    closeDatabase(copy);
    rmSync(dir, { recursive: true });
    await expect(replaceBook(db, book, [], NOW)).rejects.toThrow("a whole book in place of this one");
    await reopenPast(db, { reason: "moving to the new till" }, NOW);
    await replaceBook(db, book, [], NOW);
  });
});

describe("which moments are closed", () => {
  const clock = { timeZone: "Europe/Lisbon", dayEnds: "04:00" };
  const closed = { through: CLOSED, counts: [], until: null };

  it.each([
    ["Sunday evening", "2026-03-08T22:00:00Z", true],
    ["Monday at half past three, still Sunday's trade", "2026-03-09T03:30:00Z", true],
    ["Monday at four, when the next day begins", "2026-03-09T04:00:00Z", false],
  ])("%s", (_, at, isClosed) => expect(isMomentClosed(at, closed, clock)).toBe(isClosed));

  it("are told by what and on which days, long lists cut short", () => {
    const days = Array.from({ length: 9 }, (_, day) => ({
      what: "sales of a.csv",
      on: `2026-03-0${day + 1}`,
    }));
    expect(closedProblem(closed, days)).toContain("2026-03-06, and 3 more: the week to 2026-03-08 is closed");
    expect(closedProblem(closed, [])).toBeUndefined();
  });
});
