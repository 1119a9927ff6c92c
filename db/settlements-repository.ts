import { asc, eq } from "drizzle-orm";
import { ConflictError, NotFoundError } from "#db/errors.ts";
import type { Db } from "#db/open.ts";
import { settlements } from "#db/schema/settlements.ts";
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

export type KeptSettlement = Settlement & {
  id: number;
  settledAt: string;
  settledBy: string;
  takenBackAt: string | null;
};

/** Keeps what a check showed and gives its number. Throws InvalidError for a size that is none. */
export async function addSettlement(db: Db, settlement: Settlement, doing: Doing): Promise<number> {
  const { cause, ...rest } = settlement;
  const { kind, what, size, unit, count } = cause;
  const row = { ...rest, kind, what, size, unit, countName: count };
  return inTransaction(db, () =>
    Number(
      db.orm
        .insert(settlements)
        .values({ ...row, settledAt: momentOf(doing), settledBy: doing.by })
        .run().lastInsertRowid,
    ),
  );
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

/** Marks a settlement as taken back. Throws NotFoundError, and ConflictError when it was already. */
export async function takeSettlementBack(db: Db, id: number, doing: Pick<Doing, "now">): Promise<void> {
  inTransaction(db, () => {
    const held = db.orm.select().from(settlements).where(eq(settlements.id, id)).get();
    if (held === undefined) throw new NotFoundError(`Nothing was settled under the number ${id}.`);
    if (held.takenBackAt !== null) throw new ConflictError("This was already taken back.");
    db.orm
      .update(settlements)
      .set({ takenBackAt: momentOf(doing) })
      .where(eq(settlements.id, id))
      .run();
  });
}
