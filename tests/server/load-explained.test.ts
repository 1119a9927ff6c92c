import { expect, it } from "vitest";
import { replaceBook } from "#db/book-repository.ts";
import { openDatabase } from "#db/open.ts";
import { explainLoad } from "#server/load-explained.ts";
import { readSalesFiles } from "#server/sales-files.ts";
import { handBook } from "#tests/support/hand-bar.ts";

const HEAD = "Sold at,Check,Line,Item,Qty,Net";

/** One sale a day at eight in the evening, of the days of March 2026 given. */
function fileOf(days: readonly number[], row: (day: number) => string): Uint8Array {
  const rows = days.map((day) => `2026-03-${String(day).padStart(2, "0")} 20:00:00,${day},1,${row(day)}`);
  return new TextEncoder().encode([HEAD, ...rows].join("\n"));
}

it("explains the sales files of a whole book: each by itself, and all of them together", async () => {
  const book = handBook();
  // Four weeks; the 19th is in no file, the 10th is in both, on the 24th a single drink was sold.
  const sold = (day: number) => (day === 24 ? "House sour,1,10.00" : "House sour,30,300.00");
  const first = fileOf([2, 3, 4, 5, 6, 7, 8, 9, 10], sold);
  const second = fileOf([10, 11, 12, 13, 14, 15, 16, 17, 18, 20, 21, 22, 23, 24, 25, 26, 27, 31], (day) =>
    day === 27 ? "Mystery,30,100.00" : day === 26 ? "House sour,many,300.00" : sold(day),
  );
  const { imports } = readSalesFiles(
    [
      { name: "1.csv", bytes: first },
      { name: "2.csv", bytes: second },
    ],
    book,
    () => {},
  );
  const db = openDatabase(":memory:");
  const changes = await replaceBook(db, book, imports, { now: "2026-04-01T12:00:00Z", by: "test" });
  const { files, coverage, unmapped, daysMissing, daysUnlike } = await explainLoad(
    db,
    book,
    imports,
    changes,
  );
  db.sqlite.close();

  expect(
    files.map(({ lines, new: fresh, known, changed, daysTouched }) => [
      lines,
      fresh,
      known,
      changed,
      daysTouched.length,
    ]),
  ).toEqual([
    [9, 9, 0, 0, 9],
    [17, 16, 1, 0, 17],
  ]);
  expect(files[1]?.refused).toMatchObject([{ row: 17 }]);
  expect(files[0]?.coverage).toEqual({ quantity: 1, money: 1 });
  // The second file: 15 days of 30 and one of 1 are known, 30 are not; in money 15 × 300 + 10 against 100.
  expect(files[1]?.coverage.quantity).toBeCloseTo(451 / 481, 12);
  expect(files[1]?.coverage.money).toBeCloseTo(4510 / 4610, 12);
  expect(coverage.quantity).toBeCloseTo(691 / 721, 12);
  expect(unmapped).toMatchObject([{ ringName: "Mystery", quantity: 30, net: 100 }]);
  // Between the first and the last day no other weekday is without sales in all files.
  expect(daysMissing).toEqual(["2026-03-19", "2026-03-26", "2026-03-28", "2026-03-29", "2026-03-30"]);
  expect(daysUnlike).toEqual([{ date: "2026-03-24", quantity: 1, usual: 30 }]);
});
