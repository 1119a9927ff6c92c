import type { WeekStep } from "../answers.ts";

/** The one step to take next: the first that is due, else the first that needs a look; none when all are done. */
export function nextStep(steps: readonly WeekStep[]): WeekStep | undefined {
  return steps.find(({ state }) => state === "due") ?? steps.find(({ state }) => state === "attention");
}
