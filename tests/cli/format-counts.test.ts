import { describe, expect, it } from "vitest";
import { barOnDisk } from "#tests/support/bar-on-disk.ts";

const FRUIT = {
  "items.csv":
    "item,category,base,stocked\nOrange,fruit,each,\nLime,fruit,each,\nJuice,juice,ml,no\nWheel,garnish,each,no\n" +
    "Peel,garnish,each,no\nLime juice,juice,ml,yes\nWedge,garnish,each,no\nSugar,dry,g,\nGin,spirit,ml,\n",
  "packs.csv": "item,pack,amount,unit\nOrange,each,1,each\nLime,each,1,each\nGin,b,700,ml\n",
  "cuts.csv": `source,from,gives,per_piece,unit,parts
Orange,,Juice,80,ml,flesh
Orange,,Wheel,8,each,skin+flesh
Orange,,Peel,10,each,skin
Lime,2026-01-01,Lime juice,25,ml,flesh
Lime,2026-01-10,Lime juice,20,ml,flesh
Lime,,Wedge,6,each,skin + flesh
`,
  "drinks.csv": "drink\nScrew\nWheel glass\nTwist\nWhole\nDaiq\nWedged\n",
  "preps.csv": "prep,from,yield,unit\nLime juice,2026-01-01,1,l\n",
  "specs.csv": `makes,from,line,amount,unit,item
Screw,2026-01-01,1,120,ml,Juice
Wheel glass,2026-01-01,1,1,each,Wheel
Twist,2026-01-01,1,1,piece,Peel
Whole,2026-01-01,1,1/2,each,Orange
Daiq,2026-01-01,1,25,ml,Lime juice
Wedged,2026-01-01,1,1,each,Wedge
Lime juice,2026-01-01,1,20,g,Sugar
`,
};

describe("one fruit, several uses", () => {
  const EVENING = [
    "2026-01-05,20:00,Screw,4",
    "2026-01-05,20:00,Wheel glass,8",
    "2026-01-05,20:00,Twist,30",
    "2026-01-05,20:00,Whole,4",
    "2026-01-05,20:00,Wedged,12",
    "2026-01-05,20:00,Daiq,10",
  ];

  it("takes the largest of the shares a day asks of its parts, and what is used whole on top", async () => {
    const bar = await barOnDisk({
      ...FRUIT,
      "batches.csv":
        "at,prep,made,unit\n2026-01-05 12:00,Lime juice,500,ml\n2026-01-11 12:00,Lime juice,500,ml\n",
      "sales/s.csv": `Date,Time,Item,Qty\n${EVENING.join("\n")}\n`,
    });
    // Flesh 480/80 + 8/8 = 7, skin 8/8 + 30/10 = 4; whole 2. Limes: pressed 500/25, wedges 12/6.
    expect(await bar.use("2026-01-05")).toEqual({ Orange: 9, Lime: 22, "Lime juice": 250, Sugar: 10 });
    expect(await bar.use("2026-01-05", "2026-01-05", "--raw")).toEqual({ Orange: 9, Lime: 12, Sugar: 5 });
    expect(await bar.use("2026-01-11")).toEqual({ Lime: 25, Sugar: 10 });
  });

  it("is two days where its own count cuts the day, in use too, so that periods add up", async () => {
    const counts = (rows: string) =>
      barOnDisk({
        ...FRUIT,
        "counts.csv": `count,at,area,item,full\nA,2026-01-01 10:00,Bar,Orange,40\nA,2026-01-01 10:00,Bar,Lime,10\n${rows}`,
        "sales/s.csv":
          "Date,Time,Item,Qty\n2026-01-05,17:00,Twist,30\n2026-01-05,17:00,Screw,1\n2026-01-05,19:00,Screw,4\n2026-01-05,19:00,Twist,10\n",
      });
    // The whole day: flesh 7.5, skin 4. Before 18:00 skin 3 over flesh 1.5; after it flesh 6 over skin 1.
    expect(await (await counts("")).use("2026-01-05")).toEqual({ Orange: 7.5 });
    const cut = await counts(
      "B,2026-01-05 18:00,Bar,Orange,30\nB,2026-01-05 18:30,Bar,Lime,8\nC,2026-01-05 20:00,Bar,Orange,25\n",
    );
    expect(await cut.use("2026-01-05")).toEqual({ Orange: 9 });
    expect((await cut.variance("--count", "B")).Orange).toMatchObject({
      used: 10,
      expected: 3,
      unexplained: 7,
    });
    expect((await cut.variance()).Orange).toMatchObject({ openingQty: 30, closingQty: 25, expected: 6 });
    expect((await cut.variance("--count", "C", "--since", "A")).Orange).toMatchObject({
      used: 15,
      expected: 9,
    });
    const spot = await cut.json("variance");
    expect([spot.items.length, spot.notCounted]).toEqual([1, ["Lime", "Gin"]]);
  });

  it("stands under losses, summed on its own, where a drink was lost", async () => {
    const bar = await barOnDisk({
      ...FRUIT,
      "counts.csv": `count,at,area,item,amount,unit
A,2026-01-01 10:00,Bar,Orange,40,each
A,2026-01-01 10:00,Bar,Lime juice,1,l
A,2026-01-01 10:00,Bar,Gin,1,l
B,2026-01-08 10:00,Bar,Orange,20,each
B,2026-01-08 10:00,Bar,Lime juice,500,ml
B,2026-01-08 10:00,Bar,Gin,900,ml
`,
      "losses.csv": `at,kind,what,amount,unit
2026-01-05 20:00,spill,Screw,2,serve
2026-01-05 20:30,waste,twist,10,serve
2026-01-06 20:30,breakage,Orange,1,each
2026-01-06 20:30,staff,Juice,80,ml
2026-01-05 20:30,waste,Daiq,1,serve
2026-01-05 20:30,expired,lime juice,10,cl
2026-01-01 10:00,tasting,Gin,10,ml
2026-01-08 10:00,staff,Gin,1,l
`,
      "transfers.csv":
        "at,direction,place,item,amount,unit\n2026-01-02 12:00,in,Annex,Gin,70,cl\n2026-01-03 12:00,out,Annex,Gin,20,cl\n2026-01-08 10:00,out,Annex,Gin,1,l\n",
      "batches.csv":
        "at,prep,made,unit\n2026-01-03 12:00,Lime juice,250,ml\n2026-01-08 10:00,Lime juice,250,ml\n",
      "sales/s.csv": "Date,Time,Item,Qty\n2026-01-05,20:00,Twist,20\n2026-01-05,20:00,Screw,1\n",
    });
    const items = await bar.variance();
    // Sold: skin 2 over flesh 1.5. Lost: flesh 3 over skin 1 on the 5th, 1 whole and 1 pressed on the 6th.
    expect(items.Orange).toMatchObject({ used: 20, expected: 2, losses: 5, unexplained: 13 });
    expect(items["Lime juice"]).toMatchObject({ made: 250, used: 750, expected: 0, losses: 125 });
    expect(items.Gin).toMatchObject({ transferredIn: 700, transferredOut: 200, used: 600, losses: 10 });
  });
});

const GIN = {
  "items.csv": "item,category,base\nGin,spirit,ml\n",
  "packs.csv": "item,pack,amount,unit\nGin,b,700,ml\n",
  "drinks.csv": "drink\nG\n",
  "specs.csv": "makes,from,line,amount,unit,item\nG,2026-01-01,1,50,ml,Gin\n",
};

describe("the moment of a count", () => {
  const UNTIMED =
    "Date,Item,Qty\n2026-01-01,G,1\n2026-01-02,G,2\n2026-01-08,G,4\n2026-01-09,G,8\n2026-01-10,G,16\n";
  const TIMED =
    "DateTime,Item,Qty\n2026-01-09 03:59,G,1\n2026-01-09 09:59,G,8\n2026-01-09 10:00,G,2\n2026-01-09 10:01,G,4\n";

  it.each<[at: string, sales: string, serves: number]>([
    ["2026-01-09 10:00", UNTIMED, 2 + 4],
    ["2026-01-09 15:59", UNTIMED, 2 + 4],
    ["2026-01-09 16:00", UNTIMED, 2 + 4 + 8],
    ["2026-01-10 03:00", UNTIMED, 2 + 4 + 8],
    ["2026-01-09 10:00", TIMED, 1 + 8],
  ])("at %s divides the sales", async (at, sales, serves) => {
    const bar = await barOnDisk({
      ...GIN,
      "counts.csv": `count,at,area,item,amount,unit\nA,2026-01-02 10:00,Bar,Gin,5,l\nB,${at},Bar,Gin,4,l\n`,
      "sales/s.csv": sales,
    });
    expect((await bar.variance()).Gin.expected).toBeCloseTo(serves * 50, 6);
  });

  it("is the night's own hour when the clocks change", async () => {
    const bar = await barOnDisk({
      ...GIN,
      "sales/s.csv":
        "Date,Time,Item,Qty\n2026-03-29,00:59,G,1\n2026-03-29,02:00,G,2\n2026-03-29,03:59,G,4\n2026-03-29,04:00,G,8\n2026-10-25,01:30,G,1\n2026-10-25,03:59,G,2\n2026-10-25,04:00,G,4\n",
    });
    expect(await bar.use("2026-03-28")).toEqual({ Gin: 7 * 50 });
    expect(await bar.use("2026-03-29")).toEqual({ Gin: 8 * 50 });
    expect(await bar.use("2026-10-24")).toEqual({ Gin: 3 * 50 });
    expect(await bar.use("2026-10-25")).toEqual({ Gin: 4 * 50 });
  });
});

describe("what a count row finds", () => {
  it("is full containers, open parts, weighed ones and plain amounts together", async () => {
    const rows = (count: string, at: string) =>
      [
        "Stated,b,2,0.5;0.25,590,,",
        "Weighed,,1,,510;455,,",
        "Flour,,1,.5,320,10,g",
        "Cherry,,0,,150,,",
        "Fresh,,,,600,,",
      ].map((row) => `${count},${at},Bar,${row}`);
    const bar = await barOnDisk({
      "items.csv":
        "item,category,base,abv,density_g_per_ml,piece_g\nStated,spirit,ml,40,0.9,\nWeighed,liqueur,ml,20,,\nFlour,dry,g,,,\nCherry,garnish,each,,,5\nFresh,spirit,ml,40,,\n",
      "packs.csv":
        "item,pack,amount,unit,empty_g,full_g\nStated,b,700,ml,500,1200\nWeighed,b,500,ml,400,950\nFlour,bag,1,kg,20,\nCherry,tub,100,each,100,\nFresh,b,700,ml,500,\n",
      "counts.csv": `count,at,area,item,pack,full,part,gross_g,amount,unit\n${[
        ...rows("A", "2026-01-01 10:00"),
        ...rows("B", "2026-01-08 10:00"),
      ].join("\n")}\n`,
    });
    const items = await bar.variance();
    // Stated: 2.75 bottles and 90 g at 0.9. Weighed: 550 g in 500 ml, so 110 g are 100 ml and 55 g 50 ml.
    expect(items.Stated.closingQty).toBeCloseTo(2025, 9);
    expect(items.Weighed.closingQty).toBeCloseTo(650, 9);
    expect(items.Flour.closingQty).toBe(1000 + 500 + 300 + 10);
    expect(items.Cherry.closingQty).toBe(10);
    // 100 g of 40 % vol at 20 °C, 0.94805 g/ml (OIML R 22).
    expect(items.Fresh.closingQty).toBeCloseTo(100 / 0.94805, 2);
  });

  it("is uncertain as the venue says, open container by open container and pour by pour", async () => {
    const bar = await barOnDisk(
      {
        "items.csv":
          "item,category,base,pour,density_g_per_ml\nGin,spirit,ml,,\nRum,spirit,ml,free,\nVermouth,wine,ml,measured,0.8\n",
        "packs.csv": "item,pack,amount,unit,empty_g\nGin,b,700,ml,\nRum,b,1,l,\nVermouth,b,750,ml,400\n",
        "drinks.csv": "drink\nA\n",
        "specs.csv":
          "makes,from,line,amount,unit,item\nA,2026-01-01,1,50,ml,Gin\nA,2026-01-01,2,20,ml,Rum\nA,2026-01-01,3,10,ml,Vermouth\n",
        "counts.csv": `count,at,area,item,full,part,gross_g
A,2026-01-05 10:00,Bar,Gin,5,0.5,
A,2026-01-05 10:00,Bar,Rum,5,,
A,2026-01-05 10:00,Bar,Vermouth,,,800
B,2026-01-12 10:00,Bar,Gin,2,0.5;0.2,
B,2026-01-12 10:00,Bar,Rum,4,,
B,2026-01-12 10:00,Bar,Vermouth,,,600;500
`,
        "sales/a.csv": "Date,Time,Item,Qty\n2026-01-06,20:00,A,25\n",
      },
      { uncertainty: { reading: 0.05, scaleG: 3, pourJigger: 0.04, pourFree: 0.1 } },
    );
    const items = await bar.variance();
    expect(items.Gin.sd).toBeCloseTo(Math.hypot(35, 35, 35, 5 * 2), 9);
    expect(items.Rum.sd).toBeCloseTo(5 * 2, 9);
    expect(items.Vermouth.sd).toBeCloseTo(Math.sqrt(3) * (3 / 0.8), 9);
  });

  it("is short where an area of the item is missing; what nobody buys or counts is not missing", async () => {
    const bar = await barOnDisk({
      "items.csv":
        "item,category,base,stocked\nGin,spirit,ml,\nRum,spirit,ml,\nVodka,spirit,ml,\nWater,tap,ml,\nSyrup,syrup,ml,no\n",
      "packs.csv": "item,pack,amount,unit\nGin,b,700,ml\nRum,b,1,l\nVodka,b,700,ml\n",
      "areas.csv": "area,item,shelf\nBar,Gin,1\nCellar,Gin,1\nBar,Rum,2\n",
      "drinks.csv": "drink\nD\n",
      "preps.csv": "prep,from,yield,unit\nSyrup,2026-01-01,1,l\n",
      "specs.csv":
        "makes,from,line,amount,unit,item\nD,2026-01-01,1,50,ml,Gin\nD,2026-01-01,2,50,ml,Water\nD,2026-01-01,3,10,ml,Syrup\nSyrup,2026-01-01,1,1,l,Water\n",
      "counts.csv":
        "count,at,area,item,full\nA,2026-01-01 10:00,Bar,Gin,3\nA,2026-01-01 10:00,cellar,Gin,2\nA,2026-01-01 10:00,Bar,Rum,2\nB,2026-01-08 10:00, bar ,Gin,1\nB,2026-01-08 10:00,Bar,Rum,1\n",
      "sales/s.csv": "Date,Time,Item,Qty\n2026-01-05,20:00,D,2\n",
    });
    const { items, notCounted, notCountedIn } = await bar.json("variance");
    expect(items.map(({ item }: { item: string }) => item)).toEqual(["Rum"]);
    expect([notCounted, notCountedIn]).toEqual([["Vodka"], { Gin: ["Cellar"] }]);
    expect(await bar.use("2026-01-05")).toEqual({ Gin: 100, Water: 120 });
  });

  it("divides an item's deliveries and sales at the item's own moment, the latest of its rows", async () => {
    const bar = await barOnDisk({
      ...GIN,
      "packs.csv": "item,pack,amount,unit,per_case\nGin,b,700,ml,6\n",
      "suppliers.csv": "supplier\nS\n",
      "counts.csv":
        "count,at,area,item,full,amount,unit\nA,2026-01-01 10:00,Bar,Gin,4,,\nA,2026-01-01 12:00,Cellar,Gin,4,,\nB,2026-01-08 10:00,Bar,Gin,0,,\nB,2026-01-08 14:00,Cellar,Gin,7,100,ml\n",
      "deliveries.csv":
        "at,supplier,invoice,item,pack,quantity,of\n2026-01-01 11:59,S,1,Gin,b,1,container\n2026-01-01 12:00,S,1,Gin,b,1,case\n2026-01-08 13:00,S,2,Gin,b,2,container\n2026-01-08 14:00,S,3,Gin,b,2,container\n",
      "sales/s.csv":
        "Date,Time,Item,Qty\n2026-01-01,11:30,G,1\n2026-01-01,12:00,G,2\n2026-01-08,13:59,G,4\n2026-01-08,14:00,G,8\n",
    });
    expect((await bar.variance()).Gin).toMatchObject({
      openingQty: 5600,
      received: 4200 + 1400,
      closingQty: 5000,
      used: 6200,
      expected: 300,
    });
  });
});
