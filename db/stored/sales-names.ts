import { asc } from "drizzle-orm";
import type { Db } from "#db/open.ts";
import { modifiers, ringNames } from "#db/schema/sales.ts";
import type { Registers } from "#db/stored/register.ts";
import { foldName } from "#engine/name.ts";
import type { Modifier, RingName } from "#engine/sales/ring.ts";

/** Ring names and modifiers as rows, and rows as facts again. */

export function ringNameRow(registers: Registers, { soldAs, ...ring }: RingName) {
  return {
    ...ring,
    folded: foldName(ring.ringName),
    soldAs: soldAs.kind,
    drinkId: soldAs.kind === "drink" ? registers.drinks.idOf(soldAs.drink) : null,
    itemId: soldAs.kind === "item" ? registers.items.idOf(soldAs.item) : null,
  };
}

export function insertRingName({ orm }: Db, registers: Registers, ring: RingName): void {
  orm.insert(ringNames).values(ringNameRow(registers, ring)).run();
}

export function loadRingNames({ orm }: Db, registers: Registers): RingName[] {
  const rows = orm.select().from(ringNames).orderBy(asc(ringNames.id)).all();
  return rows.map((row) => meaningOf(registers, row));
}

/** The fact in a row of ring_names. */
export function meaningOf(
  registers: Registers,
  { ringName, serves, amount, unit, ...row }: typeof ringNames.$inferSelect,
): RingName {
  return { ringName, soldAs: soldAsOf(registers, row), serves, amount, unit };
}

function soldAsOf(
  registers: Registers,
  row: { drinkId: number | null; itemId: number | null },
): RingName["soldAs"] {
  if (row.drinkId !== null) return { kind: "drink", drink: registers.drinks.nameOf(row.drinkId) };
  if (row.itemId !== null) return { kind: "item", item: registers.items.nameOf(row.itemId) };
  return { kind: "ignore" };
}

export function insertModifier({ orm }: Db, registers: Registers, modifier: Modifier): void {
  const { item, with: swapIn, ...rest } = modifier;
  const idOf = (name: string | null) => (name === null ? null : registers.items.idOf(name));
  const row = { ...rest, folded: foldName(modifier.modifier), itemId: idOf(item), withId: idOf(swapIn) };
  orm.insert(modifiers).values(row).run();
}

export function loadModifiers({ orm }: Db, registers: Registers): Modifier[] {
  const nameOf = (id: number | null) => (id === null ? null : registers.items.nameOf(id));
  const rows = orm.select().from(modifiers).orderBy(asc(modifiers.id)).all();
  return rows.map(({ id: _, folded: __, itemId, withId, ...modifier }) => ({
    ...modifier,
    item: nameOf(itemId),
    with: nameOf(withId),
  }));
}
