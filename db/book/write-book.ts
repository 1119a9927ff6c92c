import { type Sheet, writeSheet } from "#db/book/sheet.ts";
import { SHAPES_FILE, SHEET_KEYS, SHEETS, type SheetKey, VENUE_FILE } from "#db/book/sheets/all.ts";
import type { RingRow } from "#db/book/sheets/specs.ts";
import { writeShapes, writeVenue } from "#db/book/venue-file.ts";
import type { Book } from "#engine/book.ts";
import { currencyDigits } from "#engine/currency.ts";
import type { RingName } from "#engine/sales/ring.ts";

const ALWAYS: readonly SheetKey[] = ["items", "packs"];

/**
 * A book as the texts of its files, by name; reading them gives the same book.
 *
 * Sheets without a row are left out, save those that a book must have. Texts that a
 * spreadsheet would run are led by an apostrophe, which reading takes off again; numbers are never touched.
 */
export function writeBook(book: Book): Map<string, string> {
  const { timeZone, currency } = book.venue;
  const context = { decimalComma: false, timeZone, moneyDigits: currencyDigits(currency) };
  const files = new Map([[VENUE_FILE, writeVenue(book.venue)]]);
  const facts = { ...book, ringNames: book.ringNames.map(asRow) };
  for (const key of SHEET_KEYS) {
    const sheet = SHEETS[key] as Sheet<unknown>;
    if (facts[key].length > 0 || ALWAYS.includes(key)) {
      files.set(sheet.file, writeSheet(sheet, facts[key], context));
    }
  }
  if (book.salesShapes.length > 0) files.set(SHAPES_FILE, writeShapes(book.salesShapes));
  return files;
}

function asRow({ soldAs, ...rest }: RingName): RingRow {
  return { ...rest, soldAs: soldAsText(soldAs) };
}

/** What stands in `sold_as`. */
export function soldAsText(soldAs: RingName["soldAs"]): string {
  switch (soldAs.kind) {
    case "drink":
      return soldAs.drink;
    case "item":
      return soldAs.item;
    case "ignore":
      return "ignore";
  }
}
