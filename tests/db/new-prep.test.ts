import { afterEach, beforeEach, describe, expect, it } from "vitest";
import { readBook } from "#db/book/read-book.ts";
import { loadBook, replaceBook } from "#db/book-repository.ts";
import { ConflictError, InvalidError } from "#db/errors.ts";
import { saveNewPrep } from "#db/new-prep-repository.ts";
import { closeDatabase, type Db, IN_MEMORY, openDatabase } from "#db/open.ts";
import type { NewPrep } from "#engine/specs/new-prep.ts";
import { newItem } from "#engine/stock/new-item.ts";
import { smallBook } from "#tests/support/small-book.ts";

const LINE = { orItems: [], note: "" };

/** 1 : 1 by weight, which ICUMSA's tables give 1626 ml; the book has no water yet. */
function richSyrup(more: Partial<NewPrep> = {}): NewPrep {
  return {
    item: newItem({ name: "Rich syrup", category: "syrup", base: "ml", inHouse: true, brix: 50 }),
    otherItems: [newItem({ name: "Spring water", category: "water", base: "ml", brix: 0 })],
    prep: {
      prep: "Rich syrup",
      from: "2026-03-10",
      yield: 1626,
      unit: "ml",
      batchStep: null,
      vesselMax: null,
      activeMinutes: 15,
      standingHours: null,
      shelfLifeDays: null,
      method: "",
    },
    lines: [
      { ...LINE, line: 1, amount: 1000, unit: "g", item: "Sugar" },
      { ...LINE, line: 2, amount: 1002, unit: "ml", item: "Spring water" },
    ],
    cut: null,
    ...more,
  };
}

let db: Db;
beforeEach(async () => {
  db = openDatabase(IN_MEMORY);
  await replaceBook(db, readBook(smallBook()).book, [], { now: "2026-03-09T10:00:00Z", by: "Ana" });
});
afterEach(() => closeDatabase(db));

describe("a new prep", () => {
  it("is written whole: item, yield, lines, and the water it needs", async () => {
    await saveNewPrep(db, richSyrup());
    const book = await loadBook(db);
    expect(book?.items.map(({ name }) => name)).toEqual(
      expect.arrayContaining(["Rich syrup", "Spring water"]),
    );
    expect(book?.preps).toContainEqual(expect.objectContaining({ prep: "Rich syrup", yield: 1626 }));
    expect(book?.specs.filter(({ makes }) => makes === "Rich syrup")).toHaveLength(2);
  });

  it("may be pressed from a fruit, with nothing else in it", async () => {
    const item = newItem({ name: "Lime super juice", category: "juice", base: "ml", inHouse: true });
    const cut = {
      source: "Lime",
      from: null,
      gives: item.name,
      perPiece: 25,
      unit: "ml" as const,
      parts: ["flesh"],
    };
    const { prep } = richSyrup();
    await saveNewPrep(db, { item, otherItems: [], prep: { ...prep, prep: item.name }, lines: [], cut });
    expect((await loadBook(db))?.cuts).toContainEqual(cut);
  });

  it.each([
    [
      "a name that is taken",
      { item: newItem({ name: "orgeat", category: "prep", base: "ml" }) },
      ConflictError,
    ],
    ["nothing in it", { lines: [] }, InvalidError],
    ["a yield of something else", { prep: { ...richSyrup().prep, prep: "Orgeat" } }, InvalidError],
    [
      "a unit that leads nowhere",
      { lines: [{ ...LINE, line: 1, amount: 1, unit: "each" as const, item: "Sugar" }] },
      InvalidError,
    ],
  ])("is refused with %s, and then nothing of it is written", async (_, more, kind) => {
    const before = await loadBook(db);
    await expect(saveNewPrep(db, richSyrup(more))).rejects.toThrow(kind);
    expect(await loadBook(db)).toEqual(before);
  });
});
