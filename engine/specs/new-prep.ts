import { z } from "zod";
import type { Book } from "#engine/book.ts";
import { Cut, PrepVersion, SpecLine } from "#engine/specs/spec.ts";
import { Item } from "#engine/stock/item.ts";

/** A prep that the book does not know yet, whole: what it is, what it yields, what goes in, and what it is cut from. */
export const NewPrep = z.strictObject({
  item: Item,
  /** Water, where the book has none yet. */
  otherItems: z.array(Item),
  prep: PrepVersion,
  lines: z.array(SpecLine.omit({ makes: true, from: true })),
  cut: Cut.nullable(),
});
export type NewPrep = z.infer<typeof NewPrep>;

/** A book with a new prep in it; for a look at what it would be, before it is written. */
export function bookWith(book: Book, { item, otherItems, prep, lines, cut }: NewPrep): Book {
  const version = lines.map((line) => ({ ...line, makes: prep.prep, from: prep.from }));
  return {
    ...book,
    items: [...book.items, ...otherItems, item],
    preps: [...book.preps, prep],
    specs: [...book.specs, ...version],
    cuts: cut === null ? book.cuts : [...book.cuts, cut],
  };
}
