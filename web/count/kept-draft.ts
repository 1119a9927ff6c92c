import { keep, kept } from "../kept.ts";
import type { Draft } from "./entry.ts";

const KEY = "ullage-count-draft";

type Place = { count: string; area: string; item: string };

/** Keeps what is typed but not entered yet, key by key: a call, a reload or a dead battery loses nothing. */
export function keepDraft(place: Place, draft: Draft): void {
  keep(KEY, { place, draft });
}

/** What was typed at this place and not entered; undefined when the last typing was elsewhere. */
export function keptDraft(place: Place): Draft | undefined {
  const last = kept<{ place: Place; draft: Draft }>(KEY);
  return JSON.stringify(last?.place) === JSON.stringify(place) ? last?.draft : undefined;
}

export function dropDraft(): void {
  localStorage.removeItem(KEY);
}
