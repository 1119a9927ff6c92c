import { expect, it } from "vitest";
import { readBook } from "#db/book/read-book.ts";
import { exportBook, replaceBook } from "#db/book-repository.ts";
import { openDatabase } from "#db/open.ts";
import { daySales } from "#db/sales-repository.ts";
import { eraseStaff, keptStaff, salesOfDay, switchStaff } from "#db/staff-repository.ts";
import { readSales } from "#engine/sales/read/read-sales.ts";
import { importReading, readForImport, textsFor } from "#server/sales-import.ts";
import { openWorld } from "#server/world.ts";
import { handBook } from "#tests/support/hand-bar.ts";

const DOING = { now: "2026-03-09T12:00:00Z", by: "test" };
const MARCH = { from: "2026-03-01", to: "2026-03-31" };

/** The same three lines, as the till writes them with who rang them and which guest had them. */
const FILE = [
  "Sold at,Check,Line,Item,Qty,Net,Guest name,Server",
  "2026-03-02 20:00:00,7,1,House sour,1,9.50,Vera Somebody,Ines",
  "2026-03-02 20:00:00,7,2,House sour,1,9.50,Vera Somebody,Tomás",
  "2026-03-02 20:05:00,8,1,House sour,2,19.00,,",
].join("\n");

async function aBar(keepStaff?: boolean) {
  const book = handBook();
  const db = openDatabase(":memory:");
  const venue = keepStaff === undefined ? book.venue : { ...book.venue, keepStaff };
  await replaceBook(db, { ...book, venue }, [], DOING);
  return db;
}

type Bar = Awaited<ReturnType<typeof aBar>>;

async function imported(db: Bar, text: string, name = "till.csv") {
  const world = await openWorld(db);
  const how = { book: world.facts.book, texts: await textsFor(db) };
  const bytes = new TextEncoder().encode(text);
  return importReading(db, world, await readForImport(db, { name, bytes }, how), DOING);
}

const rungBy = async (db: Bar, date = "2026-03-02") =>
  (await salesOfDay(db, date)).map(({ check, lineNo, staff }) => `${check}/${lineNo} ${staff ?? "-"}`);

it("keeps no name of anybody unless the owner wants it, and never a guest's", async () => {
  const off = await aBar();
  const report = await imported(off, FILE);
  expect(report.notices).toContain('The columns of persons ("Guest name", "Server") were not read.');
  expect(await rungBy(off)).toEqual(["7/1 -", "7/2 -", "8/1 -"]);
  expect(await keptStaff(off)).toEqual({ names: 0, days: 0 });

  const on = await aBar(true);
  const kept = await imported(on, FILE);
  expect(kept.notices).toContain('The columns of persons ("Guest name") were not read.');
  expect(await rungBy(on)).toEqual(["7/1 Ines", "7/2 Tomás", "8/1 -"]);
  expect(await keptStaff(on)).toEqual({ names: 2, days: 1 });
  const everything = JSON.stringify(
    on.sqlite.prepare("select text from sale_names union select name from staff_names").all(),
  );
  expect(everything).not.toContain("Vera");
  // The same sales, whoever rang them.
  expect(await daySales(on, MARCH)).toEqual(await daySales(off, MARCH));
});

it("counts a line once whether or not it says who rang it, and learns the name from a file read in again", async () => {
  const db = await aBar();
  await imported(db, FILE);
  await switchStaff(db, true, DOING);
  const again = await imported(db, FILE);
  expect([again.new, again.known, again.changed]).toEqual([0, 3, 0]);
  expect(await rungBy(db)).toEqual(["7/1 Ines", "7/2 Tomás", "8/1 -"]);
  // A file that overlaps, of which the old one has lines without a name.
  const more = `${FILE.replace("20:05:00,8,1,House sour,2,19.00,,", "20:05:00,8,1,House sour,2,19.00,,Ines")}\n2026-03-02 21:00:00,9,1,House sour,1,9.50,,Ines`;
  const overlap = await imported(db, more, "more.csv");
  expect([overlap.new, overlap.known]).toEqual([1, 3]);
  expect(await rungBy(db)).toEqual(["7/1 Ines", "7/2 Tomás", "8/1 Ines", "9/1 Ines"]);
});

it("moves out and in with the book, and is dropped where the book does not keep it", async () => {
  const db = await aBar(true);
  await imported(db, FILE);
  const { files, salesFiles } = await exportBook(db);
  const { book } = readBook(files);
  expect(book.venue.keepStaff).toBe(true);
  const text = salesFiles[0]?.text ?? "";
  expect(text.split("\r\n")[0]).toMatch(/,line,staff$/);
  const read = (keepsStaff: boolean) =>
    readSales(new TextEncoder().encode(text), {
      fileName: "till.csv",
      clock: book.venue,
      currencyDigits: 2,
      keepsStaff,
    }).lines.map(({ staff }) => staff ?? "-");
  expect(read(true)).toEqual(["Ines", "Tomás", "-"]);
  expect(read(false)).toEqual(["-", "-", "-"]);
});

it("erases the names for good and leaves the sales as they are", async () => {
  const db = await aBar(true);
  await imported(db, FILE);
  const before = await daySales(db, MARCH);
  expect(await eraseStaff(db, DOING)).toEqual({ names: 2 });
  expect(await rungBy(db)).toEqual(["7/1 -", "7/2 -", "8/1 -"]);
  expect(await daySales(db, MARCH)).toEqual(before);
  const [act] = db.sqlite
    .prepare("select act, summary, mend_json from history order by seq desc limit 1")
    .raw()
    .all() as string[][];
  expect(act).toEqual(["staff names erased", "names of staff erased: 2; business days: 1", null]);
  expect(JSON.stringify(db.sqlite.prepare("select * from history").all())).not.toContain("Ines");
});

it("reads a long file's names from its bytes, though its days come in turns", async () => {
  const names = ["Ines", "Tomás", "", "Ida"];
  const rows = Array.from({ length: 40_000 }, (_, at) => {
    const day = 2 + (at % 3);
    return `2026-03-0${day} 20:00:00,${at},1,House sour,1,9.50,,${names[at % 4]}`;
  });
  const db = await aBar(true);
  const { lines } = await imported(db, [FILE.split("\n")[0], ...rows].join("\n"));
  expect(lines).toBe(40_000);
  for (const date of ["2026-03-02", "2026-03-03", "2026-03-04"])
    for (const { check, staff } of await salesOfDay(db, date))
      if ((staff ?? "") !== names[Number(check) % 4]) throw new Error(`${check} was rung by ${staff}`);
});
