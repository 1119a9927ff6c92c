import type { WeekStep } from "../answers.ts";

/**
 * The one step to take next: the first that is due, else the first that needs a look; none when all are done. A variance
 * that is due waits for a second count, which comes in its own time.
 */
export function nextStep(steps: readonly WeekStep[]): WeekStep | undefined {
  const ready = steps.filter(({ id, state }) => id !== "variance" || state !== "due");
  return ready.find(({ state }) => state === "due") ?? ready.find(({ state }) => state === "attention");
}
