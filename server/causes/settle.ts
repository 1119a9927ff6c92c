import type { Db } from "#db/open.ts";
import {
  addSettlement,
  type KeptSettlement,
  listSettlements,
  takeSettlementBack,
} from "#db/settlements-repository.ts";
import type { Cause } from "#engine/variance/causes/cause.ts";
import { InputError } from "#server/input-error.ts";
import { varianceFor } from "#server/reports/variance.ts";
import type { Stamp } from "#server/stamp.ts";
import { openWorld } from "#server/world.ts";

/** Which cause of the report between two counts, and what its check showed. */
export type Settling = {
  counts: { opening: string; closing: string };
  cause: Pick<Cause, "kind" | "what"> & { count?: string | undefined };
  answer: "confirmed" | "refuted";
  by: string;
};

/**
 * Keeps what the check of a cause showed. A confirmed one posts its correction, where it has one; the report is
 * computed anew from the book as it then stands. Throws InputError when the report has no such cause.
 */
export async function settleCause(
  db: Db,
  { counts, cause: asked, answer, by }: Settling,
  stamp: Stamp,
): Promise<{ id: number; correction: string | null }> {
  const world = await openWorld(db);
  const report = await varianceFor(world, { count: counts.closing, since: counts.opening });
  const cause = report.causes.find((one) => isAsked(one, asked));
  if (cause === undefined) {
    throw new InputError(
      "The report no longer has this cause: the book was changed meanwhile. Look at it again.",
    );
  }
  const correction = answer === "confirmed" ? cause.correction : null;
  const { kind, what, size, unit, count = null } = cause;
  const { opening, closing } = report;
  const settlement = { answer, opening, closing, cause: { kind, what, size, unit, count }, correction };
  const id = await addSettlement(db, settlement, { now: stamp.now(), by });
  return { id, correction: correction?.words ?? null };
}

function isAsked(cause: Cause, asked: Settling["cause"]): boolean {
  return (
    cause.kind === asked.kind &&
    JSON.stringify(cause.what) === JSON.stringify(asked.what) &&
    (asked.count === undefined || cause.count === asked.count)
  );
}

/** Takes back what was settled, and its correction with it. Throws NotFoundError and ConflictError. */
export async function takeBack(db: Db, id: number, { by }: { by: string }, stamp: Stamp): Promise<void> {
  await takeSettlementBack(db, id, { now: stamp.now(), by });
}

/** What holds of all that was settled, latest first. */
export async function settled(db: Db): Promise<KeptSettlement[]> {
  return (await listSettlements(db)).filter(({ takenBackAt }) => takenBackAt === null).reverse();
}
