import { readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import fc from "fast-check";
import Papa from "papaparse";
import { beforeAll, describe, expect, it } from "vitest";
import { harmlessText, textOfCell } from "#engine/sheet-text.ts";
import { type BarOnDisk, barFrom, barOnDisk, freshPath } from "#tests/support/bar-on-disk.ts";

/** What a spreadsheet runs (OWASP, CSV Injection; ASVS 5.0, 1.2.10; CWE-1236); its full-width twins are from memory. */
const RUNS = /^[=+\-@\t\r\n\0＝＋－＠]/;
const NUMBER = /^-?\d+(\.\d+)?(e[+-]?\d+)?$/;

/** A bar whose every name is a formula, which oversold its gin, so that numbers below zero are among the answers. */
const FILES = {
  "items.csv":
    "item,category,base,abv,in_house,shelf_life_days,note\n=Gin,+spirit,ml,40,,,@note\n-Juice,@juice,ml,,yes,2,=1+1\n@Lime,+fruit,each,,,,\n",
  "packs.csv":
    "item,pack,amount,unit,supplier,price,code\n=Gin,+1 L,1,l,@Quay,21.00,=C1\n@Lime,-box,54,each,@Quay,11.90,+C2\n",
  "suppliers.csv": "supplier,email\n@Quay,=orders@quay.example\n",
  "supplier-days.csv": "supplier,order_day,order_by,delivery_day,delivery_at\n@Quay,Tue,16:00,Thu,10:30\n",
  "areas.csv": "area,item,shelf\n=Bar,=Gin,1\n",
  "drinks.csv": "drink,price,method,allergens\n+Sour,11.50,=shake(),-egg;@nuts\n",
  "preps.csv": "prep,from,yield,unit,method\n-Juice,2026-01-01,1000,ml,@press\n",
  "specs.csv":
    "makes,from,line,amount,unit,item,note\n+Sour,2026-01-01,1,50,ml,=Gin,=n\n+Sour,2026-01-01,2,25,ml,-Juice,\n-Juice,2026-01-01,1,36,each,@Lime,\n",
  "counts.csv":
    "count,at,area,item,pack,full,part,by\n=W1,2026-03-02 10:00,=Bar,=Gin,+1 L,5,,@Ana\n=W2,2026-03-09 10:00,=Bar,=Gin,+1 L,9,,@Ana\n",
  "deliveries.csv":
    "at,supplier,invoice,item,pack,quantity,of,price_total,by\n2026-03-03 10:00,@Quay,=Q-1,=Gin,+1 L,3,container,63.00,-Rui\n",
  "losses.csv":
    "at,kind,what,amount,unit,by,note\n2026-03-04 23:00,spill,=Gin,50,ml,+Rui,=cmd|' /C calc'!A0\n",
  "ring-names.csv": "ring_name,sold_as\n=RING,+Sour\n",
  "sales/till.csv":
    "Sold at,Check,Item,Modifiers,Qty,Net\n2026-03-03 20:00,-17,=RING,@no ice,2,23.00\n2026-03-04 21:00,+18,+UNKNOWN,,1,9.00\n2026-03-05 21:00,=19,+Sour,,-1,-11.50\n",
};

const REPORTS: string[][] = [
  ["use", "--from", "2026-03-02", "--to", "2026-03-08"],
  ["use", "--from", "2026-03-02", "--to", "2026-03-08", "--raw"],
  ["variance"],
  ["trend"],
  ["forecast", "--from", "2026-03-10", "--days", "3"],
  ["forecast", "--from", "2026-03-10", "--days", "3", "--item"],
  ["order"],
  ["prep", "--for", "2026-03-10"],
  ["cost"],
  ["history"],
];

function cellsOf(text: string): string[][] {
  return Papa.parse<string[]>(text.replace(/^\uFEFF|\r?\n$/g, ""), { skipEmptyLines: true }).data;
}

function expectHarmless(text: string): void {
  for (const row of cellsOf(text)) {
    for (const cell of row) {
      if (RUNS.test(cell)) expect(cell).toMatch(NUMBER);
      // A number that was led by an apostrophe is a number no more.
      if (cell.startsWith("'")) expect(cell.slice(1)).not.toMatch(/^-?\d+\.\d+$/);
    }
  }
}

describe("a bar whose every name is a formula", () => {
  let bar: BarOnDisk;
  beforeAll(async () => {
    bar = await barOnDisk(FILES);
    expect(bar.load).toMatchObject({ status: 0 });
  });

  it.each(REPORTS)("prints %s so that no spreadsheet runs any of it, numbers bare", async (...args) => {
    const { status, out, err } = await bar.run(...args.filter((arg) => typeof arg === "string"), "--csv");
    expect([status, err]).toEqual([0, ""]);
    expect(cellsOf(out).length).toBeGreaterThan(0);
    expectHarmless(out);
  });

  it("prints numbers below zero as numbers, and names of formulas as texts", async () => {
    const { out } = await bar.run("variance", "--csv");
    const cells = cellsOf(out).flat();
    expect(cells).toContain("'=Gin");
    expect(cells.some((cell) => /^-\d/.test(cell))).toBe(true);
  });

  it("is exported with every sheet harmless, and read back just as it was", async () => {
    const [first, second] = [freshPath("export"), freshPath("export")];
    expect((await bar.run("export", first)).status).toBe(0);
    const files = readdirSync(first, { recursive: true, withFileTypes: true }).filter((file) =>
      file.name.endsWith(".csv"),
    );
    expect(files.length).toBeGreaterThanOrEqual(Object.keys(FILES).length);
    for (const file of files) expectHarmless(readFileSync(join(file.parentPath, file.name), "utf8"));
    const again = await barFrom(first);
    expect(again.load.status).toBe(0);
    expect((await again.run("export", second)).status).toBe(0);
    for (const file of files) {
      const [one, other] = [file.parentPath, file.parentPath.replace(first, second)].map((folder) =>
        readFileSync(join(folder, file.name), "utf8"),
      );
      expect(other, file.name).toBe(one);
    }
    expect(await again.use("2026-03-02", "2026-03-08")).toEqual(await bar.use("2026-03-02", "2026-03-08"));
    expect(await again.use("2026-03-02", "2026-03-08")).toHaveProperty("=Gin");
  });

  it("written by hand with its names led by an apostrophe means the same", async () => {
    const led = Object.fromEntries(
      Object.entries(FILES)
        .filter(([name]) => !name.startsWith("sales/"))
        .map(([name, text]) => [
          name,
          Papa.unparse(cellsOf(text).map((row) => row.map((cell) => (RUNS.test(cell) ? `'${cell}` : cell)))),
        ]),
    );
    const other = await barOnDisk({ ...led, "sales/till.csv": FILES["sales/till.csv"] });
    expect(other.load).toMatchObject({ status: 0 });
    expect(await other.use("2026-03-02", "2026-03-08")).toEqual(await bar.use("2026-03-02", "2026-03-08"));
  });
});

it("any text comes back from a cell as it went in, and none that went in can be run", () => {
  const text = fc.string({ unit: fc.constantFrom(..."'=+-@\t\r\n\0＝＋－＠a1 ".split("")), maxLength: 8 });
  fc.assert(
    fc.property(fc.oneof(text, fc.string()), (written) => {
      expect(textOfCell(harmlessText(written))).toBe(written);
      expect(harmlessText(written)).not.toMatch(RUNS);
    }),
    { numRuns: 2_000 },
  );
});
