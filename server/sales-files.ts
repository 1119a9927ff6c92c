import type { Book } from "#engine/book.ts";
import { currencyDigits } from "#engine/currency.ts";
import { TextTable } from "#engine/sales/packed/texts.ts";
import { SalesFileError } from "#engine/sales/read/error.ts";
import type { ReadSales } from "#engine/sales/read/line.ts";
import { readSales } from "#engine/sales/read/read-sales.ts";
import type { PackedReading } from "#engine/sales/read/regular/read-regular.ts";
import type { SalesShape } from "#engine/sales/read/shape.ts";
import { InputError } from "#server/input-error.ts";
import { bytesSource, readPieces, SMALL_BYTES } from "#server/sales-bytes.ts";

export type NamedFile = { name: string; bytes: Uint8Array };

/** What was read of a sales file, its lines packed or not; `count` is how many they are. */
export type SalesImport = Pick<ReadSales, "refused" | "shape"> & { file: string; count: number } & (
    | Pick<ReadSales, "lines">
    | Pick<PackedReading, "packer">
  );

/** What a sales file leaves open: it is asked of a person, and nothing is read in until it is answered. */
export class SalesQuestion extends InputError {
  override name = "SalesQuestion";
}

/** Reads one sales file as the venue's shapes say, or as detected. Throws SalesQuestion where it leaves one open. */
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
    keepsStaff: book.venue.keepStaff ?? false,
    ...(shape === undefined ? {} : { shape }),
  });
  if (read.question !== null) throw new SalesQuestion(read.question);
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
    if (file.bytes.length === 0) {
      notices.push(`${file.name} is empty; export these sales again if there were any`);
      continue;
    }
    try {
      const { said, ...read } = readForBook(file, book);
      imports.push(read);
      const { refused } = read;
      notices.push(...said.map((notice) => `${file.name}: ${notice}`), ...leftOut(file.name, refused));
    } catch (error) {
      if (error instanceof InputError) problems.push(...error.problems);
      else if (error instanceof SalesFileError) problems.push(error.message);
      else throw error;
    }
  }
  if (problems.length > 0) throw new InputError([...problems, "Nothing was loaded."]);
  return { imports, notices };
}

/** A long and regular file is read from its bytes, any other as a whole. */
function readForBook(
  { name, bytes }: NamedFile,
  book: Pick<Book, "venue" | "salesShapes">,
): SalesImport & { said: string[] } {
  if (bytes.length > SMALL_BYTES) {
    const read = readPieces(name, bytesSource(bytes), { book, texts: new TextTable() });
    if (typeof read !== "string") {
      const { packer, refused, shape, notices } = read;
      return { file: name, packer, count: packer.lines, refused, shape, said: notices };
    }
  }
  const { lines, refused, shape, notices } = readSalesFile({ name, bytes }, book);
  return { file: name, lines, count: lines.length, refused, shape, said: notices };
}

const SHOWN_ROWS = 20;

function leftOut(file: string, refused: ReadSales["refused"]): string[] {
  const shown = refused
    .slice(0, SHOWN_ROWS)
    .map(({ row, reason }) => `${file} row ${row}: left out, ${reason}`);
  return refused.length <= SHOWN_ROWS
    ? shown
    : [...shown, `${file}: … and ${refused.length - SHOWN_ROWS} more rows`];
}
