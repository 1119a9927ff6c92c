import { describe, expect, it } from "vitest";
import type { Book } from "#engine/book.ts";
import { factsOf } from "#engine/facts.ts";
import { allergensOf } from "#engine/prep/allergens.ts";
import { BatchCardError, batchCard, stepsOf } from "#engine/prep/batch-card.ts";
import { cautionsOf } from "#engine/prep/cautions.ts";
import { labelOf } from "#engine/prep/label.ts";
import { makeOrBuy } from "#engine/prep/make-or-buy.ts";
import { aDrink, anItem, aPrep, specLines } from "#tests/support/hand-bar.ts";
import { otherCautions } from "../../web/prep/other-cautions.ts";
import { prepBook } from "./hand-prep.ts";

const DATE = "2026-03-02";

/** The kitchen with almond syrup, egg white, cream, a bitter liqueur or its stand-in, and two drinks of them. */
function bookWithAllergens(): Book {
  const book = prepBook();
  book.items.push(
    anItem({ name: "Almonds", base: "g", allergens: ["almonds"] }),
    anItem({ name: "Almond syrup", base: "ml", inHouse: true, shelfLifeDays: 5 }),
    anItem({ name: "Egg", base: "each", allergens: ["egg"] }),
    anItem({ name: "Egg white", base: "ml", inHouse: true, stocked: false }),
    anItem({ name: "Cream", base: "ml", allergens: ["milk"] }),
    anItem({ name: "Bitter", base: "ml", abv: 25 }),
    anItem({ name: "Bitter wine", base: "ml", abv: 16, allergens: ["sulphites"] }),
  );
  book.cuts.push({
    source: "Egg",
    from: null,
    gives: "Egg white",
    perPiece: 30,
    unit: "ml",
    parts: ["white"],
  });
  book.preps.push(aPrep("Almond syrup", "2026-01-01", 1000));
  book.drinks.push({ ...aDrink("Almond flip"), allergens: ["Egg"] }, aDrink("Spritz"));
  book.specs.push(
    ...specLines("Almond syrup", "2026-01-01", ["300 g Almonds", "500 ml Simple syrup"]),
    ...specLines("Almond flip", "2026-01-01", ["20 ml Almond syrup", "30 ml Egg white", "20 ml Cream"]),
    ...specLines("Spritz", "2026-01-01", ["40 ml Bitter"]).map((line) => ({
      ...line,
      orItems: ["Bitter wine"],
    })),
  );
  return book;
}

describe("allergens", () => {
  const { catalogue } = factsOf(bookWithAllergens());

  it("reach a drink through preps, cuts and its own sheet, each once", () => {
    const { contains, mayContain, text } = allergensOf(catalogue, "Almond flip", DATE);
    expect(contains).toEqual([
      { allergen: "Egg", from: ["Almond flip", "Egg"] },
      { allergen: "almonds", from: ["Almonds"] },
      { allergen: "milk", from: ["Cream"] },
    ]);
    expect(mayContain).toEqual([]);
    expect(text).toBe("Contains: Egg, almonds, milk. Check the labels of everything that goes in.");
  });

  it("of an alternative are only said to be possible", () => {
    const { contains, mayContain } = allergensOf(catalogue, "Spritz", DATE);
    expect(contains).toEqual([]);
    expect(mayContain).toEqual([{ allergen: "sulphites", from: ["Bitter wine"] }]);
    const turned = bookWithAllergens();
    turned.specs = turned.specs.map((line) =>
      line.makes === "Spritz" ? { ...line, item: "Bitter wine", orItems: ["Bitter"] } : line,
    );
    expect(allergensOf(factsOf(turned).catalogue, "Spritz", DATE).contains).toEqual([
      { allergen: "sulphites", from: ["Bitter wine"] },
    ]);
  });

  it("that nobody recorded are never called absent", () => {
    const { text } = allergensOf(catalogue, "Simple syrup", DATE);
    expect(text).toBe("No allergens are recorded. Check the labels of everything that goes in.");
  });

  it("before the first version are those of the sheets alone", () => {
    expect(allergensOf(catalogue, "Almond flip", "2025-12-31").contains).toEqual([
      { allergen: "Egg", from: ["Almond flip"] },
    ]);
  });
});

describe("cautions", () => {
  /** A prep of one input, in a category, by a method. */
  function cautionsFor(input: Partial<Book["items"][number]>, category: string, method = "") {
    const book = prepBook();
    book.items.push(
      anItem({ name: "Thing", base: "ml", inHouse: true, category }),
      anItem({ base: "ml", name: "Input", ...input }),
    );
    book.preps.push({ ...aPrep("Thing", "2026-01-01", 1000), method });
    book.specs.push(...specLines("Thing", "2026-01-01", [`500 ml ${input.name ?? "Input"}`, "500 ml Water"]));
    return cautionsOf(factsOf(book).catalogue, "Thing", DATE).join(" ");
  }

  it.each([
    ["egg", { name: "Egg yolk" }, "other", "", /pasteurised egg/],
    ["dairy", { name: "Double cream" }, "other", "", /Dairy/],
    ["garlic in oil", { name: "Garlic oil" }, "other", "", /dangerous bacteria/],
    ["herbs in a weak infusion", { name: "Basil leaf" }, "infusion", "", /dangerous bacteria/],
    ["nuts", { name: "Hazelnut paste", allergens: ["hazelnuts"] }, "other", "", /Nuts/],
    ["quinine", { name: "Cinchona bark" }, "other", "", /limited by law/],
    ["cold", { name: "Input" }, "other", "Chill with liquid nitrogen.", /cold burns/],
    ["strong spirit near flame", { name: "Overproof", abv: 63 }, "other", "Heat gently.", /catches fire/],
  ])("name %s and defer to the local code or the law", (_, input, category, method, text) => {
    expect(cautionsFor(input, category, method)).toMatch(text);
  });

  it.each([
    ["coconut cream", { name: "Coconut cream" }, "other", "", /Dairy/],
    ["nutmeg", { name: "Nutmeg water" }, "other", "", /Nuts/],
    ["herbs in strong spirit", { name: "Basil gin", abv: 45 }, "infusion", "", /dangerous bacteria/],
  ])("do not cry wolf over %s", (_, input, category, method, text) => {
    expect(cautionsFor(input, category, method)).not.toMatch(text);
  });

  it("never say that anything is safe", () => {
    const { catalogue } = factsOf(bookWithAllergens());
    const all = [...catalogue.items.keys()].flatMap((item) => cautionsOf(catalogue, item, DATE)).join(" ");
    expect(all.length).toBeGreaterThan(100);
    expect(all).not.toMatch(/\b(is|are) safe\b|harmless|no risk/i);
  });

  it("ask for fresh juice's dates, and for those of a mix that outlives what is in it", () => {
    const { catalogue } = factsOf(prepBook());
    expect(cautionsOf(catalogue, "Lime juice", DATE)[0]).toMatch(/^Fresh juice/);
    expect(cautionsOf(catalogue, "Lime cordial", DATE).join(" ")).toMatch(
      /Keeps less long than the mix: Lime juice\./,
    );
  });
});

describe("the batch card", () => {
  const facts = factsOf(prepBook());

  it("scales 1 kg + 1 kg to 3.252 l: weights, °Brix and volume (published sucrose tables)", () => {
    const card = batchCard({ facts, prep: "Simple syrup", date: DATE, make: 3252 });
    expect(card.inputs.map(({ text }) => text)).toEqual(["2000 g", "1996 g (2000 ml)"]);
    expect(card.targetBrix).toBeCloseTo((2000 / 3996.4) * 100, 3);
    // 1.626 l from 1 kg of each by the ICUMSA polynomial; a litre of water weighs 998.2 g.
    expect(Math.abs((card.volumeMl ?? 0) / 3252 - 1)).toBeLessThan(0.005);
    expect(card.totalWeightG).toBeCloseTo(3996.4, 1);
    expect(card.useBy).toBe("2026-03-22");
  });

  it("makes as much as there is of one input", () => {
    const card = batchCard({
      facts,
      prep: "Simple syrup",
      date: DATE,
      scaleTo: { item: "Sugar", amount: 750 },
    });
    expect(card.make).toBeCloseTo(1219.5, 9);
    expect(card.inputs[1]?.amount).toBeCloseTo(750, 9);
  });

  it("says allergens last among its cautions, which the screen says in their own place, and loses none of the others", () => {
    const withAllergens = factsOf(bookWithAllergens());
    for (const prep of ["Egg white", "Almond syrup", "Lime juice", "Simple syrup"]) {
      const { cautions, allergens } = batchCard({ facts: withAllergens, prep, date: DATE, make: 990 });
      const others = otherCautions(cautions, allergens);
      expect([prep, others]).toEqual([prep, cautions.filter((caution) => !caution.startsWith("Allergens."))]);
    }
    const egg = batchCard({ facts: withAllergens, prep: "Egg white", date: DATE, make: 990 });
    expect(otherCautions(egg.cautions, egg.allergens).join(" ")).toMatch(/^Raw or lightly treated egg/);
  });

  it("counts fruit in whole pieces, with what a drier or juicier box may take", () => {
    const card = batchCard({ facts, prep: "Lime juice", date: DATE, make: 990 });
    // 39.6 limes; two standard deviations of 0.0722 each way: 39.6/1.144 = 34.6, 39.6/0.856 = 46.3.
    expect(card.inputs).toMatchObject([
      { item: "Lime", piecesLow: 35, piecesHigh: 47, text: "40 pieces (35 to 47)" },
    ]);
    expect(card.inputs[0]?.weightG).toBeCloseTo(39.6 * 67, 6);
  });

  it("fills the vessel, and says what goes into each", () => {
    const book = prepBook();
    book.preps = book.preps.map((prep) => ({ ...prep, batchStep: 500, vesselMax: 1800 }));
    const withVessel = factsOf(book);
    expect(batchCard({ facts: withVessel, prep: "Lime cordial", date: DATE, vessel: true }).make).toBe(1500);
    expect(batchCard({ facts: withVessel, prep: "Lime cordial", date: DATE, make: 3500 }).loads).toEqual([
      1500, 1500, 500,
    ]);
  });

  it("is of one yield, or of one piece of fruit, where no size is asked for", () => {
    expect(batchCard({ facts, prep: "Lime cordial", date: DATE }).make).toBe(700);
    expect(batchCard({ facts, prep: "Lime juice", date: DATE }).make).toBe(25);
    expect(batchCard({ facts, prep: "Lime wheel", date: DATE })).toMatchObject({ make: 8, unit: "each" });
  });

  it.each([
    [{ prep: "Sugar" }, /not made here/],
    [{ prep: "Nothing" }, /not made here/],
    [{ prep: "Simple syrup", date: "2025-01-01" }, /not made here on 2025-01-01/],
    [{ prep: "Simple syrup", make: 0 }, /above 0/],
    [{ prep: "Simple syrup", make: Number.NaN }, /above 0/],
    [{ prep: "Simple syrup", vessel: true }, /no vessel_max/],
    [
      { prep: "Simple syrup", scaleTo: { item: "Salt", amount: 1 } },
      /takes no "Salt"; it takes "Sugar", "Water"/,
    ],
    [{ prep: "Simple syrup", make: 1, vessel: true }, /one size/],
  ])("refuses %j and says why", (question, message) => {
    expect(() => batchCard({ facts, date: DATE, ...question })).toThrow(BatchCardError);
    expect(() => batchCard({ facts, date: DATE, ...question })).toThrow(message);
  });

  it("breaks a method into steps", () => {
    expect(stepsOf("Stir warm until clear. Cool to 20 °C, date, chill.")).toEqual([
      "Stir warm until clear.",
      "Cool to 20 °C, date, chill.",
    ]);
    expect(stepsOf("1. Peel.\n2) Press e.g. by hand.\n\n")).toEqual(["Peel.", "Press e.g. by hand."]);
    expect(stepsOf("")).toEqual([]);
  });
});

describe("the label", () => {
  it("says what it is, when it was made and must be gone, and what is in it", () => {
    const { catalogue } = factsOf(bookWithAllergens());
    expect(labelOf(catalogue, { prep: "Almond syrup", madeOn: DATE, number: 2 }).lines).toEqual([
      "Almond syrup",
      "Made Mon 2026-03-02",
      "Use by Fri 2026-03-06",
      "Batch 260302-2",
      "Initials ____",
      "Contains: almonds. Check before serving.",
    ]);
  });

  it("leaves the use-by to be written in where no shelf life is known", () => {
    const book = prepBook();
    book.items = book.items.map((item) => ({ ...item, shelfLifeDays: null }));
    const label = labelOf(factsOf(book).catalogue, { prep: "Simple syrup", madeOn: DATE });
    expect(label.useBy).toBeNull();
    expect(label.lines[2]).toMatch(/^Use by _+/);
  });
});

describe("make or buy", () => {
  const book = prepBook();
  book.preps = book.preps.map((prep) => ({ ...prep, yield: 1600, activeMinutes: 15 }));
  const { catalogue } = factsOf(book);
  const costs = new Map<string, number | null>([
    ["Sugar", 0.0032],
    ["Water", 0],
    ["Lime", 0.4],
  ]);
  const question = { catalogue, prep: "Simple syrup", date: DATE, costs };

  it("counts inputs, labour and what is thrown out, worked by hand", () => {
    // 1000 g × 0.0032 ÷ 1600 = 0.002; 15 min at 16 an hour = 4 ÷ 1600 = 0.0025; a tenth lost: 0.0045 ÷ 0.9 = 0.005.
    const { made, bought, cheaper } = makeOrBuy({
      ...question,
      labourPerHour: 16,
      lossShareMade: 0.1,
      boughtCost: 0.0048,
    });
    expect(made?.inputs).toBeCloseTo(0.002, 12);
    expect(made?.labour).toBeCloseTo(0.0025, 12);
    expect(made?.total).toBeCloseTo(0.005, 12);
    expect(bought?.total).toBe(0.0048);
    expect(cheaper).toBe("buy");
  });

  it("makes when labour is left out, and spreads labour over the batch that is really made", () => {
    expect(makeOrBuy({ ...question, boughtCost: 0.0048 }).cheaper).toBe("make");
    const large = makeOrBuy({ ...question, labourPerHour: 16, batchSize: 8000, boughtCost: 0.0048 });
    expect(large.made?.labour).toBeCloseTo(0.0005, 12);
  });

  it("does not compare what it does not know", () => {
    const unpriced = makeOrBuy({ ...question, costs: new Map([["Water", 0]]), boughtCost: 0.01 });
    expect(unpriced).toMatchObject({ made: null, cheaper: null, missing: ['No price is known of "Sugar".'] });
    expect(makeOrBuy(question)).toMatchObject({ bought: null, cheaper: null });
    expect(makeOrBuy({ ...question, prep: "Sugar" }).missing[0]).toMatch(/Nothing says how "Sugar" is made/);
    expect(() => makeOrBuy({ ...question, lossShareMade: 1 })).toThrow(RangeError);
  });

  it("names the batch from which the labour is earned, where there is one", () => {
    // 4.00 of labour ÷ (0.004 − 0.002 a ml) = 2000 ml; a tenth lost: 4 ÷ (0.9 × 0.004 − 0.002) = 2500 ml.
    const asked = { ...question, labourPerHour: 16, boughtCost: 0.004 };
    expect(makeOrBuy(asked).breakEvenBatch).toBeCloseTo(2000, 6);
    expect(makeOrBuy({ ...asked, lossShareMade: 0.1 }).breakEvenBatch).toBeCloseTo(2500, 6);
    expect(makeOrBuy({ ...asked, batchSize: 2000 }).made?.total).toBeCloseTo(0.004, 12);
    expect(makeOrBuy({ ...asked, boughtCost: 0.0019 }).breakEvenBatch).toBeNull();
    expect(makeOrBuy({ ...asked, labourPerHour: 0 }).breakEvenBatch).toBe(0);
  });

  it("costs juice by its fruit", () => {
    expect(makeOrBuy({ ...question, prep: "Lime juice" }).made?.total).toBeCloseTo(0.4 / 25, 12);
  });
});
