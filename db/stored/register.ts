import { didYouMean } from "#db/book/suggest.ts";
import { ConflictError, NotFoundError } from "#db/errors.ts";
import type { Db } from "#db/open.ts";
import { suppliers } from "#db/schema/orders.ts";
import { drinks } from "#db/schema/specs.ts";
import { areas, counts, items, packs } from "#db/schema/stock.ts";
import { foldName } from "#engine/name.ts";

/** The names of one kind of thing and the numbers that stand for them in the tables. */
export class Register {
  readonly #kind: string;
  readonly #byFolded = new Map<string, { id: number; name: string }>();
  readonly #byId = new Map<number, string>();

  constructor(kind: string, rows: readonly { id: number; name: string }[]) {
    this.#kind = kind;
    for (const { id, name } of rows) this.add(id, name);
  }

  add(id: number, name: string): void {
    this.#byFolded.set(foldName(name), { id, name });
    this.#byId.set(id, name);
  }

  find(name: string): number | undefined {
    return this.#byFolded.get(foldName(name))?.id;
  }

  /** Throws NotFoundError, with the likeliest name, when there is none. */
  idOf(name: string): number {
    const id = this.find(name);
    if (id !== undefined) return id;
    const near = didYouMean(name, this.#byId.values());
    throw new NotFoundError(`There is no ${this.#kind} "${name}"${near === "" ? "." : near}`);
  }

  nameOf(id: number): string {
    const name = this.#byId.get(id);
    if (name === undefined) throw new Error(`No ${this.#kind} has the number ${id}.`);
    return name;
  }
}

/** A pack by its number: of which item, and how it is called. */
export class PackRegister {
  readonly #byKey = new Map<string, number>();
  readonly #byId = new Map<number, { itemId: number; name: string }>();

  constructor(rows: readonly { id: number; itemId: number; name: string }[]) {
    for (const { id, itemId, name } of rows) this.add(id, itemId, name);
  }

  add(id: number, itemId: number, name: string): void {
    this.#byKey.set(`${itemId} ${foldName(name)}`, id);
    this.#byId.set(id, { itemId, name });
  }

  find(itemId: number, pack: string): number | undefined {
    return this.#byKey.get(`${itemId} ${foldName(pack)}`);
  }

  /** Throws NotFoundError, with the packs there are, when there is none. */
  idOf(itemId: number, item: string, pack: string): number {
    const id = this.find(itemId, pack);
    if (id !== undefined) return id;
    const has = [...this.#byId.values()]
      .filter((each) => each.itemId === itemId)
      .map(({ name }) => `"${name}"`);
    throw new NotFoundError(`There is no pack "${pack}" of "${item}"; it has ${has.join(", ") || "none"}.`);
  }

  of(id: number): { itemId: number; name: string } {
    const pack = this.#byId.get(id);
    if (pack === undefined) throw new Error(`No pack has the number ${id}.`);
    return pack;
  }
}

/** All names of a database, read at once: a bar has hundreds, not millions. */
export type Registers = {
  items: Register;
  drinks: Register;
  suppliers: Register;
  areas: Register;
  counts: Register;
  packs: PackRegister;
};

export function loadRegisters({ orm }: Db): Registers {
  const namesIn = (table: typeof items | typeof drinks | typeof suppliers | typeof areas | typeof counts) =>
    orm.select({ id: table.id, name: table.name }).from(table).all();
  const packRows = orm.select({ id: packs.id, itemId: packs.itemId, name: packs.name }).from(packs).all();
  return {
    items: new Register("item", namesIn(items)),
    drinks: new Register("drink", namesIn(drinks)),
    suppliers: new Register("supplier", namesIn(suppliers)),
    areas: new Register("area", namesIn(areas)),
    counts: new Register("count", namesIn(counts)),
    packs: new PackRegister(packRows),
  };
}

/** The number of an area or a count, which is added when first named. */
export function idOrAdd(
  db: Db,
  table: typeof areas | typeof counts,
  register: Register,
  name: string,
): number {
  const held = register.find(name);
  if (held !== undefined) return held;
  const id = Number(
    db.orm
      .insert(table)
      .values({ name, folded: foldName(name) })
      .run().lastInsertRowid,
  );
  register.add(id, name);
  return id;
}

/** Refuses a name that is already another's. */
export function refuseTaken(register: Register, kind: string, name: string, except?: number): void {
  const held = register.find(name);
  if (held !== undefined && held !== except) {
    throw new ConflictError(`The ${kind} "${register.nameOf(held)}" is there already; choose another name.`);
  }
}
