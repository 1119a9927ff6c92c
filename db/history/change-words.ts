import type { SheetFacts } from "#db/history/change.ts";

type Fact = Record<string, unknown>;

/** What one fact of a sheet is called, by which field, and which of its fields only say whose it is. */
const SHEETS: Record<string, { one: string; title: string; keys: readonly string[] }> = {
  venue: { one: "venue", title: "", keys: [] },
  salesShapes: { one: "sales shape", title: "files", keys: ["files"] },
  items: { one: "item", title: "name", keys: ["name"] },
  drinks: { one: "drink", title: "name", keys: ["name"] },
  suppliers: { one: "supplier", title: "name", keys: ["name"] },
  supplierDays: { one: "order day", title: "orderDay", keys: ["supplier", "orderDay"] },
  closures: { one: "closed from", title: "from", keys: ["supplier"] },
  packs: { one: "pack", title: "pack", keys: ["item", "pack", "supplier", "from"] },
  areas: { one: "shelf place of", title: "item", keys: ["area", "item"] },
  preps: { one: "yield of", title: "prep", keys: ["prep", "from"] },
  specs: { one: "line", title: "item", keys: ["makes", "from", "item"] },
  cuts: { one: "cut", title: "gives", keys: ["source", "gives", "from"] },
  ringNames: { one: "ring name", title: "ringName", keys: ["ringName"] },
  modifiers: { one: "modifier", title: "modifier", keys: ["modifier", "effect"] },
  events: { one: "event", title: "event", keys: ["date", "event"] },
  plans: { one: "plan for", title: "drink", keys: ["date", "drink"] },
  orders: { one: "order line", title: "item", keys: ["order", "item", "pack"] },
};

const SHOWN = 4;

/**
 * A change in a few words.
 *
 * A price raised → "1 L from 2026-11-16: price 21 → 23.1"; a line added → "added Lime juice, amount 20, unit ml".
 */
export function changedWords({ before, after }: { before: SheetFacts; after: SheetFacts }): string {
  const sheets = Object.keys(SHEETS).filter((sheet) => has(before, sheet) || has(after, sheet));
  const words = sheets.flatMap((sheet) => sheetWords(sheet, factsIn(before, sheet), factsIn(after, sheet)));
  if (words.length === 0) return "written again, nothing in it changed";
  const more = words.length > SHOWN ? `; and ${words.length - SHOWN} more changes` : "";
  return words.slice(0, SHOWN).join("; ") + more;
}

function has(facts: SheetFacts, sheet: string): boolean {
  return sheet in facts;
}

function factsIn(facts: SheetFacts, sheet: string): Fact[] {
  return (facts as Record<string, Fact[]>)[sheet] ?? [];
}

function sheetWords(sheet: string, gone: readonly Fact[], come: readonly Fact[]): string[] {
  const { keys } = SHEETS[sheet] ?? { keys: [] };
  const left = [...gone];
  const words = come.map((fact) => {
    const at = left.findIndex((old) => keyOf(old, keys) === keyOf(fact, keys));
    if (at === -1) return `added ${nameOf(sheet, fact)}${valuesOf(fact, keys)}`;
    const [old = {}] = left.splice(at, 1);
    return `${nameOf(sheet, fact)}: ${fieldWords(old, fact, keys)}`;
  });
  return [...words, ...left.map((fact) => `taken out ${nameOf(sheet, fact)}${valuesOf(fact, keys)}`)];
}

function keyOf(fact: Fact, keys: readonly string[]): string {
  return JSON.stringify(keys.map((key) => fact[key] ?? null));
}

function nameOf(sheet: string, fact: Fact): string {
  const { one, title } = SHEETS[sheet] ?? { one: sheet, title: "" };
  const from = title !== "from" && typeof fact.from === "string" ? ` from ${fact.from}` : "";
  return `${one}${isEmpty(fact[title]) ? "" : ` ${textOf(fact[title])}`}${from}`;
}

function fieldWords(old: Fact, fact: Fact, keys: readonly string[]): string {
  return Object.keys(fact)
    .filter((field) => !keys.includes(field) && !isSame(old[field], fact[field]))
    .map((field) => `${fieldName(field)} ${textOf(old[field])} → ${textOf(fact[field])}`)
    .join(", ");
}

const VALUES_SHOWN = 4;

function valuesOf(fact: Fact, keys: readonly string[]): string {
  const told = Object.entries(fact)
    .filter(([field, value]) => !keys.includes(field) && !isEmpty(value) && field !== "line")
    .slice(0, VALUES_SHOWN)
    .map(([field, value]) => `${fieldName(field)} ${textOf(value)}`);
  return told.length === 0 ? "" : ` (${told.join(", ")})`;
}

function isSame(one: unknown, other: unknown): boolean {
  return JSON.stringify(one) === JSON.stringify(other);
}

function isEmpty(value: unknown): boolean {
  return (
    value === null || value === undefined || value === "" || (Array.isArray(value) && value.length === 0)
  );
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
  if (isEmpty(value)) return "none";
  if (typeof value === "boolean") return value ? "yes" : "no";
  if (Array.isArray(value)) return value.map(textOf).join(", ");
  if (typeof value === "object")
    return Object.values(value as Fact)
      .map(textOf)
      .join(" ");
  return String(value);
}
