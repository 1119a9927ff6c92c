import fc from "fast-check";
import { afterEach, beforeEach, describe, expect, it } from "vitest";
import { readBook } from "#db/book/read-book.ts";
import { exportBook, replaceBook } from "#db/book-repository.ts";
import { saveDrink, saveItem, savePack } from "#db/catalogue-repository.ts";
import { ConflictError } from "#db/errors.ts";
import { verifyChain } from "#db/history/chain.ts";
import { listHistory, undoAct } from "#db/history-repository.ts";
import { closeDatabase, type Db, IN_MEMORY, openDatabase } from "#db/open.ts";
import { placeOrder, removeOrder, saveEvent } from "#db/orders-repository.ts";
import { importSales } from "#db/sales-repository.ts";
import { addSettlement } from "#db/settlements-repository.ts";
import { removeRingName, saveCut, saveModifier, saveRingName, saveVersion } from "#db/specs-repository.ts";
import {
  addBatch,
  addCountRows,
  addDeliveries,
  addDelivery,
  addLoss,
  correctEntry,
  listEntries,
  listWithdrawn,
  withdrawEntry,
} from "#db/stock-repository.ts";
import type { Book } from "#engine/book.ts";
import { DELIVERY, DOING, LINE, ROW, SETTLEMENT } from "#tests/support/acts.ts";
import { smallBook } from "#tests/support/small-book.ts";

const book: Book = readBook(smallBook()).book;
const WHY = { ...DOING, reason: "it was wrong" };

let db: Db;
beforeEach(async () => {
  db = openDatabase(IN_MEMORY);
  await replaceBook(db, book, [], DOING);
});
afterEach(() => closeDatabase(db));

async function lastSeq(): Promise<number> {
  return (await listHistory(db, { limit: 1 }))[0]?.seq ?? 0;
}

/** The book as it can be moved out, sales and all. */
async function exported(): Promise<unknown> {
  const { files, salesFiles } = await exportBook(db);
  return { files: [...files], salesFiles };
}

const gin = book.items.find(({ name }) => name === "Dry gin") as Book["items"][number];
const gimlet = book.drinks.find(({ name }) => name === "Gimlet") as Book["drinks"][number];
const ginPack = book.packs.find(({ item }) => item === "Dry gin") as Book["packs"][number];
const limeCut = book.cuts[0] as Book["cuts"][number];
const linesWith = (amount: number) => [
  { line: 1, amount, unit: "ml" as const, item: "Dry gin", orItems: ["Old Quay rum"], note: "" },
  { line: 2, amount: 20, unit: "ml" as const, item: "Lime juice", orItems: [], note: "" },
];

/** One thing somebody may do at the bar; `n` makes it another each time. */
type Step = (n: number) => Promise<unknown>;

const STEPS: Record<string, Step> = {
  "a shelf counted": (n) => addCountRows(db, [{ ...ROW, full: n }], DOING),
  "two rows of one shelf in one go": (n) =>
    addCountRows(
      db,
      [
        { ...ROW, full: n },
        { ...ROW, full: n + 1 },
      ],
      DOING,
    ),
  "another shelf counted": (n) => addCountRows(db, [{ ...ROW, area: "Cellar", full: n }], DOING),
  "a delivery of two lines": (n) =>
    addDeliveries(db, [DELIVERY, { ...DELIVERY, item: "Soda", pack: "bottle", quantity: n + 1 }], DOING),
  "a batch": (n) => addBatch(db, { ...(book.batches[0] as Book["batches"][number]), made: 1 + n }, DOING),
  "a loss": (n) => addLoss(db, { ...(book.losses[0] as Book["losses"][number]), amount: 1 + n }, DOING),
  "a delivery corrected": async (n) => {
    const entry = (await listEntries(db, "delivery")).at(n % 2 === 0 ? 0 : -1);
    if (entry) await correctEntry(db, "delivery", entry.id, { ...entry.fact, quantity: n }, WHY);
  },
  "a delivery taken back": async (n) => {
    const entry = (await listEntries(db, "delivery")).at(n % 2 === 0 ? 0 : -1);
    if (entry) await withdrawEntry(db, "delivery", entry.id, WHY);
  },
  "a count row taken back": async () => {
    const entry = (await listEntries(db, "count")).at(-1);
    if (entry) await withdrawEntry(db, "count", entry.id, WHY);
  },
  "a spec from a day on": (n) =>
    saveVersion(db, { makes: "Gimlet", from: `2026-03-1${n}`, lines: linesWith(40 + n) }),
  "the spec of today": (n) =>
    saveVersion(db, { makes: "Gimlet", from: "2026-01-01", lines: linesWith(50 + n) }),
  "a price": (n) => savePack(db, { ...ginPack, price: 20 + n }),
  "a price from a day on": (n) => savePack(db, { ...ginPack, from: `2026-03-1${n}`, price: 30 + n }),
  "a cut": (n) => saveCut(db, { ...limeCut, perPiece: 20 + n }),
  "a menu price": (n) => saveDrink(db, { ...gimlet, priceMinor: 1000 + n }),
  "a strength": (n) => saveItem(db, { ...gin, abv: 40 + n }),
  "a new drink": (n) => saveDrink(db, { ...gimlet, name: `Gimlet ${n}` }),
  "a ring name": (n) =>
    saveRingName(db, {
      ringName: `GML ${n % 3}`,
      soldAs: n % 2 === 0 ? { kind: "drink", drink: "Gimlet" } : { kind: "ignore" },
      serves: 1,
      amount: null,
      unit: null,
    }),
  "a ring name taken out": () => removeRingName(db, "Cloakroom").catch(() => undefined),
  "a modifier": (n) =>
    saveModifier(db, "Double", [
      { effect: "times", item: null, with: null, amount: null, unit: null, factor: 1 + n },
    ]),
  "an event": (n) => saveEvent(db, { date: "2026-03-14", event: "Regatta", factor: n }),
  "an order": (n) =>
    placeOrder(db, [{ ...(book.orders[0] as Book["orders"][number]), order: `PO 2${n}` }]).catch(
      () => undefined,
    ),
  "an order taken out": () => removeOrder(db, "PO 12").catch(() => undefined),
  "sales of a day": (n) => sell(n),
  "the last act undone": async () => {
    const [act] = (await listHistory(db)).filter(({ canUndo }) => canUndo);
    if (act) await undoAct(db, act.seq, DOING);
  },
};

function sell(n: number) {
  const lines = [
    { ...LINE, quantity: n + 1 },
    { ...LINE, businessDate: "2026-03-07", ringName: "Rum Sour" },
  ];
  return importSales(db, { file: `day-${n}.csv`, shape: { files: "*" }, refused: [], lines, ...DOING });
}

describe("whatever was done, undone from the last act to the first", () => {
  it("leaves the book as it was, and the history whole", async () => {
    const step = fc.tuple(fc.constantFrom(...Object.keys(STEPS)), fc.integer({ min: 0, max: 5 }));
    await fc.assert(
      fc.asyncProperty(fc.array(step, { minLength: 1, maxLength: 14 }), async (steps) => {
        await replaceBook(db, book, [], DOING);
        const began = await lastSeq();
        const before = await exported();
        for (const [name, n] of steps) await STEPS[name]?.(n);
        const acts = await listHistory(db, { limit: 500 });
        const held = acts.filter(({ seq, undoneBy }) => seq > began && undoneBy === null);
        // What only undid something holds nothing of its own; what did it again does.
        const done = held.filter(
          ({ undoes, summary }) => undoes === null || summary.startsWith("Done again"),
        );
        for (const { seq } of done) await undoAct(db, seq, DOING);
        expect(await exported()).toEqual(before);
        expect(verifyChain(db).broken).toBeNull();
      }),
      { numRuns: 25 },
    );
  });
});

describe("undoing", () => {
  it("and undoing that brings back what was done, under the words of the trade", async () => {
    await savePack(db, { ...ginPack, price: 23.1 });
    const raised = await exported();
    const first = await undoAct(db, 2, DOING);
    const again = await undoAct(db, first.seq, DOING);
    expect(await exported()).toEqual(raised);
    expect(first.summary).toBe("Undone: Dry gin: pack 1 L: price 21 → 23.1");
    expect(again.summary).toBe("Done again: Dry gin: pack 1 L: price 21 → 23.1");
    const [, undone, done] = await listHistory(db, { subject: "dry gin" });
    expect(undone).toMatchObject({ act: "undone", undoes: 2, undoneBy: again.seq, canUndo: false });
    expect(done).toMatchObject({ seq: 2, undoneBy: first.seq, canUndo: false });
  });

  it("puts a delivery that was taken back where it stood, and it is no longer among those taken back", async () => {
    const before = await exported();
    await withdrawEntry(db, "delivery", 1, WHY);
    await undoAct(db, await lastSeq(), { ...DOING, reason: "it did come" });
    expect(await exported()).toEqual(before);
    const entries = await listEntries(db, "delivery");
    expect(entries.map(({ stamp }) => stamp.reason)).toContain("it did come");
    expect(await listWithdrawn(db, "delivery")).toEqual([]);
  });

  it.each<[string, () => Promise<unknown>, string]>([
    [
      "an entry that was corrected later",
      async () => {
        const id = await addDelivery(db, DELIVERY, DOING);
        await correctEntry(db, "delivery", id, { ...DELIVERY, quantity: 5 }, WHY);
      },
      "corrected or taken back later; undo that first",
    ],
    [
      "a price that was changed again",
      async () => {
        await savePack(db, { ...ginPack, price: 22 });
        await savePack(db, { ...ginPack, price: 23 });
      },
      "It was changed since: price changed by",
    ],
    [
      "a new item that a delivery was entered for",
      async () => {
        await saveItem(db, { ...gin, name: "Plum gin" });
        await savePack(db, { ...ginPack, item: "Plum gin" });
        await addDelivery(db, { ...DELIVERY, item: "Plum gin" }, DOING);
      },
      "still names it",
    ],
    [
      "a count row that was counted again since it was taken back",
      async () => {
        await addCountRows(db, [ROW], DOING);
        const entry = (await listEntries(db, "count")).at(-1);
        await withdrawEntry(db, "count", entry?.id ?? 0, WHY);
        await addCountRows(db, [{ ...ROW, full: 9 }], DOING);
      },
      'has a row in "Week 10" already',
    ],
    [
      "what a settled cause entered",
      async () => {
        const correction = {
          sheet: "deliveries" as const,
          was: null,
          fact: DELIVERY,
          words: "Enter the delivery",
        };
        await addSettlement(db, { ...SETTLEMENT, answer: "confirmed", correction }, DOING);
      },
      "take that back on the variance screen",
    ],
  ])("is refused for %s, with the reason, and nothing changes", async (name, act, reason) => {
    await act();
    const seq = name.startsWith("a count row") ? (await lastSeq()) - 1 : 2;
    const before = db.sqlite.serialize();
    await expect(undoAct(db, seq, DOING)).rejects.toThrow(reason);
    await expect(undoAct(db, seq, DOING)).rejects.toThrow(ConflictError);
    expect(db.sqlite.serialize().equals(before)).toBe(true);
  });

  it("is refused twice, for what it cannot reach, and for what was before a whole book was loaded", async () => {
    await addDelivery(db, DELIVERY, DOING);
    await undoAct(db, 2, DOING);
    await expect(undoAct(db, 2, DOING)).rejects.toThrow("undone already (no. 3)");
    await expect(undoAct(db, 1, DOING)).rejects.toThrow("ullage restore FILE");
    await expect(undoAct(db, 99, DOING)).rejects.toThrow("The history has no act 99.");
    await addDelivery(db, DELIVERY, DOING);
    await replaceBook(db, book, [], DOING);
    await expect(undoAct(db, 4, DOING)).rejects.toThrow("The whole book was loaded since");
  });
});
