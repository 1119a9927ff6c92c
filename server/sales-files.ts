import type { Book } from "#engine/book.ts";
import type { ReadSales } from "#engine/sales/read/line.ts";
import { readSales } from "#engine/sales/read/read-sales.ts";
import type { SalesShape } from "#engine/sales/read/shape.ts";
import { currencyDigits } from "#engine/venue.ts";
import { InputError } from "#server/input-error.ts";

export type NamedFile = { name: string; bytes: Uint8Array };

export type SalesImport = Pick<ReadSales, "lines" | "refused" | "shape"> & { file: string };

/** Reads one sales file as the venue's shapes say, or as detected. Throws InputError with the question it leaves open. */
export function readSalesFile(
  { name, bytes }: NamedFile,
  book: Pick<Book, "venue" | "salesShapes">,
  shape?: SalesShape,
): ReadSales {
  const read = readSales(bytes, {
    fileName: name,
    clock: book.venue,
    currencyDigits: currencyDigits(book.venue.currency),
    shapes: book.salesShapes,
    ...(shape === undefined ? {} : { shape }),
  });
  if (read.question !== null) throw new InputError(`${name}: ${read.question}`);
  return read;
}

/** Reads the sales files of a book, in name order; any that leaves a question stops all of them. */
export function readSalesFiles(
  files: readonly NamedFile[],
  book: Pick<Book, "venue" | "salesShapes">,
  onStep: (text: string) => void,
): { imports: SalesImport[]; notices: string[] } {
  const problems: string[] = [];
  const notices: string[] = [];
  const imports: SalesImport[] = [];
  for (const [index, file] of files.entries()) {
    onStep(`sales file ${index + 1} of ${files.length}: ${file.name}`);
    try {
      const { lines, refused, shape } = readSalesFile(file, book);
      imports.push({ file: file.name, lines, refused, shape });
      notices.push(...refused.map(({ row, reason }) => `${file.name} row ${row}: left out, ${reason}`));
    } catch (error) {
      if (!(error instanceof InputError)) throw error;
      problems.push(...error.problems);
    }
  }
  if (problems.length > 0) throw new InputError([...problems, "Nothing was loaded."]);
  return { imports, notices };
}
