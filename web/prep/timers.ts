import { useSyncExternalStore } from "react";
import { keep, kept } from "../kept.ts";

/** Timers that run on this device, by what they are for: the moment each ends, in ms. */
export type Timers = Readonly<Record<string, number>>;

const KEY = "ullage-timers";
const FORGOTTEN_MS = 24 * 3_600_000;
const listeners = new Set<() => void>();
let timers: Timers = stored();

/** The timers of this device; they run on while another card, or the list, is on screen. */
export function useTimers(): Timers {
  return useSyncExternalStore(subscribe, () => timers);
}

export function startTimer(name: string, minutes: number): void {
  set({ ...timers, [name]: Date.now() + minutes * 60_000 });
}

export function stopTimer(name: string): void {
  const { [name]: _, ...others } = timers;
  set(others);
}

function set(next: Timers): void {
  timers = next;
  keep(KEY, next);
  for (const listener of listeners) listener();
}

function subscribe(listener: () => void): () => void {
  listeners.add(listener);
  return () => listeners.delete(listener);
}

/** What was left running, but for what ended so long ago that nobody waits for it. */
function stored(): Timers {
  const entries = Object.entries(kept<object>(KEY) ?? {}).filter(
    (entry): entry is [string, number] =>
      typeof entry[1] === "number" && entry[1] > Date.now() - FORGOTTEN_MS,
  );
  return Object.fromEntries(entries);
}
