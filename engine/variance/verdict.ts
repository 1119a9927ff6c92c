import { largestStandingOut } from "#engine/variance/false-alarms.ts";
import { twoSidedChance } from "#engine/variance/normal.ts";
import type { Thresholds } from "#engine/variance/thresholds.ts";

export type Verdict = "quiet" | "watch" | "chase";

/** Two and three standard uncertainties are the usual warning and action limits of control charts. */
export const DEFAULT_THRESHOLDS: Thresholds = {
  watchRatio: 2,
  chaseRatio: 3,
  chaseMoney: 10,
  falseAlarmRate: 0.2,
};

/**
 * The verdict of each of a list of items.
 *
 * `chase`: beyond the chase ratio, with money at stake (or at an unknown price), and standing out among all
 * items together. `watch`: beyond the watch ratio and standing out, or beyond the chase ratio without the
 * rest. Of a hundred clean items five lie beyond two standard uncertainties; they stay quiet.
 */
export function verdicts(
  items: readonly { ratio: number; cost: number | null }[],
  thresholds: Thresholds = DEFAULT_THRESHOLDS,
): Verdict[] {
  const chances = items.map(({ ratio }) => twoSidedChance(ratio));
  const standsOut = largestStandingOut(chances, thresholds.falseAlarmRate);
  return items.map(({ ratio, cost }, index) =>
    verdictOf(
      { size: Math.abs(ratio), money: cost === null ? Number.POSITIVE_INFINITY : Math.abs(cost) },
      (chances[index] ?? 1) <= standsOut,
      thresholds,
    ),
  );
}

function verdictOf(
  { size, money }: { size: number; money: number },
  standsOut: boolean,
  { watchRatio, chaseRatio, chaseMoney }: Thresholds,
): Verdict {
  if (standsOut && size >= chaseRatio && money >= chaseMoney) return "chase";
  if (size >= chaseRatio || (standsOut && size >= watchRatio)) return "watch";
  return "quiet";
}

/** What one base unit could be told apart by, had nobody any doubt: a whole unit read as it is (1 ÷ √12). */
const SURE_SD = 1 / Math.sqrt(12);

/**
 * unexplained ÷ sd, 0 where there is nothing unexplained.
 *
 * Where everything was counted sealed and sold sealed the sd is 0; a difference is then measured in steps
 * of one base unit, so that one piece missing is 3.5 and stays a finite number.
 */
export function ratioOf({ unexplained, sd }: { unexplained: number; sd: number }): number {
  return unexplained === 0 ? 0 : unexplained / (sd > 0 ? sd : SURE_SD);
}
