import { expect, it } from "vitest";
import type { Facts } from "#engine/facts.ts";
import { DEFAULT_UNCERTAINTY } from "#engine/measure/uncertainty.ts";
import { uncertaintyBudget } from "#engine/variance/budget.ts";
import { drinksThatUsed } from "#engine/variance/drinks-that-used.ts";
import { varianceReport } from "#engine/variance/report.ts";
import { salesNeeded } from "#engine/variance/sales-needed.ts";
import { DEFAULT_THRESHOLDS } from "#engine/variance/verdict.ts";
import type { Venue } from "#engine/venue.ts";
import { anEmptyBook } from "#tests/support/hand-bar.ts";
import { barOf, counted, countNamed, cut, drink, item, pack, prep, sold, spec } from "./small-bar.ts";

// One week of a bar with one gin, one syrup and limes, worked by hand.
const OPEN = "2026-06-01T10:00:00Z";
const CLOSE = "2026-06-08T10:00:00Z";
const facts = barOf({
  items: [
    item("Dry gin"),
    item("Sugar", { base: "g", category: "larder" }),
    item("Water", { category: "larder" }),
    item("Syrup", { category: "prep", inHouse: true }),
    item("Lime", { base: "each", category: "fruit" }),
    item("Lime juice", { category: "juice", inHouse: true, stocked: false }),
    item("Lime peel", { category: "garnish", base: "each", stocked: false }),
    item("Tonic", { category: "mixer" }),
    item("Vodka"),
  ],
  packs: [
    pack("Dry gin", 700),
    pack("Sugar", 1000, { unit: "g" }),
    pack("Lime", 1, { unit: "each" }),
    pack("Tonic", 200),
    pack("Vodka", 700),
  ],
  areas: [
    { area: "Bar", item: "Vodka", shelf: 1 },
    { area: "Cellar", item: "Vodka", shelf: 1 },
  ],
  drinks: [drink("Gimlet")],
  preps: [prep("Syrup", 1000)],
  specs: [
    ...spec("Gimlet", "2026-01-01", "60 ml Dry gin", "20 ml Syrup", "25 ml Lime juice", "1 each Lime peel"),
    ...spec("Syrup", "2026-01-01", "600 g Sugar", "500 ml Water"),
  ],
  cuts: [cut("Lime", "Lime juice", 25, "ml", ["flesh"]), cut("Lime", "Lime peel", 2, "each", ["skin"])],
  counts: [
    counted("A", OPEN, "Dry gin", { full: 3, parts: [0.5] }),
    counted("A", OPEN, "Sugar", { full: 4 }),
    counted("A", OPEN, "Syrup", { amount: 500, unit: "ml" }),
    counted("A", OPEN, "Lime", { amount: 80, unit: "each" }),
    counted("A", OPEN, "Vodka", { full: 2 }),
    counted("B", CLOSE, "Dry gin", { full: 1, parts: [0.2] }),
    counted("B", CLOSE, "Sugar", { full: 3, parts: [0.4] }),
    counted("B", CLOSE, "Syrup", { amount: 490, unit: "ml" }),
    counted("B", CLOSE, "Lime", { amount: 28, unit: "each" }),
    counted("B", CLOSE, "Vodka", { full: 2 }),
  ],
  deliveries: [
    {
      at: "2026-06-03T10:00:00Z",
      supplier: "Quarry Drinks",
      invoice: "1",
      item: "Dry gin",
      pack: "700 ml",
      quantity: 2,
      of: "container",
      priceTotalMinor: null,
      depositMinor: null,
      empties: null,
      by: "",
    },
  ],
  batches: [{ at: "2026-06-04T10:00:00Z", prep: "Syrup", made: 1000, unit: "ml", by: "", note: "" }],
  losses: [
    { at: "2026-06-05T22:00:00Z", kind: "spill", what: "Gimlet", amount: 1, unit: "serve", by: "", note: "" },
  ],
});
const sales = [
  sold("2026-06-05", "Gimlet", 30),
  sold("2026-06-06", "gimlet", 20),
  sold("2026-06-06", "Surprise", 2),
];
const costPerBase = new Map<string, number | null>([
  ["Dry gin", 0.025],
  ["Sugar", 0.002],
  ["Syrup", 0.0012],
  ["Lime", 0.3],
  ["Lime juice", 0.012],
]);
const report = varianceReport({
  facts,
  sales,
  opening: countNamed(facts, "A"),
  closing: countNamed(facts, "B"),
  costPerBase,
});
const line = (name: string) => report.items.find((entry) => entry.item === name);

it("names the counts and their moments on the venue's clock", () => {
  expect(report).toMatchObject({
    opening: "A",
    closing: "B",
    from: "2026-06-01 11:00",
    to: "2026-06-08 11:00",
  });
});

it("finds what gin was used, expected, spilled and left unexplained", () => {
  // Opening 2450 + 1400 received − 840 = 3010 used; 50 gimlets × 60 = 3000; one spilled 60; −50 left.
  expect(line("Dry gin")).toMatchObject({
    openingQty: 2450,
    received: 1400,
    closingQty: 840,
    used: 3010,
    expected: 3000,
    losses: 60,
    unexplained: -50,
    cost: -1.25,
    verdict: "quiet",
  });
});

it("counts both open bottles and fifty pours into the gin's uncertainty", () => {
  const { reading, pourJigger } = DEFAULT_UNCERTAINTY;
  const sd = Math.sqrt(2 * (reading * 700) ** 2 + 50 * (60 * pourJigger) ** 2);
  expect(line("Dry gin")?.sd).toBeCloseTo(sd, 9);
  expect(line("Dry gin")?.ratio).toBeCloseTo(-50 / sd, 9);
  const budget = uncertaintyBudget(facts, sales, "Dry gin", countNamed(facts, "A"), countNamed(facts, "B"));
  expect(Object.values(budget?.shares ?? {}).reduce((a, b) => a + b)).toBeCloseTo(1, 12);
  expect(budget?.shares.pours).toBeCloseTo((50 * 9) / sd ** 2, 9);
  expect(budget?.text).toMatch(/ml is how exactly the (opening|closing) count could be read/);
});

it("lets the batch use sugar and make syrup, and the drinks use the syrup", () => {
  expect(line("Sugar")).toMatchObject({ used: 600, expected: 600, unexplained: 0, ratio: 0 });
  expect(line("Syrup")).toMatchObject({
    made: 1000,
    used: 1010,
    expected: 1000,
    losses: 20,
    unexplained: -10,
  });
});

it("asks limes for juice and peel by the larger share, the spilled one on its own", () => {
  // 50 drinks: 50 limes for juice, 25 for peel; the spilled one 1 lime.
  expect(line("Lime")).toMatchObject({ used: 52, expected: 50, losses: 1, unexplained: 1 });
});

it("lists what was not counted, and what was counted in only some of its areas", () => {
  expect(report.notCounted).toEqual(["Tonic"]);
  expect(report.notCountedIn).toEqual({ Vodka: ["Cellar"] });
  expect(line("Vodka")).toBeUndefined();
});

it("adds up the cost of what was used, a prep by its inputs once", () => {
  const used = 3010 * 0.025 + 600 * 0.002 + 10 * 0.0012 + 52 * 0.3;
  expect(report.totals.usedCost).toBeCloseTo(used, 9);
  expect(report.totals.expectedCost).toBeCloseTo(3000 * 0.025 + 600 * 0.002 + 0 + 50 * 0.3, 9);
  expect(report.totals.unexplainedCost).toBeCloseTo(-50 * 0.025 - 10 * 0.0012 + 0.3, 9);
  expect(report.totals.sales).toBe(52 * 12);
  expect(report.totals.pourCostPct).toBeCloseTo((used / 624) * 100, 9);
});

it("orders items by money, those without a known cost last", () => {
  expect(report.items.map((entry) => entry.item)).toEqual(["Dry gin", "Lime", "Syrup", "Sugar"]);
});

it("shows which drinks used the gin and how much each", () => {
  const uses = drinksThatUsed(facts, sales, "Dry gin", countNamed(facts, "A"), countNamed(facts, "B"));
  expect(uses).toEqual([{ what: "Gimlet", kind: "sale", serves: 50, amountPerServe: 60, amount: 3000 }]);
  const sugar = drinksThatUsed(facts, sales, "Sugar", countNamed(facts, "A"), countNamed(facts, "B"));
  expect(sugar).toEqual([{ what: "Syrup", kind: "batch", serves: 1, amountPerServe: 600, amount: 600 }]);
});

it("compares an item counted late in the evening at its own time", () => {
  // The well was counted at 10:00, the back bar at 20:00; ten gimlets were sold at 19:00 and five at 21:00.
  const late = "2026-06-08T19:00:00Z";
  const gone = (of: string, ml: number, at: string) => [
    counted("A", OPEN, of, { amount: 5000, unit: "ml" }),
    counted("B", at, of, { amount: 5000 - ml, unit: "ml" }),
  ];
  const evening = barOf({
    items: [item("Dry gin"), item("Aperitif")],
    packs: [pack("Dry gin", 700), pack("Aperitif", 700)],
    drinks: [drink("Pink Gin")],
    specs: spec("Pink Gin", "2026-01-01", "60 ml Dry gin", "10 ml Aperitif"),
    counts: [...gone("Dry gin", 1200, CLOSE), ...gone("Aperitif", 300, late)],
  });
  const at = (moment: string, quantity: number) => sold("2026-06-08", "Pink Gin", quantity, { at: moment });
  const { items, totals } = varianceReport({
    facts: evening,
    sales: [
      sold("2026-06-05", "Pink Gin", 20),
      at("2026-06-08T18:00:00Z", 10),
      at("2026-06-08T20:00:00Z", 5),
    ],
    opening: countNamed(evening, "A"),
    closing: countNamed(evening, "B"),
    costPerBase,
  });
  const expected = Object.fromEntries(items.map((entry) => [entry.item, entry.expected]));
  expect(expected).toEqual({ "Dry gin": 1200, Aperitif: 300 });
  expect(items.map(({ unexplained }) => unexplained)).toEqual([0, 0]);
  // The count ends with its last entry; the five later ones belong to the next week.
  expect(totals.sales).toBe(30 * 12);
});

it("says which days of sales a variance looks at, the weeks beside included", () => {
  const weekly = (name: string, at: string) => counted(name, at, "Dry gin", { full: 1 });
  const months = barOf({
    items: [item("Dry gin")],
    packs: [pack("Dry gin", 700)],
    counts: [
      weekly("1", "2026-06-01T10:00:00Z"),
      weekly("2", "2026-06-08T10:00:00Z"),
      weekly("3", "2026-06-15T10:00:00Z"),
      weekly("4", "2026-06-22T10:00:00Z"),
      weekly("5", "2026-06-29T10:00:00Z"),
    ],
  });
  const needed = salesNeeded(months, countNamed(months, "3"), countNamed(months, "4"));
  expect(needed.from <= "2026-06-07").toBe(true);
  expect(needed.from > "2026-06-01").toBe(true);
  expect(needed.to).toBe("2026-06-29");
});

it("chases by the limits that the venue set, and by the usual ones where it set none", () => {
  const bar = (thresholds?: Venue["thresholds"]) =>
    barOf({
      items: [item("Gin")],
      packs: [pack("Gin", 700)],
      counts: [
        counted("A", "2026-03-02T10:00:00Z", "Gin", { full: 5, parts: [0.5] }),
        counted("B", "2026-03-09T10:00:00Z", "Gin", { full: 5, parts: [0.2] }),
      ],
      ...(thresholds === undefined ? {} : { venue: { ...anEmptyBook().venue, name: "Limits", thresholds } }),
    });
  const verdictOf = (facts: Facts) =>
    varianceReport({
      facts,
      sales: [],
      opening: countNamed(facts, "A"),
      closing: countNamed(facts, "B"),
      costPerBase: new Map([["Gin", 0.03]]),
    }).items[0]?.verdict;
  // 0.3 of a bottle, 210 ml at 3 cents: 6.30, and 0.3 ÷ (√2 · 0.041) = 5.2 standard uncertainties.
  expect(verdictOf(bar())).toBe("watch");
  expect(verdictOf(bar({ ...DEFAULT_THRESHOLDS, chaseMoney: 5 }))).toBe("chase");
  expect(verdictOf(bar({ ...DEFAULT_THRESHOLDS, watchRatio: 6, chaseRatio: 6 }))).toBe("quiet");
});
