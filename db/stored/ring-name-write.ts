import { eq } from "drizzle-orm";
import { InvalidError } from "#db/errors.ts";
import type { Db } from "#db/open.ts";
import { ringNames } from "#db/schema/sales.ts";
import { asSheetHolds } from "#db/stored/checked-write.ts";
import type { Registers } from "#db/stored/register.ts";
import { meaningOf, ringNameRow } from "#db/stored/sales-names.ts";
import { type Doing, momentOf } from "#db/stored/transaction.ts";
import { foldName } from "#engine/name.ts";
import { RingName } from "#engine/sales/ring.ts";
import type { Venue } from "#engine/venue.ts";

/**
 * Writes what a ring name stands for in place of what it stood for, which is kept to go back to. Inside a transaction. Throws
 * InvalidError.
 */
export function writeRingName(
  db: Db,
  registers: Registers,
  venue: Venue,
  ring: RingName,
  doing: Doing | null,
): void {
  const { soldAs, ...rest } = RingName.parse(ring);
  if (soldAs.kind === "item" && registers.drinks.find(soldAs.item) !== undefined) {
    throw new InvalidError(
      `"${soldAs.item}" is a drink too, and a ring name means the drink; rename one of them.`,
    );
  }
  const { soldAs: _, ...held } = asSheetHolds("ringNames", { ...rest, soldAs: "ignore" }, venue);
  const entered = doing === null ? NOBODY : { enteredAt: momentOf(doing), enteredBy: doing.by };
  const before = heldMeaning(db, registers, held.ringName) ?? null;
  const row = { ...ringNameRow(registers, { ...held, soldAs }), ...entered, before };
  const { changes } = db.orm.update(ringNames).set(row).where(eq(ringNames.folded, row.folded)).run();
  if (changes === 0) db.orm.insert(ringNames).values(row).run();
}

const NOBODY = { enteredAt: null, enteredBy: null };

/** What a ring name stands for by its own row; undefined without one. */
export function heldMeaning({ orm }: Db, registers: Registers, ringName: string): RingName | undefined {
  const row = orm
    .select()
    .from(ringNames)
    .where(eq(ringNames.folded, foldName(ringName)))
    .get();
  return row && meaningOf(registers, row);
}
