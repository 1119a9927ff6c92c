import type { Book } from "#engine/book.ts";
import { type Catalogue, catalogueOf } from "#engine/catalogue.ts";
import type { Holiday } from "#engine/demand/holiday.ts";
import type { Divider } from "#engine/sales/when.ts";
import { type Movement, movementsOf } from "#engine/stock/balance.ts";
import { type Count, countsOf, dividersByItem } from "#engine/stock/counts.ts";

/** A book made ready for the reports: indexed, counted up, its movements in base units. */
export type Facts = {
  book: Book;
  catalogue: Catalogue;
  /** Oldest first. */
  counts: Count[];
  movements: Movement[];
  /** The moments at which each item was counted, oldest first. */
  dividers: Map<string, Divider[]>;
  /** Public holidays where the venue stands, of the days it has sales of and the year to come; none where it says not. */
  holidays: readonly Holiday[];
};

export function factsOf(book: Book, holidays: readonly Holiday[] = []): Facts {
  const catalogue = catalogueOf(book);
  const counts = countsOf(catalogue, book);
  return {
    book,
    catalogue,
    counts,
    movements: movementsOf(catalogue, book),
    dividers: dividersByItem(catalogue, counts),
    holidays,
  };
}
