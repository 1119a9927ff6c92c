import type { Cause, CauseKind } from "#engine/variance/causes/cause.ts";
import type { SizeRule } from "#engine/variance/causes/size.ts";

/**
 * What one unit of a cause adds to an item's unexplained amount: between the two counts, and in the
 * item's windows before and after. Positive = more gone than explained.
 */
export type Effect = { item: string; before: number; now: number; after: number };

/** One possible cause, before anything is fitted. */
export type Candidate = {
  kind: CauseKind;
  what: Cause["what"];
  unit: string;
  effects: Effect[];
  size: SizeRule;
  /** Chance, before looking at the numbers, that it happened between the two counts. */
  chance: number;
  check: (size: number) => string;
  sign?: 1 | -1;
  count?: string;
  /** The drink that an unmapped ring name most likely is. */
  likely?: string;
};

/** A candidate with its share of its kind's chance. */
export type Weighed = Omit<Candidate, "chance"> & { weight: number };

/** Spreads the chance of a kind of cause over its candidates by their weights. */
export function shareChance(chance: number, weighed: readonly Weighed[]): Candidate[] {
  const sum = weighed.reduce((total, { weight }) => total + weight, 0);
  return weighed.map(({ weight, ...candidate }) => ({ ...candidate, chance: (chance * weight) / sum }));
}

/** An effect between the two counts alone: stock that came or went. */
export function effectNow(item: string, now: number): Effect {
  return { item, before: 0, now, after: 0 };
}
