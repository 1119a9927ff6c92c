import { ConflictError, InvalidError } from "#db/errors.ts";
import type { Db } from "#db/open.ts";
import { insertItem } from "#db/stored/catalogue.ts";
import { about, asSheetHolds, writeChecked } from "#db/stored/checked-write.ts";
import { insertCut, insertPrep, insertSpecLine } from "#db/stored/specs.ts";
import { NewPrep } from "#engine/specs/new-prep.ts";
import { SpecLine } from "#engine/specs/spec.ts";

/**
 * Writes a new prep in one act: its item, what it yields, its spec lines and its cut. Throws ConflictError where the name is
 * taken, InvalidError where something in it cannot be; then nothing is written.
 */
export async function saveNewPrep(db: Db, wanted: NewPrep): Promise<void> {
  const { item, otherItems, prep, lines, cut } = NewPrep.parse(wanted);
  writeChecked(db, about("spec changed", "prep", item.name), (registers, venue) => {
    refuseTaken(registers.items.find(item.name), item.name);
    refuseHalf({ item, otherItems, prep, lines, cut });
    for (const one of [...otherItems, item]) insertItem(db, registers, asSheetHolds("items", one, venue));
    insertPrep(db, registers, asSheetHolds("preps", prep, venue));
    for (const line of lines) {
      const own = SpecLine.parse({ ...line, makes: prep.prep, from: prep.from });
      insertSpecLine(db, registers, asSheetHolds("specs", own, venue));
    }
    if (cut !== null) insertCut(db, registers, asSheetHolds("cuts", cut, venue));
  });
}

function refuseTaken(id: number | undefined, name: string): void {
  if (id === undefined) return;
  throw new ConflictError(
    `There is a "${name}" already; open it to write a new version, or choose another name.`,
  );
}

function refuseHalf({ item, prep, lines, cut }: NewPrep): void {
  if (lines.length === 0 && cut === null) {
    throw new InvalidError("Write what goes in, or what it is cut or pressed from.");
  }
  if (prep.prep !== item.name || (cut !== null && cut.gives !== item.name)) {
    throw new InvalidError(`The yield and the cut must be of "${item.name}" itself.`);
  }
  const topped = lines.find(({ unit, amount }) => unit === "top" || amount === null);
  if (topped !== undefined) throw new InvalidError(`The line of "${topped.item}" needs an amount in a prep.`);
}
