import { afterEach, beforeEach, expect, it } from "vitest";
import { readBook } from "#db/book/read-book.ts";
import { replaceBook } from "#db/book-repository.ts";
import { ConflictError, InvalidError } from "#db/errors.ts";
import { closeDatabase, type Db, IN_MEMORY, openDatabase } from "#db/open.ts";
import {
  addSettlement,
  listSettlements,
  type NewSettlement,
  takeSettlementBack,
} from "#db/settlements-repository.ts";
import { addDelivery, correctEntry, listEntries } from "#db/stock-repository.ts";
import type { Delivery } from "#engine/stock/movement.ts";
import { DELIVERY, DOING, SETTLEMENT } from "#tests/support/acts.ts";
import { smallBook } from "#tests/support/small-book.ts";

const { book } = readBook(smallBook());
const WHY = { ...DOING, reason: "the invoice came later" };

let db: Db;
beforeEach(async () => {
  db = openDatabase(IN_MEMORY);
  await replaceBook(db, book, [], DOING);
});
afterEach(() => closeDatabase(db));

/** A delivery that nobody had entered, found by the variance. */
const found: NewSettlement = {
  ...SETTLEMENT,
  answer: "confirmed",
  cause: { kind: "delivery-not-entered", what: "Dry gin", size: 6, unit: "container", count: null },
  correction: { sheet: "deliveries", was: null, fact: DELIVERY, words: "Enters 6 × 1 L of Dry gin." },
};

const deliveries = async (): Promise<Delivery[]> =>
  (await listEntries(db, "delivery")).map(({ fact }) => fact).filter(({ item }) => item === "Dry gin");
const invoices = async () => (await deliveries()).map(({ invoice }) => invoice);

it("keeps what was settled and corrects the book as one act, and takes both back", async () => {
  const before = await invoices();
  const id = await addSettlement(db, found, DOING);
  const [kept] = await listSettlements(db);
  expect(await invoices()).toEqual([...before, "Q-130"]);
  expect((await listEntries(db, "delivery")).map((entry) => entry.id)).toContain(kept?.entryId);
  await takeSettlementBack(db, id, DOING);
  expect(await invoices()).toEqual(before);
  expect((await listSettlements(db))[0]?.takenBackAt).toBe("2026-03-09T12:00:00Z");
});

it("corrects nothing where the settlement itself cannot be kept", async () => {
  const before = db.sqlite.serialize();
  const impossible = { ...found, cause: { ...found.cause, size: -1 } };
  await expect(addSettlement(db, impossible, DOING)).rejects.toThrow(InvalidError);
  expect(db.sqlite.serialize().equals(before)).toBe(true);
});

it("keeps no settlement where the book cannot be corrected", async () => {
  const gone = { ...DELIVERY, invoice: "Q-999" };
  const correction = { sheet: "deliveries" as const, was: gone, fact: null, words: "Takes Q-999 back." };
  const before = db.sqlite.serialize();
  await expect(addSettlement(db, { ...found, correction }, DOING)).rejects.toThrow(ConflictError);
  await expect(
    addSettlement(
      db,
      { ...found, correction: { ...correction, was: null, fact: { ...DELIVERY, item: "Nothing" } } },
      DOING,
    ),
  ).rejects.toThrow();
  expect(db.sqlite.serialize().equals(before)).toBe(true);
});

it("takes nothing back where what it entered was changed since", async () => {
  const id = await addSettlement(db, found, DOING);
  const [kept] = await listSettlements(db);
  await correctEntry(db, "delivery", kept?.entryId ?? 0, { ...DELIVERY, quantity: 5 }, WHY);
  const before = db.sqlite.serialize();
  await expect(takeSettlementBack(db, id, DOING)).rejects.toThrow(ConflictError);
  expect(db.sqlite.serialize().equals(before)).toBe(true);
});

it("puts back an entry that the correction took out, as a new one", async () => {
  await addDelivery(db, DELIVERY, DOING);
  const correction = { sheet: "deliveries" as const, was: DELIVERY, fact: null, words: "Takes Q-130 back." };
  const twice = { ...found.cause, kind: "delivery-entered-twice" as const };
  const id = await addSettlement(db, { ...found, cause: twice, correction }, DOING);
  expect(await invoices()).not.toContain("Q-130");
  await takeSettlementBack(db, id, DOING);
  expect((await deliveries()).find(({ invoice }) => invoice === "Q-130")).toEqual(DELIVERY);
});
