import { asc, eq } from "drizzle-orm";
import { ConflictError, NotFoundError } from "#db/errors.ts";
import { nothingPast, type Subject, type Told } from "#db/history/acts.ts";
import type { Db } from "#db/open.ts";
import { settlements } from "#db/schema/settlements.ts";
import { undoCauseCorrection, writeCauseCorrection } from "#db/stored/corrections.ts";
import { type Doing, inTransaction, momentOf } from "#db/stored/transaction.ts";
import type { Cause } from "#engine/variance/causes/cause.ts";
import type { Correction } from "#engine/variance/causes/correction.ts";

/** What the check of a cause showed between two counts, and what was changed in the book for it. */
export type Settlement = {
  answer: "confirmed" | "refuted";
  opening: string;
  closing: string;
  cause: Pick<Cause, "kind" | "what" | "size" | "unit"> & { count: string | null };
  correction: Correction | null;
  /** The entry the correction made; null where its sheet has no numbered entries. */
  entryId: number | null;
};

export type NewSettlement = Omit<Settlement, "entryId">;

export type KeptSettlement = Settlement & {
  id: number;
  settledAt: string;
  settledBy: string;
  takenBackAt: string | null;
};

/**
 * Keeps what a check showed, together with the correction of the book that it calls for: both or, when either cannot be
 * written, neither. Gives its number. Throws InvalidError, and ConflictError when what it corrects was changed meanwhile.
 */
export async function addSettlement(db: Db, settlement: NewSettlement, doing: Doing): Promise<number> {
  const { cause, correction, ...rest } = settlement;
  const { kind, what, size, unit, count } = cause;
  return inTransaction(db, () => {
    const reason = `variance confirmed: ${kind.replaceAll("-", " ")}`;
    const entryId = correction === null ? null : writeCauseCorrection(db, correction, { ...doing, reason });
    const row = { ...rest, correction, entryId, kind, what, size, unit, countName: count };
    const result = Number(
      db.orm
        .insert(settlements)
        .values({ ...row, settledAt: momentOf(doing), settledBy: doing.by })
        .run().lastInsertRowid,
    );
    const told = tell("cause settled", row, doing);
    const after = { ...settlement, entryId };
    return { result, told: { ...told, summary: `${told.summary}: ${settlement.answer}`, after } };
  });
}

/** All that was settled, oldest first, what was taken back included. */
export async function listSettlements({ orm }: Db): Promise<KeptSettlement[]> {
  return orm
    .select()
    .from(settlements)
    .orderBy(asc(settlements.id))
    .all()
    .map(({ kind, what, size, unit, countName, ...rest }) => ({
      ...rest,
      cause: { kind, what, size, unit, count: countName },
    }));
}

/**
 * Takes a settlement back, and its correction of the book with it: both or neither. Throws NotFoundError, and ConflictError
 * when it was taken back already or what it entered was changed since.
 */
export async function takeSettlementBack(db: Db, id: number, doing: Doing): Promise<void> {
  inTransaction(db, () => {
    const held = db.orm.select().from(settlements).where(eq(settlements.id, id)).get();
    if (held === undefined) throw new NotFoundError(`Nothing was settled under the number ${id}.`);
    if (held.takenBackAt !== null) throw new ConflictError("This was already taken back.");
    const { correction, entryId } = held;
    const reason = "settlement taken back";
    if (correction !== null) undoCauseCorrection(db, { correction, entryId }, { ...doing, reason });
    db.orm
      .update(settlements)
      .set({ takenBackAt: momentOf(doing) })
      .where(eq(settlements.id, id))
      .run();
    return { result: undefined, told: tell("settlement taken back", held, doing) };
  });
}

/** What is changed in the book for a cause has its own row in the history, written in the same transaction. */
function tell(
  act: "cause settled" | "settlement taken back",
  {
    kind,
    what,
    opening,
    closing,
  }: Pick<typeof settlements.$inferSelect, "kind" | "what" | "opening" | "closing">,
  doing: Pick<Doing, "now">,
): Told {
  const things = [what].flat();
  const [first = closing, ...others] = things;
  return {
    act,
    subjects: [
      { kind: "item", name: first },
      ...others.map((name): Subject => ({ kind: "item", name })),
      { kind: "count", name: closing },
    ],
    summary: `${kind.replaceAll("-", " ")}, ${things.join(" and ")}, between ${opening} and ${closing}`,
    at: momentOf(doing),
    touches: nothingPast,
  };
}
