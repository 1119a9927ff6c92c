import type { Draft } from "./entry.ts";

const KEY = "ullage-count-draft";

type Place = { count: string; area: string; item: string };

/** Keeps what is typed but not entered yet, key by key: a call, a reload or a dead battery loses nothing. */
export function keepDraft(place: Place, draft: Draft): void {
  try {
    localStorage.setItem(KEY, JSON.stringify({ place, draft }));
  } catch {
    // A full storage: what is typed still stands on the screen.
  }
}

/** What was typed at this place and not entered; undefined when the last typing was elsewhere. */
export function keptDraft(place: Place): Draft | undefined {
  const text = localStorage.getItem(KEY);
  if (text === null) return undefined;
  const kept = JSON.parse(text) as { place: Place; draft: Draft };
  return JSON.stringify(kept.place) === JSON.stringify(place) ? kept.draft : undefined;
}

export function dropDraft(): void {
  localStorage.removeItem(KEY);
}
