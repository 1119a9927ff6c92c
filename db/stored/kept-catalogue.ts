import { type CheckedCatalogue, checkedCatalogue } from "#db/book/check-facts.ts";
import type { Db } from "#db/open.ts";
import { readWithoutEntries } from "#db/stored/book.ts";
import { loadRegisters, Register, type Registers } from "#db/stored/register.ts";
import { statement } from "#db/stored/statement.ts";
import type { Venue } from "#engine/venue.ts";

/** A book without its entries as an entry needs it: names and numbers, and all that it is checked against. */
export type KeptCatalogue = { registers: Registers; venue: Venue; checked: CheckedCatalogue };

type Kept = { stamp: string; registers: Registers; venue: Venue; checked: CheckedCatalogue };

const kept = new WeakMap<Db, Kept>();

/**
 * The catalogue as it stands, read anew only when something was written to it; to be called inside a transaction. Undefined
 * while there is no venue.
 *
 * It is never out of date: triggers on its tables renew the stamp with every row that any program writes. A transaction that
 * is rolled back takes its stamp with it, and as stamps are random, none ever stands for two states. The names of areas and
 * counts, which entries add themselves, are read each time.
 */
export function keptCatalogue(db: Db): KeptCatalogue | undefined {
  const stamp = String(statement(db, "select catalogue_stamp from ledger_state").pluck().get());
  const held = kept.get(db);
  const current = held?.stamp === stamp ? held : read(db, stamp);
  if (current === undefined) return undefined;
  const registers = {
    ...current.registers,
    areas: new Register("area", statement(db, "select id, name from areas").all() as Named[]),
    counts: new Register("count", statement(db, "select id, name from counts").all() as Named[]),
  };
  return { registers, venue: current.venue, checked: current.checked };
}

type Named = { id: number; name: string };

function read(db: Db, stamp: string): Kept | undefined {
  kept.delete(db);
  const registers = loadRegisters(db);
  const book = readWithoutEntries(db, registers);
  if (book === undefined) return undefined;
  const made = { stamp, registers, venue: book.venue, checked: checkedCatalogue(book) };
  kept.set(db, made);
  return made;
}
