import { expect, it } from "vitest";
import { factsOf } from "#engine/facts.ts";
import { shelfLifeDays, useBy } from "#engine/prep/use-by.ts";
import { prepBook } from "./hand-prep.ts";

it.each([
  // US Food Code 3-501.17 as adopted by states: day of preparation is day 1; made 1 April, 7 days → use by 7 April.
  ["2026-04-01", 7, "2026-04-07"],
  ["2026-04-01", 1, "2026-04-01"],
  ["2026-02-27", 3, "2026-03-01"],
  ["2026-04-01", 1.9, "2026-04-01"],
  ["2026-04-01", 0.5, "2026-04-01"],
])("dates a batch made on %s that keeps %s days to be used by %s", (madeOn, days, last) => {
  expect(useBy(madeOn, days)).toBe(last);
});

it("has no date to give where no shelf life is known", () => {
  expect(useBy("2026-04-01", null)).toBeNull();
});

it("takes the shelf life of the preps row in force, else of the item", () => {
  const book = prepBook();
  const cordial = book.preps.find(({ prep }) => prep === "Lime cordial");
  if (cordial === undefined) throw new Error("the book has a cordial");
  book.preps.push({ ...cordial, from: "2026-03-01", shelfLifeDays: 5 });
  const { catalogue } = factsOf(book);
  expect(shelfLifeDays(catalogue, "Lime cordial", "2026-02-28")).toBe(7);
  expect(shelfLifeDays(catalogue, "Lime cordial", "2026-03-01")).toBe(5);
  expect(shelfLifeDays(catalogue, "Lime juice", "2026-03-01")).toBe(1);
  expect(shelfLifeDays(catalogue, "Sugar", "2026-03-01")).toBeNull();
});
