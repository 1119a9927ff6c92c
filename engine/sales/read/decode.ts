import { SalesFileError } from "#engine/sales/read/error.ts";
import type { SalesShape } from "#engine/sales/read/shape.ts";

export type Encoding = NonNullable<SalesShape["encoding"]>;

export type DecodedFile = { text: string; encoding: Encoding };

const BYTES_MOST = 160 * 1024 * 1024;
const LINES_MOST = 3_000_000;
const LINE_CHARACTERS_MOST = 256 * 1024;

/** Windows-1252 at 0x80–0x9F; some runtimes decode the label as ISO 8859-1 and leave control characters there. */
const WINDOWS_1252 = "€\u0081‚ƒ„…†‡ˆ‰Š‹Œ\u008dŽ\u008f\u0090‘’“”•–—˜™š›œ\u009džŸ";

/**
 * The text of a file and the encoding it was found in: by its byte order mark, else UTF-16 by its zero bytes, else
 * UTF-8 where that holds, else Windows-1252. Without the mark.
 *
 * Throws SalesFileError for workbooks, pictures and other files that are no text, and for what is too large.
 */
export function decodeFile(bytes: Uint8Array, fileName: string, stated?: Encoding): DecodedFile {
  refuseLarge(bytes.length, fileName);
  refuseWorkbook(bytes, fileName);
  const encoding = markedEncoding(bytes) ?? stated ?? unmarkedEncoding(bytes);
  const text = withoutMark(decodeAs(bytes, encoding));
  refuseBinary(text, fileName);
  refuseEndlessLine(text, fileName);
  return { text, encoding };
}

/** A file that is read as a whole is held in memory several times over. */
export function refuseLarge(size: number, fileName: string): void {
  if (size > BYTES_MOST)
    throw new SalesFileError(
      fileName,
      `the file is larger than ${BYTES_MOST / 1024 / 1024} MB, and its rows can only be understood together; split it by month.`,
    );
}

function markedEncoding(bytes: Uint8Array): Encoding | undefined {
  if (bytes[0] === 0xef && bytes[1] === 0xbb && bytes[2] === 0xbf) return "utf-8";
  if (bytes[0] === 0xff && bytes[1] === 0xfe) return "utf-16le";
  if (bytes[0] === 0xfe && bytes[1] === 0xff) return "utf-16be";
  return undefined;
}

function unmarkedEncoding(bytes: Uint8Array): Encoding {
  const head = bytes.subarray(0, 4096);
  let zerosEven = 0;
  let zerosOdd = 0;
  for (let index = 0; index < head.length; index += 1) {
    if (head[index] === 0 && index % 2 === 0) zerosEven += 1;
    if (head[index] === 0 && index % 2 === 1) zerosOdd += 1;
  }
  const most = head.length / 5;
  if (zerosOdd > most && zerosEven < most / 10) return "utf-16le";
  if (zerosEven > most && zerosOdd < most / 10) return "utf-16be";
  return isMostlyUtf8(bytes) ? "utf-8" : "windows-1252";
}

/** One damaged letter does not turn a UTF-8 file into another encoding: its other letters would all go wrong. */
function isMostlyUtf8(bytes: Uint8Array): boolean {
  try {
    new TextDecoder("utf-8", { fatal: true }).decode(bytes);
    return true;
  } catch {
    const { wrong, right } = nonAsciiLetters(new TextDecoder("utf-8").decode(bytes));
    return right > wrong;
  }
}

/** How many letters beyond ASCII a text has, and how many that stand for bytes which are none. */
export function nonAsciiLetters(text: string): { wrong: number; right: number } {
  let wrong = 0;
  let right = 0;
  for (const [letter] of text.matchAll(/[^\0-\u007f]/gu)) {
    if (letter === "\uFFFD") wrong += 1;
    else right += 1;
  }
  return { wrong, right };
}

/** The text of bytes in an encoding, a byte order mark with it. */
export function decodeAs(bytes: Uint8Array, encoding: Encoding): string {
  if (encoding !== "windows-1252") return new TextDecoder(encoding, { ignoreBOM: true }).decode(bytes);
  // It has no mark to ignore; asked to, Node 20 leaves out a "ÿ" at the start.
  const text = new TextDecoder(encoding).decode(bytes);
  return text.replace(/[\u0080-\u009f]/g, (letter) => WINDOWS_1252[letter.charCodeAt(0) - 0x80] ?? letter);
}

function withoutMark(text: string): string {
  return text.charCodeAt(0) === 0xfeff ? text.slice(1) : text;
}

/** How packed files begin, in the signs of Latin-1 (each format's own specification). */
const PACKED: readonly [starts: string, name: string][] = [
  ["\u001f\u008b", "gzip"],
  ["BZh", "bzip2"],
  ["\u00fd7zXZ", "xz"],
  ["7z\u00bc\u00af", "7z"],
  ["Rar!", "rar"],
  ["(\u00b5/\u00fd", "zstd"],
];

/** Nothing is unpacked here: a small packed file can hold a giant. */
function refuseWorkbook(bytes: Uint8Array, fileName: string): void {
  const starts = String.fromCharCode(...bytes.subarray(0, 5));
  const packed = PACKED.find(([start]) => starts.startsWith(start));
  // A list may well begin with the letters of one; it has no byte that no text has right after them.
  if (packed !== undefined && !isText(bytes.subarray(0, 64)))
    throw new SalesFileError(
      fileName,
      `this file is packed (${packed[1]}); unpack it and import the CSV that is in it.`,
    );
  if (starts.startsWith("PK\u0003\u0004") || starts.startsWith("\u00d0\u00cf\u0011\u00e0"))
    throw new SalesFileError(
      fileName,
      "this is a spreadsheet workbook or a zip file; save the sheet as CSV, or unpack it, and import that.",
    );
  if (starts.startsWith("%PDF"))
    throw new SalesFileError(
      fileName,
      "this is a PDF; export the sales from the till as CSV and import that.",
    );
}

function isText(bytes: Uint8Array): boolean {
  return bytes.every((byte) => byte >= 32 || byte === 9 || byte === 10 || byte === 13);
}

function refuseBinary(text: string, fileName: string): void {
  const head = text.slice(0, 65_536);
  let controls = 0;
  for (let index = 0; index < head.length; index += 1) {
    const code = head.charCodeAt(index);
    if (code < 32 && code !== 9 && code !== 10 && code !== 13) controls += 1;
  }
  if (controls > head.length / 100)
    throw new SalesFileError(
      fileName,
      "this is no text file; export the sales from the till as CSV and import that.",
    );
}

function refuseEndlessLine(text: string, fileName: string): void {
  let line = 1;
  let start = 0;
  const ends = /\r\n?|\n/g;
  while (start < text.length) {
    const found = ends.exec(text);
    const end = found === null ? text.length : found.index;
    if (end - start > LINE_CHARACTERS_MOST)
      throw new SalesFileError(
        fileName,
        `line ${line} is ${end - start} characters long, which no till writes; check that the export is complete.`,
      );
    if (found === null) return;
    start = ends.lastIndex;
    line += 1;
    if (line > LINES_MOST)
      throw new SalesFileError(fileName, `the file has more than ${LINES_MOST} lines; split it by month.`);
  }
}
