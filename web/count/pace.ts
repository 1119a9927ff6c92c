import type { CountRow } from "#engine/stock/movement.ts";
import { say } from "../texts/say.ts";

/** A longer pause is a delivery at the door, not counting. */
const PAUSE_MS = 3 * 60_000;
const LAST = 20;

/**
 * Seconds that an item takes at the pace of the last twenty entries by one person, pauses left out; null before three.
 * Entries at 10:00:00, 10:00:05, 10:00:10 → 5.
 */
export function secondsPerItem(rows: readonly Pick<CountRow, "at" | "by">[], by: string): number | null {
  const times = rows
    .filter((row) => row.by === by)
    .map(({ at }) => Date.parse(at))
    .sort((a, b) => a - b)
    .slice(-LAST - 1);
  const steps = times
    .slice(1)
    .map((time, index) => time - (times[index] ?? time))
    .filter((step) => step < PAUSE_MS);
  if (steps.length < 2) return null;
  return steps.reduce((sum, step) => sum + step, 0) / steps.length / 1000;
}

/** What is left at that pace: "about 4 min left"; empty when nothing is known or left. */
export function leftAtPace(left: number, seconds: number | null): string {
  if (left === 0 || seconds === null) return "";
  const minutes = Math.round((left * seconds) / 60);
  return minutes < 1 ? say("count.lastMinute") : say("count.minutesLeft", { minutes });
}
