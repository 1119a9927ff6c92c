import { isUtf8 } from "node:buffer";
import { readdirSync, readFileSync } from "node:fs";
import { basename, join } from "node:path";
import fc from "fast-check";
import Papa from "papaparse";
import { describe, expect, it } from "vitest";
import { linesOf, unpackDay } from "#engine/sales/packed/packed-sales.ts";
import { TextTable } from "#engine/sales/packed/texts.ts";
import { SalesFileError } from "#engine/sales/read/error.ts";
import type { ReadSales, SaleLine } from "#engine/sales/read/line.ts";
import { type ReadOptions, readSales } from "#engine/sales/read/read-sales.ts";
import { type ByteSource, readRegular } from "#engine/sales/read/regular/read-regular.ts";

const OPTIONS: ReadOptions = {
  fileName: "till.csv",
  clock: { timeZone: "Europe/Berlin", dayEnds: "04:00" },
  currencyDigits: 2,
  keepsStaff: true,
};

function sourceOf(bytes: Uint8Array): ByteSource {
  return {
    size: bytes.length,
    read: (into, at, position) => {
      const piece = bytes.subarray(position, position + into.length - at);
      into.set(piece, at);
      return piece.length;
    },
    isUtf8,
  };
}

type Comparable = Omit<ReadSales, "lines"> & { lines: string[] };

function comparable({ lines, ...read }: ReadSales): Comparable {
  return { ...read, lines: lines.map((line) => JSON.stringify(line)).sort() };
}

/** What the reader of regular files makes of a file, as the general reader would give it; its reason where it hands over. */
function regularly(bytes: Uint8Array, options: ReadOptions, pieceBytes: number): Comparable | string {
  const texts = new TextTable();
  const read = readRegular(sourceOf(bytes), { ...options, texts, pieceBytes });
  if (typeof read === "string") return read;
  const { packer, ...rest } = read;
  const lines: SaleLine[] = [];
  for (const { businessDate, block, staff } of packer.finish())
    lines.push(...linesOf(businessDate, unpackDay({ block, staff }), texts, packer.staff));
  return comparable({ ...rest, lines });
}

/** What either reader says of a file it cannot take. */
function orError<T>(read: () => T): T | string {
  try {
    return read();
  } catch (error) {
    if (error instanceof SalesFileError) return `Error: ${error.message}`;
    throw error;
  }
}

function bytesOf(text: string): Uint8Array {
  return new TextEncoder().encode(text);
}

const FOLDER = new URL("files/", import.meta.url).pathname;
const files = readdirSync(FOLDER).filter((name) => name.endsWith(".csv"));

describe("the reader of regular files", () => {
  it.each(files)("gives the same lines of %s as the general reader, or leaves it to that one", (name) => {
    const bytes = new Uint8Array(readFileSync(join(FOLDER, name)));
    const options = { ...OPTIONS, fileName: basename(name) };
    const general = orError(() => comparable(readSales(bytes, options)));
    for (const pieceBytes of [64, 1000, 1 << 20]) {
      const regular = orError(() => regularly(bytes, options, pieceBytes));
      if (typeof regular !== "string" || regular.startsWith("Error:")) expect(regular).toEqual(general);
    }
  });

  it("takes the plain ones of these files itself", () => {
    const taken = files.filter((name) => {
      const bytes = new Uint8Array(readFileSync(join(FOLDER, name)));
      return typeof orError(() => regularly(bytes, OPTIONS, 1 << 20)) !== "string";
    });
    expect(taken).toEqual(
      expect.arrayContaining([
        "plain-english.csv",
        "voids-by-kind.csv",
        "equal-lines.csv",
        "utf16-le-tabs.csv",
        "utf16-be-no-mark.csv",
        "child-rows-by-parent.csv",
        "child-rows-indented.csv",
        "child-rows-with-plus.csv",
        "days-in-columns.csv",
      ]),
    );
  });
});

const name = fc.constantFrom(
  "Gimlet",
  "Smoke, Salt & Rye",
  'The "Long" Watch',
  "Señora Früh",
  "  Gimlet ",
  "Total Eclipse",
  "Cafe\u0301",
  "",
);
const quantity = fc.constantFrom(
  "1",
  "1",
  "2",
  "-1",
  "0",
  "1.5",
  "2.00",
  "(1)",
  "x 2",
  "",
  "-0",
  "1e3",
  "1,000",
  "½",
);
const money = fc.constantFrom(
  "12.50",
  "0.00",
  "-3.00",
  "",
  "-",
  "€ 4.20",
  "1,250.00",
  "12",
  "12.5",
  "0.125",
  "-0.00",
  "9.999",
  "n/a",
);
const second = fc.integer({ min: 0, max: 86_399 });
const two = (value: number): string => String(value).padStart(2, "0");
const clock = second.map(
  (at) => `${two(Math.floor(at / 3600))}:${two(Math.floor(at / 60) % 60)}:${two(at % 60)}`,
);
const isoDate = fc.constantFrom(
  "2025-03-29",
  "2025-03-30",
  "2025-10-25",
  "2025-10-26",
  "2025-10-27",
  "2025-02-30",
);
const dayFirst = fc.constantFrom("29/03/2025", "30/03/2025", "26/10/2025", "01/02/2025", "1/2/25");
const zone = fc.constantFrom("", "", "", "Z", "+02:00", "-0330", ".250", ".5Z");
const halfDay = fc
  .tuple(
    fc.integer({ min: 0, max: 13 }),
    fc.integer({ min: 0, max: 61 }),
    fc.constantFrom(" AM", " PM", "pm", "a.m.", ""),
  )
  .map(([hour, minute, half]) => `${hour}:${two(minute)}${half}`);
const whenIso = fc.tuple(isoDate, fc.constantFrom(" ", "T"), clock, zone).map((parts) => parts.join(""));
const whenDayFirst = fc.tuple(dayFirst, fc.oneof(clock, halfDay)).map(([date, time]) => `${date} ${time}`);
const staff = fc.constantFrom("Ines", " Tomás", "", "-", "S 2");
const check = fc.constantFrom("101", "0102", "A-7", "", " 5 ", "9007199254740993");

const fewChecks = fc.constantFrom("101", "101", "102", "");
const whenOrNone = fc.oneof(whenIso, fc.constant(""));
const childName = fc.oneof(name, fc.constantFrom("+ Extra lime", "- No salt", "• Double", "No ice", "> Up"));
const indented = fc.oneof(name, fc.constantFrom("  No ice", "\tDouble", "Gimlet"));
const childQuantity = fc.oneof(quantity, fc.constantFrom("", "1"));
const lineNo = fc.constantFrom("1", "2", "3", "", "0", "none");
const daySum = fc.constantFrom("", "0", "3", "12", "-2", "-", "½", "x", "1.5");

type Columns = Record<string, fc.Arbitrary<string>>;
const layouts: Columns[] = [
  {
    "Sold at": whenIso,
    Check: check,
    Line: check,
    Item: name,
    Modifiers: fc.constantFrom("", "No ice", "Double; No ice"),
    Qty: quantity,
    Gross: money,
    Net: money,
  },
  {
    Date: dayFirst,
    Time: fc.oneof(clock, halfDay),
    Item: name,
    Qty: quantity,
    Gross: money,
    Discount: money,
  },
  {
    Time: whenDayFirst,
    Item: name,
    "Modifier 1": fc.constantFrom("", "No ice"),
    "Modifier 2": fc.constantFrom("", "Double"),
    Qty: quantity,
    Net: money,
  },
  {
    "Business date": isoDate,
    Time: clock,
    Item: name,
    Status: fc.constantFrom("sale", "void", "", "payment", "odd word"),
    Qty: quantity,
    Net: money,
  },
  { "Business date": isoDate, "Sold at": whenIso, Item: name, Qty: quantity, Net: money },
  { Date: isoDate, Item: name, Qty: quantity, Net: money, Server: staff, Guest: staff },
  { "Sold at": whenIso, Item: name, Type: fc.constantFrom("Drink", "Beer", "Void"), Gross: money },
  { "Sold at (UTC)": whenIso, Item: name, Qty: quantity },
  // Rows that belong to the row above, or to one that they name.
  { "Sold at": whenOrNone, Check: fewChecks, Item: childName, Qty: childQuantity, Net: money },
  { "Sold at": whenOrNone, Check: fewChecks, Item: indented, Qty: childQuantity, Net: money },
  {
    "Sold at": whenIso,
    Check: fewChecks,
    Line: lineNo,
    Parent: lineNo,
    Item: name,
    Qty: quantity,
    Net: money,
  },
  // Items in rows, days in columns.
  { Item: name, "2025-03-29": daySum, "2025-03-30": daySum, "2025-03-31": daySum },
  { Item: name, Group: fc.constantFrom("", "Sours"), "29/03/2025": daySum, "30/03/2025": daySum },
];

const someFile = fc
  .constantFrom(...layouts)
  .chain((columns) =>
    fc.record({
      rows: fc.array(fc.tuple(...Object.values(columns)), { minLength: 1, maxLength: 25 }),
      headings: fc.constant(Object.keys(columns)),
      delimiter: fc.constantFrom(",", ";", "\t"),
      newline: fc.constantFrom("\n", "\r\n", "\r"),
      plain: fc.boolean(),
      odd: fc.constantFrom("", "", "Total,,,,9.00", ",,", "just words", '"open'),
      end: fc.boolean(),
      mark: fc.constantFrom("", "\uFEFF"),
    }),
  )
  .map(({ rows, headings, delimiter, newline, plain, odd, end, mark }) => {
    // Half of the files have nothing odd in them, so that the reader of regular files gets far.
    const kept = plain
      ? rows.filter((row) => !row.some((cell) => /^(?:x 2|1e3|1,000|½|0\.125|)$/.test(cell)))
      : rows;
    const text = Papa.unparse([headings, ...kept, ...kept.slice(0, 5)], { delimiter, newline });
    return `${mark}${text}${plain || odd === "" ? "" : newline + odd}${end ? newline : ""}`;
  });

/** Text as other programs write it: in units of two bytes, or in one byte a letter, here and there damaged. */
function encoded(text: string, encoding: string): Uint8Array {
  if (encoding === "utf-8") return bytesOf(text);
  if (encoding === "utf-8 damaged") {
    const bytes = bytesOf(text.replace(/ü/g, "u"));
    const odd = bytes.indexOf("G".charCodeAt(0), bytes.length / 2);
    if (odd >= 0) bytes[odd] = 0xfc;
    return bytes;
  }
  if (encoding === "windows-1252")
    return Uint8Array.from(text, (letter) => (letter === "€" ? 0x80 : Math.min(letter.charCodeAt(0), 0xff)));
  const bytes = new Uint8Array(2 * text.length);
  const view = new DataView(bytes.buffer);
  for (let unit = 0; unit < text.length; unit += 1)
    view.setUint16(2 * unit, text.charCodeAt(unit), encoding === "utf-16le");
  return bytes;
}

it.each(["utf-16le", "utf-16be", "windows-1252", "utf-8 damaged"])(
  "gives the same as the general reader on files in %s, however the pieces are cut",
  (encoding) => {
    let taken = 0;
    const stated = fc.constantFrom(undefined, undefined, "utf-8" as const, "windows-1252" as const);
    fc.assert(
      fc.property(someFile, fc.constantFrom(64, 101, 1 << 20), stated, (text, pieceBytes, statedAs) => {
        const letters = encoding.startsWith("utf-16") ? text.replaceAll("Gimlet", "Gimlet 🍸") : text;
        const bytes = encoded(letters, encoding);
        const options: ReadOptions =
          statedAs === undefined ? OPTIONS : { ...OPTIONS, shape: { files: "till.csv", encoding: statedAs } };
        const regular = orError(() => regularly(bytes, options, pieceBytes));
        if (typeof regular === "string" && !regular.startsWith("Error:")) return;
        taken += 1;
        expect(regular).toEqual(orError(() => comparable(readSales(bytes, options))));
      }),
      { numRuns: 300 },
    );
    expect(taken).toBeGreaterThan(20);
  },
);

it("gives the same as the general reader on any file it takes, however the pieces are cut", () => {
  let taken = 0;
  fc.assert(
    fc.property(someFile, fc.constantFrom(64, 100, 1 << 20), (text, pieceBytes) => {
      const bytes = bytesOf(text);
      const regular = orError(() => regularly(bytes, OPTIONS, pieceBytes));
      if (typeof regular === "string" && !regular.startsWith("Error:")) return;
      taken += 1;
      expect(regular).toEqual(orError(() => comparable(readSales(bytes, OPTIONS))));
    }),
    { numRuns: 600 },
  );
  expect(taken).toBeGreaterThan(60);
});
