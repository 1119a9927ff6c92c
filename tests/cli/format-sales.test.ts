import { describe, expect, it } from "vitest";
import { barOnDisk } from "#tests/support/bar-on-disk.ts";

const SALES_BAR = {
  "items.csv":
    "item,category,base,stocked\nGin,spirit,ml,\nRum,spirit,ml,\nSoda,mixer,ml,\nBeer,beer,ml,\n" +
    "Syrup,syrup,ml,no\nSugar,dry,g,\nFizz,wine,ml,\n",
  "packs.csv":
    "item,pack,amount,unit\nGin,bottle,700,ml\nBeer,keg,30,l\nBeer,bottle,330,ml\nFizz,bottle,750,ml\nFizz,magnum,1.5,l\n",
  "drinks.csv": "drink\nSour\nBeer\nDaisy\n",
  "specs.csv": `makes,from,line,amount,unit,item
Sour,2026-01-01,1,50,ml,Gin
Sour,2026-01-01,2,20,ml,Syrup
Daisy,2026-01-01,1,40,ml,Rum
Daisy,2026-01-01,2,10,ml,Gin
Daisy,2026-01-01,3,5,ml,Gin
Beer,2026-01-01,1,400,ml,Beer
Syrup,2026-01-01,1,500,g,Sugar
`,
  "preps.csv": "prep,from,yield,unit\nSyrup,2026-01-01,1000,ml\n",
  "modifiers.csv": `modifier,effect,item,with,amount,unit,factor
Double,times,,,,,2
Double gin,times,Gin,,,,2
Rum instead,swap,Gin,Rum,,,
Long rum,swap,Gin,Rum,60,ml,
Add soda,add,Soda,,100,ml,
No syrup,remove,Syrup,,,,
Well done,none,,,,,
Party,add,Soda,,10,ml,
Party,remove,Gin,,,,
Party,times,,,,,3
"Salt, rim",none,,,,,
`,
  "ring-names.csv": `ring_name,sold_as,serves,amount,unit
PITCHER,Sour,4,,
GIN SHOT,Gin,,2,cl
GIN ROUND,Gin,3,2,cl
FIZZ BTL,Fizz,,,
FIZZ PAIR,Fizz,2,,
FOOD,ignore,,,
`,
};

/** Sour: 50 ml of gin, 20 ml of a syrup made to order of 500 g sugar in the litre. */
describe("what a line of the till asks for", () => {
  it.each<[rung: string, modifiers: string, quantity: number, use: Record<string, number>]>([
    ["Sour", "", 1, { Gin: 50, Sugar: 10 }],
    ["Sour", "Double", 1, { Gin: 100, Sugar: 20 }],
    [" sOUR ", "double  GIN ", 2, { Gin: 200, Sugar: 20 }],
    ["Sour", "Rum instead", 1, { Rum: 50, Sugar: 10 }],
    ["Daisy", "Rum instead", 1, { Rum: 55 }],
    ["Sour", "Long rum", 1, { Rum: 60, Sugar: 10 }],
    ["Sour", "Add soda;Double", 1, { Gin: 100, Sugar: 20, Soda: 200 }],
    ["Sour", "Double|Add soda", 1, { Gin: 100, Sugar: 20, Soda: 200 }],
    ["Sour", "Double gin/Rum instead", 1, { Rum: 50, Sugar: 10 }],
    ["Sour", "Double\nAdd soda", 1, { Gin: 100, Sugar: 20, Soda: 200 }],
    ["Sour", "Double, Add soda", 1, { Gin: 100, Sugar: 20, Soda: 200 }],
    ["Sour", "Double, Strange", 1, { Gin: 50, Sugar: 10 }],
    ["Sour", "Double, Strange; Add soda", 1, { Gin: 50, Sugar: 10, Soda: 100 }],
    ["Sour", "Salt, rim", 1, { Gin: 50, Sugar: 10 }],
    ["Sour", "No syrup", 1, { Gin: 50 }],
    ["Sour", "Party", 1, { Sugar: 30, Soda: 30 }],
    ["PITCHER", "Double", 2, { Gin: 800, Sugar: 160 }],
    ["Gin shot", "", 3, { Gin: 60 }],
    ["GIN SHOT", "Double", 3, { Gin: 120 }],
    ["GIN ROUND", "", 1, { Gin: 60 }],
    ["Gin", "", 3, { Gin: 2100 }],
    ["Beer", "", 1, { Beer: 400 }],
    ["FIZZ BTL", "", 2, { Fizz: 1500 }],
    ["FIZZ PAIR", "", 1, { Fizz: 1500 }],
    ["Sour", "", -2, { Gin: -100, Sugar: -20 }],
  ])("%s, %j, %d times", async (rung, modifiers, quantity, use) => {
    const bar = await barOnDisk({
      ...SALES_BAR,
      "sales/a.csv": `Date,Item,Modifiers,Qty,Net\n2026-01-05,${rung},"${modifiers}",${quantity},0\n`,
    });
    expect(await bar.use("2026-01-05")).toEqual(use);
  });

  it("is unmapped, and listed, where the book does not know it; what is ignored does not enter coverage", async () => {
    const bar = await barOnDisk({
      ...SALES_BAR,
      "sales/a.csv":
        'Date,Item,Modifiers,Qty,Net\n2025-12-31,Sour,,2,18\n2026-01-05,FOOD,,5,9\n2026-01-05,Sour,"Double, Strange",1,1\n2026-01-05,Mystery,,1,30\n',
    });
    expect(await bar.json("use", "--from", "2025-12-31", "--to", "2026-01-05")).toMatchObject({
      coverage: 0.25,
      unmapped: [
        { ringName: "Mystery", quantity: 1, net: 30 },
        { ringName: "Sour", quantity: 2, net: 18 },
      ],
      unmappedModifiers: [{ modifier: "Double, Strange", quantity: 1 }],
    });
  });
});

describe("the same line twice", () => {
  const plain = (...rows: string[]) => `Date,Time,Item,Qty,Net\n${rows.join("\n")}\n`;
  const checked = (...rows: string[]) => `Date,Time,Item,Qty,Net,Check,Line\n${rows.join("\n")}\n`;
  const g = "2026-01-05,20:00,G,1,5";

  it.each<[case_: string, files: Record<string, string>, sold: number]>([
    ["in one file is sold twice", { "a.csv": plain(g, g) }, 2],
    [
      "in two files is as often as the fuller file says",
      { "a.csv": plain(g, g), "b.csv": plain(g, g, g) },
      3,
    ],
    ["at another minute is another sale", { "a.csv": plain(g), "b.csv": plain("2026-01-05,20:01,G,1,5") }, 2],
    [
      "after midnight is of the evening before",
      { "a.csv": plain("2026-01-06,01:00,G,1,5"), "b.csv": plain("2026-01-06,01:00,G,1,5") },
      1,
    ],
    [
      "on another check is another sale",
      { "a.csv": checked(`${g},101,1`, `${g},102,1`), "b.csv": checked(`${g},102,1`, `${g},103,1`) },
      3,
    ],
    [
      "with another line number is another sale",
      { "a.csv": checked(`${g},1,1`, `${g},1,2`), "b.csv": checked(`${g},1,2`, `${g},1,3`) },
      3,
    ],
    [
      "taken back in both files is taken back once",
      {
        "a.csv": plain("2026-01-05,20:00,G,2,10", "2026-01-05,20:05,G,-1,-5"),
        "b.csv": plain("2026-01-05,20:05,G,-1,-5"),
      },
      1,
    ],
  ])("%s", async (_case, files, sold) => {
    const bar = await barOnDisk({
      "items.csv": "item,category,base\nGin,spirit,ml\n",
      "packs.csv": "item,pack,amount,unit\n",
      "drinks.csv": "drink\nG\n",
      "specs.csv": "makes,from,line,amount,unit,item\nG,2026-01-01,1,1,ml,Gin\n",
      ...Object.fromEntries(Object.entries(files).map(([name, text]) => [`sales/${name}`, text])),
    });
    expect(await bar.use("2026-01-05")).toEqual({ Gin: sold });
  });
});

describe("the versions in force", () => {
  it("are those of the business date: spec and yield each for itself, made to order at any depth", async () => {
    const bar = await barOnDisk({
      "items.csv":
        "item,category,base,stocked\nGin,spirit,ml,\nSugar,dry,g,\nWater,tap,ml,\nSyrup,syrup,ml,no\nMix,mix,ml,no\nKeg,mix,ml,yes\n",
      "packs.csv": "item,pack,amount,unit\n",
      "drinks.csv": "drink\nD\nE\n",
      "preps.csv":
        "prep,from,yield,unit\nSyrup,2026-01-01,1,l\nSyrup,2026-01-10,800,ml\nMix,2026-01-01,50,cl\nKeg,2026-01-01,2,l\n",
      "specs.csv": `makes,from,line,amount,unit,item
Syrup,2026-01-01,1,1,kg,Sugar
Syrup,2026-01-20,1,2,kg,Sugar
Mix,2026-01-01,1,200,ml,Syrup
Mix,2026-01-01,2,300,ml,Gin
Keg,2026-01-01,1,1,l,Mix
Keg,2026-01-01,2,1,l,Water
D,2026-01-01,1,100,ml,Mix
D,2026-01-15,1,50,ml,Mix
E,2026-01-01,1,100,ml,Keg
`,
      "batches.csv": "at,prep,made,unit\n2026-01-05 12:00,Keg,4,l\n2026-01-21 02:00,Keg,1,l\n",
      "sales/a.csv":
        "Date,Time,Item,Qty\n2026-01-05,21:00,D,1\n2026-01-12,21:00,D,1\n2026-01-12,22:00,E,1\n2026-01-15,02:00,D,1\n2026-01-17,21:00,D,1\n2026-01-20,21:00,D,1\n",
    });
    expect(await bar.use("2026-01-05")).toEqual({ Gin: 60 + 1200, Sugar: 40 + 800, Water: 2000 });
    expect(await bar.use("2026-01-05", "2026-01-05", "--raw")).toEqual({ Gin: 60, Sugar: 40 });
    expect(await bar.use("2026-01-12")).toEqual({ Gin: 60, Sugar: 50, Keg: 100 });
    expect(await bar.use("2026-01-12", "2026-01-12", "--raw")).toEqual({ Gin: 90, Sugar: 75, Water: 50 });
    expect(await bar.use("2026-01-14")).toEqual({ Gin: 60, Sugar: 50 });
    expect(await bar.use("2026-01-17")).toEqual({ Gin: 30, Sugar: 25 });
    expect(await bar.use("2026-01-20")).toEqual({ Gin: 30 + 300, Sugar: 50 + 500, Water: 500 });
  });
});
