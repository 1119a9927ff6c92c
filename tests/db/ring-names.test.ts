import { afterEach, beforeEach, expect, it } from "vitest";
import { replaceBook } from "#db/book-repository.ts";
import { closeDatabase, type Db, IN_MEMORY, openDatabase } from "#db/open.ts";
import { acceptRingNames, datedRingNames, undoRingName } from "#db/ring-names-repository.ts";
import type { RingName } from "#engine/sales/ring.ts";
import { handBook } from "#tests/support/hand-bar.ts";

const MONDAY = { now: "2026-03-09T09:00:00Z", by: "Ana" };
const TUESDAY = { now: "2026-03-10T09:00:00Z", by: "Ben" };

let db: Db;
beforeEach(async () => {
  db = openDatabase(IN_MEMORY);
  await replaceBook(db, { ...handBook(), ringNames: [means("SOUR 2", "House sour", 2)] }, [], MONDAY);
});
afterEach(() => closeDatabase(db));

function means(ringName: string, drink: string, serves = 1): RingName {
  return { ringName, soldAs: { kind: "drink", drink }, serves, amount: null, unit: null };
}

async function held() {
  return (await datedRingNames(db)).map(({ ringName, serves, enteredAt, enteredBy }) => [
    ringName,
    serves,
    enteredAt,
    enteredBy,
  ]);
}

it("dates what a person says of ring names, and one that came with the book has no date", async () => {
  await acceptRingNames(db, [means("HSE SR", "House sour"), means("SR PITCHER", "House sour", 5)], MONDAY);
  expect(await held()).toEqual([
    ["HSE SR", 1, MONDAY.now, "Ana"],
    ["SOUR 2", 2, null, null],
    ["SR PITCHER", 5, MONDAY.now, "Ana"],
  ]);
});

it("goes back to what a name meant before, or to no meaning of its own", async () => {
  await acceptRingNames(db, [means("sour 2", "House sour", 3), means("HSE SR", "House sour")], MONDAY);
  expect(await undoRingName(db, "SOUR 2", TUESDAY)).toMatchObject({ serves: 2 });
  expect(await undoRingName(db, "hse sr", TUESDAY)).toBeNull();
  expect(await held()).toEqual([["SOUR 2", 2, TUESDAY.now, "Ben"]]);
  await expect(undoRingName(db, "HSE SR", TUESDAY)).rejects.toThrow(
    'Nothing was said of the ring name "HSE SR"',
  );
});

it("says several names or none of them", async () => {
  const before = await held();
  await expect(
    acceptRingNames(db, [means("HSE SR", "House sour"), means("X", "No such drink")], MONDAY),
  ).rejects.toThrow("No such drink");
  expect(await held()).toEqual(before);
});
