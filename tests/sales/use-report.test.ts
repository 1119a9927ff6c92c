import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { factsOf } from "#engine/facts.ts";
import type { SaleGroup } from "#engine/sales/tally.ts";
import { useReport } from "#engine/sales/use-report.ts";
import { aSale, handBook } from "#tests/support/hand-bar.ts";

const week = { from: "2026-03-02", to: "2026-03-08" };

function expectedOf(sales: SaleGroup[], options: { from: string; to: string; raw?: boolean } = week) {
  const report = useReport(factsOf(handBook()), sales, options);
  return Object.fromEntries(report.items.map(({ item, expected }) => [item, expected]));
}

/** Monday to Thursday of the week in which the sour grows from 50 to 60 ml of gin. */
const sales = [
  aSale("2026-03-02T20:00:00Z", "House Sour", 3),
  aSale("2026-03-02T21:00:00Z", "HSE SOUR", 1, "Double"),
  aSale("2026-03-02T22:00:00Z", "house sour", -1), // a void
  aSale("2026-03-04T01:30:00Z", "House sour", 2), // Tuesday's business: still 50 ml
  aSale("2026-03-04T19:00:00Z", "House sour", 2), // Wednesday: 60 ml
  aSale("2026-03-04T19:30:00Z", "House sour", 1, "With rum"),
  aSale("2026-03-04T20:00:00Z", "Old hand", 4),
  aSale("2026-03-04T20:30:00Z", "Shot", 2, "Double; No ice"),
  aSale("2026-03-05T20:00:00Z", "Cooler", 5),
  aSale("2026-03-05T20:00:00Z", "Gift card", 1),
  aSale("2026-03-05T21:00:00Z", "Mystery", 2),
];

describe("expected use of the hand-sized bar", () => {
  it("equals the figures worked by hand", () => {
    const use = expectedOf(sales);
    // Sours at 50 ml: 3 + 2 − 1 = 4 on Monday, 2 on Tuesday = 6; at 60 ml: 2. Coolers: 5 × 40.
    expect(use.Gin).toBeCloseTo(6 * 50 + 2 * 60 + 5 * 40, 9);
    // Old hands 4 × 60, the swapped sour 60, two double shots 2 × 60.
    expect(use.Rum).toBeCloseTo(240 + 60 + 120, 9);
    // Sours 9 × 20; cordial 150 ml is two thirds ginger syrup.
    expect(use["Ginger syrup"]).toBeCloseTo(9 * 20 + 100, 9);
    // The ginger syrup batch: 900 ml of 450 ml lots, 400 ml each.
    expect(use["Simple syrup"]).toBeCloseTo(800, 9);
    expect(use.Ginger).toBeCloseTo(200, 9);
    // Simple syrup batch: 2 × 500 g; rich syrup to order: 20 ml × 600/700.
    expect(use.Sugar).toBeCloseTo(1000 + (20 * 600) / 700, 9);
    expect(use.Water).toBeCloseTo(1000 + (20 * 300) / 700, 9);
    expect(use.Soda).toBeCloseTo(500, 9);
    // Flesh: Mon 4 × (1 + 1/8), Tue 2 ×, Wed 3 ×, Thu 50 ml juice / 25.
    expect(use.Lime).toBeCloseTo(9 * 1.125 + 2, 9);
    expect(use).not.toHaveProperty("Lime juice");
    expect(use).not.toHaveProperty("Cordial");
  });

  it("opens every prep and leaves the batches out when asked for raw use", () => {
    const use = expectedOf(sales, { ...week, raw: true });
    // 280 ml ginger syrup: × 400/450 simple syrup, × 500/800 sugar of it; rich syrup as before.
    expect(use.Sugar).toBeCloseTo((280 * (400 / 450) * 500) / 800 + (20 * 600) / 700, 9);
    expect(use.Ginger).toBeCloseTo((280 * 100) / 450, 9);
    expect(use).not.toHaveProperty("Ginger syrup");
  });

  it("lists what the book does not know, and leaves ignored names out of the coverage", () => {
    const report = useReport(factsOf(handBook()), sales, week);
    expect(report.unmapped).toEqual([{ ringName: "Mystery", quantity: 2, net: 20, reason: "unknown" }]);
    // Sold: 3 + 1 − 1 + 2 + 2 + 1 + 4 + 2 + 5 = 19 of 21.
    expect(report.coverage).toBeCloseTo(19 / 21, 12);
  });

  it("counts a sale before the drink's first version as unmapped", () => {
    const facts = factsOf(handBook());
    const report = useReport(facts, [aSale("2025-12-30T20:00:00Z", "Shot")], {
      from: "2025-12-30",
      to: "2025-12-30",
    });
    expect(report.items).toEqual([]);
    expect(report.unmapped).toMatchObject([{ ringName: "Shot", quantity: 1, reason: "no-version" }]);
  });

  it("presses the fruit whose wheels were not cut, but not the same flesh twice", () => {
    // 8 wheels and 25 ml: one lime gives wheels or juice, never both.
    const book = handBook();
    book.modifiers.push({
      modifier: "Wheels",
      effect: "add",
      item: "Lime wheel",
      with: null,
      amount: 7,
      unit: "each",
      factor: null,
    });
    const one = useReport(factsOf(book), [aSale("2026-03-02T20:00:00Z", "House sour", 1, "Wheels")], week);
    expect(one.items.find(({ item }) => item === "Lime")?.expected).toBeCloseTo(2, 9);
    // Peels take skin only: 8 peels come off the lime that is pressed.
    book.cuts[1] = {
      ...book.cuts[1],
      source: "Lime",
      from: null,
      gives: "Lime wheel",
      perPiece: 8,
      unit: "each",
      parts: ["skin"],
    };
    const peeled = useReport(factsOf(book), [aSale("2026-03-02T20:00:00Z", "House sour", 1, "Wheels")], week);
    expect(peeled.items.find(({ item }) => item === "Lime")?.expected).toBeCloseTo(1, 9);
  });

  it("takes a juice back that was sold the day before, in whatever order that day's peels were sold and taken back", () => {
    const book = handBook();
    book.cuts[1] = {
      source: "Lime",
      from: null,
      gives: "Lime wheel",
      perPiece: 10,
      unit: "each",
      parts: ["skin"],
    };
    const peel = {
      effect: "add",
      item: "Lime wheel",
      with: null,
      amount: 1,
      unit: "each",
      factor: null,
    } as const;
    book.modifiers.push({ modifier: "Peel", ...peel });
    const day = [
      aSale("2026-03-02T20:00:00Z", "Cooler", -5),
      ...[1, 2, -1, -2].map((shots) => aSale("2026-03-02T20:00:00Z", "Shot", shots, "Peel")),
    ];
    const { items } = useReport(factsOf(book), day, week);
    // Skin: 0.1 + 0.2 − 0.1 − 0.2 = 0, which floating point makes 2.8e-17. Flesh: −5 coolers of 10 ml, 25 ml a lime.
    expect(items.find(({ item }) => item === "Lime")?.expected).toBeCloseTo(-2, 12);
  });
});

const someSales = fc.array(
  fc.record({
    day: fc.integer({ min: 2, max: 8 }),
    hour: fc.integer({ min: 0, max: 23 }),
    drink: fc.constantFrom("House sour", "Old hand", "Cooler", "Shot"),
    quantity: fc.integer({ min: -2, max: 9 }),
    modifiers: fc.constantFrom("", "Double", "With rum", "Double; With rum", "No ice"),
  }),
  { maxLength: 30 },
);

function salesOf(rows: { day: number; hour: number; drink: string; quantity: number; modifiers: string }[]) {
  return rows.map(({ day, hour, drink, quantity, modifiers }) =>
    aSale(`2026-03-0${day}T${String(hour).padStart(2, "0")}:00:00Z`, drink, quantity, modifiers),
  );
}

describe("explosion", () => {
  it("is linear in the sales, for all that is not fruit", () => {
    fc.assert(
      fc.property(someSales, someSales, (first, second) => {
        const range = { from: "2026-03-01", to: "2026-03-09" };
        const [a, b, both] = [salesOf(first), salesOf(second), salesOf([...first, ...second])].map((list) =>
          expectedOf(list, range),
        );
        const none = expectedOf([], range);
        for (const item of ["Gin", "Rum", "Ginger syrup", "Sugar", "Soda"]) {
          const sum = (a?.[item] ?? 0) + (b?.[item] ?? 0) - (none[item] ?? 0);
          expect(both?.[item] ?? 0).toBeCloseTo(sum, 6);
        }
      }),
    );
  });

  it("never needs more fruit for two halves of a day's list together than apart", () => {
    fc.assert(
      fc.property(someSales, someSales, (first, second) => {
        const range = { from: "2026-03-01", to: "2026-03-09" };
        const limes = (list: SaleGroup[]) => expectedOf(list, range).Lime ?? 0;
        const positive = (rows: Parameters<typeof salesOf>[0]) =>
          salesOf(rows.map((row) => ({ ...row, quantity: Math.abs(row.quantity) })));
        const apart = limes(positive(first)) + limes(positive(second));
        expect(limes([...positive(first), ...positive(second)])).toBeLessThanOrEqual(apart + 1e-9);
      }),
    );
  });
});
