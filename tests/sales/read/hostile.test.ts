import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { SalesFileError } from "#engine/sales/read/error.ts";
import type { ReadSales } from "#engine/sales/read/line.ts";
import { previewSales, readSales } from "#engine/sales/read/read-sales.ts";

const clock = { timeZone: "Europe/Berlin", dayEnds: "04:00" };
const options = { fileName: "till.csv", clock, currencyDigits: 2 };

function readText(text: string): ReadSales {
  return readSales(new TextEncoder().encode(text), options);
}

function readOrNamed(bytes: Uint8Array): ReadSales | SalesFileError {
  try {
    previewSales(bytes, options);
    return readSales(bytes, options);
  } catch (error) {
    if (error instanceof SalesFileError) return error;
    throw error;
  }
}

describe("a file that is no sales list", () => {
  it.each([
    ["a workbook", new Uint8Array([0x50, 0x4b, 3, 4, 0, 0]), /workbook/],
    ["a PDF", new TextEncoder().encode("%PDF-1.7 …"), /PDF/],
    ["an empty file", new Uint8Array(), /empty/],
    ["blank lines", new TextEncoder().encode("\n\n  \n"), /empty/],
    ["noise", new Uint8Array(5000).map((_, index) => (index * 7) % 29), /no text file/],
    [
      "a quotation mark never closed",
      new TextEncoder().encode('Date,Item,Qty\n2025-03-01,"Sour,1\n2025-03-01,Sour,1\nx\ny\n'),
      /row 2 opens a quotation mark/,
    ],
  ])("is turned away with a sentence: %s", (_, bytes, message) => {
    expect(() => readSales(bytes, options)).toThrow(SalesFileError);
    expect(() => readSales(bytes, options)).toThrow(message);
    expect(() => readSales(bytes, options)).toThrow(/^till\.csv: /);
  });

  it.each([
    ["one line of 40 MB", () => new Uint8Array(40_000_000).fill(65)],
    ["40 MB of commas", () => new Uint8Array(40_000_000).fill(44)],
    [
      "40 MB of blank lines with a heading",
      () => new TextEncoder().encode(`Date,Item,Qty\n${"\n".repeat(40_000_000)}`),
    ],
    [
      "40 MB after an open quotation mark",
      () => new TextEncoder().encode(`Date,Item,Qty\n2025-03-01,"Sour,1\n${"x,y\n".repeat(10_000_000)}`),
    ],
  ])("is turned away soon: %s", (_, make) => {
    const bytes = make();
    const start = performance.now();
    expect(() => readSales(bytes, options)).toThrow(SalesFileError);
    expect(performance.now() - start).toBeLessThan(20_000);
  });
});

it("reads names of a UTF-8 file rightly though one letter of it is damaged", () => {
  const text = new TextEncoder().encode("Date,Item,Qty\n2025-03-01,Café crème,1\n2025-03-01,Kir?,1\n");
  text[text.length - 4] = 0xe9;
  expect(readSales(text, options).lines.map(({ ringName }) => ringName)).toEqual(["Café crème", "Kir\uFFFD"]);
});

const cell = fc.oneof(
  {
    weight: 3,
    arbitrary: fc.constantFrom(
      "2025-03-01",
      "01/03/2025",
      "2025-03-01 20:00",
      "1",
      "2",
      "-1",
      "12.50",
      "Sour",
      "Spritz",
      "",
    ),
  },
  {
    weight: 2,
    arbitrary: fc.constantFrom(
      "Total",
      "+ lime",
      "  no ice",
      "void",
      "1,000",
      "1.234,5",
      "(3)",
      "x",
      "1e309",
      '"',
      "NaN",
      "½",
      "Date",
      "9 pm",
      "31/02/2025",
      "\u0000",
      "=1+1",
    ),
  },
  { weight: 1, arbitrary: fc.string({ maxLength: 30 }) },
);
const heading = fc.oneof(
  {
    weight: 4,
    arbitrary: fc.constantFrom(
      "Date",
      "Time",
      "Item",
      "Qty",
      "Net",
      "Gross",
      "Check",
      "Type",
      "Modifiers",
      "Server",
      "Parent",
      "Closed at",
      "Business date",
      "Price",
      "Discount",
      "Menge",
      "2025-03-01",
    ),
  },
  { weight: 1, arbitrary: fc.string({ maxLength: 20 }) },
);

it("answers any bytes with lines, a question or a named error", () => {
  fc.assert(
    fc.property(fc.uint8Array({ maxLength: 400 }), (bytes) => void readOrNamed(bytes)),
    { numRuns: 300 },
  );
});

it("answers any table with lines, a question or a named error", () => {
  const table = fc.tuple(
    fc.array(heading, { minLength: 1, maxLength: 8 }),
    fc.array(fc.array(cell, { maxLength: 9 }), { maxLength: 12 }),
  );
  fc.assert(
    fc.property(
      table,
      fc.constantFrom(",", ";", "\t", "|"),
      fc.constantFrom("\n", "\r\n", "\r"),
      ([head, rows], delimiter, end) => {
        const text = [head, ...rows].map((row) => row.join(delimiter)).join(end);
        const result = readOrNamed(new TextEncoder().encode(text));
        if (result instanceof SalesFileError) return;
        if (result.question !== null) expect(result.lines).toEqual([]);
        for (const line of result.lines) {
          expect(line.businessDate).toMatch(/^\d{4}-\d\d-\d\d$/);
          expect(line.at ?? "2025-03-01T20:00:00Z").toMatch(/^\d{4}-\d\d-\d\dT\d\d:\d\d:\d\dZ$/);
          expect(line.ringName).not.toBe("");
          expect(Number.isFinite(line.quantity)).toBe(true);
          for (const minor of [line.grossMinor, line.netMinor])
            expect(minor === null || Number.isSafeInteger(minor)).toBe(true);
        }
      },
    ),
    { numRuns: 600 },
  );
});

it("makes up no quantity: what is read is what the readable cells add up to, and every other row is refused", () => {
  const quantity = fc.oneof(
    fc
      .integer({ min: -50, max: 50 })
      .map((value) => ({ text: String(value), value: value as number | null })),
    fc
      .constantFrom("", "two", "1e309", "NaN", "?", "1-2", "--1", "0x10", "1 2", "99999999")
      .map((text) => ({ text, value: null })),
  );
  const sale = fc.record({
    quantity,
    item: fc.constantFrom("Sour", "Spritz", "Lager"),
    minute: fc.integer({ min: 10, max: 59 }),
  });
  fc.assert(
    fc.property(fc.array(sale, { minLength: 1, maxLength: 40 }), (sales) => {
      const rows = sales.map(
        ({ item, minute, quantity: { text } }) => `2025-03-01 20:${minute},7,${item},${text}`,
      );
      const result = readText(`Sold at,Check,Item,Qty\n${rows.join("\n")}\n`);
      const readable = sales.filter(({ quantity: { value } }) => value !== null);
      expect(result.question).toBeNull();
      const sum = (values: number[]): number => values.reduce((total, value) => total + Math.abs(value), 0);
      expect(sum(result.lines.map((line) => line.quantity))).toBe(
        sum(readable.map((one) => one.quantity.value ?? 0)),
      );
      expect(result.lines).toHaveLength(readable.length);
      expect(result.refused.map(({ row }) => row)).toEqual(
        sales.flatMap((one, index) => (one.quantity.value === null ? [index + 2] : [])),
      );
    }),
    { numRuns: 300 },
  );
});

it("loses no row: each is a line, part of one, refused or passed over", () => {
  const row = fc.tuple(
    fc.constantFrom("2025-03-01 20:00", "", "soon"),
    fc.constantFrom("Sour", "+ lime", "Total", "", "No ice"),
    fc.constantFrom("1", "-1", "", "some"),
  );
  fc.assert(
    fc.property(fc.array(row, { minLength: 1, maxLength: 30 }), (rows) => {
      const result = readText(
        `Date,Item,Qty\n2025-03-01 19:00,Sour,1\n${rows.map((one) => one.join(",")).join("\n")}\n`,
      );
      if (result.question !== null) return;
      expect(result.linesRead + result.refused.length + result.rowsSkipped).toBe(rows.length + 2);
    }),
  );
});

it("reads 200,000 lines of a till within seconds", () => {
  const rows = Array.from({ length: 200_000 }, (_, index) => {
    const minute = String(index % 60).padStart(2, "0");
    return `${1 + (index % 28)}/03/2025,2${index % 4}:${minute},${1000 + (index >> 2)},House drink ${index % 80},${index % 7 === 0 ? "no ice; extra lime" : ""},${1 + (index % 3)},"${index % 30},50"`;
  });
  const bytes = new TextEncoder().encode(`Date,Time,Check,Item,Modifiers,Qty,Net\n${rows.join("\n")}\n`);
  const start = performance.now();
  const result = readSales(bytes, options);
  const elapsedMs = performance.now() - start;
  expect(result.lines).toHaveLength(200_000);
  expect(elapsedMs).toBeLessThan(20_000);
});
