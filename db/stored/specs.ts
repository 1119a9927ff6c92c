import { asc } from "drizzle-orm";
import { NotFoundError } from "#db/errors.ts";
import type { Db } from "#db/open.ts";
import { cuts, prepVersions, specAlternatives, specLines } from "#db/schema/specs.ts";
import type { Registers } from "#db/stored/register.ts";
import type { Cut, PrepVersion, SpecLine } from "#engine/specs/spec.ts";

/** Preps, spec lines and cuts as rows, and rows as facts again. */

export function prepRow(registers: Registers, { prep, ...version }: PrepVersion) {
  return { ...version, prepId: registers.items.idOf(prep) };
}

export function insertPrep({ orm }: Db, registers: Registers, prep: PrepVersion): void {
  orm.insert(prepVersions).values(prepRow(registers, prep)).run();
}

export function loadPreps({ orm }: Db, registers: Registers): PrepVersion[] {
  const rows = orm.select().from(prepVersions).orderBy(asc(prepVersions.id)).all();
  return rows.map(({ id: _, prepId, ...version }) => ({ ...version, prep: registers.items.nameOf(prepId) }));
}

/** Whose lines they are: a drink's before a prep's. */
export function makesOf(
  registers: Registers,
  makes: string,
): { drinkId: number; prepId: null } | { drinkId: null; prepId: number } {
  const drinkId = registers.drinks.find(makes);
  if (drinkId !== undefined) return { drinkId, prepId: null };
  const prepId = registers.items.find(makes);
  if (prepId === undefined) throw new NotFoundError(`There is no drink or prep "${makes}".`);
  return { drinkId: null, prepId };
}

export function insertSpecLine({ orm }: Db, registers: Registers, specLine: SpecLine): void {
  const { makes, item, orItems, ...line } = specLine;
  const row = { ...line, ...makesOf(registers, makes), itemId: registers.items.idOf(item) };
  const lineId = Number(orm.insert(specLines).values(row).run().lastInsertRowid);
  for (const other of orItems) {
    orm
      .insert(specAlternatives)
      .values({ lineId, itemId: registers.items.idOf(other) })
      .run();
  }
}

export function loadSpecLines({ orm }: Db, registers: Registers): SpecLine[] {
  const orItems = new Map<number, string[]>();
  for (const { lineId, itemId } of orm
    .select()
    .from(specAlternatives)
    .orderBy(asc(specAlternatives.id))
    .all()) {
    orItems.set(lineId, [...(orItems.get(lineId) ?? []), registers.items.nameOf(itemId)]);
  }
  const rows = orm.select().from(specLines).orderBy(asc(specLines.id)).all();
  return rows.map(({ id, drinkId, prepId, itemId, ...line }) => ({
    ...line,
    makes: drinkId !== null ? registers.drinks.nameOf(drinkId) : registers.items.nameOf(prepId ?? 0),
    item: registers.items.nameOf(itemId),
    orItems: orItems.get(id) ?? [],
  }));
}

export function cutRow(registers: Registers, { source, gives, ...cut }: Cut) {
  return { ...cut, sourceId: registers.items.idOf(source), givesId: registers.items.idOf(gives) };
}

export function insertCut({ orm }: Db, registers: Registers, cut: Cut): void {
  orm.insert(cuts).values(cutRow(registers, cut)).run();
}

export function loadCuts({ orm }: Db, registers: Registers): Cut[] {
  const rows = orm.select().from(cuts).orderBy(asc(cuts.id)).all();
  return rows.map(({ id: _, sourceId, givesId, ...cut }) => ({
    ...cut,
    source: registers.items.nameOf(sourceId),
    gives: registers.items.nameOf(givesId),
  }));
}
