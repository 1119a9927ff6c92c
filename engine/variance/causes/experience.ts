import type { Candidate } from "#engine/variance/causes/candidate.ts";
import type { Cause, CauseKind } from "#engine/variance/causes/cause.ts";
import { CAUSE_KINDS } from "#engine/variance/causes/cause.ts";

/** What a check showed not to be so, between the same two counts. */
export type Refuted = Pick<Cause, "kind" | "what"> & { count?: string | undefined };

/** What this venue has learned about its own causes. */
export type Experience = {
  /** How often each kind was confirmed so far. */
  confirmed: Partial<Record<CauseKind, number>>;
  refuted: readonly Refuted[];
};

export const NO_EXPERIENCE: Experience = { confirmed: {}, refuted: [] };

/** How many confirmed causes the shares that hold before any was confirmed are worth. */
const PRIOR_WORTH = 20;

/**
 * How much likelier each kind is here than elsewhere: the mean of a Dirichlet distribution whose prior gives every
 * kind its equal share and is worth twenty causes. Five breakages and nothing else → breakage 4.2, others 0.8.
 */
export function kindFactor({ confirmed }: Pick<Experience, "confirmed">, kind: CauseKind): number {
  const all = Object.values(confirmed).reduce((sum, count) => sum + count, 0);
  return (PRIOR_WORTH + CAUSE_KINDS.length * (confirmed[kind] ?? 0)) / (PRIOR_WORTH + all);
}

/**
 * Candidates with their chances as this venue knows them. What a check showed not to be so is left out, however well it fits:
 * whoever finds that the check was wrong takes the answer back.
 */
export function withExperience(candidates: readonly Candidate[], experience: Experience): Candidate[] {
  const factors = new Map(CAUSE_KINDS.map((kind) => [kind, kindFactor(experience, kind)]));
  const open = candidates.filter(
    (candidate) => !experience.refuted.some((refuted) => isOf(candidate, refuted)),
  );
  return open.map((candidate) => {
    const odds = candidate.chance / (1 - Math.min(candidate.chance, 0.99));
    const learned = odds * (factors.get(candidate.kind) ?? 1);
    return { ...candidate, chance: learned / (1 + learned) };
  });
}

function isOf({ kind, what, count }: Candidate, refuted: Refuted): boolean {
  return (
    kind === refuted.kind &&
    JSON.stringify(what) === JSON.stringify(refuted.what) &&
    (refuted.count === undefined || count === refuted.count)
  );
}
