import type { Book } from "#engine/book.ts";
import type { Demand } from "#engine/demand/distribution.ts";
import { factsOf } from "#engine/facts.ts";
import { type PlanInput, planPrep } from "#engine/prep/plan.ts";
import type { DrinksDemand } from "#engine/prep/taken.ts";
import type { Batch, CountRow } from "#engine/stock/movement.ts";
import { addDays, type BusinessDate } from "#engine/time.ts";
import { anEmptyBook, anItem, aPrep, specLines } from "#tests/support/hand-bar.ts";

/**
 * A kitchen to reckon by hand.
 *
 * - Simple syrup (21 days): 1000 g sugar + 1000 ml water → 1626 ml.
 * - Lime cordial (7 days, stands 12 h): 500 ml simple syrup + 250 ml lime juice → 700 ml.
 * - Lime juice (1 day): a lime gives 25 ml, of its flesh.
 * - Lime wheel (to order): 8 a lime, of skin and flesh. Lime peel (to order): 4 a lime, of skin.
 */
export function prepBook(): Book {
  return {
    ...anEmptyBook(),
    items: [
      anItem({ name: "Sugar", base: "g", brix: 100 }),
      anItem({ name: "Water", base: "ml", brix: 0 }),
      anItem({ name: "Lime", base: "each", pieceG: 67 }),
      anItem({ name: "Lime juice", base: "ml", inHouse: true, shelfLifeDays: 1 }),
      anItem({ name: "Lime wheel", base: "each", inHouse: true, stocked: false }),
      anItem({ name: "Lime peel", base: "each", inHouse: true, stocked: false }),
      anItem({ name: "Simple syrup", base: "ml", inHouse: true, shelfLifeDays: 21 }),
      anItem({ name: "Lime cordial", base: "ml", inHouse: true }),
    ],
    preps: [
      aPrep("Simple syrup", "2026-01-01", 1626),
      { ...aPrep("Lime cordial", "2026-01-01", 700), shelfLifeDays: 7, standingHours: 12, activeMinutes: 30 },
    ],
    specs: [
      ...specLines("Simple syrup", "2026-01-01", ["1000 g Sugar", "1000 ml Water"]),
      ...specLines("Lime cordial", "2026-01-01", ["500 ml Simple syrup", "250 ml Lime juice"]),
    ],
    cuts: [
      { source: "Lime", from: null, gives: "Lime juice", perPiece: 25, unit: "ml", parts: ["flesh"] },
      {
        source: "Lime",
        from: null,
        gives: "Lime wheel",
        perPiece: 8,
        unit: "each",
        parts: ["skin", "flesh"],
      },
      { source: "Lime", from: null, gives: "Lime peel", perPiece: 4, unit: "each", parts: ["skin"] },
    ],
  };
}

/** Drinks that take the same every day, for sure; with a relative standard deviation if wanted. */
export function daily(
  items: Record<string, number>,
  cuts: Record<string, number> = {},
  relativeSd = 0,
): DrinksDemand {
  const over = (amounts: Record<string, number>, days: number) =>
    new Map<string, Demand>(
      Object.entries(amounts).map(([item, amount]) => [
        item,
        { mean: amount * days, variance: (amount * relativeSd) ** 2 * days },
      ]),
    );
  return {
    itemsOver: ({ from, to }) => over(items, 1 + daysFrom(from, to)),
    cutsOn: () => over(cuts, 1),
  };
}

function daysFrom(from: BusinessDate, to: BusinessDate): number {
  let days = 0;
  while (addDays(from, days) < to) days += 1;
  return days;
}

export function aBatch(prep: string, at: string, made: number): Batch {
  return { at, prep, made, unit: "ml", by: "", note: "" };
}

/** A count of one item in its only area. */
export function counted(
  item: string,
  at: string,
  amount: number,
  unit: "ml" | "g" | "each" = "ml",
): CountRow {
  return {
    count: at,
    at,
    area: "Fridge",
    item,
    pack: null,
    full: null,
    parts: [],
    grossG: [],
    amount,
    unit,
    by: "",
  };
}

/** The plan of a book for Monday 2 March 2026, or as asked. */
export function planOf(book: Book, demand: DrinksDemand, more: Partial<PlanInput> = {}) {
  return planPrep({ facts: factsOf(book), sales: [], date: "2026-03-02", demand, ...more });
}
