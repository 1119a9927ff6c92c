import { existsSync, readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, it } from "vitest";
import { barFrom, barOnDisk, freshPath, HERON, writtenBook } from "#tests/support/bar-on-disk.ts";

const GIN = {
  "items.csv": "item,category,base\nGin,spirit,ml\n",
  "packs.csv": "item,pack,amount,unit\nGin,bottle,700,ml\n",
};
const US_OZ = 29.5735295625;

describe("a book", () => {
  it("needs its venue, items and packs, and nothing else", async () => {
    const bar = await barOnDisk(GIN);
    expect(bar.load).toMatchObject({ status: 0, err: "" });
    expect(await bar.json("use", "--from", "2026-01-05", "--to", "2026-01-06")).toMatchObject({
      items: [],
      unmapped: [],
      coverage: 1,
    });
    expect((await bar.json("order", "--at", "2026-01-05 10:00")).suppliers).toEqual([]);
    expect(await bar.json("prep", "--for", "2026-01-05")).toMatchObject({ batches: [], cuts: [] });
    expect((await bar.run("check")).status).toBe(0);
  });

  it.each([
    ["venue.json", { ...GIN }],
    ["items.csv", { "venue.json": JSON.stringify(HERON), "packs.csv": GIN["packs.csv"] }],
    ["packs.csv", { "venue.json": JSON.stringify(HERON), "items.csv": GIN["items.csv"] }],
  ])("without %s is refused, and leaves no database", async (file, files) => {
    const bar = await barFrom(writtenBook(files));
    expect(bar.load).toEqual({ status: 2, out: "", err: `${file}: the file is missing\n` });
    expect(existsSync(bar.db)).toBe(false);
  });

  it("reads columns in any order, decimal commas, fractions, and names however they are spelled", async () => {
    const bar = await barOnDisk({
      "items.csv":
        "\ufeffcategory;colour;base;item;abv\r\nspirit;red;ml;Caf\u00e9  Noir;40,5\r\nspirit;;ml;Gin;\r\n",
      "packs.csv":
        "unit;amount;pack;item;price\r\nml;700;Bottle; cafe\u0301 noir ;12,50\r\nl;0,7;bottle;GIN;3/4\r\n",
      "drinks.csv": "drink\r\nSour\r\n",
      "specs.csv":
        "makes;from;line;amount;unit;item\r\n SOUR ;2026-01-01;1;1½;oz;CAFÉ NOIR\r\n" +
        "sour;2026-01-01;2;1 1/2;cl;gin\r\nsour;2026-01-01;3;¾;OZ;gin\r\nsour;2026-01-01;4;0,75;ml;gin\r\n",
      "sales/a.csv": "Date,Item,Qty,Net\n2026-01-05,sOuR ,2,10.00\n",
    });
    expect(bar.load).toMatchObject({ status: 0 });
    expect(bar.load.out).toContain('items.csv: the column "colour" is not known and was not read');
    const use = await bar.use("2026-01-05");
    expect(use["Café  Noir"]).toBeCloseTo(2 * 1.5 * US_OZ, 6);
    expect(use.Gin).toBeCloseTo(2 * (15 + 0.75 * US_OZ + 0.75), 6);
  });

  it("says one line a wrong cell, in the sheet's own words, and loads nothing", async () => {
    const rows = Array.from({ length: 13 }, (_, at) => `2026-01-0${(at % 9) + 1} 10:00,Quay,A${at},Dry gin`);
    const bar = await barOnDisk({
      "items.csv": "item,category,base\nDry gin,spirit,ml\n",
      "packs.csv": "item,pack,amount,unit\nDry gin,1 L,1,l\n",
      "suppliers.csv": "supplier\nQuay\n",
      "deliveries.csv": `at,supplier,invoice,item,pack,quantity,of\n${rows
        .map((row, at) => `${row},${at === 12 ? "700 ml" : "1 L"},1,container`)
        .join("\n")}\n`,
    });
    expect(bar.load).toEqual({
      status: 2,
      out: "",
      err: 'deliveries.csv row 14, pack: no pack "700 ml" of "Dry gin"; it has "1 L"\n',
    });
    expect(existsSync(bar.db)).toBe(false);
  });

  it("asks once, naming the file, what a sales file leaves open, and loads nothing", async () => {
    const bar = await barOnDisk({ ...GIN, "sales/feb.csv": "Date,Item,Qty\n02/03/2026,Gin,1\n" });
    expect(bar.load.status).toBe(2);
    expect(bar.load.err).toMatch(/^feb\.csv: are the dates of the column "Date" written day first/);
    expect(existsSync(bar.db)).toBe(false);
  });

  it("lists the first hundred wrong cells", async () => {
    const rows = Array.from({ length: 150 }, (_, at) => `Gin,b${at},x,ml`).join("\n");
    const bar = await barOnDisk({ ...GIN, "packs.csv": `item,pack,amount,unit\n${rows}\n` });
    const lines = bar.load.err.trim().split("\n");
    expect(lines[99]).toMatch(/^packs\.csv row 101, amount: "x" is no number/);
    expect(lines.slice(100)).toEqual(["… and 50 more"]);
  });

  it("takes null in venue.json for nothing said, and leaves notes beside the sales files unread", async () => {
    const bar = await barOnDisk(
      { ...GIN, "sales/readme.md": "# What is here", "sales/a.txt": "Date\tItem\tQty\n2026-01-05\tGin\t1\n" },
      { show: null, houseMl: null, uncertainty: null, serviceLevel: null },
    );
    expect(bar.load.status).toBe(0);
    expect(bar.load.out).toContain(
      "sales/readme.md: it is no sales file (.csv, .tsv, .txt) and was not read",
    );
    expect(await bar.use("2026-01-05")).toEqual({ Gin: 700 });
  });

  it("keeps the units of the law and of the house", async () => {
    const measures: [string, number][] = [
      ["oz", 28.4130625],
      ["ml", 1],
      ["cl", 10],
      ["dl", 100],
      ["l", 1000],
      ["tsp", US_OZ / 6],
      ["tbsp", US_OZ / 2],
      ["cup", US_OZ * 8],
      ["dash", 1],
      ["barspoon", 4],
      ["drop", 0.1],
      ["splash", 7],
    ];
    const lines = measures.map(([unit], at) => `All,2026-01-01,${at},2,${unit},In ${unit}`);
    const weighed = ["1,g,W", "1,kg,W", "1,lb,W", "1,oz-wt,W", "2,each,P", "3,piece,P", "25,g,D", "80,g,E"];
    const bar = await barOnDisk(
      {
        "items.csv": `item,category,base,density_g_per_ml,piece_g\n${measures
          .map(([unit]) => `In ${unit},x,ml,,`)
          .join("\n")}\nW,x,g,,\nP,x,each,,\nD,x,ml,1.25,\nE,x,each,,40\n`,
        "packs.csv": "item,pack,amount,unit\n",
        "drinks.csv": "drink\nAll\n",
        "specs.csv": `makes,from,line,amount,unit,item\n${[
          ...lines,
          ...weighed.map((line, at) => `All,2026-01-01,${20 + at},${line}`),
        ].join("\n")}\n`,
        "sales/a.csv": "Date,Item,Qty\n2026-01-05,All,1\n",
      },
      { oz: "imperial", houseMl: { dash: 1, barspoon: 4, drop: 0.1, splash: 7 } },
    );
    const use = await bar.use("2026-01-05");
    for (const [unit, ml] of measures) expect(use[`In ${unit}`], unit).toBeCloseTo(2 * ml, 6);
    expect(use.W).toBeCloseTo(1 + 1000 + 453.59237 + 28.349523125, 6);
    expect(use).toMatchObject({ P: 5, D: 20, E: 2 });
  });

  it("is the same after it was exported and loaded again, sales and shapes with it", async () => {
    const bar = await barOnDisk({
      ...GIN,
      "sales-shapes.json": JSON.stringify([
        {
          files: "odd-*.csv",
          delimiter: "|",
          dateOrder: "dmy",
          decimal: ",",
          columns: { when: "WANN", item: "WAS", quantity: "WIEVIEL", gross: "WERT", check: "BON" },
        },
      ]),
      "sales/odd-1.csv":
        "WANN|WAS|WIEVIEL|WERT|BON\n05.01.2026 20:00|Gin|2|10,00|1\n06.01.2026 20:00|Rum|1|1.000,00|2\n",
    });
    const [first, second] = [freshPath("export"), freshPath("export")];
    expect((await bar.run("export", first)).status).toBe(0);
    const again = await barFrom(first);
    expect(again.load).toMatchObject({ status: 0, err: "" });
    await again.run("export", second);
    const texts = (dir: string) =>
      readdirSync(dir, { recursive: true, withFileTypes: true })
        .filter((entry) => entry.isFile())
        .map((entry) => [entry.name, readFileSync(join(entry.parentPath, entry.name), "utf8")]);
    expect(texts(second)).toEqual(texts(first));
    const asked = ["use", "--from", "2026-01-01", "--to", "2026-01-31"];
    expect(await again.json(...asked)).toEqual(await bar.json(...asked));
    expect(await bar.json(...asked)).toMatchObject({
      items: [{ item: "Gin", expected: 1400 }],
      unmapped: [{ ringName: "Rum", quantity: 1, net: 1000 }],
      coverage: 2 / 3,
    });
  });
});
