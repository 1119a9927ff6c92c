import { readdirSync, readFileSync } from "node:fs";
import { afterEach, beforeEach, describe, expect, it } from "vitest";
import { readBook } from "#db/book/read-book.ts";
import * as bookRepository from "#db/book-repository.ts";
import * as catalogueRepository from "#db/catalogue-repository.ts";
import * as closingsRepository from "#db/closings-repository.ts";
import * as devicesRepository from "#db/devices-repository.ts";
import { verifyChain } from "#db/history/chain.ts";
import { CHANGEABLE } from "#db/history/change.ts";
import * as historyRepository from "#db/history-repository.ts";
import * as newPrepRepository from "#db/new-prep-repository.ts";
import { closeDatabase, type Db, IN_MEMORY, openDatabase } from "#db/open.ts";
import * as ordersRepository from "#db/orders-repository.ts";
import * as peopleRepository from "#db/people-repository.ts";
import * as priceListRepository from "#db/price-list-repository.ts";
import * as ringNamesRepository from "#db/ring-names-repository.ts";
import * as salesRepository from "#db/sales-repository.ts";
import * as sessionsRepository from "#db/sessions-repository.ts";
import * as settlementsRepository from "#db/settlements-repository.ts";
import * as signInTriesRepository from "#db/sign-in-tries-repository.ts";
import * as specsRepository from "#db/specs-repository.ts";
import * as staffRepository from "#db/staff-repository.ts";
import * as stockRepository from "#db/stock-repository.ts";
import * as tokensRepository from "#db/tokens-repository.ts";
import * as venueRepository from "#db/venue-repository.ts";
import type { Book } from "#engine/book.ts";
import type { SaleLine } from "#engine/sales/read/line.ts";
import type { RingName } from "#engine/sales/ring.ts";
import type { Item } from "#engine/stock/item.ts";
import { DELIVERY, DOING, LINE, ROW, SETTLEMENT } from "#tests/support/acts.ts";
import { smallBook } from "#tests/support/small-book.ts";

const REPOSITORIES = {
  ...bookRepository,
  ...catalogueRepository,
  ...closingsRepository,
  ...devicesRepository,
  ...historyRepository,
  ...newPrepRepository,
  ...ordersRepository,
  ...peopleRepository,
  ...priceListRepository,
  ...ringNamesRepository,
  ...salesRepository,
  ...sessionsRepository,
  ...settlementsRepository,
  ...signInTriesRepository,
  ...specsRepository,
  ...staffRepository,
  ...stockRepository,
  ...tokensRepository,
  ...venueRepository,
};

/** What only reads. A name that is in neither list fails, so that a new write cannot be forgotten. */
const READS = [
  "exportBook",
  "loadBook",
  "currentClosing",
  "refuseLoadOverClosed",
  "listHistory",
  "linesTurnedBy",
  "listOrders",
  "listSettlements",
  "listEntries",
  "listCountRows",
  "listWithdrawn",
  "salesTexts",
  "importReadAlike",
  "isSizeKnown",
  "previewImport",
  "previewInDetail",
  "listImports",
  "importLines",
  "sizeOfImport",
  "saleGroups",
  "talliesBetween",
  "salesExtent",
  "daySales",
  "datedRingNames",
  ...["salesOfDay", "keptStaff"],
  ...["listPeople", "personNamed", "personOf", "hasOwner", "linkOpenTo"],
  ...["deviceOf", "listDevices", "sessionOf", "listSessions", "tokenOf", "listTokens"],
];

/** Being seen at the door is no act on the book: who did something is told with what they did. */
const AT_THE_DOOR = [
  ...["countWrongPin", "forgetWrongPins", "sawDevice", "sawToken"],
  ...["countTry", "forgetTries", "takeTryBack"],
  ...["startSession", "sawSession", "endSession", "endSessionsOf", "endAllSessions", "dropSessionsBefore"],
];

type Repositories = typeof REPOSITORIES;
type Write = (db: Db, book: Book) => Promise<unknown>;

const { addLink, addPerson } = REPOSITORIES;
const { addDelivery, importSales, closePast, saveEvent, addSettlement, placeOrder, savePack } = REPOSITORIES;
const SECRET = "a".repeat(64);
const TABLET = { name: "Bar tablet", secretHash: SECRET };
const TOKEN = { name: "till", secretHash: SECRET, role: "manager", scope: "write" } as const;
const OWNERS_LINK = { secretHash: SECRET, personId: null, expiresAt: "2026-03-10T12:00:00Z" };
const RING: RingName = {
  ringName: "GML",
  soldAs: { kind: "drink", drink: "Gimlet" },
  serves: 1,
  amount: null,
  unit: null,
};
const soldOn = (businessDate: string): SaleLine[] => [{ ...LINE, businessDate }];
const anImport = (db: Db, date: string) =>
  importSales(db, {
    file: `${date}.csv`,
    shape: { files: "*" },
    refused: [],
    lines: soldOn(date),
    ...DOING,
  });

/** Each write, once, with the act that the history must tell of it. */
const WRITES: Partial<Record<keyof Repositories, [act: string, write: Write]>> = {
  replaceBook: ["book loaded", (db, book) => REPOSITORIES.replaceBook(db, book, [], DOING)],
  saveVenue: [
    "venue changed",
    (db, { venue }) => REPOSITORIES.saveVenue(db, { ...venue, name: "The Tin Gull" }),
  ],
  changeVenue: [
    "venue changed",
    (db, { venue }) => REPOSITORIES.changeVenue(db, { was: venue, now: { ...venue, show: "cl" } }),
  ],
  saveItem: ["item changed", (db, { items }) => REPOSITORIES.saveItem(db, { ...first(items), abv: 41 })],
  savePar: [
    "item changed",
    (db) => REPOSITORIES.savePar(db, { item: "Dry gin", par: 4200, reason: "the regatta is coming" }),
  ],
  saveDrink: [
    "drink changed",
    (db, { drinks }) => REPOSITORIES.saveDrink(db, { ...first(drinks), priceMinor: 1250 }),
  ],
  saveSupplier: [
    "supplier changed",
    (db, { suppliers }) =>
      REPOSITORIES.saveSupplier(db, { ...first(suppliers), email: "orders@quay.example" }),
  ],
  savePack: ["price changed", (db, { packs }) => savePack(db, { ...first(packs), price: 22.5 })],
  removePack: [
    "price changed",
    async (db, { packs }) => {
      const later = { ...first(packs), from: "2026-04-01" };
      await savePack(db, later);
      await REPOSITORIES.removePack(db, later);
    },
  ],
  saveArea: [
    "shelf order changed",
    (db) => REPOSITORIES.saveArea(db, "Cellar", [{ item: "Soda", shelf: 1 }]),
  ],
  saveSupplierDays: [
    "supplier days changed",
    (db) =>
      REPOSITORIES.saveSupplierDays(db, "Green Barrow", [
        { orderDay: "Mon", orderBy: "20:00", deliveryDay: "Wed", deliveryAt: "08:00" },
      ]),
  ],
  saveClosures: ["closed days changed", (db) => REPOSITORIES.saveClosures(db, [])],
  saveSalesShapes: ["sales shapes changed", (db) => REPOSITORIES.saveSalesShapes(db, [])],
  removeItem: [
    "item changed",
    async (db, { items }) => {
      await REPOSITORIES.saveItem(db, { ...first(items), name: "Plum gin" });
      await REPOSITORIES.removeItem(db, "Plum gin");
    },
  ],
  removeDrink: [
    "drink changed",
    async (db, { drinks }) => {
      await REPOSITORIES.saveDrink(db, { ...first(drinks), name: "Plum Gimlet" });
      await REPOSITORIES.removeDrink(db, "Plum Gimlet");
    },
  ],
  removeSupplier: [
    "supplier changed",
    async (db, { suppliers }) => {
      await REPOSITORIES.saveSupplier(db, { ...first(suppliers), name: "Hill Farm" });
      await REPOSITORIES.removeSupplier(db, "Hill Farm");
    },
  ],
  closePast: ["week closed", (db) => closePast(db, "2026-03-01", DOING)],
  reopenPast: [
    "week reopened",
    async (db) => {
      await closePast(db, "2026-03-01", DOING);
      await REPOSITORIES.reopenPast(db, { reason: "an invoice came late" }, DOING);
    },
  ],
  undoAct: [
    "undone",
    async (db) => {
      await addDelivery(db, DELIVERY, DOING);
      await REPOSITORIES.undoAct(db, 2, DOING);
    },
  ],
  placeOrder: ["order placed", (db, { orders }) => placeOrder(db, [{ ...first(orders), order: "PO 13" }])],
  removeOrder: ["order taken out", (db) => REPOSITORIES.removeOrder(db, "PO 12")],
  saveEvent: ["event changed", (db) => saveEvent(db, { date: "2026-03-14", event: "Regatta", factor: 1.3 })],
  removeEvent: [
    "event changed",
    (db) => REPOSITORIES.removeEvent(db, { date: "2026-03-07", event: "Harbour fair" }),
  ],
  savePlan: [
    "plan changed",
    (db) => REPOSITORIES.savePlan(db, { date: "2026-03-14", drink: "Gimlet", serves: 20 }),
  ],
  importSales: ["sales imported", (db) => anImport(db, "2026-03-06")],
  importInDetail: [
    "sales imported",
    (db) =>
      REPOSITORIES.importInDetail(db, {
        file: "w.csv",
        shape: { files: "*" },
        refused: [],
        lines: soldOn("2026-03-06"),
        ...DOING,
      }),
  ],
  undoImport: [
    "import undone",
    async (db) => {
      const { importId } = await anImport(db, "2026-03-06");
      await REPOSITORIES.undoImport(db, importId, DOING);
    },
  ],
  switchStaff: ["staff names switched", (db) => REPOSITORIES.switchStaff(db, true, DOING)],
  eraseStaff: ["staff names erased", (db) => REPOSITORIES.eraseStaff(db, DOING)],
  addSettlement: ["cause settled", (db) => addSettlement(db, SETTLEMENT, DOING)],
  takeSettlementBack: [
    "settlement taken back",
    async (db) => REPOSITORIES.takeSettlementBack(db, await addSettlement(db, SETTLEMENT, DOING), DOING),
  ],
  saveVersion: [
    "spec changed",
    (db, { specs }) =>
      REPOSITORIES.saveVersion(db, { makes: "Gimlet", from: "2026-03-10", lines: linesOf(specs, "Gimlet") }),
  ],
  removeVersion: [
    "spec changed",
    async (db, { specs }) => {
      const key = { makes: "Gimlet", from: "2026-03-10" };
      await REPOSITORIES.saveVersion(db, { ...key, lines: linesOf(specs, "Gimlet") });
      await REPOSITORIES.removeVersion(db, key);
    },
  ],
  savePrep: ["prep changed", (db, { preps }) => REPOSITORIES.savePrep(db, { ...first(preps), yield: 820 })],
  saveCut: ["cut changed", (db, { cuts }) => REPOSITORIES.saveCut(db, { ...first(cuts), perPiece: 30 })],
  saveRingName: ["ring name changed", (db) => REPOSITORIES.saveRingName(db, RING)],
  removeRingName: ["ring name changed", (db) => REPOSITORIES.removeRingName(db, "Cloakroom")],
  saveModifier: ["modifier changed", (db) => REPOSITORIES.saveModifier(db, "straw", [])],
  addCountRows: ["count entry", (db) => REPOSITORIES.addCountRows(db, [ROW], DOING)],
  addDeliveries: ["delivery entered", (db) => REPOSITORIES.addDeliveries(db, [DELIVERY, DELIVERY], DOING)],
  addDelivery: ["delivery entered", (db) => addDelivery(db, DELIVERY, DOING)],
  addBatch: [
    "batch entered",
    (db, { batches }) => REPOSITORIES.addBatch(db, { ...first(batches), at: "2026-03-09T11:00:00Z" }, DOING),
  ],
  addLoss: [
    "loss entered",
    (db, { losses }) => REPOSITORIES.addLoss(db, { ...first(losses), at: "2026-03-09T11:00:00Z" }, DOING),
  ],
  addTransfer: [
    "transfer entered",
    (db, { transfers }) =>
      REPOSITORIES.addTransfer(db, { ...first(transfers), at: "2026-03-09T11:00:00Z" }, DOING),
  ],
  correctEntry: [
    "entry corrected",
    (db) =>
      REPOSITORIES.correctEntry(
        db,
        "delivery",
        1,
        { ...DELIVERY, quantity: 5 },
        { ...DOING, reason: "one broke" },
      ),
  ],
  withdrawEntry: [
    "entry taken back",
    (db) => REPOSITORIES.withdrawEntry(db, "delivery", 1, { ...DOING, reason: "entered twice" }),
  ],
  takePrices: [
    "price changed",
    (db, { packs }) =>
      REPOSITORIES.takePrices(db, {
        supplier: "Hill Farm",
        items: [],
        packs: [{ ...first(packs), supplier: "Hill Farm", price: 19 }],
      }),
  ],
  saveNewPrep: [
    "spec changed",
    (db, { items, preps }) => {
      const syrup = items.find(({ name }) => name === "Sugar syrup") as Item;
      const line = { line: 1, amount: 500, unit: "g", item: "Sugar", orItems: [], note: "" } as const;
      return REPOSITORIES.saveNewPrep(db, {
        item: { ...syrup, name: "Rich syrup" },
        otherItems: [],
        prep: { ...first(preps), prep: "Rich syrup" },
        lines: [{ ...line, orItems: [] }],
        cut: null,
      });
    },
  ],
  acceptRingNames: ["ring name changed", (db) => REPOSITORIES.acceptRingNames(db, [RING], DOING)],
  undoRingName: [
    "ring name changed",
    async (db) => {
      await REPOSITORIES.acceptRingNames(db, [RING], DOING);
      await REPOSITORIES.undoRingName(db, RING.ringName, DOING);
    },
  ],
  addPerson: ["person changed", (db) => addPerson(db, { name: "Rui", role: "counter" }, DOING)],
  changePerson: [
    "permission changed",
    async (db) => {
      const id = await addPerson(db, { name: "Rui", role: "counter" }, DOING);
      await REPOSITORIES.changePerson(db, id, { role: "prep" }, DOING);
    },
  ],
  setSecret: [
    "password changed",
    async (db) => {
      const id = await addPerson(db, { name: "Rui", role: "counter" }, DOING);
      await REPOSITORIES.setSecret(db, id, { pinHash: "$argon2id$…" }, DOING);
    },
  ],
  addLink: ["sign-in changed", (db) => addLink(db, OWNERS_LINK, DOING)],
  takeLink: [
    "password changed",
    async (db) => {
      await addLink(db, OWNERS_LINK, DOING);
      const { secretHash } = OWNERS_LINK;
      const secret = { passwordHash: "$argon2id$…" };
      await REPOSITORIES.takeLink(db, { secretHash, secret, ownerName: "Ines" }, DOING);
    },
  ],
  addDevice: ["device changed", (db) => REPOSITORIES.addDevice(db, TABLET, DOING)],
  removeDevice: [
    "device changed",
    async (db) => REPOSITORIES.removeDevice(db, await REPOSITORIES.addDevice(db, TABLET, DOING), DOING),
  ],
  addToken: ["token changed", (db) => REPOSITORIES.addToken(db, TOKEN, DOING)],
  revokeToken: [
    "token changed",
    async (db) => REPOSITORIES.revokeToken(db, await REPOSITORIES.addToken(db, TOKEN, DOING), DOING),
  ],
};

function first<T>([fact]: readonly T[]): T {
  if (fact === undefined) throw new Error("The small bar has none.");
  return fact;
}

function linesOf(specs: Book["specs"], makes: string) {
  return specs
    .filter((line) => line.makes === makes)
    .map(({ makes: _, from: __, ...line }) => ({ ...line, note: "changed" }));
}

let db: Db;
let book: Book;
beforeEach(async () => {
  db = openDatabase(IN_MEMORY);
  book = readBook(smallBook()).book;
  await REPOSITORIES.replaceBook(db, book, [], DOING);
});
afterEach(() => closeDatabase(db));

describe("every write of every repository", () => {
  it("is in a repository that this table knows", () => {
    const files = readdirSync("db").filter((name) => name.endsWith("-repository.ts"));
    const imports = readFileSync("tests/history/every-write.test.ts", "utf8");
    expect(files.filter((file) => !imports.includes(`#db/${file}`))).toEqual([]);
  });

  it("is in the table of writes, or only reads, or only sees somebody at the door", () => {
    const functions = Object.entries(REPOSITORIES)
      .filter(([, value]) => typeof value === "function")
      .map(([name]) => name);
    const known = [...READS, ...AT_THE_DOOR, ...Object.keys(WRITES)];
    expect(functions.filter((name) => !known.includes(name))).toEqual([]);
    expect(known.filter((name) => !functions.includes(name))).toEqual([]);
  });

  it.each(Object.entries(WRITES))("is told in the history: %s", async (_, [act, write]) => {
    await write(db, book);
    const [latest] = await REPOSITORIES.listHistory(db);
    expect(latest).toMatchObject({ act, who: expect.stringMatching(/./), via: "terminal" });
    expect(latest?.summary).not.toBe("");
    expect(latest?.subjects.length).toBeGreaterThan(0);
    expect(verifyChain(db).broken).toBeNull();
  });

  it("is told in the very transaction of the act: what is refused leaves no trace", async () => {
    const before = (await REPOSITORIES.listHistory(db)).length;
    await expect(addDelivery(db, { ...DELIVERY, item: "No such gin" }, DOING)).rejects.toThrow();
    expect(await REPOSITORIES.listHistory(db)).toHaveLength(before);
  });

  it("of nothing is told as nothing: a phone that sends again what had arrived", async () => {
    await REPOSITORIES.addCountRows(db, [ROW], DOING);
    const before = (await REPOSITORIES.listHistory(db)).length;
    await REPOSITORIES.addCountRows(db, [ROW], DOING);
    expect(await REPOSITORIES.listHistory(db)).toHaveLength(before);
  });
});

/** Tables with a reason not to be among those whose rows can be put back. */
const ONLY_ADDED = [
  ...["count_entries", "deliveries", "batches", "batch_inputs", "losses", "transfers"],
  // Names alone, which entries that were taken back go on naming.
  ...["areas", "counts", "packs"],
  // Sales go and come back by whole imports.
  ...["sale_imports", "sale_names", "sale_blocks", "import_days", "tallies"],
  ...["sale_staff", "staff_names"],
  // Who may do what is no part of the book; the owner changes it where it was given.
  ...["people", "devices", "sessions", "sign_in_links", "sign_in_tries", "api_tokens"],
  ...["settlements", "history", "history_subjects", "closings", "ledger_state", "__drizzle_migrations"],
];

it("knows of every table whether its rows can be put back", () => {
  const tables = db.sqlite
    .prepare("select name from sqlite_master where type = 'table' and name not like 'sqlite_%'")
    .pluck()
    .all() as string[];
  const known = [...CHANGEABLE, ...ONLY_ADDED];
  expect(tables.filter((table) => !known.includes(table))).toEqual([]);
});
