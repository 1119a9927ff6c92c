import { afterEach, beforeEach, describe, expect, it } from "vitest";
import { readBook } from "#db/book/read-book.ts";
import { exportBook, loadBook, replaceBook } from "#db/book-repository.ts";
import {
  removeDrink,
  removeItem,
  removePack,
  removeSupplier,
  saveArea,
  saveClosures,
  saveDrink,
  saveItem,
  savePack,
  saveSalesShapes,
  saveSupplier,
  saveSupplierDays,
} from "#db/catalogue-repository.ts";
import { ConflictError, InvalidError, NotFoundError } from "#db/errors.ts";
import { closeDatabase, type Db, IN_MEMORY, openDatabase } from "#db/open.ts";
import {
  listOrders,
  placeOrder,
  removeEvent,
  removeOrder,
  saveEvent,
  savePlan,
} from "#db/orders-repository.ts";
import {
  removeRingName,
  removeVersion,
  saveCut,
  saveModifier,
  savePrep,
  saveRingName,
  saveVersion,
} from "#db/specs-repository.ts";
import { saveVenue } from "#db/venue-repository.ts";
import type { Book } from "#engine/book.ts";
import { smallBook } from "#tests/support/small-book.ts";

const BOOK = readBook(smallBook()).book;
let db: Db;
beforeEach(async () => {
  db = openDatabase(IN_MEMORY);
  await replaceBook(db, BOOK, [], { now: "2026-03-09T10:00:00Z", by: "Ana" });
});
afterEach(() => closeDatabase(db));

/** The book as it now is, once it is sure that it can be exported and read again. */
async function bookNow(): Promise<Book> {
  const { book, files } = await exportBook(db);
  expect(readBook(files).book).toEqual(book);
  return book;
}

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

function of<T extends { name: string }>(list: readonly T[], name: string): T {
  const found = list.find((each) => each.name === name);
  if (found === undefined) throw new Error(`The small bar has no ${name}.`);
  return found;
}

const GIN = of(BOOK.items, "Dry gin");
const GIMLET = of(BOOK.drinks, "Gimlet");

describe("items, drinks and suppliers", () => {
  it("are added, changed under their name, and renamed with all that names them", async () => {
    await saveItem(db, { ...GIN, name: " Pear brandy ", category: "spirit" });
    await saveItem(db, { ...GIN, name: "DRY gin", abv: 43 });
    let book = await bookNow();
    expect(book.items.map(({ name }) => name)).toContain("Pear brandy");
    expect(of(book.items, "DRY gin").abv).toBe(43);
    await saveItem(db, { ...GIN, name: "House gin" }, { was: "dry gin" });
    await saveDrink(db, { ...GIMLET, name: "Gimlet 2", priceMinor: 1200 }, { was: "Gimlet" });
    await saveSupplier(
      db,
      { ...of(BOOK.suppliers, "Green Barrow"), name: "Green Cart" },
      { was: "Green Barrow" },
    );
    book = await bookNow();
    expect(book.specs[0]).toMatchObject({ makes: "Gimlet 2", item: "House gin" });
    expect(book.counts[0]?.item).toBe("House gin");
    expect(book.closures[1]?.supplier).toBe("Green Cart");
  });

  it("do not take a name that is another's, or a change that the book cannot bear", async () => {
    await expectRefused(
      () => saveItem(db, { ...GIN, name: "soda" }, { was: "Dry gin" }),
      ConflictError,
      'The item "Soda" is there already; choose another name.',
    );
    await expectRefused(
      () => saveItem(db, GIN, { was: "Drry gin" }),
      NotFoundError,
      'There is no item "Drry gin"; did you mean "Dry gin"?',
    );
    await expectRefused(
      () => saveItem(db, { ...GIN, base: "each" }),
      InvalidError,
      '"Dry gin" is kept in each, which "l" does not lead to',
    );
    await expectRefused(
      () => saveItem(db, { ...GIN, allergens: ["nuts; milk"] }),
      InvalidError,
      "allergens: one of its words is empty or holds the mark that parts them",
    );
    await expectRefused(
      () => saveDrink(db, { ...GIMLET, name: "Ignore" }),
      InvalidError,
      '"Ignore" has a meaning of its own',
    );
  });

  it("are taken out only when nothing names them any more", async () => {
    await expectRefused(() => removeItem(db, "Dry gin"), ConflictError, '"Dry gin" is still named elsewhere');
    await expectRefused(() => removeDrink(db, "Gimlet"), ConflictError, "still named elsewhere");
    await expectRefused(() => removeSupplier(db, "Quayside Drinks"), ConflictError, "still named elsewhere");
    await saveItem(db, { ...GIN, name: "Pear brandy" });
    await saveDrink(db, { ...GIMLET, name: "Brandy Daisy" });
    await removeItem(db, "pear brandy");
    await removeDrink(db, "brandy daisy");
    expect(await bookNow()).toEqual(BOOK);
  });
});

describe("packs, areas and calendars", () => {
  it("keep one row a pack, supplier and first day", async () => {
    const [pack] = BOOK.packs;
    if (pack === undefined) throw new Error("The small bar has packs.");
    await savePack(db, { ...pack, price: 22 });
    await savePack(db, { ...pack, price: 23, from: "2026-04-01" });
    const prices = async () =>
      (await bookNow()).packs
        .filter(({ item }) => item === "Dry gin")
        .map(({ from, price }) => [from, price]);
    expect(await prices()).toEqual([
      [null, 22],
      ["2026-04-01", 23],
    ]);
    await removePack(db, { ...pack, from: "2026-04-01" });
    expect(await prices()).toEqual([[null, 22]]);
    await expectRefused(() => removePack(db, pack), InvalidError, 'no pack "1 L" of "Dry gin"');
    await expectRefused(
      () => removePack(db, { ...pack, from: "2027-01-01" }),
      NotFoundError,
      "There is no such row",
    );
  });

  it("put an area in a new shelf order", async () => {
    await saveArea(db, "back bar", [
      { item: "Old Quay rum", shelf: 1 },
      { item: "soda", shelf: 2 },
    ]);
    const { areas } = await bookNow();
    expect(areas.filter(({ area }) => area === "Back bar").map(({ item }) => item)).toEqual([
      "Old Quay rum",
      "Soda",
    ]);
  });

  it("take the days of suppliers, closures, shapes and the venue anew", async () => {
    const day = { orderDay: "Fri", orderBy: "12:00", deliveryDay: "Sat", deliveryAt: "08:00" } as const;
    await saveSupplierDays(db, "green barrow", [day]);
    await saveClosures(db, [{ supplier: null, from: "2026-12-24", to: "2026-12-26" }]);
    await saveSalesShapes(db, [{ files: "*.csv" }]);
    await saveVenue(db, { ...BOOK.venue, name: "The Tin Heron" });
    const book = await bookNow();
    expect(book.supplierDays.at(-1)).toEqual({ supplier: "Green Barrow", ...day });
    expect(book.supplierDays).toHaveLength(2);
    expect(book.closures).toHaveLength(1);
    expect(book.salesShapes).toEqual([{ files: "*.csv" }]);
    expect(book.venue.name).toBe("The Tin Heron");
    await expectRefused(
      () => saveClosures(db, [{ supplier: null, from: "2026-12-24", to: "2026-12-20" }]),
      InvalidError,
      "A closure ends on 2026-12-20, before it begins on 2026-12-24.",
    );
  });

  it("may set up a venue in an empty database first", async () => {
    const empty = openDatabase(IN_MEMORY);
    await expect(saveItem(empty, GIN)).rejects.toThrow("holds no venue yet");
    await saveVenue(empty, BOOK.venue);
    await saveItem(empty, GIN);
    expect(await loadBook(empty)).toMatchObject({ venue: BOOK.venue, items: [GIN] });
    closeDatabase(empty);
  });
});

describe("specs", () => {
  const line = {
    line: 1,
    amount: 60,
    unit: "ml" as const,
    item: "dry gin",
    orItems: ["OLD quay rum"],
    note: "",
  };

  it("take a new version from a day on, and leave the old one as it was", async () => {
    await saveVersion(db, { makes: "gimlet", from: "2026-04-01", lines: [line] });
    const versions = (await bookNow()).specs.filter(({ makes }) => makes === "Gimlet");
    expect(versions.slice(0, 3)).toEqual(BOOK.specs.slice(0, 3));
    expect(versions.slice(3)).toEqual([
      { ...line, makes: "Gimlet", from: "2026-04-01", item: "Dry gin", orItems: ["Old Quay rum"] },
    ]);
    await saveVersion(db, { makes: "Gimlet", from: "2026-04-01", lines: [{ ...line, amount: 50 }] });
    expect((await bookNow()).specs.filter(({ from }) => from === "2026-04-01")).toHaveLength(1);
    await removeVersion(db, { makes: "Gimlet", from: "2026-04-01" });
    expect((await bookNow()).specs).toEqual(BOOK.specs);
    await expectRefused(
      () => removeVersion(db, { makes: "Gimlet", from: "2026-04-01" }),
      NotFoundError,
      '"Gimlet" has no version from 2026-04-01.',
    );
  });

  it("take a prep's lines and yield in one act", async () => {
    const falernum = { ...of(BOOK.items, "Orgeat"), name: "Falernum" };
    await saveItem(db, falernum);
    const prep = { ...(BOOK.preps[1] as Book["preps"][number]), prep: "Falernum" };
    const lines = [{ ...line, item: "Sugar syrup", orItems: [] }];
    await expectRefused(
      () => saveVersion(db, { makes: "Falernum", from: prep.from, lines }),
      InvalidError,
      '"Falernum" has spec lines but no row in preps.csv',
    );
    await saveVersion(db, { makes: "Falernum", from: prep.from, lines, prep });
    await savePrep(db, { ...prep, yield: 2 });
    expect((await bookNow()).preps.at(-1)).toMatchObject({ prep: "Falernum", yield: 2 });
  });

  it("never make a prep of itself, nor name what is not there", async () => {
    const from = "2026-04-01";
    await expectRefused(
      () =>
        saveVersion(db, { makes: "Sugar syrup", from, lines: [{ ...line, item: "Orgeat", orItems: [] }] }),
      InvalidError,
      '"Sugar syrup" needs "Orgeat", which needs "Sugar syrup"',
    );
    await expectRefused(
      () => saveVersion(db, { makes: "Gimlet", from, lines: [{ ...line, item: "Gin of the house" }] }),
      NotFoundError,
      'There is no item "Gin of the house"',
    );
    await expectRefused(
      () => saveVersion(db, { makes: "Gimlet", from, lines: [line, { ...line, amount: null, line: 2 }] }),
      InvalidError,
      'The line of "dry gin" needs an amount.',
    );
  });

  it("take cuts, ring names and modifiers in place of what was", async () => {
    await saveCut(db, { ...(BOOK.cuts[0] as Book["cuts"][number]), perPiece: 30 });
    await saveCut(db, { ...(BOOK.cuts[0] as Book["cuts"][number]), perPiece: 26, from: "2026-05-01" });
    await saveRingName(db, {
      ringName: "cloakroom",
      soldAs: { kind: "item", item: "soda" },
      serves: 1,
      amount: null,
      unit: null,
    });
    await removeRingName(db, "gimlet xl");
    const double = {
      effect: "times",
      item: null,
      with: null,
      amount: null,
      unit: null,
      factor: 1.9,
    } as const;
    await saveModifier(db, "DOUBLE", [double]);
    await saveModifier(db, "straw", []);
    const book = await bookNow();
    expect(book.cuts.map(({ from, perPiece }) => [from, perPiece])).toEqual([
      [null, 30],
      [null, 7],
      ["2026-05-01", 26],
    ]);
    expect(book.ringNames.map(({ ringName, soldAs }) => [ringName, soldAs.kind])).toEqual([
      ["Shot rum", "item"],
      ["cloakroom", "item"],
    ]);
    expect(book.modifiers.at(-1)).toEqual({ modifier: "DOUBLE", ...double });
    expect(book.modifiers.map(({ modifier }) => modifier)).not.toContain("straw");
    await expectRefused(
      () => removeRingName(db, "GIMLET XL"),
      NotFoundError,
      'The ring name "GIMLET XL" has no row.',
    );
    await expectRefused(
      () => saveModifier(db, "Half", [{ ...double, factor: null }]),
      InvalidError,
      "factor: the cell is empty; the effect times needs it",
    );
  });
});

describe("orders, events and plans", () => {
  const [placed] = BOOK.orders;
  if (placed === undefined) throw new Error("The small bar has orders.");

  it("place an order once, however often it is sent", async () => {
    const order = { ...placed, order: "PO 13" };
    await placeOrder(db, [order, { ...order, item: "Soda", pack: "Bottle" }]);
    await expectRefused(
      () => placeOrder(db, [{ ...order, order: "po  13" }]),
      ConflictError,
      'There is already an order "po  13"; it was placed before.',
    );
    expect((await bookNow()).orders.slice(1)).toEqual([order, { ...order, item: "Soda", pack: "bottle" }]);
    await removeOrder(db, "po 13");
    expect(await listOrders(db)).toEqual(BOOK.orders);
    await expectRefused(() => removeOrder(db, "PO 13"), NotFoundError, 'There is no order "PO 13".');
    await expectRefused(
      () => placeOrder(db, [order, { ...order, supplier: "Green Barrow" }]),
      InvalidError,
      "one name and one supplier",
    );
  });

  it("keep one event of a name a day, and one plan of a drink a day", async () => {
    await saveEvent(db, { date: "2026-03-07", event: "Harbour fair", factor: 1.6 });
    await saveEvent(db, { date: "2026-03-08", event: "Rain", factor: 0.8 });
    await savePlan(db, { date: "2026-03-07", drink: "gimlet", serves: 80 });
    let book = await bookNow();
    expect(book.events.map(({ factor }) => factor)).toEqual([1.6, 0.8]);
    expect(book.plans).toEqual([{ date: "2026-03-07", drink: "Gimlet", serves: 80 }]);
    await removeEvent(db, { date: "2026-03-08", event: "Rain" });
    await savePlan(db, { date: "2026-03-07", drink: "Gimlet", serves: 0 });
    book = await bookNow();
    expect(book.events).toHaveLength(1);
    expect(book.plans).toEqual([]);
  });
});
