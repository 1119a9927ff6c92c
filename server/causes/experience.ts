import type { KeptSettlement } from "#db/settlements-repository.ts";
import type { CauseKind } from "#engine/variance/causes/cause.ts";
import type { Experience } from "#engine/variance/causes/experience.ts";

/**
 * What the venue's settlements say about the causes between two counts. What was confirmed between these very
 * counts is left out: a cause is not likelier for having been looked for.
 */
export function experienceFrom(
  settlements: readonly KeptSettlement[],
  { opening, closing }: { opening: string; closing: string },
): Experience {
  const confirmed: Partial<Record<CauseKind, number>> = {};
  const holding = settlements.filter(({ takenBackAt }) => takenBackAt === null);
  const isHere = (one: KeptSettlement) => one.opening === opening && one.closing === closing;
  for (const one of holding) {
    if (one.answer !== "confirmed" || isHere(one)) continue;
    confirmed[one.cause.kind] = (confirmed[one.cause.kind] ?? 0) + 1;
  }
  const refuted = holding
    .filter((one) => one.answer === "refuted" && isHere(one))
    .map(({ cause: { kind, what, count } }) => ({ kind, what, count: count ?? undefined }));
  return { confirmed, refuted };
}
