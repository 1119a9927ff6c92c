import { expect, it } from "vitest";
import { factsOf } from "#engine/facts.ts";
import { makingPace } from "#engine/prep/pace.ts";
import { aBatch, prepBook } from "./hand-prep.ts";

function paceOf(days: readonly string[], date = "2026-03-02") {
  const book = prepBook();
  for (const day of days) book.batches.push(aBatch("Lime juice", `${day}T13:30:00Z`, 500));
  return makingPace(factsOf(book), date).get("Lime juice");
}

it.each([
  ["daily", ["2026-02-26", "2026-02-27", "2026-02-28", "2026-03-01"], 1],
  [
    "twice on a busy day, which is one making",
    ["2026-02-26", "2026-02-27", "2026-02-27", "2026-02-28", "2026-03-01"],
    1,
  ],
  ["every third day, with one day off", ["2026-02-17", "2026-02-20", "2026-02-24", "2026-02-27"], 3],
  [
    "of two middle gaps the longer",
    ["2026-02-20", "2026-02-21", "2026-02-22", "2026-02-25", "2026-02-28"],
    3,
  ],
  ["too seldom to tell", ["2026-02-20", "2026-02-24", "2026-02-28"], undefined],
  ["four times, but long ago", ["2025-12-01", "2025-12-02", "2025-12-03", "2025-12-04"], undefined],
  [
    "on the very day, which is what is being planned",
    ["2026-02-27", "2026-02-28", "2026-03-01", "2026-03-02"],
    undefined,
  ],
])("reads the pace of a kitchen that presses %s", (_, days, pace) => {
  expect(paceOf(days)).toBe(pace);
});
