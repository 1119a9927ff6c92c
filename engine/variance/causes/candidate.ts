import type { Cause, CauseKind } from "#engine/variance/causes/cause.ts";
import type { Correction } from "#engine/variance/causes/correction.ts";
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
  /** What a size of it changes in the book once it is confirmed; none where the book is right as it stands. */
  correct?: (size: number) => Correction | undefined;
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

/** What so many base units in the windows beside come to for each one between the counts. */
export type Beside = { before: number; after: number };

/** Shares of a lasting cause that began with this window, ended with it, or holds in all three. */
const LASTING = [
  { before: 0, after: 0, share: 0.4 },
  { before: 1, after: 0, share: 0.2 },
  { before: 0, after: 1, share: 0.2 },
  { before: 1, after: 1, share: 0.2 },
];

/** A habit, a spec card or a season does not end with a count: the same cause, with and without its neighbours. */
export function lasting(candidate: Weighed, beside: Beside): Weighed[] {
  return LASTING.filter(
    ({ before, after }) => (!before || beside.before > 0) && (!after || beside.after > 0),
  ).map(({ before, after, share }) => ({
    ...candidate,
    effects: candidate.effects.map((effect) => ({
      ...effect,
      before: before * beside.before * effect.now,
      after: after * beside.after * effect.now,
    })),
    weight: candidate.weight * share,
  }));
}
