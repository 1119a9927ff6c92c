import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { factsOf } from "#engine/facts.ts";
import { explainImport } from "#engine/sales/explain.ts";
import { SalesPacker, unionOfBlocks } from "#engine/sales/packed/packed-sales.ts";
import { NO_TALLY, tallyOf } from "#engine/sales/packed/tally.ts";
import { TextTable } from "#engine/sales/packed/texts.ts";
import type { SaleGroup } from "#engine/sales/tally.ts";
import { TallyUse } from "#engine/sales/tally-use.ts";
import { useReport } from "#engine/sales/use-report.ts";
import { addDays } from "#engine/time.ts";
import { aSale, handBook } from "#tests/support/hand-bar.ts";

/** The hand bar's book without its batches, which are no sales. */
function facts() {
  const book = handBook();
  const none = { item: null, with: null, amount: null, unit: null, factor: null };
  return factsOf({
    ...book,
    batches: [],
    batchInputs: [],
    modifiers: [
      ...book.modifiers,
      { ...none, modifier: "Extra gin", effect: "add", item: "Gin", amount: 10, unit: "ml" },
      { ...none, modifier: "No gin", effect: "remove", item: "Gin" },
      { ...none, modifier: "Half the gin", effect: "times", item: "Gin", factor: 0.5 },
      { ...none, modifier: "Wheel", effect: "add", item: "Lime wheel", amount: 3, unit: "each" },
      { ...none, modifier: "No soda", effect: "remove", item: "Soda" },
    ],
  });
}

function talliesOf(groups: readonly SaleGroup[], texts: TextTable) {
  const packer = new SalesPacker(texts);
  for (const { businessDate, at, ringName, modifiers, quantity, netMinor } of groups)
    packer.addLine({
      businessDate,
      at,
      ringName,
      modifiers,
      quantity,
      grossMinor: null,
      netMinor,
      check: null,
      lineNo: null,
    });
  return [...packer.finish()].map(({ businessDate, block }) => ({
    businessDate,
    tally: tallyOf(unionOfBlocks([{ packed: block, replacesSums: false }])),
  }));
}

const someSales = fc.array(
  fc.record({
    day: fc.integer({ min: 1, max: 9 }),
    ring: fc.constantFrom(
      "House sour",
      "HSE SOUR",
      "Old hand",
      "Cooler",
      "Shot",
      "Gift card",
      "Mystery",
      "Gin",
    ),
    quantity: fc.integer({ min: -2, max: 9 }),
    modifiers: fc.constantFrom(
      "",
      "Double",
      "With rum",
      "Double; With rum",
      "No ice",
      "Unheard of",
      "No ice; Double",
      "Extra gin",
      "No gin",
      "Half the gin",
      "Wheel; Double",
      "Extra gin; No gin",
      "No gin; Extra gin",
      "Extra gin; Half the gin",
      "With rum; No gin",
      "No soda",
      "Extra gin; No soda; Double",
    ),
  }),
  { maxLength: 40 },
);

describe("use from tallies", () => {
  it("is the use of the report, items, fruit, coverage and unknown names alike", () => {
    fc.assert(
      fc.property(someSales, (rows) => {
        const bar = facts();
        const groups = rows.map(({ day, ring, quantity, modifiers }) =>
          aSale(`2026-03-0${day}T20:00:00Z`, ring, quantity, modifiers),
        );
        const report = useReport(bar, groups, { from: "2026-03-01", to: "2026-03-09" });
        const texts = new TextTable();
        const use = new TallyUse(bar.catalogue, texts);
        const amounts = new Float64Array(use.items.length);
        for (const { businessDate, tally } of talliesOf(groups, texts)) {
          use.addDay(businessDate, tally, amounts);
          use.countDay(businessDate, tally);
        }
        const wanted = new Map(report.items.map(({ item, expected }) => [item, expected]));
        for (const [number, item] of use.items.entries())
          expect(amounts[number], item).toBeCloseTo(wanted.get(item) ?? 0, 6);
        const { quantity, mappedQuantity } = use.coverage;
        if (quantity !== 0) expect(mappedQuantity / quantity).toBeCloseTo(report.coverage, 9);
        const plain = (list: { ringName: string; quantity: number }[]) =>
          list.map(({ ringName, quantity }) => `${ringName} ${quantity}`).sort();
        expect(plain([...use.unmapped.values()])).toEqual(plain(report.unmapped));
      }),
      { numRuns: 200 },
    );
  });
});

describe("an import explained", () => {
  const bar = facts();
  const monday = "2026-03-02";

  function explained(groups: SaleGroup[], soldOn: Record<string, number>) {
    const texts = new TextTable();
    const changes = talliesOf(groups, texts).map(({ businessDate, tally }) => ({
      businessDate,
      isMoved: true,
      before: NO_TALLY,
      after: tally,
      divided: null,
    }));
    const totals = Object.entries(soldOn)
      .map(([businessDate, quantity]) => ({ businessDate, quantity }))
      .sort((a, b) => (a.businessDate < b.businessDate ? -1 : 1));
    return explainImport(bar, changes, texts, totals);
  }

  it("says what moved, how much of it the book knows by quantity and by money", () => {
    const found = explained(
      [aSale(`${monday}T20:00:00Z`, "House sour", 3), aSale(`${monday}T20:00:00Z`, "Mystery", 1)],
      { [monday]: 4 },
    );
    // Three sours at 50 ml of gin; each sale of the hand bar brings ten.
    expect(found.moved.find(({ item }) => item === "Gin")).toMatchObject({
      before: 0,
      after: 150,
      base: "ml",
    });
    expect(found.coverage.quantity).toBeCloseTo(3 / 4, 12);
    expect(found.unmapped).toMatchObject([{ ringName: "Mystery", quantity: 1, reason: "unknown" }]);
  });

  it("names the days between the files on which nothing was sold, but not the weekday the bar is shut", () => {
    const open = Array.from({ length: 28 }, (_, day) => addDays(monday, day)).filter(
      // Shut on Sundays, and no file for 19 March, a Thursday.
      (date) => new Date(date).getUTCDay() !== 0 && date !== "2026-03-19",
    );
    const soldOn = Object.fromEntries(open.map((date) => [date, 100]));
    const groups = open.slice(10).map((date) => aSale(`${date}T20:00:00Z`, "House sour", 100));
    expect(explained(groups, soldOn).daysMissing).toEqual(["2026-03-19"]);
  });

  it("names a day that sold a tenth of what its weekday usually sells", () => {
    const mondays = [0, 7, 14, 21, 28].map((days) => addDays(monday, days));
    const soldOn = Object.fromEntries(mondays.map((date, at) => [date, at === 2 ? 9 : 100 + at]));
    const groups = mondays.map((date) => aSale(`${date}T20:00:00Z`, "House sour", soldOn[date]));
    expect(explained(groups, soldOn).daysUnlike).toEqual([{ date: mondays[2], quantity: 9, usual: 102 }]);
  });
});
