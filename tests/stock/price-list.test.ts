import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { catalogueOf } from "#engine/catalogue.ts";
import { SalesFileError } from "#engine/sales/read/error.ts";
import { knownCategory } from "#engine/stock/category.ts";
import { comparePriceList } from "#engine/stock/price-list/compare.ts";
import { readPackWords } from "#engine/stock/price-list/pack-words.ts";
import { readPriceList } from "#engine/stock/price-list/read.ts";
import { anEmptyBook, anItem } from "#tests/support/hand-bar.ts";
import { aPack } from "../orders/order-bar.ts";

const bytes = (text: string) => new TextEncoder().encode(text);
const read = (text: string, answers = {}) => readPriceList(bytes(text), "list.csv", answers);

describe("the size of a pack, as suppliers write it (common practice)", () => {
  it.each([
    ["Dry gin 6 x 70cl", { perCase: 6, amount: 70, unit: "cl", rest: "Dry gin" }],
    ["12/750 ml", { perCase: 12, amount: 750, unit: "ml", rest: "" }],
    ["Tonic 200ml x 24", { perCase: 24, amount: 200, unit: "ml", rest: "Tonic" }],
    ["White rum 40% 70 cl", { perCase: null, amount: 70, unit: "cl", rest: "White rum 40%" }],
    ["Vermouth, 0,75 L (red)", { perCase: null, amount: 0.75, unit: "l", rest: "Vermouth, (red)" }],
    ["Ginger beer 24/12 fl oz", { perCase: 24, amount: 12, unit: "oz", rest: "Ginger beer" }],
    ["Limes 54 ct", { perCase: null, amount: 54, unit: "each", rest: "Limes" }],
    ["Caster sugar 5kg", { perCase: null, amount: 5, unit: "kg", rest: "Caster sugar" }],
    ["1 Litre", { perCase: null, amount: 1, unit: "l", rest: "" }],
  ])("reads “%s”", (text, found) => expect(readPackWords(text)).toEqual(found));

  it.each(["Dry gin", "Studio 54", "No. 7 gin", "6 x", "Lime", "Gold 12 years"])(
    "finds none in “%s”",
    (text) => {
      expect(readPackWords(text)).toBeUndefined();
    },
  );
});

describe("a supplier's price list", () => {
  it("is read with title lines, sections, a size in its own column and a price by the case", () => {
    const list = read(
      "Longmole Spirits;;;;\nPrices from Monday;;;;\n\nArt. No;Product;Size;Case price;ABV\nSPIRITS;;;;\nQ1;Quillmere Vodka;12 x 1 L;210,00 €;40 %\n;Wicker Gin;6 x 0,7 L;99,60;41,5\nMIXERS;;;;\nT9;Plain Tonic;24 x 200 ml;18,24;\n;Nothing;6 x 1 L;ask;\n",
    );
    expect(list.questions).toEqual([]);
    expect(
      list.lines.map(({ row, product, perCase, amount, unit, price, pricePer, code, category, abv }) => [
        row,
        product,
        perCase,
        amount,
        unit,
        price,
        pricePer,
        code,
        category,
        abv,
      ]),
    ).toEqual([
      [6, "Quillmere Vodka", 12, 1, "l", 210, "case", "Q1", "SPIRITS", 40],
      [7, "Wicker Gin", 6, 0.7, "l", 99.6, "case", "", "SPIRITS", 41.5],
      [9, "Plain Tonic", 24, 200, "ml", 18.24, "case", "T9", "MIXERS", null],
    ]);
    expect(list.refused).toEqual([{ row: 10, reason: "“Nothing”: “ask” is no price" }]);
  });

  it("asks what the price is of, where a case holds several and no heading says so", () => {
    const text = "Product,Pack,Price\nQuillmere Vodka,6 x 70cl,99.00\n";
    expect(read(text).questions).toEqual(["pricePer"]);
    expect(read(text, { pricePer: "case" })).toMatchObject({
      questions: [],
      lines: [{ pricePer: "case", price: 99 }],
    });
  });

  it("asks for the decimal mark where every price could be read both ways", () => {
    expect(read("Product;Size;Price\nGin;70 cl;1.234\nRum;70 cl;2.345\n").questions).toEqual(["decimal"]);
  });

  it("says what it needs when there is no heading", () => {
    expect(() => read("a,b\n1,2\n")).toThrow(SalesFileError);
  });

  it("never hangs nor fails without a name on any text, and never makes a price below nothing", () => {
    fc.assert(
      fc.property(
        fc.array(fc.array(fc.string({ maxLength: 12 }), { maxLength: 6 }), { maxLength: 12 }),
        (rows) => {
          const { lines } = readOrRefused(
            `Product,Size,Price\n${rows.map((row) => row.join(",")).join("\n")}`,
          );
          for (const line of lines) {
            expect(line.price).toBeGreaterThanOrEqual(0);
            expect(line.amount).toBeGreaterThan(0);
          }
        },
      ),
      { numRuns: 300 },
    );
  });
});

describe("a price list beside the book", () => {
  const book = {
    ...anEmptyBook(),
    items: [anItem({ name: "Quillmere Vodka", base: "ml" }), anItem({ name: "Wicker Gin", base: "ml" })],
    suppliers: [{ name: "Longmole", email: "", minimumValueMinor: null, minimumCases: null }],
    packs: [
      aPack("Quillmere Vodka", { pack: "1 L", amount: 1000, perCase: 12, price: 17.5, supplier: "Longmole" }),
      aPack("Wicker Gin", {
        pack: "700 ml",
        amount: 700,
        perCase: 6,
        price: 16,
        supplier: "Longmole",
        code: "W7",
      }),
    ],
  };
  const compare = (text: string) =>
    comparePriceList(catalogueOf(book), read(text).lines, { supplier: "longmole", from: "2026-03-02" }).map(
      ({ item, kind, before, after, pack }) => [
        item,
        kind,
        before,
        Number(after.toFixed(6)),
        pack.pack,
        pack.perCase,
      ],
    );

  it("tells a changed price from one that stands, a new size from a new item, by name and by the supplier's code", () => {
    expect(
      compare(
        "Code,Product,Size,Case price\n,QUILLMERE  vodka,12 x 1 L,210.00\nW7,Gin of Wicker,6 x 70 cl,99.60\n,Quillmere Vodka,6 x 70 cl,75\n,Harbour Rum,6 x 70cl,90\n",
      ),
    ).toEqual([
      ["Quillmere Vodka", "same", 17.5, 17.5, "1 L", 12],
      ["Wicker Gin", "price", 16, 16.6, "700 ml", 6],
      ["Quillmere Vodka", "pack", null, 12.5, "70 cl", 6],
      ["Harbour Rum", "item", null, 15, "70 cl", 6],
    ]);
  });
});

it("knows a list's category by the name of the book or of custom", () => {
  expect(knownCategory("SPIRITS", ["rum"])).toBe("spirit");
  expect(knownCategory("Rums", ["rum"])).toBe("rum");
  expect(knownCategory("Glass ware", [])).toBe("Glass ware");
});

/** What could be read; a text that is refused by name has no lines. */
function readOrRefused(text: string) {
  try {
    return read(text);
  } catch (error) {
    if (error instanceof SalesFileError) return { lines: [] };
    throw error;
  }
}
