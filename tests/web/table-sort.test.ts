import { expect, it } from "vitest";
import type { Column } from "../../web/parts/table-column.ts";
import { filterRows, sortRows } from "../../web/parts/table-sort.ts";

type Row = { item: string; area: string; par: number | null };

const COLUMNS: Column<Row>[] = [
  { key: "item", head: "Item", kind: "text", value: ({ item }) => item },
  { key: "area", head: "Area", kind: "text", value: ({ area }) => area },
  { key: "par", head: "Par", kind: "number", value: ({ par }) => par },
];
const ROWS: Row[] = [
  { item: "Rum 10", area: "cellar", par: 2 },
  { item: "rum 9", area: "well", par: null },
  { item: "Gin", area: "well", par: 7 },
];
const names = (rows: Row[]) => rows.map(({ item }) => item);

it("sorts names as people do: without regard to case, 9 before 10", () => {
  expect(names(sortRows(ROWS, COLUMNS, { key: "item", isDescending: false }))).toEqual([
    "Gin",
    "rum 9",
    "Rum 10",
  ]);
});

it.each([true, false])("puts an item without a par last, whichever way pars are sorted", (isDescending) => {
  expect(names(sortRows(ROWS, COLUMNS, { key: "par", isDescending })).at(-1)).toBe("rum 9");
});

it("leaves the rows as they stand while no head was pressed", () => {
  expect(sortRows(ROWS, COLUMNS, null)).toEqual(ROWS);
});

it("finds rows that hold every word typed, in any cell and order", () => {
  expect(names(filterRows(ROWS, COLUMNS, "well RUM"))).toEqual(["rum 9"]);
  expect(filterRows(ROWS, COLUMNS, "  ")).toHaveLength(3);
});
