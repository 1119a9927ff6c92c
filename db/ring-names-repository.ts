import { asc, eq } from "drizzle-orm";
import { NotFoundError } from "#db/errors.ts";
import type { Db } from "#db/open.ts";
import { ringNames } from "#db/schema/sales.ts";
import { writeChecked } from "#db/stored/checked-write.ts";
import { loadRegisters } from "#db/stored/register.ts";
import { writeRingName } from "#db/stored/ring-name-write.ts";
import { meaningOf } from "#db/stored/sales-names.ts";
import type { Doing } from "#db/stored/transaction.ts";
import { foldName } from "#engine/name.ts";
import type { RingName } from "#engine/sales/ring.ts";
import type { Instant } from "#engine/time.ts";

/** What a ring name stands for, who said so and when (null where it came with a book), and what it stood for before. */
export type DatedRingName = RingName & {
  enteredAt: Instant | null;
  enteredBy: string | null;
  before: RingName | null;
};

/** Writes what several ring names stand for, as one act: all of them or none. Throws InvalidError. */
export async function acceptRingNames(db: Db, rings: readonly RingName[], doing: Doing): Promise<void> {
  const [first, ...others] = rings.map(({ ringName }) => ({ kind: "ring name" as const, name: ringName }));
  if (first === undefined) return;
  writeChecked(db, { act: "ring name changed", subjects: [first, ...others] }, (registers, venue) => {
    for (const ring of rings) writeRingName(db, registers, venue, ring, doing);
  });
}

/**
 * Takes back what was last said of a ring name: it stands for what it stood for before, or has no meaning of its own again.
 * Gives the meaning that then holds. Throws NotFoundError.
 */
export async function undoRingName(db: Db, ringName: string, doing: Doing): Promise<RingName | null> {
  const about = { act: "ring name changed", subjects: [{ kind: "ring name", name: ringName }] } as const;
  return writeChecked(db, about, (registers, venue) => {
    const where = eq(ringNames.folded, foldName(ringName));
    const held = db.orm.select().from(ringNames).where(where).get();
    if (held === undefined) throw new NotFoundError(`Nothing was said of the ring name "${ringName}".`);
    if (held.before === null) db.orm.delete(ringNames).where(where).run();
    else {
      writeRingName(db, registers, venue, held.before, doing);
      // Going back is no step to go back from.
      db.orm.update(ringNames).set({ before: null }).where(where).run();
    }
    return held.before;
  });
}

/** All ring names that somebody explained, by name. */
export async function datedRingNames(db: Db): Promise<DatedRingName[]> {
  const registers = loadRegisters(db);
  const rows = db.orm.select().from(ringNames).orderBy(asc(ringNames.folded)).all();
  return rows.map((row) => {
    const { enteredAt, enteredBy, before } = row;
    return { ...meaningOf(registers, row), enteredAt: enteredAt as Instant | null, enteredBy, before };
  });
}
