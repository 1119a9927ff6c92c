import fc from "fast-check";
import { expect, it } from "vitest";
import { writeSales } from "#engine/sales/read/canonical.ts";
import type { SaleLine } from "#engine/sales/read/line.ts";
import { previewSales, readSales } from "#engine/sales/read/read-sales.ts";

const clock = { timeZone: "Europe/Berlin", dayEnds: "04:00" };

function readBack(text: string, currencyDigits: number) {
  return readSales(new TextEncoder().encode(text), { fileName: "own.csv", clock, currencyDigits });
}

const awkward = fc.string({
  unit: fc.constantFrom(
    "a",
    "é",
    "é",
    "ß",
    "酒",
    "🍋",
    '"',
    ",",
    ";",
    "=",
    "+",
    "@",
    "-",
    " ",
    "\n",
    "\r\n",
    "\r",
    "\t",
    "'",
  ),
  maxLength: 12,
});
const name = awkward.map((text) => text.normalize("NFC").trim()).filter((text) => text !== "");
const maybe = <T>(arbitrary: fc.Arbitrary<T>): fc.Arbitrary<T | null> => fc.option(arbitrary, { nil: null });
const date = fc.date({ min: new Date("2000-01-01"), max: new Date("2090-01-01"), noInvalidDate: true });

const saleLine: fc.Arbitrary<SaleLine> = fc.record({
  businessDate: date.map((day) => day.toISOString().slice(0, 10)),
  at: maybe(date.map((moment) => `${moment.toISOString().slice(0, 19)}Z`)),
  ringName: name,
  modifiers: awkward.map((text) => text.trim()),
  quantity: fc.oneof(
    fc.integer({ min: -999, max: 999 }),
    fc.double({ min: -100, max: 100, noNaN: true }).map((value) => value + 0),
  ),
  grossMinor: maybe(fc.integer({ min: -1e9, max: 1e9 })),
  netMinor: maybe(fc.integer({ min: -1e9, max: 1e9 })),
  check: maybe(name),
  lineNo: maybe(name),
});

it("gives back every line of our own sales file just as it was written, quotes, commas, formulas and line breaks included", () => {
  fc.assert(
    fc.property(fc.array(saleLine, { maxLength: 20 }), fc.constantFrom(0, 2, 3), (lines, currencyDigits) => {
      const result = readBack(writeSales(lines, currencyDigits), currencyDigits);
      expect(result.refused).toEqual([]);
      expect(result.lines).toEqual(lines);
    }),
    { numRuns: 400 },
  );
});

it("writes our own sales file as the book says: UTC instants, major units, a text that begins with = led by an apostrophe", () => {
  const line: SaleLine = {
    businessDate: "2025-03-01",
    at: "2025-03-02T00:10:00Z",
    ringName: '=Sour, "dry"',
    modifiers: "no egg; up",
    quantity: -2,
    grossMinor: -5,
    netMinor: null,
    check: "A7",
    lineNo: "3",
  };
  expect(writeSales([line], 2)).toBe(
    "business_date,sold_at,ring_name,modifiers,quantity,gross,net,check,line\r\n" +
      '2025-03-01,2025-03-02T00:10:00Z,"\'=Sour, ""dry""",no egg; up,-2,-0.05,,A7,3\r\n',
  );
});

it("keeps equal lines of our own file apart, and reads a file without lines", () => {
  const line = {
    businessDate: "2025-03-01",
    at: null,
    ringName: "Sour",
    modifiers: "",
    quantity: 1,
    grossMinor: null,
    netMinor: null,
    check: null,
    lineNo: null,
  };
  expect(readBack(writeSales([line, line, line], 2), 2).lines).toHaveLength(3);
  expect(readBack(writeSales([], 2), 2)).toMatchObject({ lines: [], refused: [], question: null });
});

it.each([
  ["2025-02-30,,Sour,,1,,,,", /business_date/],
  ["2025-03-01,2025-03-01 20:00,Sour,,1,,,,", /sold_at/],
  ["2025-03-01,,,,1,,,,", /ring_name/],
  ["2025-03-01,,Sour,,1e309,,,,", /quantity/],
  ["2025-03-01,,Sour,,,,,,", /quantity/],
  ["2025-03-01,,Sour,,1,1.005,,,", /gross/],
  ["2025-03-01,,Sour,,1,,99999999999999999,,", /net/],
  ["2025-03-01,,Gin, Tonic,,1,,,,", /10 cells/],
])("refuses the row %s of our own form and says which column", (row, reason) => {
  const header = "business_date,sold_at,ring_name,modifiers,quantity,gross,net,check,line";
  const result = readBack(`${header}\n${row}\n`, 2);
  expect(result.lines).toEqual([]);
  expect(result.refused).toEqual([{ row: 2, reason: expect.stringMatching(reason) }]);
});

it("reads our own form before any shape that a file's name might call for", () => {
  const line = {
    businessDate: "2025-03-01",
    at: null,
    ringName: "Sour",
    modifiers: "",
    quantity: 1,
    grossMinor: null,
    netMinor: null,
    check: null,
    lineNo: null,
  };
  const bytes = new TextEncoder().encode(writeSales([line], 2));
  const shapes = [{ files: "*", delimiter: ";", columns: { item: "Zeug" } }];
  const options = { fileName: "own.csv", clock, currencyDigits: 2, shapes };
  expect(readSales(bytes, options).lines).toEqual([line]);
  expect(previewSales(bytes, options).columns.map(({ role }) => role)).toEqual([
    "businessDate",
    "when",
    "item",
    "modifiers",
    "quantity",
    "gross",
    "net",
    "check",
    "lineNo",
  ]);
});
