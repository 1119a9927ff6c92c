import {
  existsSync,
  mkdirSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  rmSync,
  writeFileSync,
} from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import fc from "fast-check";
import { afterEach, beforeEach, describe, expect, it } from "vitest";
import { readBookFolder, writeBookFolder } from "#db/book/folder.ts";
import { readBook } from "#db/book/read-book.ts";
import { exportBook, replaceBook } from "#db/book-repository.ts";
import { closeDatabase, IN_MEMORY, openDatabase } from "#db/open.ts";
import { saleGroups } from "#db/sales-repository.ts";
import { currencyDigits } from "#engine/currency.ts";
import { readSales } from "#engine/sales/read/read-sales.ts";
import { bookArbitrary, saleLineArbitrary } from "#tests/support/book-arbitrary.ts";
import { smallBook } from "#tests/support/small-book.ts";

const DOING = { now: "2026-03-09T09:00:00Z", by: "Ana" };
let dir: string;
beforeEach(() => {
  dir = mkdtempSync(join(tmpdir(), "ullage-book-"));
});
afterEach(() => rmSync(dir, { recursive: true, force: true }));

function write(files: ReadonlyMap<string, string | Uint8Array>, folder = dir): string {
  mkdirSync(join(folder, "sales"), { recursive: true });
  for (const [name, text] of files) writeFileSync(join(folder, name), text);
  return folder;
}

/** Loads what a folder holds into a fresh database. */
async function loaded(folder: string) {
  const { book, salesFiles } = readBookFolder(folder);
  const options = {
    clock: book.venue,
    currencyDigits: currencyDigits(book.venue.currency),
    shapes: book.salesShapes,
  };
  const reads = salesFiles.map(({ name, bytes }) => ({
    file: name,
    ...readSales(bytes, { fileName: name, ...options }),
  }));
  expect(reads.map(({ question, refused }) => [question, refused.length])).toEqual(
    reads.map(() => [null, 0]),
  );
  const db = openDatabase(IN_MEMORY);
  await replaceBook(db, book, reads, DOING);
  return { db, book };
}

async function allSales(db: Awaited<ReturnType<typeof loaded>>["db"]) {
  const dates = db.sqlite.prepare("select distinct business_date from tallies").pluck().all() as string[];
  return saleGroups(db, { from: "2000-01-01", to: "2099-12-31", splitDates: new Set(dates) });
}

describe("a book in a folder", () => {
  it("is the same, sales and all, after it was loaded, exported and loaded again", async () => {
    await fc.assert(
      fc.asyncProperty(
        bookArbitrary,
        fc.array(fc.array(saleLineArbitrary, { maxLength: 12 }), { maxLength: 3 }),
        async (book, files) => {
          const db = openDatabase(IN_MEMORY);
          const imports = files.map((lines) => ({
            file: "week one.csv",
            lines,
            shape: { files: "week one.csv" },
            refused: [],
          }));
          await replaceBook(db, book, imports, DOING);
          const folder = join(dir, "out");
          writeBookFolder(folder, await exportBook(db));
          const again = await loaded(folder);
          expect(again.book).toEqual(book);
          expect(await allSales(again.db)).toEqual(await allSales(db));
          closeDatabase(db);
          closeDatabase(again.db);
          rmSync(folder, { recursive: true });
        },
      ),
      { numRuns: 25 },
    );
  });

  it("may begin its sheets with a byte order mark, end rows in any way and name columns in any order", () => {
    const plain = readBook(smallBook()).book;
    const files = [...smallBook()].map(([name, text]): [string, string] => {
      if (name.endsWith(".json")) return [name, `\uFEFF${text}`];
      const flipped = name === "events.csv" ? "Factor,EVENT, date\n1.4,Harbour fair,2026-03-07" : text;
      return [name, `\uFEFF${flipped.replaceAll("\n", name < "d" ? "\r\n" : "\r")}\r\n\r\n`];
    });
    expect(readBookFolder(write(new Map(files))).book).toEqual(plain);
  });

  it("may be written with semicolons and decimal commas", () => {
    const files = smallBook({
      "drinks.csv":
        "drink;price;glass;glass_ml;ice;technique\nGimlet;11,50;coupe;160;none;shaken\nRum Sour;12;rocks;300;cubed;shaken\nGin Rickey;10,5;highball;330;cubed;built",
    });
    expect(readBookFolder(write(files)).book).toEqual(readBook(smallBook()).book);
  });

  it("may have blank rows above its headings, or the line by which a spreadsheet names its mark", () => {
    const files = smallBook({
      "events.csv": "\n , \ndate,event,factor\n2026-03-07,Harbour fair,1.4",
      "plans.csv": "sep=;\ndate;drink;serves\n2026-03-07;Gimlet;60",
    });
    expect(readBookFolder(write(files)).book).toEqual(readBook(smallBook()).book);
    const wrong = smallBook({ "events.csv": "\n\ndate,event,factor\n2026-03-07,Harbour fair,x" });
    expect(() => readBook(wrong)).toThrow("events.csv row 4, factor:");
  });

  it("tells of columns and files it does not know, and reads the rest", () => {
    const files = smallBook({
      "events.csv": "date,event,factor,mood\n2026-03-07,Harbour fair,1.4,good",
      "venue.json":
        '{ "name": "x", "currency": "EUR", "timeZone": "UTC", "dayEnds": "04:00", "oz": "us", "phone": 1 }',
      "delivery.csv": "a,b",
      "sales-shapes.json":
        '[{ "files": "*.csv", "colums": {}, "columns": { "item": "Artikel", "qty": "Menge" } }]',
    });
    const { notices } = readBookFolder(write(files));
    expect(notices).toEqual([
      'delivery.csv: it is no sheet of the book and was not read; did you mean "deliveries.csv"?',
      'venue.json: "phone" is not known and was not read',
      'events.csv: the column "mood" is not known and was not read',
      'sales-shapes.json: "entry 1.colums" is not known and was not read; did you mean "columns"?',
      'sales-shapes.json: "entry 1.columns.qty" is not known and was not read',
    ]);
  });

  it("gives its sales files in name order, untouched", () => {
    write(smallBook());
    writeFileSync(join(dir, "sales", "b.csv"), "two");
    writeFileSync(join(dir, "sales", "a.csv"), new Uint8Array([0xff, 0xfe]));
    const { salesFiles } = readBookFolder(dir);
    expect(salesFiles.map(({ name, bytes }) => [name, bytes.length])).toEqual([
      ["a.csv", 2],
      ["b.csv", 3],
    ]);
  });

  it("must be a folder, and its sheets UTF-8", () => {
    expect(() => readBookFolder(join(dir, "nowhere"))).toThrow("there is no folder");
    const latin1 = new Uint8Array([0x64, 0xe9, 0x0a]);
    write(new Map<string, string | Uint8Array>(smallBook()).set("events.csv", latin1));
    expect(() => readBookFolder(dir)).toThrow("events.csv: the file is not UTF-8; save it as CSV UTF-8");
  });
});

describe("exporting into a folder", () => {
  const exported = { files: smallBook(), salesFiles: [{ name: "w.csv", text: "x" }] };

  it("refuses a folder that holds something else, and touches nothing", () => {
    writeFileSync(join(dir, "letter.txt"), "Dear owner");
    expect(() => writeBookFolder(dir, exported)).toThrow("is not empty and holds no venue.json");
    expect(readdirSync(dir)).toEqual(["letter.txt"]);
  });

  it("replaces a book that is there, sheets it no longer has too, and keeps other files", () => {
    const folder = join(dir, "book");
    write(smallBook(), folder);
    writeFileSync(join(folder, "sales", "old.csv"), "old");
    writeFileSync(join(folder, "notes.txt"), "keep me");
    writeBookFolder(folder, { ...exported, files: smallBook({ "plans.csv": null }) });
    expect(existsSync(join(folder, "plans.csv"))).toBe(false);
    expect(readdirSync(join(folder, "sales"))).toEqual(["w.csv"]);
    expect(readFileSync(join(folder, "notes.txt"), "utf8")).toBe("keep me");
    // What the till wrote cannot be made again, so it is not thrown away.
    expect(readFileSync(join(folder, "sales-before", "old.csv"), "utf8")).toBe("old");
    expect(readdirSync(folder).filter((name) => name.startsWith("."))).toEqual([]);
  });

  it("leaves the book that was there when it cannot write the new one", () => {
    const folder = join(dir, "book");
    write(smallBook(), folder);
    const broken = { files: exported.files, salesFiles: [{ name: "no/such/folder.csv", text: "x" }] };
    expect(() => writeBookFolder(folder, broken)).toThrow();
    const before = readdirSync(folder);
    expect(() => writeBookFolder(folder, broken)).toThrow();
    expect(readdirSync(folder)).toEqual(before);
    expect(readBookFolder(folder).book).toEqual(readBook(smallBook()).book);
  });
});
