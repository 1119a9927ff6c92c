import { spawn } from "node:child_process";
import { once } from "node:events";
import { existsSync, readFileSync, writeFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { barOnDisk, freshPath, type Printed, writtenBook } from "#tests/support/bar-on-disk.ts";
import { runUllage } from "#tests/support/run-ullage.ts";

const COSTED = {
  "items.csv":
    "item,category,base,stocked\nGin,spirit,ml,\nLime,fruit,each,\nSugar,dry,g,\nWater,tap,ml,\nSyrup,syrup,ml,\nJuice,juice,ml,\nWheel,garnish,each,no\n",
  "packs.csv":
    "item,pack,amount,unit,from,per_case,supplier,price,price_per\nGin,b,700,ml,,6,S,14,container\nGin,b,700,ml,2026-01-05,6,S,126,case\nLime,each,1,each,,1,S,0.4,\nSugar,bag,1,kg,,1,S,2,\n",
  "suppliers.csv": "supplier\nS\n",
  "drinks.csv": "drink,price\nSour,10\n",
  "cuts.csv": "source,gives,per_piece,unit,parts\nLime,Juice,25,ml,flesh\nLime,Wheel,8,each,skin+flesh\n",
  "preps.csv": "prep,from,yield,unit\nSyrup,2026-01-01,1500,ml\n",
  "specs.csv": `makes,from,line,amount,unit,item
Syrup,2026-01-01,1,1,kg,Sugar
Syrup,2026-01-01,2,900,ml,Water
Sour,2026-01-01,1,50,ml,Gin
Sour,2026-01-01,2,25,ml,Juice
Sour,2026-01-01,3,20,ml,Syrup
Sour,2026-01-01,4,1,each,Wheel
`,
};
const perBase = (report: Printed): Record<string, number> =>
  Object.fromEntries(report.items.map(({ item, costPerBase }: Printed) => [item, costPerBase]));

describe("cost", () => {
  it("is the packs' where nothing has happened yet, and a prep costs its inputs per its yield", async () => {
    const bar = await barOnDisk(COSTED);
    const report = await bar.json("cost");
    const cost = perBase(report);
    expect(cost).toMatchObject({ Gin: 126 / 4200, Lime: 0.4, Sugar: 0.002, Water: 0, Wheel: 0.05 });
    expect(cost.Juice).toBeCloseTo(0.4 / 25, 12);
    expect(cost.Syrup).toBeCloseTo(2 / 1500, 12);
    const sour = 50 * (126 / 4200) + 0.4 + 20 * (2 / 1500) + 0.05;
    expect(report.drinks[0]).toMatchObject({ drink: "Sour", from: "2026-01-01", price: 10 });
    expect(report.drinks[0].cost).toBeCloseTo(sour, 9);
    expect(report.drinks[0].costPct).toBeCloseTo(sour * 10, 9);
    expect(report.drinks[0].contribution).toBeCloseTo(10 - sour, 9);
  });

  it("knows a delivery that is the last thing in the book", async () => {
    const bar = await barOnDisk({
      ...COSTED,
      "deliveries.csv":
        "at,supplier,invoice,item,pack,quantity,of,price_total\n2026-01-03 12:00,S,1,Gin,b,1,case,105.00\n",
    });
    expect(perBase(await bar.json("cost")).Gin).toBeCloseTo(105 / 4200, 12);
  });

  it("is the weighted average of the opening stock and the period's deliveries", async () => {
    const bar = await barOnDisk({
      ...COSTED,
      "counts.csv": "count,at,area,item,full\nA,2026-01-02 10:00,Bar,Gin,10\nB,2026-01-08 10:00,Bar,Gin,4\n",
      "deliveries.csv":
        "at,supplier,invoice,item,pack,quantity,of,price_total\n2026-01-03 12:00,S,1,Gin,b,1,case,\n2026-01-06 12:00,S,2,Gin,b,1,case,150.00\n",
      "sales/s.csv":
        "Date,Time,Item,Qty,Gross,Net\n2026-01-06,20:00,Sour,100,1200,1000\n2026-01-06,20:00,Tea,1,60,50\n",
    });
    // Ten bottles at 14, six by the price of their day (14 each), six invoiced at 150.
    const gin = (10 * 14 + 6 * 14 + 150) / (22 * 700);
    expect(perBase(await bar.json("cost")).Gin).toBeCloseTo(gin, 12);
    const { items, totals } = await bar.json("variance");
    expect(items[0]).toMatchObject({ used: 18 * 700, expected: 5000, unexplained: 18 * 700 - 5000 });
    expect(items[0].cost).toBeCloseTo((18 * 700 - 5000) * gin, 9);
    expect(totals).toMatchObject({ sales: 1050 });
    expect(totals.usedCost).toBeCloseTo(18 * 700 * gin, 9);
    expect(totals.pourCostPct).toBeCloseTo(((18 * 700 * gin) / 1050) * 100, 9);
  });
});

describe("the cost of a period", () => {
  it("ends with the item's own moment in the closing count", async () => {
    const bar = await barOnDisk({
      ...COSTED,
      "counts.csv":
        "count,at,area,item,full,amount,unit\nA,2026-01-02 10:00,Bar,Gin,10,,\nA,2026-01-02 10:00,Bar,Sugar,,500,g\n" +
        "B,2026-01-08 10:00,Bar,Gin,4,,\nB,2026-01-08 14:00,Bar,Sugar,,400,g\n",
      "deliveries.csv":
        "at,supplier,invoice,item,pack,quantity,of,price_total\n2026-01-08 12:00,S,1,Gin,b,1,case,600.00\n",
    });
    // Six bottles at 14; the dear case came after the gin was counted.
    expect((await bar.variance()).Gin.cost).toBeCloseTo(6 * 14, 9);
  });
});

describe("upkeep", () => {
  it("backs up, checks and restores; a damaged file is answered with no, and never put in place", async () => {
    const bar = await barOnDisk(COSTED);
    const backup = freshPath("backup.db");
    expect((await bar.run("backup", backup)).status).toBe(0);
    expect((await bar.run("backup", backup)).status).toBe(2);
    const target = freshPath("restored.db");
    expect((await runUllage("restore", backup, "--db", target)).status).toBe(0);
    expect((await runUllage("check", "--db", target)).status).toBe(0);
    const whole = readFileSync(backup);
    const damages: [string, Buffer][] = [
      ["cut in half", whole.subarray(0, whole.length / 2)],
      [
        "a page of noise",
        Buffer.concat([whole.subarray(0, 4096), Buffer.alloc(4096, 7), whole.subarray(8192)]),
      ],
      ["no database", Buffer.from("these are not the bytes of a database".repeat(99))],
    ];
    for (const [what, bytes] of damages) {
      const file = freshPath("damaged.db");
      writeFileSync(file, bytes);
      const checked = await runUllage("check", "--db", file);
      expect([what, checked.status, checked.err]).toEqual([what, 1, ""]);
      expect(checked.out, what).toContain(`${file} is not whole`);
      const restored = await runUllage("restore", file, "--db", target);
      expect([what, restored.status]).toEqual([what, 2]);
      expect(restored.err, what).toContain(file);
      expect((await runUllage("check", "--db", target)).status, what).toBe(0);
    }
    const nowhere = freshPath("nowhere.db");
    expect((await runUllage("check", "--db", nowhere)).status).toBe(2);
    expect(existsSync(nowhere)).toBe(false);
  });

  it("keeps what was there when a load is refused", async () => {
    const bar = await barOnDisk(COSTED);
    const before = await bar.json("cost");
    const wrong = writtenBook({
      "items.csv": "item,category,base\n",
      "packs.csv": "item,pack,amount,unit\n",
    });
    expect((await bar.run("load", wrong)).status).toBe(2);
    expect(await bar.json("cost")).toEqual(before);
  });

  it("takes an import back, and writes nothing when one file of several is missing", async () => {
    const bar = await barOnDisk(COSTED);
    const [first, second] = [freshPath("week-1.csv"), freshPath("week-2.csv")];
    writeFileSync(first, "Date,Time,Item,Qty\n2026-01-05,20:00,Sour,1\n2026-01-05,20:00,Sour,1\n");
    writeFileSync(second, "Date,Time,Item,Qty\n2026-01-05,20:00,Sour,1\n2026-01-05,21:00,Sour,10\n");
    const sold = async () => ((await bar.use("2026-01-05")).Gin ?? 0) / 50;
    expect((await bar.run("sales", first, "--dry-run")).status).toBe(0);
    expect(await sold()).toBe(0);
    expect((await bar.run("sales", first, freshPath("missing.csv"))).status).toBe(2);
    expect(await sold()).toBe(0);
    await bar.run("sales", first);
    await bar.run("sales", first);
    await bar.run("sales", second);
    expect(await sold()).toBe(12);
    for (const [undone, left] of [
      ["1", 12],
      ["2", 11],
      ["3", 0],
    ] as const) {
      expect((await bar.run("sales", "--undo", undone)).status).toBe(0);
      expect(await sold()).toBe(left);
    }
    expect((await bar.run("sales", "--undo", "99")).status).toBe(2);
  });

  it("reads a recipe's text without a database, a line of text a line", async () => {
    const text = freshPath("sour.txt");
    writeFileSync(text, "1 1/2 oz dry gin\n¾ oz lime cordial\n2 dashes bitters\n");
    const absent = freshPath("absent.db");
    process.env.ULLAGE_DB = absent;
    const { status, out } = await runUllage("spec", text, "--json");
    delete process.env.ULLAGE_DB;
    expect([status, existsSync(absent)]).toEqual([0, false]);
    expect(JSON.parse(out)).toMatchObject([
      { line: 1, amount: 1.5, unit: "oz", item: "dry gin", orItems: [], error: null },
      { line: 2, amount: 0.75, unit: "oz", item: "lime cordial" },
      { line: 3, amount: 2, unit: "dash", item: "bitters" },
    ]);
  });

  it("ends quietly when who reads it has read enough", async () => {
    const args = ["--conditions=ullage-source", "--import", "tsx", "server/main.ts", "use", "--help"];
    const child = spawn(process.execPath, args, { cwd: new URL("../..", import.meta.url) });
    child.stdout.destroy();
    let said = "";
    child.stderr.on("data", (text) => {
      said += text;
    });
    const [status] = await once(child, "close");
    expect([status, said]).toEqual([0, ""]);
  });

  it.each([
    [["frob"]],
    [["use"]],
    [["use", "--from", "2026-02-01", "--to", "2026-01-01"]],
    [["variance"]],
    [["prep", "--for", "soon"]],
    [["order", "--supplier", "Nobody"]],
    [["cost", "--drink", "Nothing"]],
    [["cost", "--json", "--csv"]],
    [["load"]],
  ])("ends %j with 2 and a reason", async (args) => {
    const bar = await barOnDisk(COSTED);
    const { status, err } = await bar.run(...args);
    expect(status).toBe(2);
    expect(err.trim()).not.toBe("");
  });
});
