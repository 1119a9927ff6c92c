import { isUtf8 } from "node:buffer";
import { closeSync, fstatSync, openSync, readSync } from "node:fs";
import type { Book } from "#engine/book.ts";
import { currencyDigits } from "#engine/currency.ts";
import type { TextTable } from "#engine/sales/packed/texts.ts";
import { type ByteSource, type PackedReading, readRegular } from "#engine/sales/read/regular/read-regular.ts";
import type { SalesShape } from "#engine/sales/read/shape.ts";

/** Small files are read by the reader that understands everything; it takes them at once. */
export const SMALL_BYTES = 1 << 20;

export type ReadHow = {
  book: Pick<Book, "venue" | "salesShapes">;
  texts: TextTable;
  shape?: SalesShape | undefined;
  /** Told how much of a long file is read; may throw to stop. */
  onProgress?: (share: number) => void;
};

/** Reads a regular file piece by piece; gives the reason, for programmers, where it is none. */
export function readPieces(
  fileName: string,
  source: ByteSource,
  { book, texts, shape, onProgress }: ReadHow,
): PackedReading | string {
  return readRegular(source, {
    fileName,
    clock: book.venue,
    currencyDigits: currencyDigits(book.venue.currency),
    shapes: book.salesShapes,
    keepsStaff: book.venue.keepStaff ?? false,
    texts,
    ...(shape === undefined ? {} : { shape }),
    ...(onProgress === undefined
      ? {}
      : { onProgress: (bytesRead: number) => onProgress(bytesRead / source.size) }),
  });
}

export type OpenSource = ByteSource & { close: () => void };

export function fileSource(path: string): OpenSource {
  const file = openSync(path, "r");
  const read: ByteSource["read"] = (into, at, position) =>
    readSync(file, into, at, into.length - at, position);
  return { size: fstatSync(file).size, read, isUtf8, close: () => closeSync(file) };
}

export function bytesSource(bytes: Uint8Array): OpenSource {
  const read: ByteSource["read"] = (into, at, position) => {
    const piece = bytes.subarray(position, position + into.length - at);
    into.set(piece, at);
    return piece.length;
  };
  return { size: bytes.length, read, isUtf8, close: () => undefined };
}
