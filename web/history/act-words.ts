import type { TextId } from "../texts/catalogues.ts";
import { say } from "../texts/say.ts";
import { changeLine, momentWords, type Reading } from "./fact-lines.ts";
import type { Act } from "./history-queries.ts";

type ActWords = { title: string; what: string };

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
export function actWords({ act, summary }: Pick<Act, "act" | "summary">): ActWords {
  const [, way, what] = /^(Undone|Done again): (.*)$/s.exec(act === "undone" ? summary : "") ?? [];
  if (way !== undefined && what !== undefined) {
    return { title: say(way === "Undone" ? "history.undone" : "history.doneAgain"), what: dated(what) };
  }
  return { title: act.charAt(0).toUpperCase() + act.slice(1), what: dated(summary) };
}

/** What was entered in English ends with the moment it is dated to; other languages have it in words already. */
function dated(what: string): string {
  return what.replace(/(?<=, dated )\d{4}-\d\d-\d\d \d\d:\d\d$/, momentWords);
}

/** As actWords; what changed in the book is told by its facts. */
export function actAndFacts(act: Act, venue: Reading): ActWords {
  const words = actWords(act);
  const changes = changeLine(act, venue);
  if (changes === null) return words;
  // An act that undid another is about nothing of its own.
  const about = act.act === "undone" ? "" : (act.subjects[0]?.name ?? "");
  return { ...words, what: about === "" ? changes : `${about}: ${changes}` };
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
