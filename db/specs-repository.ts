import { and, eq, isNull } from "drizzle-orm";
import { InvalidError, NotFoundError } from "#db/errors.ts";
import type { Db } from "#db/open.ts";
import { modifiers, ringNames } from "#db/schema/sales.ts";
import { cuts, prepVersions, specLines } from "#db/schema/specs.ts";
import { type About, about, asSheetHolds, writeChecked } from "#db/stored/checked-write.ts";
import type { Registers } from "#db/stored/register.ts";
import { writeRingName } from "#db/stored/ring-name-write.ts";
import { insertModifier } from "#db/stored/sales-names.ts";
import { cutRow, insertCut, insertPrep, insertSpecLine, makesOf, prepRow } from "#db/stored/specs.ts";
import { foldName } from "#engine/name.ts";
import { Modifier, type RingName } from "#engine/sales/ring.ts";
import { Cut, PrepVersion, SpecLine } from "#engine/specs/spec.ts";
import type { BusinessDate } from "#engine/time.ts";

/** Whose lines, from which day on. */
export type VersionKey = { makes: string; from: BusinessDate };

/**
 * Writes how a drink or prep is made from a day on, in place of the version of that same day. With `prep`, its yield from
 * that day is written in the same act. Throws NotFoundError for an unknown name and InvalidError for a line that cannot be.
 */
export async function saveVersion(
  db: Db,
  {
    makes,
    from,
    lines,
    prep,
  }: VersionKey & { lines: readonly Omit<SpecLine, "makes" | "from">[]; prep?: PrepVersion },
): Promise<void> {
  writeChecked(db, specChange(makes), (registers, venue) => {
    if (prep !== undefined) upsertPrep(db, registers, asSheetHolds("preps", PrepVersion.parse(prep), venue));
    deleteVersion(db, registers, { makes, from });
    for (const line of lines.map((each) => SpecLine.parse({ ...each, makes, from }))) {
      refuseAmount(line);
      insertSpecLine(db, registers, asSheetHolds("specs", line, venue));
    }
  });
}

/** A version is of a drink or of a prep; a name that is neither is refused by the act itself. */
function specChange(makes: string): (registers: Registers) => About {
  return ({ drinks }) =>
    about("spec changed", drinks.find(makes) === undefined ? "prep" : "drink", makes.trim());
}

function refuseAmount({ item, amount, unit }: SpecLine): void {
  if ((amount === null) === (unit === "top")) return;
  throw new InvalidError(
    `The line of "${item}" ${amount === null ? "needs an amount" : "is topped up, so it has no amount"}.`,
  );
}

/** Takes a version out; the one before it then holds on. Throws NotFoundError. */
export async function removeVersion(db: Db, key: VersionKey): Promise<void> {
  writeChecked(db, specChange(key.makes), (registers) => {
    if (deleteVersion(db, registers, key) === 0) {
      throw new NotFoundError(`"${key.makes}" has no version from ${key.from}.`);
    }
  });
}

function deleteVersion({ orm }: Db, registers: Registers, { makes, from }: VersionKey): number {
  const { drinkId, prepId } = makesOf(registers, makes);
  const whose = drinkId !== null ? eq(specLines.drinkId, drinkId) : eq(specLines.prepId, prepId);
  return orm
    .delete(specLines)
    .where(and(whose, eq(specLines.from, from)))
    .run().changes;
}

/** Writes what a prep yields from a day on, in place of the row of that same day. */
export async function savePrep(db: Db, prep: PrepVersion): Promise<void> {
  writeChecked(db, about("prep changed", "prep", prep.prep), (registers, venue) =>
    upsertPrep(db, registers, asSheetHolds("preps", PrepVersion.parse(prep), venue)),
  );
}

function upsertPrep(db: Db, registers: Registers, prep: PrepVersion): void {
  const row = prepRow(registers, prep);
  const { changes } = db.orm
    .update(prepVersions)
    .set(row)
    .where(and(eq(prepVersions.prepId, row.prepId), eq(prepVersions.from, row.from)))
    .run();
  if (changes === 0) insertPrep(db, registers, prep);
}

/** Writes what a cut gives from a day on, in place of the row of that same day. */
export async function saveCut(db: Db, cut: Cut): Promise<void> {
  writeChecked(db, about("cut changed", "item", cut.gives), (registers, venue) => {
    const held = asSheetHolds("cuts", Cut.parse(cut), venue);
    const row = cutRow(registers, held);
    const from = row.from === null ? isNull(cuts.from) : eq(cuts.from, row.from);
    const { changes } = db.orm
      .update(cuts)
      .set(row)
      .where(and(eq(cuts.givesId, row.givesId), from))
      .run();
    if (changes === 0) insertCut(db, registers, held);
  });
}

/** Writes what a ring name stands for, in place of what it stood for. */
export async function saveRingName(db: Db, ring: RingName): Promise<void> {
  writeChecked(db, about("ring name changed", "ring name", ring.ringName), (registers, venue) =>
    writeRingName(db, registers, venue, ring, null),
  );
}

/** Takes a ring name's meaning out. Throws NotFoundError. */
export async function removeRingName(db: Db, ringName: string): Promise<void> {
  writeChecked(db, about("ring name changed", "ring name", ringName), () => {
    const { changes } = db.orm
      .delete(ringNames)
      .where(eq(ringNames.folded, foldName(ringName)))
      .run();
    if (changes === 0) throw new NotFoundError(`The ring name "${ringName}" has no row.`);
  });
}

/** Writes all that a modifier does, in its order, in place of what it did; none takes it out. */
export async function saveModifier(
  db: Db,
  modifier: string,
  effects: readonly Omit<Modifier, "modifier">[],
): Promise<void> {
  writeChecked(db, about("modifier changed", "modifier", modifier), (registers, venue) => {
    db.orm
      .delete(modifiers)
      .where(eq(modifiers.folded, foldName(modifier)))
      .run();
    for (const effect of effects) {
      insertModifier(
        db,
        registers,
        asSheetHolds("modifiers", Modifier.parse({ modifier, ...effect }), venue),
      );
    }
  });
}
