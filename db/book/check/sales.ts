import { type CheckContext, refuseRepeats, wholeRows, wrong } from "#db/book/check/context.ts";
import { neitherItemNorDrink } from "#db/book/check/specs.ts";
import { quote } from "#db/book/quote.ts";
import { takeOut } from "#db/book/resolve.ts";
import type { Row } from "#db/book/sheet.ts";
import { SHEETS } from "#db/book/sheets/all.ts";
import { foldName } from "#engine/name.ts";
import type { Modifier, RingName } from "#engine/sales/ring.ts";

/** Checks ring-names.csv and gives its facts: a drink goes before an item of the same name. */
export function checkRingNames(context: CheckContext): RingName[] {
  const meanings = new Map<number, RingName["soldAs"]>();
  for (const row of context.rows.ringNames) {
    const { soldAs } = row.cells;
    if (soldAs === undefined) continue;
    const meaning = meaningOf(context, soldAs);
    if (meaning !== undefined) meanings.set(row.row, meaning);
    else {
      wrong(
        context,
        "ringNames",
        row,
        "sold_as",
        `${neitherItemNorDrink(context, soldAs)} (or write ignore)`,
      );
      takeOut(row, "soldAs");
    }
  }
  refuseRepeats(context, "ringNames", "ring_name", ({ ringName }) => [foldName(ringName)], "this ring name");
  return wholeRows(context, "ringNames").flatMap(({ row, fact }) => {
    const soldAs = meanings.get(row.row);
    if (soldAs === undefined) return [];
    const ring: RingName = { ...fact, soldAs };
    checkRingAmount(context, row, ring);
    return [ring];
  });
}

function meaningOf({ names }: CheckContext, soldAs: string): RingName["soldAs"] | undefined {
  const folded = foldName(soldAs);
  const drink = names.drink.get(folded);
  if (drink !== undefined) return { kind: "drink", drink };
  const item = names.item.get(folded);
  if (item !== undefined) return { kind: "item", item };
  return folded === "ignore" ? { kind: "ignore" } : undefined;
}

function checkRingAmount(
  context: CheckContext,
  row: CheckContext["rows"]["ringNames"][number],
  { soldAs, amount, unit }: RingName,
): void {
  if ((amount === null) !== (unit === null)) {
    const [empty, full] = amount === null ? ["amount", "a unit"] : ["unit", "an amount"];
    wrong(
      context,
      "ringNames",
      row,
      empty ?? "",
      `the cell is empty, though there is ${full}; fill in both or neither`,
    );
    return;
  }
  const place = { file: SHEETS.ringNames.file, row: row.row };
  if (soldAs.kind !== "item") {
    if (amount === null) return;
    context.findings.notice(
      { ...place, column: "amount" },
      "only an item poured straight has an amount; it is not used",
    );
    return;
  }
  if (unit !== null) {
    const trouble = context.units.trouble(soldAs.item, unit);
    if (trouble !== undefined) wrong(context, "ringNames", row, "unit", trouble);
  } else if (!context.names.packs.has(soldAs.item) && context.units.item(soldAs.item)?.base !== "each") {
    const message = `${quote(soldAs.item)} has no pack, so a sale of it needs an amount and a unit; until then it counts as unmapped`;
    context.findings.notice({ ...place, column: "amount" }, message);
  }
}

/** The columns that each effect must have. */
const NEEDS: Record<Modifier["effect"], readonly ("item" | "with" | "amount" | "unit" | "factor")[]> = {
  swap: ["item", "with"],
  add: ["item", "amount", "unit"],
  remove: ["item"],
  times: ["factor"],
  none: [],
};

/** Checks modifiers.csv: that each effect has what it needs, in units its items can take. */
export function checkModifiers(context: CheckContext): void {
  for (const { row, fact } of wholeRows(context, "modifiers")) {
    for (const field of NEEDS[fact.effect]) {
      if (fact[field] !== null) continue;
      wrong(context, "modifiers", row, field, `the cell is empty; the effect ${fact.effect} needs it`);
    }
    if (!row.isWhole) continue;
    if (fact.effect === "swap" && (fact.amount === null) !== (fact.unit === null)) {
      const empty = fact.amount === null ? "amount" : "unit";
      wrong(
        context,
        "modifiers",
        row,
        empty,
        "the cell is empty; a swap has both an amount and a unit, or neither",
      );
    } else checkModifierUnit(context, row, fact);
  }
}

function checkModifierUnit(context: CheckContext, row: Row<Modifier>, fact: Modifier): void {
  const target = fact.effect === "swap" ? fact.with : fact.item;
  if (target === null || (fact.effect !== "swap" && fact.effect !== "add")) return;
  const units = fact.unit === null ? unitsSwapped(context, fact.item) : new Set([fact.unit]);
  for (const unit of units) {
    const trouble = context.units.trouble(target, unit);
    if (trouble !== undefined)
      wrong(context, "modifiers", row, fact.unit === null ? "with" : "unit", trouble);
  }
}

/** The units in which drinks ask for an item; a swap without an amount of its own keeps them. */
function unitsSwapped(context: CheckContext, item: string | null) {
  const lines = wholeRows(context, "specs").filter(
    ({ fact }) => fact.item === item && context.names.drink.has(foldName(fact.makes)),
  );
  return new Set(lines.map(({ fact }) => (fact.unit === "top" ? "ml" : fact.unit)));
}
