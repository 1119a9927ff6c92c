import {
  bookChanges,
  CHANGES_SHOWN,
  type FactChange,
  isNothing,
  type Sheets,
  tellingFields,
  titleField,
} from "#engine/book-changes.ts";
import type { KnownKind } from "#engine/known-words/known-words.ts";
import { localMinute } from "#engine/sales/read/clock.ts";
import type { Venue } from "#engine/venue.ts";
import { shownWord } from "../book-words.ts";
import { formatPlain } from "../format.ts";
import { formatMinor } from "../money.ts";
import { locale } from "../texts/language.ts";
import { say } from "../texts/say.ts";
import type { Act } from "./history-queries.ts";

/** What of a venue says how facts are read. */
export type Reading = Pick<Venue, "timeZone" | "currency">;

/** What an act changed in the book, in one line; null where its facts are no sheets of the book. */
export function changeLine({ before, after }: Pick<Act, "before" | "after">, venue: Reading): string | null {
  const [was, is] = [before ?? {}, after ?? {}];
  if (!isSheets(was) || !isSheets(is)) return null;
  const lines = bookChanges({ before: was, after: is }).map((change) => changeWords(change, venue));
  if (lines.length === 0) return null;
  const more =
    lines.length > CHANGES_SHOWN ? [say("history.moreChanges", { count: lines.length - CHANGES_SHOWN })] : [];
  return [...lines.slice(0, CHANGES_SHOWN), ...more].join("; ");
}

function changeWords({ sheet, fact, way, fields }: FactChange, venue: Reading): string {
  const title = titleField(sheet);
  const named = say("history.one", {
    sheet,
    name: isNothing(fact[title]) ? "" : textOf(title, fact[title], venue),
  });
  const isDated = title !== "from" && typeof fact.from === "string";
  const what = (
    isDated ? say("history.since", { what: named.trim(), date: textOf("from", fact.from, venue) }) : named
  ).trim();
  if (way === "changed") {
    const values = fields.map(
      ({ field, was, is }) =>
        `${fieldName(field)} ${textOf(field, was, venue)} → ${textOf(field, is, venue)}`,
    );
    return `${what}: ${values.join(", ")}`;
  }
  const told = tellingFields(sheet, fact).map((field) => valueWords(field, fact[field], venue));
  return say(way === "added" ? "history.added" : "history.takenOut", {
    what: told.length === 0 ? what : `${what} (${told.join(", ")})`,
  });
}

/** Facts as lines to read, their moments on the venue's clock. Sheets of facts are told by the sheet's name. */
export function factLines(facts: unknown, venue: Reading): string[] {
  if (facts === null || facts === undefined) return [];
  if (Array.isArray(facts)) return facts.map((fact) => factLine(fact, venue));
  if (!isRecord(facts)) return [textOf("", facts, venue)];
  if (!isSheets(facts)) return [factLine(facts, venue)];
  return Object.entries(facts).flatMap(([sheet, list]) =>
    (list ?? []).map((fact) => `${fieldName(sheet)}: ${factLine(fact, venue)}`),
  );
}

function factLine(fact: unknown, venue: Reading): string {
  if (!isRecord(fact)) return textOf("", fact, venue);
  return Object.entries(fact)
    .filter(([, value]) => !isNothing(value))
    .map(([field, value]) => valueWords(field, value, venue))
    .join(", ");
}

function valueWords(field: string, value: unknown, venue: Reading): string {
  return `${fieldName(field)} ${textOf(field, value, venue)}`;
}

/** A field or a sheet as people call it: "perCase" → "per case"; of money without "Minor", as the value is written out. */
function fieldName(field: string): string {
  const plain = field.replace(/Minor$/, "");
  return say("history.field", {
    field: plain,
    name: plain.replace(/([a-z])([A-Z])/g, "$1 $2").toLowerCase(),
  });
}

/** Fields whose values are words of the book rather than names. */
const CODED = new Set([
  "base",
  "unit",
  "pour",
  "pricePer",
  "orderDay",
  "deliveryDay",
  "ice",
  "technique",
  "kind",
  "effect",
  "of",
  "direction",
  "role",
  "answer",
  "way",
]);

/** Fields whose values are the bar's own words, some of which the product knows. */
const KNOWN: Readonly<Record<string, KnownKind>> = {
  allergens: "allergen",
  category: "category",
  parts: "part",
};

const INSTANT = /^\d{4}-\d\d-\d\dT\d\d:\d\d:\d\dZ$/;

/** Fields that hold days; a count may have a day for its name. */
const DAYS = new Set(["from", "to", "date", "onMenuFrom", "onMenuUntil", "expected", "through"]);

function textOf(field: string, value: unknown, venue: Reading): string {
  if (isNothing(value)) return say("history.nothing");
  if (typeof value === "boolean") return say(value ? "history.yes" : "history.no");
  if (typeof value === "number")
    return field.endsWith("Minor") ? formatMinor(value, venue.currency) : formatPlain(value);
  if (Array.isArray(value)) return value.map((one) => textOf(field, one, venue)).join(", ");
  if (isRecord(value)) {
    return Object.entries(value)
      .map(([inner, one]) => textOf(inner, one, venue))
      .join(" ");
  }
  const text = String(value);
  if (INSTANT.test(text)) return momentWords(localMinute(text, venue));
  if (DAYS.has(field)) return dayWords(text);
  const known = KNOWN[field];
  if (known !== undefined) return shownWord(known, text);
  return CODED.has(field) ? say("history.value", { value: text }) : text;
}

/** A moment on the venue's clock, with its year: "2026-11-24 07:00" → "24 Nov 2026, 07:00". */
export function momentWords(local: string): string {
  return `${dayWords(local.slice(0, 10))}, ${local.slice(11)}`;
}

const days = new Intl.DateTimeFormat(locale, { dateStyle: "medium", timeZone: "UTC" });

/** A day with its year, as the history goes back for years. */
export function dayWords(date: string): string {
  return /^\d{4}-\d\d-\d\d$/.test(date) ? days.format(new Date(`${date}T00:00:00Z`)) : date;
}

function isSheets(facts: unknown): facts is Sheets {
  return (
    isRecord(facts) && Object.values(facts).every((value) => Array.isArray(value) && value.every(isRecord))
  );
}

function isRecord(value: unknown): value is Record<string, unknown> {
  return typeof value === "object" && value !== null && !Array.isArray(value);
}
