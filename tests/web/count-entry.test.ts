import "../support/english.ts";
import * as fc from "fast-check";
import { describe, expect, it } from "vitest";
import { DEFAULT_HOUSE_ML } from "#engine/measure/units.ts";
import type { CountRow } from "#engine/stock/movement.ts";
import type { Venue } from "#engine/venue.ts";
import {
  draftFor,
  foundOf,
  noneFound,
  readContainers,
  readGrams,
  withLevel,
  withStep,
  writeContainers,
} from "../../web/count/entry.ts";
import { allFoundWords } from "../../web/count/found-words.ts";
import { quantityOf, surpriseOf } from "../../web/count/reckon.ts";
import type { SheetItem } from "../../web/count/sheet.ts";

it.each([
  ["3", { full: 3, parts: [] }],
  ["3.7", { full: 3, parts: [0.7] }],
  ["3.7.5", { full: 3, parts: [0.7, 0.5] }],
  [".4", { full: 0, parts: [0.4] }],
  ["2.10", { full: 2, parts: [1] }],
  ["2,5", { full: 2, parts: [0.5] }],
  ["3.", { full: 3, parts: [] }],
  ["3.7½", { full: 3, parts: [0.75] }],
  ["3.7h.5", { full: 3, parts: [0.75, 0.5] }],
  ["3.75", undefined],
  ["3.0½.10", { full: 3, parts: [0.05, 1] }],
  ["3.73", undefined],
  ["3.10h", undefined],
  ["three", undefined],
  ["12345", undefined],
])("reads “%s” as full and open containers", (typed, containers) => {
  expect(readContainers(typed)).toEqual(containers);
});

it("writes any containers so that they read back the same", () => {
  const tenths = fc.integer({ min: 0, max: 20 }).map((halves) => halves / 20);
  fc.assert(
    fc.property(fc.integer({ min: 0, max: 999 }), fc.array(tenths, { maxLength: 4 }), (full, parts) => {
      expect(readContainers(writeContainers({ full, parts }))).toEqual({ full, parts });
    }),
  );
});

it.each([
  ["3", 7, "3.7"],
  ["3.7", 5, "3.5"],
  ["3.7.", 5, "3.7.5"],
  ["3.7", 7, "3"],
  ["3.7", 7.5, "3.7½"],
  ["3.7½", 7, "3.7"],
  ["3.7½", 7.5, "3"],
  ["", 0.5, "0.0½"],
  ["", 0, "0.0"],
])("from “%s”, the key of %s tenths makes “%s”", (typed, tenths, after) => {
  expect(withLevel(typed, tenths)).toBe(after);
});

it("steps full containers up and down, keeps open ones, and never goes below none", () => {
  expect(withStep("3.7", 1)).toBe("4.7");
  expect(withStep("0.7", -1)).toBe("0.7");
});

it("reads weights with a plus between, and nothing else", () => {
  expect(readGrams("592+871")).toEqual([592, 871]);
  expect(readGrams("592+")).toEqual([592]);
  expect(readGrams("592-871")).toBeUndefined();
});

const VODKA: SheetItem = {
  item: "Harbour Vodka",
  base: "ml",
  category: "spirit",
  packs: [{ pack: "700 ml", size: 700, emptyG: 500, fullG: null }],
  densityGPerMl: 0.95,
  pieceG: null,
  areas: 1,
  lastCount: null,
  expectedQty: 2100,
  expectedSd: 30,
};

it("takes nothing typed for nothing known, and None for none", () => {
  const draft = draftFor(VODKA, "oz", undefined);
  expect(foundOf(draft)).toEqual({ problem: expect.stringContaining("press None") });
  expect(noneFound(draft)).toMatchObject({ full: 0, parts: [], amount: null });
});

const VENUE = {
  oz: "us",
  houseMl: DEFAULT_HOUSE_ML,
  uncertainty: { reading: 0.04, scaleG: 3, ml: 7, each: 0.6 },
} as unknown as Venue;

const NOTHING = { pack: "700 ml", full: null, parts: [], grossG: [], amount: null, unit: null };

it.each([
  ["3 full and one at half", { ...NOTHING, full: 3, parts: [0.5] }, 2450],
  // (880 g − 500 g) ÷ 0.95 g/ml = 400 ml.
  ["an open bottle on the scale", { ...NOTHING, full: 0, grossG: [880] }, 400],
  ["an amount in litres", { ...NOTHING, pack: null, amount: 1.5, unit: "l" as const }, 1500],
])("reckons %s", (_name, found, quantity) => {
  expect(quantityOf([found], VODKA, VENUE)?.quantity).toBeCloseTo(quantity, 6);
});

const AT = "2026-11-25T10:00:00Z";
const row = (full: number): CountRow => ({
  ...NOTHING,
  count: "Monday",
  at: AT,
  area: "Cellar",
  item: VODKA.item,
  full,
  by: "",
});

it.each([
  ["as much as expected", 3, "2026-11-25T09:00:00Z", null],
  ["a case too many", 9, "2026-11-25T09:00:00Z", { kind: "all", found: 6300, expected: 2100 }],
  [
    "two bottles too few, with the book up to date",
    1,
    "2026-11-25T09:00:00Z",
    { kind: "all", found: 700, expected: 2100 },
  ],
  ["two bottles fewer, when the book has heard nothing for two days", 1, "2026-11-23T09:00:00Z", null],
])("asks to look again only when %s", (_name, full, expectedAt, surprise) => {
  expect(surpriseOf([row(full)], { item: VODKA, area: "Cellar", venue: VENUE, expectedAt })).toEqual(
    surprise,
  );
});

describe("looking again before every area of an item is counted", () => {
  const FRESH = "2026-11-25T09:00:00Z";
  /** Three bottles are expected in cellar and well together; the well never held more than `inWell` ml. */
  const asked = (full: number, inWell: number | null, expectedAt = FRESH) =>
    surpriseOf([row(full)], {
      item: { ...VODKA, areas: 2, expectedQty: 2100, mostSeen: { Cellar: 4200, Well: inWell } },
      area: "Cellar",
      venue: VENUE,
      expectedAt,
    });

  it("asks at once about more than there can be, wherever the rest stands", () => {
    expect(asked(9, 700)).toEqual({ kind: "already", found: 6300, expected: 2100 });
  });

  it("asks about none here when the other area would have to hold more than a bottle above its most", () => {
    // 2100 expected, less the well's 700 at most and a bottle to spare.
    expect(asked(0, 700)).toEqual({ kind: "here", found: 0, expected: 700 });
    expect(asked(1, 700)).toBeNull();
  });

  it.each([
    ["the other area has held as much before", 2100, FRESH],
    ["the other area was counted too seldom to say", null, FRESH],
    ["the book has heard nothing for two days", 700, "2026-11-23T09:00:00Z"],
  ])("does not ask about none here when %s", (_name, inWell, expectedAt) => {
    expect(asked(0, inWell, expectedAt)).toBeNull();
  });
});

it("calls a finding as one would across the cellar", () => {
  expect(allFoundWords([{ ...NOTHING, full: 3, parts: [0.7] }])).toBe("3 full and one at 7/10, of 700 ml");
  expect(allFoundWords([{ ...NOTHING, full: 0 }])).toBe("none");
});
