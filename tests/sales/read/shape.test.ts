import { describe, expect, it } from "vitest";
import { SalesShape, SalesShapes, shapeFor } from "#engine/sales/read/shape.ts";

describe("a row of sales-shapes.json", () => {
  it("may name every key of the book, and needs only the files it is for", () => {
    const whole = {
      files: "till-*.csv",
      encoding: "windows-1252",
      delimiter: ";",
      dateOrder: "dmy",
      decimal: ",",
      columns: {
        when: "W",
        date: "D",
        time: "T",
        item: "I",
        modifiers: "M",
        quantity: "Q",
        gross: "G",
        net: "N",
        check: "C",
        till: "K",
        kind: "A",
      },
    };
    expect(SalesShapes.parse([whole, { files: "*" }])).toEqual([whole, { files: "*" }]);
  });

  it.each([
    ["UTF8", "utf-8"],
    ["utf-16", "utf-16le"],
    ["UTF-16BE", "utf-16be"],
    ["latin1", "windows-1252"],
    ["ISO-8859-1", "windows-1252"],
    ["cp1252", "windows-1252"],
  ])("takes the encoding %s as %s", (encoding, meant) => {
    expect(SalesShape.parse({ files: "*", encoding }).encoding).toBe(meant);
  });

  it.each([
    ["tab", "\t"],
    ["\\t", "\t"],
    ["semicolon", ";"],
    ["~", "~"],
  ])("takes the delimiter %s", (delimiter, meant) => {
    expect(SalesShape.parse({ files: "*", delimiter }).delimiter).toBe(meant);
  });

  it.each([
    {},
    { files: "" },
    { files: "*", encoding: "morse" },
    { files: "*", delimiter: "::" },
    { files: "*", dateOrder: "ydm" },
    { files: "*", decimal: ";" },
    { files: "*", day: "2025-02-30" },
  ])("is turned away when it says %o", (shape) => {
    expect(SalesShape.safeParse(shape).success).toBe(false);
  });
});

it.each([
  ["till-*.csv", "till-07.csv", true],
  ["till-*.csv", "sales/Till-07.CSV", true],
  ["sales/*.csv", "sales/a.csv", true],
  ["sales/*.csv", "a.csv", true],
  ["sales/*.csv", "old/a.csv", false],
  ["*.tsv", "a.csv", false],
  ["a?.csv", "a1.csv", true],
  ["a?.csv", "a.csv", false],
  ["*", "anything", true],
  ["a[1].csv", "a1.csv", false],
  ["*a*b*c*.csv", "xxaxxbxxcxx.csv", true],
])("holds the glob %s against %s: %s", (files, fileName, fits) => {
  expect(shapeFor(fileName, [{ files }]) !== undefined).toBe(fits);
});

it("takes the first shape that fits, and never long over a nasty glob", () => {
  expect(shapeFor("a.csv", [{ files: "b*" }, { files: "a*", name: "first" }, { files: "*" }])?.name).toBe(
    "first",
  );
  const start = performance.now();
  expect(shapeFor("a".repeat(5000), [{ files: `${"*a".repeat(500)}b` }])).toBeUndefined();
  expect(performance.now() - start).toBeLessThan(2000);
});
