import type { SheetFacts } from "#db/history/change.ts";
import {
  type AnyFact,
  bookChanges,
  CHANGES_SHOWN,
  type FactChange,
  isNothing,
  type Sheets,
  tellingFields,
  titleField,
} from "#engine/book-changes.ts";

/** What one fact of a sheet is called. */
const ONE: Readonly<Record<string, string>> = {
  venue: "venue",
  salesShapes: "sales shape",
  items: "item",
  drinks: "drink",
  suppliers: "supplier",
  supplierDays: "order day",
  closures: "closed from",
  packs: "pack",
  areas: "shelf place of",
  preps: "yield of",
  specs: "line",
  cuts: "cut",
  ringNames: "ring name",
  modifiers: "modifier",
  events: "event",
  plans: "plan for",
  orders: "order line",
};

/**
 * A change in a few words.
 *
 * A price raised → "1 L from 2026-11-16: price 21 → 23.1"; a line added → "added Lime juice, amount 20, unit ml".
 */
export function changedWords({ before, after }: { before: SheetFacts; after: SheetFacts }): string {
  const words = bookChanges({ before: before as Sheets, after: after as Sheets }).map(wordsOf);
  if (words.length === 0) return "written again, nothing in it changed";
  const more = words.length > CHANGES_SHOWN ? `; and ${words.length - CHANGES_SHOWN} more changes` : "";
  return words.slice(0, CHANGES_SHOWN).join("; ") + more;
}

function wordsOf(change: FactChange): string {
  const { sheet, fact } = change;
  const name = nameOf(sheet, fact);
  if (change.way === "added") return `added ${name}${valuesOf(sheet, fact)}`;
  if (change.way === "takenOut") return `taken out ${name}${valuesOf(sheet, fact)}`;
  const fields = change.fields.map(
    ({ field, was, is }) => `${fieldName(field)} ${textOf(was)} → ${textOf(is)}`,
  );
  return `${name}: ${fields.join(", ")}`;
}

function nameOf(sheet: string, fact: AnyFact): string {
  const title = titleField(sheet);
  const from = title !== "from" && typeof fact.from === "string" ? ` from ${fact.from}` : "";
  return `${ONE[sheet] ?? sheet}${isNothing(fact[title]) ? "" : ` ${textOf(fact[title])}`}${from}`;
}

function valuesOf(sheet: string, fact: AnyFact): string {
  const told = tellingFields(sheet, fact).map((field) => `${fieldName(field)} ${textOf(fact[field])}`);
  return told.length === 0 ? "" : ` (${told.join(", ")})`;
}

/** A field as a person reads it: "priceMinor" → "price (minor units)", "perCase" → "per case". */
function fieldName(field: string): string {
  const words = field
    .replace(/Minor$/, "")
    .replace(/([a-z])([A-Z])/g, "$1 $2")
    .toLowerCase();
  return field.endsWith("Minor") ? `${words} (minor units)` : words;
}

function textOf(value: unknown): string {
  if (isNothing(value)) return "none";
  if (typeof value === "boolean") return value ? "yes" : "no";
  if (Array.isArray(value)) return value.map(textOf).join(", ");
  if (typeof value === "object")
    return Object.values(value as AnyFact)
      .map(textOf)
      .join(" ");
  return String(value);
}
