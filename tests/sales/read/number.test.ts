import { describe, expect, it } from "vitest";
import { noEvidence, readMoneyMinor, readQuantity, weighDecimal } from "#engine/sales/read/number.ts";

/** How numbers are written in the sales files of tills: common practice; grouping marks as in Unicode CLDR number symbols. */
describe("how many were sold", () => {
  it.each([
    ["2", ".", 2],
    ["-1", ".", -1],
    ["−1", ".", -1],
    ["(1)", ".", -1],
    ["(-1)", ".", -1],
    ["1-", ".", -1],
    ["+3", ".", 3],
    ["2x", ".", 2],
    ["x 2", ".", 2],
    ["2 ×", ".", 2],
    ["2,5", ",", 2.5],
    ["1,000", ".", 1000],
    ["1,000", ",", 1],
    ["1 000", ".", 1000],
    ["½", ".", 0.5],
    ["1 1/2", ".", 1.5],
    ["0", ".", 0],
    ["-0", ".", 0],
  ] as const)("reads %s (decimal %s) as %d", (cell, decimal, quantity) => {
    expect(readQuantity(cell, decimal)).toBe(quantity);
  });

  it.each([
    "",
    "two",
    "1 2",
    "--1",
    "-1-",
    "+-1",
    "1e309",
    "1e3",
    "0x10",
    "NaN",
    "Infinity",
    "1/0",
    "1.2.3",
    "1,00,",
    "12,34",
    "99999999",
    "9".repeat(400),
    ".",
    "-",
  ])('makes nothing of "%s"', (cell) => {
    expect(readQuantity(cell, ".")).toBeUndefined();
  });
});

describe("money", () => {
  it.each([
    ["12.50", ".", 2, 1250],
    ["12,50 €", ",", 2, 1250],
    ["€ -12,50", ",", 2, -1250],
    ["-$12.50", ".", 2, -1250],
    ["$-12.50", ".", 2, -1250],
    ["(12.50)", ".", 2, -1250],
    ["12.50-", ".", 2, -1250],
    ["CHF 1'234.50", ".", 2, 123450],
    ["CHF 12.–", ".", 2, 1200],
    ["1 234,50 kr", ",", 2, 123450],
    ["1\u202f234,50 €", ",", 2, 123450],
    ["1,23,456.00", ".", 2, 12345600],
    ["R$ 8,00", ",", 2, 800],
    ["12.505", ".", 2, 1251],
    ["-12.505", ".", 2, -1251],
    ["0.1", ".", 2, 10],
    ["1800", ".", 0, 1800],
    ["1.250", ".", 3, 1250],
    [".5", ".", 2, 50],
    ["comp", ".", 2, 0],
    ["-0.00", ".", 2, 0],
    // 0.29 × 100 is 28.999… in binary; the digits are read, not multiplied.
    ["0.29", ".", 2, 29],
    ["4.35", ".", 2, 435],
  ] as const)("reads %s (decimal %s, %d digits) as %d minor units", (cell, decimal, digits, minor) => {
    expect(readMoneyMinor(cell, decimal, digits)).toBe(minor);
  });

  it.each(["ask", "12,50", "1e309", "12.50.00", "5%", "99999999999999999", "--5", "- -"])(
    'makes nothing of "%s"',
    (cell) => {
      expect(readMoneyMinor(cell, ".", 2)).toBeUndefined();
    },
  );
});

it.each([
  ["1.234,50", "comma"],
  ["1,234.50", "dot"],
  ["12,5", "comma"],
  ["0,125", "comma"],
  ["1.234.567", "comma"],
  ["1234.567", "dot"],
  ["1,234", "unclear"],
  ["1.234", "unclear"],
] as const)("learns from %s that the decimal mark is: %s", (cell, mark) => {
  const evidence = noEvidence();
  weighDecimal(cell, evidence);
  expect(evidence).toEqual({ ...noEvidence(), [mark]: cell });
});
