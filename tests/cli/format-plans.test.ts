import { describe, expect, it } from "vitest";
import { type BarOnDisk, barOnDisk } from "#tests/support/bar-on-disk.ts";

const DAY_MS = 24 * 60 * 60 * 1000;
const daysFrom = (first: string, days: number) =>
  Array.from({ length: days }, (_, at) =>
    new Date(Date.parse(first) + at * DAY_MS).toISOString().slice(0, 10),
  );

/** Twenty serves an evening for eight weeks, to Sunday 1 March; counted on the Monday. */
const STEADY = {
  "items.csv": "item,category,base\nGin,spirit,ml\nLime,fruit,each\nWater,tap,ml\n",
  "packs.csv":
    "item,pack,amount,unit,per_case,supplier,price,price_per,split\nGin,b,700,ml,6,S,14,container,no\nLime,each,1,each,50,S,20,case,yes\n",
  "suppliers.csv": "supplier\nS\nT\n",
  "drinks.csv": "drink\nG\n",
  "specs.csv":
    "makes,from,line,amount,unit,item\nG,2026-01-01,1,50,ml,Gin\nG,2026-01-01,2,1,each,Lime\nG,2026-01-01,3,100,ml,Water\n",
  "counts.csv": "count,at,area,item,full\nA,2026-03-02 08:00,Bar,Gin,2\nA,2026-03-02 08:00,Bar,Lime,10\n",
  "sales/s.csv": `Date,Item,Qty,Net\n${daysFrom("2026-01-05", 56)
    .map((date) => `${date},G,20,100`)
    .join("\n")}\n`,
};
const AT = "2026-03-02 10:00";
const TWICE_A_WEEK = "S,Mon,14:00,Tue,09:00\nS,Thu,14:00,Fri,09:00";

const ordering = (days: string, more: Record<string, string> = {}) =>
  barOnDisk({
    ...STEADY,
    "supplier-days.csv": `supplier,order_day,order_by,delivery_day,delivery_at\n${days}\n`,
    ...more,
  });
const firstOf = async (bar: BarOnDisk, at = AT) => (await bar.json("order", "--at", at)).suppliers[0];

describe("the order calendar", () => {
  it.each<[days: string, at: string, orderBy: string, arrives: string, coversUntil: string]>([
    [TWICE_A_WEEK, AT, "2026-03-02 14:00", "2026-03-03 09:00", "2026-03-06 09:00"],
    [TWICE_A_WEEK, "2026-03-02 14:01", "2026-03-05 14:00", "2026-03-06 09:00", "2026-03-10 09:00"],
    ["S,Mon,11:00,Mon,16:00", AT, "2026-03-02 11:00", "2026-03-02 16:00", "2026-03-09 16:00"],
    ["S,Mon,11:00,Mon,11:00", AT, "2026-03-02 11:00", "2026-03-09 11:00", "2026-03-16 11:00"],
    ["S,Mon,09:00,Wed,10:00", AT, "2026-03-09 09:00", "2026-03-11 10:00", "2026-03-18 10:00"],
    ["S,fri,23:59,mon,07:00", AT, "2026-03-06 23:59", "2026-03-09 07:00", "2026-03-16 07:00"],
  ])("%j at %s", async (days, at, orderBy, arrives, coversUntil) => {
    expect(await firstOf(await ordering(days), at)).toMatchObject({ orderBy, arrives, coversUntil });
  });

  it.each<[closed: string, orderBy: string, arrives: string, coversUntil: string]>([
    ["all,2026-03-03,2026-03-03", "2026-03-05 14:00", "2026-03-06 09:00", "2026-03-10 09:00"],
    ["S,2026-03-02,2026-03-02", "2026-03-05 14:00", "2026-03-06 09:00", "2026-03-10 09:00"],
    ["S,2026-03-06,2026-03-06", "2026-03-02 14:00", "2026-03-03 09:00", "2026-03-10 09:00"],
    ["T,2026-03-02,2026-03-06", "2026-03-02 14:00", "2026-03-03 09:00", "2026-03-06 09:00"],
  ])("closed %s", async (closed, orderBy, arrives, coversUntil) => {
    const bar = await ordering(TWICE_A_WEEK, { "closures.csv": `supplier,from,to\n${closed}\n` });
    expect(await firstOf(bar)).toMatchObject({ orderBy, arrives, coversUntil });
  });

  it("buys whole cases where a case is not split, and never water", async () => {
    const { lines } = await firstOf(await ordering(TWICE_A_WEEK));
    const [gin, lime] = lines;
    expect(lines).toHaveLength(2);
    expect(gin).toMatchObject({ item: "Gin", of: "case", base: "ml", onHand: 1400, cost: gin.quantity * 84 });
    expect(lime).toMatchObject({ item: "Lime", of: "container", onHand: 10 });
    expect(lime.cost).toBeCloseTo(lime.quantity * 0.4, 9);
    expect(Number.isInteger(lime.quantity)).toBe(true);
    // Enough to reach par, and not a case more.
    expect(1400 + gin.quantity * 4200).toBeGreaterThanOrEqual(gin.par);
    expect(1400 + (gin.quantity - 1) * 4200).toBeLessThan(gin.par);
  });
});

describe("an open order", () => {
  const O1 = (placed: string, quantity: number, expected: string) =>
    `O1,${placed},S,Lime,each,${quantity},container,${expected}\n`;
  it.each<[case_: string, orders: string, deliveries: string, onOrder: number]>([
    ["is on its way", O1("2026-02-28 10:00", 10, "2026-03-03"), "", 10],
    ["may be dated by its day alone", O1("2026-02-28", 10, "2026-03-03"), "", 10],
    [
      "is open for what has not come",
      O1("2026-02-28 10:00", 30, "2026-03-03"),
      "2026-03-01 10:00,S,1,Lime,each,12,container\n",
      18,
    ],
    [
      "is closed once it has come",
      O1("2026-02-28 10:00", 10, "2026-03-03"),
      "2026-03-01 10:00,S,1,Lime,each,12,container\n",
      0,
    ],
    [
      "is not met by another supplier",
      O1("2026-02-28 10:00", 10, "2026-03-03"),
      "2026-03-01 10:00,T,1,Lime,each,12,container\n",
      10,
    ],
    [
      "is not met by what came before it",
      O1("2026-02-28 10:00", 10, "2026-03-03"),
      "2026-02-28 09:00,S,1,Lime,each,12,container\n",
      10,
    ],
    ["waits 14 days after the day expected", O1("2026-02-10 10:00", 10, "2026-02-16"), "", 10],
    ["and no longer", O1("2026-02-10 10:00", 10, "2026-02-15"), "", 0],
    [
      "is met in turn",
      `${O1("2026-02-25 10:00", 10, "2026-03-03")}O2,2026-02-26 10:00,S,Lime,each,10,container,2026-03-03\n`,
      "2026-03-01 10:00,S,1,Lime,each,12,container\n",
      8,
    ],
  ])("%s", async (_case, orders, deliveries, onOrder) => {
    const bar = await ordering(TWICE_A_WEEK, {
      "orders.csv": `order,placed,supplier,item,pack,quantity,of,expected\n${orders}`,
      "deliveries.csv": `at,supplier,invoice,item,pack,quantity,of\n${deliveries}`,
    });
    const { lines } = await firstOf(bar);
    expect(lines.find(({ item }: { item: string }) => item === "Lime").onOrder).toBe(onOrder);
  });
});

describe("what is on hand", () => {
  const SINCE = {
    "counts.csv": "count,at,area,item,amount,unit\nA,2026-03-02 08:00,Bar,Gin,2,l\n",
    "losses.csv": "at,kind,what,amount,unit\n2026-03-02 14:00,spill,G,2,serve\n",
    "transfers.csv": "at,direction,place,item,amount,unit\n2026-03-02 15:00,out,Annex,Gin,700,ml\n",
    "orders.csv":
      "order,placed,supplier,item,pack,quantity,of,expected\nO1,2026-03-02 11:00,S,Gin,b,1,case,2026-03-03\n",
    "deliveries.csv":
      "at,supplier,invoice,item,pack,quantity,of\n2026-03-02 10:30,S,1,Gin,b,2,container\n2026-03-03 10:00,S,2,Gin,b,1,case\n",
    "sales/t.csv": "Date,Time,Item,Qty\n2026-03-02,20:00,G,10\n2026-03-03,09:59,G,1\n",
  };
  const ginAt = async (bar: BarOnDisk, ...at: string[]) =>
    (await bar.json("order", ...at)).items.find(({ item }: { item: string }) => item === "Gin");
  const beforeDelivery = 2000 - 100 - 700 + 1400 - 11 * 50;

  it("is the last count, less what should have been used and was lost since, and what moved", async () => {
    const gin = await ginAt(await ordering("S,Tue,14:00,Wed,09:00", SINCE), "--at", "2026-03-03 09:59");
    expect(gin.onHand).toBeCloseTo(beforeDelivery, 9);
    expect(gin.onOrder).toBeCloseTo(6 * 700, 9);
  });

  it("has in it what came at the book's last moment: nothing is neither on the shelf nor on its way", async () => {
    const gin = await ginAt(await ordering("S,Tue,14:00,Wed,09:00", SINCE));
    expect(gin.onHand).toBeCloseTo(beforeDelivery + 6 * 700, 9);
    expect(gin.onOrder).toBe(0);
  });
});

describe("a forecast", () => {
  it("knows nothing of the day it is as of", async () => {
    const asked = ["forecast", "--from", "2026-03-09", "--days", "1", "--as-of", "2026-03-02"];
    const before = await (await barOnDisk(STEADY)).json(...asked);
    const wild = await barOnDisk({ ...STEADY, "sales/t.csv": "Date,Item,Qty\n2026-03-02,G,5000\n" });
    expect((await wild.json(...asked)).days).toEqual(before.days);
    expect(before.days[0]).toMatchObject({ date: "2026-03-09", what: "G" });
    expect(before.days[0].mean).toBeCloseTo(20, 6);
  });

  it("speaks of serves, net of what was taken back, with events and plans of known drinks in it", async () => {
    const bar = await barOnDisk({
      ...STEADY,
      "ring-names.csv": "ring_name,sold_as,serves\nPITCHER,G,4\n",
      "sales/s.csv": `Date,Item,Qty,Net\n${daysFrom("2026-01-05", 56)
        .map((date) => `${date},PITCHER,6,100\n${date},G,-4,-20`)
        .join("\n")}\n`,
      "events.csv": "date,event,factor\n2026-03-03,Street fair,1.5\n",
      "plans.csv": "date,drink,serves\n2026-03-04,G,30\n",
    });
    const { days } = await bar.json(
      "forecast",
      "--from",
      "2026-03-02",
      "--days",
      "3",
      "--as-of",
      "2026-03-02",
    );
    const means = days.map(({ mean }: { mean: number }) => Math.round(mean));
    expect(means).toEqual([20, 30, 50]);
  });
});

describe("prep", () => {
  it("counts what is left newest first, throws out what is past its date, and makes whole steps", async () => {
    const bar = await barOnDisk({
      "items.csv":
        "item,category,base,shelf_life_days,in_house\nLime,fruit,each,,\nSugar,dry,g,,\nSyrup,syrup,ml,14,yes\nLime juice,juice,ml,2,yes\n",
      "packs.csv": "item,pack,amount,unit\nLime,each,1,each\nSugar,bag,1,kg\n",
      "drinks.csv": "drink\nG\n",
      "cuts.csv": "source,gives,per_piece,unit,parts\nLime,Lime juice,25,ml,flesh\n",
      "preps.csv": "prep,from,yield,unit,batch_step,vessel_max\nSyrup,2026-01-01,1500,ml,500,2000\n",
      "specs.csv":
        "makes,from,line,amount,unit,item\nSyrup,2026-01-01,1,1,kg,Sugar\nG,2026-01-01,1,25,ml,Lime juice\nG,2026-01-01,2,20,ml,Syrup\n",
      "counts.csv": `count,at,area,item,amount,unit
A,2026-03-02 08:00,Bar,Syrup,300,ml
A,2026-03-02 08:00,Bar,Lime juice,100,ml
A,2026-03-02 08:00,Bar,Lime,100,each
A,2026-03-02 08:00,Bar,Sugar,10,kg
`,
      "batches.csv":
        "at,prep,made,unit\n2026-02-10 12:00,Syrup,2,l\n2026-02-26 12:00,Lime juice,500,ml\n2026-03-01 12:00,Lime juice,60,ml\n",
      "sales/s.csv": STEADY["sales/s.csv"],
    });
    const { batches, discard, cuts } = await bar.json("prep", "--for", "2026-03-02", "--days", "1");
    expect(discard).toMatchObject([
      { prep: "Syrup", amount: 300, unit: "ml", madeAt: "2026-02-10 12:00" },
      { prep: "Lime juice", amount: 40, unit: "ml", madeAt: "2026-02-26 12:00" },
    ]);
    const [syrup, juice] = batches;
    expect(syrup).toMatchObject({ prep: "Syrup", onHand: 0, unit: "ml" });
    expect(syrup.make % 500).toBe(0);
    expect(syrup.make).toBeGreaterThanOrEqual(syrup.need);
    expect(syrup.make - 500).toBeLessThan(syrup.need);
    expect(syrup.inputs).toEqual([{ item: "Sugar", amount: (syrup.make / 1500) * 1000, base: "g" }]);
    expect(juice).toMatchObject({ prep: "Lime juice", onHand: 60, useBy: "2026-03-03" });
    expect(juice.make).toBeCloseTo(juice.need - 60, 9);
    expect(cuts[0]).toMatchObject({ source: "Lime", gives: [{ item: "Lime juice", unit: "ml" }] });
    expect(cuts[0].pieces).toBeCloseTo(juice.make / 25, 9);
  });
});
