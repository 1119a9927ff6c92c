import type { SheetFacts } from "#db/history/change.ts";
import { readPast } from "#db/history/read-past.ts";
import type { Db } from "#db/open.ts";
import { foldName } from "#engine/name.ts";
import { type ClosedPast, isDateClosed, type Touch } from "#engine/stock/closed-past.ts";
import type { BusinessDate } from "#engine/time.ts";

type Fact = Record<string, unknown>;
type Past = ReturnType<typeof readPast>;

/**
 * What a week's figures depend on, sheet by sheet: all fields but the `free` ones (a note, a method, a menu price), so that
 * one added later is held until somebody says otherwise. `isPast` says which of the facts reach into the closed past.
 */
type Rule = {
  free: readonly string[];
  says: (fact: Fact) => string;
  isPast: (fact: Fact, closed: ClosedPast, past: Past) => boolean;
};

const always = () => true;
const dateOf = ({ from }: Fact) => (from ?? null) as BusinessDate | null;
const isFromPast = (fact: Fact, closed: ClosedPast) => isDateClosed(dateOf(fact), closed);
const named = (fact: Fact, field: string) => String(fact[field]);

const RULES: Record<string, Rule> = {
  specs: {
    free: ["line", "note"],
    says: (fact) => `spec of "${named(fact, "makes")}"`,
    isPast: isFromPast,
  },
  preps: {
    free: ["batchStep", "vesselMax", "activeMinutes", "standingHours", "shelfLifeDays", "method"],
    says: (fact) => `yield of "${named(fact, "prep")}"`,
    isPast: isFromPast,
  },
  cuts: {
    free: [],
    says: (fact) => `cut "${named(fact, "gives")}" of "${named(fact, "source")}"`,
    isPast: (fact, closed, past) =>
      isFromPast(fact, closed) && (past.hasItem(named(fact, "gives")) || past.hasItem(named(fact, "source"))),
  },
  packs: {
    free: ["code", "gtin", "split", "depositMinor"],
    says: (fact) => `pack "${named(fact, "pack")}" of "${named(fact, "item")}"`,
    isPast: (fact, closed, past) =>
      isFromPast(fact, closed) && (past.hasItem(named(fact, "item")) || past.isSold(named(fact, "item"))),
  },
  items: {
    free: ["category", "shelfLifeDays", "allergens", "serviceLevel", "par", "parReason", "note"],
    says: (fact) => `how "${named(fact, "name")}" is measured`,
    isPast: (fact, _, past) => past.hasItem(named(fact, "name")) || past.isSold(named(fact, "name")),
  },
  drinks: {
    free: ["priceMinor", "glass", "garnishNote", "method", "allergens", "onMenuFrom", "onMenuUntil"],
    says: (fact) => `how "${named(fact, "name")}" is built`,
    isPast: (fact, _, past) => past.hasDrink(named(fact, "name")) || past.isSold(named(fact, "name")),
  },
  ringNames: {
    free: [],
    says: (fact) => `ring name "${named(fact, "ringName")}", which was sold in the closed weeks`,
    isPast: (fact, _, past) => past.isSold(named(fact, "ringName")),
  },
  modifiers: {
    free: [],
    says: (fact) => `modifier "${named(fact, "modifier")}", which was rung in the closed weeks`,
    isPast: (fact, _, past) => past.isModifierSold(named(fact, "modifier")),
  },
  venue: {
    // How sure and how loud is how the bar judges its weeks, not what they were.
    free: ["name", "show", "serviceLevel", "uncertainty", "thresholds", "country", "region", "keepStaff"],
    says: () => "how the venue measures",
    isPast: always,
  },
};

/** What of a change to the book reaches into the closed past. */
export function bookTouches(
  db: Db,
  { before, after }: { before: SheetFacts; after: SheetFacts },
  closed: ClosedPast,
): Touch[] {
  const past = readPast(db, closed);
  return Object.entries(RULES).flatMap(([sheet, { free, says, isPast }]) => {
    const [was, is] = [factsOf(before, sheet), factsOf(after, sheet)];
    const differing = [...unmatched(was, is, free), ...unmatched(is, was, free)];
    return differing
      .filter((fact) => isPast(fact, closed, past))
      .map((fact): Touch => ({ what: says(fact), on: dateOf(fact) }));
  });
}

function factsOf(facts: SheetFacts, sheet: string): Fact[] {
  return (facts as Record<string, Fact[]>)[sheet] ?? [];
}

/** The facts of one list that no fact of another equals in the fields that matter. */
function unmatched(facts: readonly Fact[], others: readonly Fact[], free: readonly string[]): Fact[] {
  const held = (fact: Fact) =>
    JSON.stringify(
      Object.entries(fact)
        .filter(([field]) => !free.includes(field))
        .map(([field, value]) => [field, typeof value === "string" ? foldName(value) : value]),
    );
  const known = new Set(others.map(held));
  return facts.filter((fact) => !known.has(held(fact)));
}
