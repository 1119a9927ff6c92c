import { afterEach, beforeEach, describe, expect, it } from "vitest";
import { readBook } from "#db/book/read-book.ts";
import { loadBook, replaceBook } from "#db/book-repository.ts";
import { ConflictError, InvalidError, NotFoundError } from "#db/errors.ts";
import { closeDatabase, type Db, IN_MEMORY, openDatabase } from "#db/open.ts";
import {
  addBatch,
  addCountRows,
  addDeliveries,
  addDelivery,
  addLoss,
  addTransfer,
  correctEntry,
  listEntries,
  listWithdrawn,
  withdrawEntry,
} from "#db/stock-repository.ts";
import { changeToken } from "#db/stored/transaction.ts";
import type { CountRow, Delivery } from "#engine/stock/movement.ts";
import { smallBook } from "#tests/support/small-book.ts";

const ANA = { now: "2026-03-09T10:00:00Z", by: "Ana" };
const RUI = { now: "2026-03-09T11:00:00Z", by: "Rui" };

const ROW: CountRow = {
  count: "Week 10",
  at: "2026-03-09T10:00:00Z",
  area: "Back bar",
  item: "Dry gin",
  pack: "1 L",
  full: 3,
  parts: [0.5],
  grossG: [],
  amount: null,
  unit: null,
  by: "Ana",
};
const DELIVERY: Delivery = {
  at: "2026-03-10T10:00:00Z",
  supplier: "Quayside Drinks",
  invoice: "Q-130",
  item: "Dry gin",
  pack: "1 L",
  quantity: 6,
  of: "container",
  priceTotalMinor: 12_600,
  depositMinor: null,
  empties: null,
  by: "Rui",
};

let db: Db;
beforeEach(async () => {
  db = openDatabase(IN_MEMORY);
  await replaceBook(db, readBook(smallBook()).book, [], ANA);
});
afterEach(() => closeDatabase(db));

/** Runs a write that must fail, and proves that it changed nothing. */
async function expectRefused(
  write: () => Promise<unknown>,
  kind: new (...args: never[]) => Error,
  message: string,
) {
  const before = db.sqlite.serialize();
  await expect(write()).rejects.toThrow(message);
  await expect(write()).rejects.toThrow(kind);
  expect(db.sqlite.serialize().equals(before)).toBe(true);
}

describe("taking a count", () => {
  it("keeps the later entry for a shelf that is counted again, and the earlier in its history", async () => {
    const [first] = await addCountRows(db, [ROW], ANA);
    const [second] = await addCountRows(db, [{ ...ROW, item: "dry  GIN", area: "back BAR", full: 2 }], RUI);
    const [entry, ...others] = await listEntries(db, "count", { from: "2026-03-09T00:00:00Z" });
    expect(others).toEqual([]);
    expect(entry).toMatchObject({
      id: second,
      fact: { ...ROW, full: 2 },
      stamp: { enteredBy: "Rui", enteredAt: RUI.now, replacesId: first, reason: "counted again" },
      history: [{ id: first, fact: ROW, stamp: { enteredBy: "Ana" } }],
    });
    expect((await loadBook(db))?.counts.filter(({ count }) => count === "Week 10")).toEqual([
      { ...ROW, full: 2 },
    ]);
  });

  it("takes a row that a phone sends twice as one", async () => {
    const [id] = await addCountRows(db, [ROW], ANA);
    expect(await addCountRows(db, [ROW, { ...ROW, item: "DRY GIN" }], RUI)).toEqual([id, id]);
    const [entry] = await listEntries(db, "count", { from: "2026-03-09T00:00:00Z" });
    expect(entry).toMatchObject({ id, history: [], stamp: { enteredBy: "Ana" } });
  });

  it("does not let a corrected row come to stand where another stands", async () => {
    const [id = 0] = await addCountRows(db, [ROW, { ...ROW, area: "Cellar" }], ANA);
    await expectRefused(
      () => correctEntry(db, "count", id, { ...ROW, area: "cellar" }, { ...ANA, reason: "wrong area" }),
      ConflictError,
      '"Dry gin" in "cellar" has a row in "Week 10" already; correct that one.',
    );
  });

  it("keeps the packs of one item on one shelf apart", async () => {
    const rum = { ...ROW, item: "Old Quay rum" };
    await addCountRows(
      db,
      [
        { ...rum, pack: "700 ml" },
        { ...rum, pack: "1 L" },
      ],
      ANA,
    );
    expect(await listEntries(db, "count", { from: "2026-03-09T00:00:00Z" })).toHaveLength(2);
  });

  it("takes all rows of an entry or none", async () => {
    await expectRefused(
      () => addCountRows(db, [ROW, { ...ROW, item: "Dri gin" }], ANA),
      NotFoundError,
      'There is no item "Dri gin"; did you mean "Dry gin"?',
    );
  });

  it("refuses what could not be read from a sheet either", async () => {
    await expectRefused(
      () => addCountRows(db, [{ ...ROW, full: null, parts: [] }], ANA),
      InvalidError,
      "counts, full: the row counts nothing",
    );
    await expectRefused(
      () => addCountRows(db, [{ ...ROW, item: "Old Quay rum", pack: "50 cl" }], ANA),
      NotFoundError,
      'There is no pack "50 cl" of "Old Quay rum"; it has "700 ml", "1 L".',
    );
    await expectRefused(
      () => addCountRows(db, [{ ...ROW, full: null, parts: [], amount: 200, unit: "each", pack: null }], ANA),
      InvalidError,
      'counts, unit: "Dry gin" is kept in ml, which "each" does not lead to',
    );
  });
});

describe("correcting and taking back", () => {
  it("puts the right delivery in the place of the wrong one, with who and why", async () => {
    const id = await addDelivery(db, DELIVERY, RUI);
    await addDelivery(db, { ...DELIVERY, invoice: "Q-131" }, RUI);
    const right = { ...DELIVERY, quantity: 5 };
    const corrected = await correctEntry(db, "delivery", id, right, { ...ANA, reason: "one was broken" });
    const entry = (await listEntries(db, "delivery")).find((each) => each.id === corrected);
    expect(entry).toMatchObject({
      fact: right,
      stamp: { enteredBy: "Ana", reason: "one was broken", replacesId: id },
      history: [{ id, fact: DELIVERY, stamp: { enteredBy: "Rui", replacesId: null } }],
    });
    const invoices = (await loadBook(db))?.deliveries.map(({ invoice, quantity }) => [invoice, quantity]);
    expect(invoices?.slice(-2)).toEqual([
      ["Q-130", 5],
      ["Q-131", 6],
    ]);
  });

  it("corrects only what still holds, so that two people do not correct one entry twice", async () => {
    const id = await addDelivery(db, DELIVERY, RUI);
    await correctEntry(db, "delivery", id, { ...DELIVERY, quantity: 5 }, { ...ANA, reason: "short" });
    await expectRefused(
      () => correctEntry(db, "delivery", id, { ...DELIVERY, quantity: 4 }, { ...RUI, reason: "shorter" }),
      ConflictError,
      "This delivery was already corrected or taken back; look at it again.",
    );
    await expectRefused(
      () => withdrawEntry(db, "delivery", 999, { ...RUI, reason: "" }),
      NotFoundError,
      "There is no delivery 999.",
    );
  });

  it("takes an entry back and remembers it", async () => {
    const before = await loadBook(db);
    const id = await addLoss(
      db,
      { at: DELIVERY.at, kind: "spill", what: "Gimlet", amount: 1, unit: "serve", by: "", note: "" },
      RUI,
    );
    expect(await loadBook(db)).not.toEqual(before);
    await withdrawEntry(db, "loss", id, { ...ANA, reason: "it was not spilt" });
    expect(await loadBook(db)).toEqual(before);
    expect(await listWithdrawn(db, "loss")).toMatchObject([
      { fact: { what: "Gimlet" }, stamp: { reason: "it was not spilt", replacesId: id, enteredBy: "Ana" } },
    ]);
    await expectRefused(
      () => withdrawEntry(db, "loss", id, { ...RUI, reason: "" }),
      ConflictError,
      "already",
    );
  });
});

describe("batches, losses and transfers", () => {
  it("are entered as people say them and listed by their moment", async () => {
    await addBatch(
      db,
      { at: "2026-03-09T15:00:00Z", prep: "orgeat ", made: 1.5, unit: "l", by: " Rui", note: "" },
      RUI,
    );
    await addTransfer(
      db,
      {
        at: "2026-03-09T12:00:00Z",
        direction: "in",
        place: "Lower bar",
        item: "SODA",
        amount: 10,
        unit: "l",
      },
      RUI,
    );
    const batches = await listEntries(db, "batch", {
      from: "2026-03-09T00:00:00Z",
      to: "2026-03-10T00:00:00Z",
    });
    expect(batches.map(({ fact }) => fact)).toEqual([
      { at: "2026-03-09T15:00:00Z", prep: "Orgeat", made: 1.5, unit: "l", by: "Rui", note: "" },
    ]);
    expect((await listEntries(db, "transfer")).map(({ fact }) => fact.item)).toEqual(["Dry gin", "Soda"]);
  });

  it("are entered once, however often a bad connection sends them", async () => {
    const sent = { ...RUI, key: "phone-7f3a" };
    const id = await addDelivery(db, DELIVERY, sent);
    expect(await addDelivery(db, DELIVERY, sent)).toBe(id);
    const lines = [DELIVERY, { ...DELIVERY, item: "Soda", pack: "bottle" }];
    const ids = await addDeliveries(db, lines, { ...RUI, key: "phone-7f3b" });
    expect(await addDeliveries(db, lines, { ...RUI, key: "phone-7f3b" })).toEqual(ids);
    expect(await listEntries(db, "delivery", { from: DELIVERY.at })).toHaveLength(3);
    expect(await addDelivery(db, DELIVERY, RUI)).not.toBe(id);
  });

  it("keep what a batch really used with it, corrected and taken back together", async () => {
    const batch = {
      at: "2026-03-09T16:00:00Z",
      prep: "Orgeat",
      made: 1,
      unit: "l",
      by: "",
      note: "",
    } as const;
    const held = async () => (await loadBook(db))?.batchInputs;
    const id = await addBatch(
      db,
      { ...batch, inputs: [{ item: " soda", amount: 1.1, unit: "l" }] },
      { ...RUI, key: "tablet-1" },
    );
    expect(await held()).toEqual([
      { at: batch.at, prep: "Orgeat", batchNo: 1, item: "Soda", amount: 1.1, unit: "l" },
    ]);
    const righted = { ...batch, inputs: [{ item: "Soda", amount: 900, unit: "ml" as const }] };
    const second = await correctEntry(db, "batch", id, righted, { ...RUI, reason: "read off wrongly" });
    expect(await held()).toMatchObject([{ amount: 900, unit: "ml" }]);
    const [entry] = (await listEntries(db, "batch")).filter((each) => each.id === second);
    expect(entry?.history[0]?.fact.inputs).toEqual([{ item: "Soda", amount: 1.1, unit: "l" }]);
    await withdrawEntry(db, "batch", second, { ...RUI, reason: "entered by mistake" });
    expect(await held()).toEqual([]);
  });

  it("are refused where a batch used what it makes", async () => {
    const inputs = [{ item: "Orgeat", amount: 1, unit: "l" as const }];
    await expectRefused(
      () =>
        addBatch(db, { at: DELIVERY.at, prep: "Orgeat", made: 1, unit: "l", by: "", note: "", inputs }, RUI),
      InvalidError,
      "a batch does not use what it makes",
    );
  });

  it("are refused where they name what is no prep", async () => {
    await expectRefused(
      () => addBatch(db, { at: DELIVERY.at, prep: "Soda", made: 1, unit: "l", by: "", note: "" }, RUI),
      InvalidError,
      'batches, prep: "Soda" is no prep',
    );
  });
});

it("changes the token with every write and with nothing else", async () => {
  const before = await changeToken(db);
  await listEntries(db, "delivery");
  expect(await changeToken(db)).toBe(before);
  await addDelivery(db, DELIVERY, RUI);
  expect(await changeToken(db)).not.toBe(before);
});
