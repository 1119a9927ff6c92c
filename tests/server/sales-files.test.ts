import { expect, it } from "vitest";
import { replaceBook } from "#db/book-repository.ts";
import { openDatabase } from "#db/open.ts";
import { daySales } from "#db/sales-repository.ts";
import { readSalesFile, readSalesFiles } from "#server/sales-files.ts";
import { handBook } from "#tests/support/hand-bar.ts";

const DOING = { now: "2026-03-09T12:00:00Z", by: "test" };

/** 30 000 lines of three days, more than a megabyte: line n is sold at n seconds past six, by turns one of two drinks. */
function longFile(): string {
  const rows = Array.from({ length: 30_000 }, (_, at) => {
    const second = new Date(Date.UTC(2026, 2, 2 + (at % 3), 18, 0, Math.floor(at / 3)));
    const sold = second.toISOString().slice(0, 19).replace("T", " ");
    return `${sold},${at % 2 === 0 ? "House sour" : "Café ½"},${1 + (at % 2)},9.50`;
  });
  return ["Sold at,Item,Qty,Net", ...rows, "2026-03-02 20:00:00,House sour,many,9.50"].join("\n");
}

it("loads a long sales file piece by piece, with the same sales as when it is read as a whole", async () => {
  const book = handBook();
  const file = { name: "till.csv", bytes: new TextEncoder().encode(longFile()) };
  const { imports, notices } = readSalesFiles([file], book, () => {});
  expect(imports.map((read) => ["packer" in read, read.count])).toEqual([[true, 30_000]]);
  expect(notices.filter((notice) => notice.includes("row 30002"))).toHaveLength(1);

  const whole = readSalesFile(file, book);
  const held = [];
  for (const sales of [imports, [{ ...whole, file: file.name }]]) {
    const db = openDatabase(":memory:");
    await replaceBook(db, book, sales, DOING);
    const days = await daySales(db, { from: "2026-03-01", to: "2026-03-31" });
    held.push(days);
    db.sqlite.close();
  }
  expect(held[0]).toEqual(held[1]);
  // Each day has 5 000 of one each and 5 000 of two.
  expect(held[0]?.map(({ quantity }) => quantity)).toEqual([15_000, 15_000, 15_000]);
});
