import { expect, it } from "vitest";
import { harmlessText } from "#engine/sheet-text.ts";
import type { Column } from "../../web/parts/table-column.ts";
import { fileCell, fileRows, tabText } from "../../web/parts/table-text.ts";

type Row = { item: string; change: number | null; note: string };

const COLUMNS: Column<Row>[] = [
  { key: "item", head: "Item", kind: "text", value: ({ item }) => item },
  { key: "change", head: "Change", unit: "ml", kind: "number", value: ({ change }) => change },
  { key: "drawn", head: "Level", kind: "text", isDrawn: true, value: () => null },
  { key: "note", head: "Note", kind: "text", isFileOnly: true, value: ({ note }) => note },
];

// The characters are those of the OWASP page "CSV Injection".
it.each([
  ["=1+1", "'=1+1"],
  ["+1", "'+1"],
  ["-1", "'-1"],
  ["@SUM(A1)", "'@SUM(A1)"],
  ["\t=1", "'\t=1"],
  ["\r=1", "'\r=1"],
  ["Dry gin", "Dry gin"],
  ["70% = strong", "70% = strong"],
])("writes the text %j so that no spreadsheet runs it", (text, written) => {
  expect(harmlessText(text)).toBe(written);
});

it("leaves a negative amount a number while a name that begins with a minus is made harmless", () => {
  const rows = fileRows(COLUMNS, [{ item: "-Dash rum", change: -12.5, note: "=cmd" }]);
  expect(rows).toEqual([
    ["Item", "Change (ml)", "Note"],
    ["'-Dash rum", "-12.5", "'=cmd"],
  ]);
});

it("writes what is not known as an empty cell, not as zero", () => {
  expect(fileRows(COLUMNS, [{ item: "Gin", change: null, note: "" }])[1]).toEqual(["Gin", "", ""]);
});

it("writes plain spaces where a screen would break no line", () => {
  expect(fileCell("text", "36,7\u00a0oz")).toBe("36,7 oz");
});

it("keeps one row a line when a note holds a tab or a line break", () => {
  expect(tabText([["Gin", "found\tbehind\nthe ice"]])).toBe("Gin\tfound behind the ice");
});
