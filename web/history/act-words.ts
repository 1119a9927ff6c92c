import { localMinute } from "#engine/sales/read/clock.ts";
import type { Venue } from "#engine/venue.ts";
import type { TextId } from "../texts/catalogues.ts";
import { say } from "../texts/say.ts";
import type { Act } from "./history-queries.ts";

const VIAS: Record<string, TextId> = {
  terminal: "history.viaTerminal",
  screen: "history.viaScreen",
  device: "history.viaDevice",
  token: "history.viaToken",
  demo: "history.viaDemo",
  schedule: "history.viaSchedule",
};

/** By which way and from where. A manager's laptop → "on a screen, office laptop". */
export function placeWords({ via, from }: Pick<Act, "via" | "from">): string {
  const way = VIAS[via];
  return `${way === undefined ? via : say(way)}, ${from}`;
}

/** The name of an act and what was done, apart. "undone", "Undone: Week 10 …" → "Undone", "Week 10 …". */
export function actWords({ act, summary }: Pick<Act, "act" | "summary">): { title: string; what: string } {
  const [, way, what] = /^(Undone|Done again): (.*)$/s.exec(act === "undone" ? summary : "") ?? [];
  if (way !== undefined && what !== undefined) {
    return { title: say(way === "Undone" ? "history.undone" : "history.doneAgain"), what };
  }
  return { title: act.charAt(0).toUpperCase() + act.slice(1), what: summary };
}

/** Whether an act only took another back, so that undoing it is doing that again. */
export function isUndoing(act: Pick<Act, "act" | "summary">): boolean {
  return act.act === "undone" && act.summary.startsWith("Undone: ");
}

/** Acts by the venue's day, in their order. */
export function byDay(acts: readonly Act[]): { day: string; acts: Act[] }[] {
  const days = new Map<string, Act[]>();
  for (const act of acts) {
    const day = act.atLocal.slice(0, 10);
    days.set(day, [...(days.get(day) ?? []), act]);
  }
  return [...days].map(([day, of]) => ({ day, acts: of }));
}

const INSTANT = /^\d{4}-\d\d-\d\dT\d\d:\d\d:\d\dZ$/;

/** Facts as lines to read, their moments on the venue's clock. Sheets of facts are told by the sheet's name. */
export function factLines(facts: unknown, venue: Pick<Venue, "timeZone">): string[] {
  return linesOf(atVenue(facts, venue));
}

function atVenue(facts: unknown, venue: Pick<Venue, "timeZone">): unknown {
  if (facts === null || facts === undefined) return facts;
  const text = JSON.stringify(facts, (_, value) =>
    typeof value === "string" && INSTANT.test(value) ? localMinute(value, venue) : value,
  );
  return JSON.parse(text);
}

function linesOf(facts: unknown): string[] {
  if (facts === null || facts === undefined) return [];
  if (Array.isArray(facts)) return facts.map(factLine);
  if (!isRecord(facts)) return [String(facts)];
  const isSheets = Object.values(facts).every((value) => Array.isArray(value) && value.every(isRecord));
  if (!isSheets) return [factLine(facts)];
  return Object.entries(facts).flatMap(([sheet, list]) =>
    (list as unknown[]).map((fact) => `${spaced(sheet)}: ${factLine(fact)}`),
  );
}

function factLine(fact: unknown): string {
  if (!isRecord(fact)) return textOf(fact);
  return Object.entries(fact)
    .filter(([, value]) => !isEmpty(value))
    .map(([field, value]) => `${fieldName(field)} ${textOf(value)}`)
    .join(", ");
}

/** "priceMinor" → "price (minor units)"; "perCase" → "per case" */
function fieldName(field: string): string {
  if (!field.endsWith("Minor")) return spaced(field);
  return say("history.minorUnits", { field: spaced(field.slice(0, -"Minor".length)) });
}

function spaced(name: string): string {
  return name.replace(/([a-z])([A-Z])/g, "$1 $2").toLowerCase();
}

function textOf(value: unknown): string {
  if (typeof value === "boolean") return say(value ? "history.yes" : "history.no");
  if (Array.isArray(value)) return value.map(textOf).join(", ");
  if (isRecord(value)) return Object.values(value).map(textOf).join(" ");
  return String(value);
}

function isEmpty(value: unknown): boolean {
  return value === null || value === "" || (Array.isArray(value) && value.length === 0);
}

function isRecord(value: unknown): value is Record<string, unknown> {
  return typeof value === "object" && value !== null && !Array.isArray(value);
}
