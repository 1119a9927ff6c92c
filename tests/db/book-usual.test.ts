import { describe, expect, it } from "vitest";
import { readBook } from "#db/book/read-book.ts";
import { smallBook, smallBookWith } from "#tests/support/small-book.ts";

const notices = (files: ReadonlyMap<string, string>) => readBook(files).notices.join("\n");
const withPack = (row: string, was = "Soda,bottle,200,ml,,24,Quayside Drinks,12.00,case,no,,") =>
  smallBookWith("packs.csv", was, `${was}\n${row}`);

describe("a figure that the published ones make unlikely is told, and kept", () => {
  it.each([
    [
      "Old Quay rum,odd,740,ml,,6,,,,,,",
      /spirit is sold in no bottle of 740 ml .* nearest are 720 and 750 ml/,
    ],
    ["Soda,sixtel,20,l,,1,,,,,,", /a keg of 1\/6 barrel holds 19\.56 l .* not 20 l/],
  ])("%s", (row, message) => {
    expect(notices(withPack(row))).toMatch(message);
  });

  it.each([
    "Old Quay rum,litre and a half,1.5,l,,6,,,,,,",
    "Old Quay rum,25.4 oz,25.4,oz,,6,,,,,,",
    "Orgeat,house bottle,740,ml,,1,,,,,,",
    "Soda,1/6 bbl,19.56,l,,1,,,,,,",
  ])("%s is nothing to speak of", (row) => {
    expect(notices(withPack(row))).not.toMatch(/sold in no bottle|a keg of/);
  });

  it("a lime that gives a litre, or a millilitre", () => {
    const cut = "Lime,,Lime juice,28,ml,flesh";
    const gives = (perPiece: string) =>
      notices(smallBookWith("cuts.csv", cut, cut.replace("28,ml", perPiece)));
    expect(gives("1,l")).toMatch(/one "Lime" is said to give 1000 ml; published is about 42 ml .*USDA SR26/);
    expect(gives("1,ml")).toMatch(/said to give 1 ml/);
    expect(gives("20,ml")).not.toMatch(/said to give/);
  });
});

describe("a missing weight is asked for with a published one beside it", () => {
  it("of juice on the scale, and of fruit bought by the kilo", () => {
    const items = `item,category,base
Lime,fruit,each
Lime juice,juice,ml`;
    const packs = `item,pack,amount,unit
Lime,bag,1,kg
Lime juice,jug,1,kg`;
    expect(() => readBook(smallBook({ "items.csv": items, "packs.csv": packs }))).toThrow(
      /piece_g in items\.csv \(a lime weighs about 80 g as bought; USDA SR26\)[\s\S]*\(lime juice weighs about 1\.04 g\/ml; USDA SR26\)/,
    );
  });
});

describe("a weight that no such container has", () => {
  const gin = (grossG: number) =>
    notices(
      smallBook({
        "counts.csv": `count,at,area,item,pack,full,gross_g\nWeek 9,2026-03-02 10:00,Back bar,Dry gin,1 L,,${grossG}`,
      }),
    );

  it("is told with what an empty and a full one weigh", () => {
    expect(gin(9640)).toContain(
      "counts.csv row 2, gross_g: 9640 g is not a weight of this container: empty it weighs about 520 g, full 1468 g",
    );
    expect(gin(300)).toContain("300 g is not a weight");
    expect(gin(1468)).not.toContain("not a weight");
    expect(gin(900)).not.toContain("not a weight");
  });
});
