import { describe, expect, it } from "vitest";
import type { SpecTextLine } from "#engine/specs/text/entry.ts";
import { readSpecText } from "#engine/specs/text/read.ts";
import { only } from "#tests/support/only-line.ts";

type Row = [text: string, amount: number | null, unit: SpecTextLine["unit"], item: string, note?: string];

describe("amounts in a unit", () => {
  it.each<Row>([
    ["3/4 oz lime juice", 0.75, "oz", "lime juice"],
    ["¾ oz lime juice, fresh", 0.75, "oz", "lime juice", "fresh"],
    ["3/4oz lime juice", 0.75, "oz", "lime juice"],
    ["3⁄4 oz lime juice", 0.75, "oz", "lime juice"],
    ["1½ oz dry gin", 1.5, "oz", "dry gin"],
    ["1 ½ oz dry gin", 1.5, "oz", "dry gin"],
    ["1 1/2 oz dry gin", 1.5, "oz", "dry gin"],
    ["1-1/2 oz dry gin", 1.5, "oz", "dry gin"],
    ["1 and 1/2 oz dry gin", 1.5, "oz", "dry gin"],
    ["one and a half ounces dry gin", 1.5, "oz", "dry gin"],
    ["half an ounce of lime juice", 0.5, "oz", "lime juice"],
    ["half ounce lime juice", 0.5, "oz", "lime juice"],
    ["three quarters of an ounce lemon juice", 0.75, "oz", "lemon juice"],
    [".75 oz lemon juice", 0.75, "oz", "lemon juice"],
    ["0,75 oz lemon juice", 0.75, "oz", "lemon juice"],
    ["22,5 ml syrup", 22.5, "ml", "syrup"],
    ["60ml gin", 60, "ml", "gin"],
    ["60 mL of gin", 60, "ml", "gin"],
    ["2 cl gin", 2, "cl", "gin"],
    ["4.5cl dark rum", 4.5, "cl", "dark rum"],
    ["1 dl cream", 1, "dl", "cream"],
    ["1 litre soda water", 1, "l", "soda water"],
    ["2 fl. oz. gin", 2, "oz", "gin"],
    ["2 fluid ounces white agave spirit", 2, "oz", "white agave spirit"],
    ["1 ounce (30 ml) gin", 1, "oz", "gin", "30 ml"],
    ["1 bar spoon (5 ml) cherry liqueur", 1, "barspoon", "cherry liqueur", "5 ml"],
    ["2 barspoons of agave syrup", 2, "barspoon", "agave syrup"],
    ["barspoon absinthe", 1, "barspoon", "absinthe"],
    ["2 tsp. sugar", 2, "tsp", "sugar"],
    ["2 Tbsp. honey", 2, "tbsp", "honey"],
    ["1 T honey", 1, "tbsp", "honey"],
    ["1 t honey", 1, "tsp", "honey"],
    ["Teaspoon of sugar", 1, "tsp", "sugar"],
    ["1/4 cup water", 0.25, "cup", "water"],
    ["1 quart water", 4, "cup", "water", "1 quart"],
    ["two dashes aromatic bitters", 2, "dash", "aromatic bitters"],
    ["Dash of orange bitters", 1, "dash", "orange bitters"],
    ["a couple of dashes orange bitters", 2, "dash", "orange bitters"],
    ["A splash of soda water", 1, "splash", "soda water"],
    ["10 drops saline (20%)", 10, "drop", "saline", "20%"],
    ["100 g sugar", 100, "g", "sugar"],
    ["1 kg sugar", 1, "kg", "sugar"],
    ["1 lb sugar", 1, "lb", "sugar"],
    ["8 oz sugar, by weight", 8, "oz-wt", "sugar"],
    ["4 oz-wt sugar", 4, "oz-wt", "sugar"],
    [
      "1/2 oz syrup (2 parts sugar to 1 water by weight)",
      0.5,
      "oz",
      "syrup",
      "2 parts sugar to 1 water by weight",
    ],
    ["1 oz half and half", 1, "oz", "half and half"],
  ])("%s", (text, amount, unit, item, note) => {
    expect(only(text)).toEqual({ line: 1, amount, unit, item, orItems: [], note: note ?? null, error: null });
  });
});

describe("ranges are read as their mean, and the note keeps the range", () => {
  it.each<Row>([
    ["2-3 dashes orange bitters", 2.5, "dash", "orange bitters", "2 to 3"],
    ["2–3 dashes orange bitters", 2.5, "dash", "orange bitters", "2 to 3"],
    ["3 or 4 dashes bitters", 3.5, "dash", "bitters", "3 to 4"],
    ["1/2-3/4 oz syrup", 0.625, "oz", "syrup", "0.5 to 0.75"],
    ["1 1/2 - 2 oz rye", 1.75, "oz", "rye", "1.5 to 2"],
    ["6 to 8 mint leaves", 7, "each", "mint leaf", "6 to 8"],
  ])("%s", (text, amount, unit, item, note) => {
    expect(only(text)).toMatchObject({ amount, unit, item, note, error: null });
  });
});

describe("pieces of fruit and herbs", () => {
  it.each<Row>([
    ["3 slices cucumber", 3, "each", "cucumber slice"],
    ["3 cucumber slices", 3, "each", "cucumber slice"],
    ["2 thin slices of fresh ginger", 2, "each", "ginger slice", "thin"],
    ["3 (1/2-inch) slices cucumber", 3, "each", "cucumber slice", "1/2-inch"],
    ["8 mint leaves", 8, "each", "mint leaf"],
    ["8 fresh mint leaves", 8, "each", "mint leaf", "fresh"],
    ["mint sprig", 1, "each", "mint sprig"],
    ["Sprig of mint", 1, "each", "mint sprig"],
    ["Long lemon twist", 1, "each", "lemon twist", "long"],
    ["1 wedge lime", 1, "each", "lime wedge"],
    ["half orange wheel", 0.5, "each", "orange wheel"],
    ["1 orange half-wheel", 1, "each", "orange half-wheel"],
    ["1 sugar cube", 1, "each", "sugar cube"],
    ["1 cube of sugar", 1, "each", "sugar cube"],
    ["1 egg white", 1, "each", "egg white"],
    ["Egg white (optional)", 1, "each", "Egg white", "optional"],
    ["2 limes", 2, "each", "limes"],
    ["1/2 lime, cut into wedges", 0.5, "each", "lime", "cut into wedges"],
    ["Half a lime cut into 4 wedges", 0.5, "each", "lime", "cut into 4 wedges"],
    ["Juice of 1/2 lemon", 0.5, "each", "lemon", "juice of"],
    ["Juice of half a lemon", 0.5, "each", "lemon", "juice of"],
    ["Zest of 1 lime", 1, "each", "lime", "zest of"],
    ["6 raspberries", 6, "each", "raspberries"],
    ["garnish: lime wheel", 1, "each", "lime wheel", "garnish"],
    ["Garnish with a lime wheel", 1, "each", "lime wheel", "garnish"],
    ["Lime wheel for garnish", 1, "each", "Lime wheel", "for garnish"],
    ["10 pcs mint leaves", 10, "piece", "mint leaf"],
    ["8 mint leaves, plus 1 sprig for garnish", 8, "each", "mint leaf", "plus 1 sprig for garnish"],
  ])("%s", (text, amount, unit, item, note) => {
    expect(only(text)).toEqual({ line: 1, amount, unit, item, orItems: [], note: note ?? null, error: null });
  });
});

describe("a top fills the glass", () => {
  it.each([
    ["top ginger beer", "ginger beer"],
    ["Top with soda", "soda"],
    ["Top up with sparkling wine", "sparkling wine"],
    ["Fill with cola", "cola"],
    ["Soda water, to top", "Soda water"],
    ["Cola to top up", "Cola"],
    ["Tonic water (to top)", "Tonic water"],
    ["Soda top", "Soda"],
    ["Whole milk, hot, to top", "Whole milk"],
    ["Ginger beer, to top (about 5 oz)", "Ginger beer"],
  ])("%s", (text, item) => {
    expect(only(text)).toMatchObject({ amount: null, unit: "top", item, error: null });
  });

  it("with an amount is a measure", () => {
    expect(only("Top with 2 oz soda")).toMatchObject({ amount: 2, unit: "oz", item: "soda", note: "top" });
    expect(only("Top with a splash of soda")).toMatchObject({ amount: 1, unit: "splash", item: "soda" });
  });

  it.each(["Fill glass with ice", "Top with grated nutmeg", "Top with a mint sprig"])("is not %s", (text) => {
    expect(only(text).error).toMatch(/does not fill a glass up/);
  });
});

describe("either of several items", () => {
  it.each<[string, string, string[], string?]>([
    ["1½ oz rested or aged agave spirit", "rested agave spirit", ["aged agave spirit"]],
    ["2 oz white or gold rum", "white rum", ["gold rum"]],
    ["1 oz lemon or lime juice", "lemon juice", ["lime juice"]],
    ["4 oz fresh lime or lemon juice", "fresh lime juice", ["lemon juice"]],
    ["Cherry or lemon peel", "Cherry", ["lemon peel"]],
    ["1 oz sweet or extra dry vermouth", "sweet vermouth", ["extra dry vermouth"]],
    ["2 oz rye or bourbon", "rye", ["bourbon"]],
    ["1 oz brandy (or bourbon)", "brandy", ["bourbon"]],
    ["2 oz bourbon, rye, or brandy", "bourbon", ["rye", "brandy"]],
    ["1 oz orange liqueur or other fruit liqueur", "orange liqueur", [], "or other fruit liqueur"],
    ["1 oz soda water or to taste", "soda water", [], "or to taste"],
    ["1 oz lemon juice or 1/4 lemon squeezed", "lemon juice", [], "or 1/4 lemon squeezed"],
  ])("%s", (text, item, orItems, note) => {
    expect(only(text)).toMatchObject({ item, orItems, note: note ?? null, error: null });
  });
});

describe("as it stands in the wild", () => {
  it.each<Row>([
    ["• 2 oz. dry gin", 2, "oz", "dry gin"],
    ["- 2 oz dry gin", 2, "oz", "dry gin"],
    ["* 2 oz dry gin*", 2, "oz", "dry gin"],
    ["1) 2 oz dry gin", 2, "oz", "dry gin"],
    ["1. 2 oz dry gin", 2, "oz", "dry gin"],
    ["[ ] 2 oz dry gin", 2, "oz", "dry gin"],
    ["**2 oz** dry gin", 2, "oz", "dry gin"],
    ["<li>1&frac12; oz dry gin</li>", 1.5, "oz", "dry gin"],
    ["2\u00a0oz\tdry  gin", 2, "oz", "dry gin"],
    ["Gin: 60 ml", 60, "ml", "Gin"],
    ["Gin – 60 ml", 60, "ml", "Gin"],
    ["Orange bitters, 2 dashes", 2, "dash", "Orange bitters"],
    ["Orange bitters (2 dashes)", 2, "dash", "Orange bitters"],
    ["30 ml / 1 oz gin", 30, "ml", "gin", "1 oz"],
    ["9 cl/3 oz (6 parts) tomato juice", 9, "cl", "tomato juice", "3 oz, 6 parts"],
    [".66oz | 20ml strawberry syrup", 0.66, "oz", "strawberry syrup", "20ml"],
    ["~30 ml lime juice", 30, "ml", "lime juice", "about"],
    ["scant 1/2 oz lime juice", 0.5, "oz", "lime juice", "scant"],
    ["heaping barspoon sugar", 1, "barspoon", "sugar", "heaping"],
    ["(Optional) 1 egg white", 1, "each", "egg white", "Optional"],
    ["Optional: 1 egg white", 1, "each", "egg white", "optional"],
    ["Float 1/2 oz dark rum", 0.5, "oz", "dark rum", "float"],
    ["15 ml lemon juice [fresh]", 15, "ml", "lemon juice", "fresh"],
    ["2 oz 100-proof rye", 2, "oz", "100-proof rye"],
    ["1 oz 12 year old malt", 1, "oz", "12 year old malt"],
    ["2 oz 2:1 simple syrup", 2, "oz", "2:1 simple syrup"],
    ["1 oz (2:1) demerara syrup", 1, "oz", "demerara syrup", "2:1"],
    ["2 drops 5% acid solution, (see note)", 2, "drop", "5% acid solution", "see note"],
    ["1 can (12 oz) cola", 12, "oz", "cola", "1 can"],
    ["2 (12-ounce) cans ginger beer", 24, "oz", "ginger beer", "2 cans"],
    ["1 (750 ml) bottle of red wine", 750, "ml", "red wine", "1 bottle"],
    ["1 x 700ml bottle white rum", 700, "ml", "white rum", "1 bottle"],
    ["1 <sup>1</sup>&frasl;<sub>2</sub> oz / 45 ml gin", 1.5, "oz", "gin", "45 ml"],
    ["Optional: 1 dash orange bitters", 1, "dash", "orange bitters", "optional"],
    ["1 oz dark rum (poured over top)", 1, "oz", "dark rum", "poured over top"],
    ["1 oz grape juice poured over top", 1, "oz", "grape juice", "poured over top"],
    ["1 egg white (about 1/2 ounce)", 1, "each", "egg white", "about 1/2 ounce"],
    ["1 sugar cube or 1 tsp sugar", 1, "each", "sugar cube", "or 1 tsp sugar"],
    [
      "1 pineapple, peeled, cored, and sliced into rings",
      1,
      "each",
      "pineapple",
      "peeled, cored, and sliced into rings",
    ],
    ["4 sprigs mint, including stems and leaves", 4, "each", "mint sprig", "including stems and leaves"],
    ["1 oz fresh juice from 2 limes", 1, "oz", "fresh lime juice", "from 2 limes"],
  ])("%s", (text, amount, unit, item, note) => {
    expect(only(text)).toEqual({ line: 1, amount, unit, item, orItems: [], note: note ?? null, error: null });
  });
});

describe("what cannot be read for certain is refused at the word", () => {
  it.each<[string, RegExp]>([
    ["pinch of salt", /"pinch" is not a measure/],
    ["1 part gin", /"part" is not a measure/],
    ["absinthe rinse", /"rinse" is not a measure/],
    ["1 jigger gin", /"jigger" is not a measure/],
    ["1 bottle sparkling wine", /"bottle" is not a measure/],
    ["1 pint stout", /"pint" is not a measure/],
    ["a few dashes bitters", /"a few" is not a measure/],
    ["1-inch piece ginger", /"inch" is not a measure/],
    ["gin", /No amount is written before "gin"/],
    ["Black pepper", /No amount is written/],
    ["Slices of cucumber", /No amount is written/],
    ["Half and half", /joins two items|No amount/],
    ["oz gin", /No amount is written in "oz gin"/],
    ["0.75 honey syrup", /No unit between the amount and "honey syrup"/],
    ["2 bitters", /No unit/],
    ["1 oz", /No item is named/],
    ["0 oz gin", /"0" is no amount/],
    ["1/0 oz gin", /"1\/0" is no amount/],
    ["3-2 oz gin", /"3 to 2" is no range/],
    ["1-8.4 oz can of cola", /"1 to 8.4" is no range/],
    ["11/2 oz white rum", /"11\/2" can be read two ways: write 1 1\/2/],
    ["700 ml white, aged or spiced cane rum", /lists several items/],
    ["Smoke: cinnamon stick", /":" in .* is not understood/],
    ["Garnish: star anise, freshly grated", /No amount is written/],
    ["1,000 ml water", /"1,000" can be read two ways/],
    ["1.500 ml gin", /"1.500" can be read two ways/],
    ["1 oz gin + 1 tsp sugar", /second measure/],
    ["1 oz + 1 tsp sugar", /adds a second measure/],
    ["2 oz gin and 1 oz vodka", /second measure/],
    ["2 oz gin, 1 oz vodka", /second measure/],
    ["1 oz (60 ml) gin", /not the same amount/],
    ["1 dash each orange and lemon bitters", /"each" is of several items/],
    ["Garnish: mint sprig, grapefruit twist", /second item/],
    ["1 pineapple wedge and 1 cherry", /"and" joins two items/],
    ["Top ginger beer & soda", /"&" joins two items/],
    ["2 oz gin (chilled", /bracket is not closed/],
    ["Shake with ice and strain", /reads like an instruction/],
    ["Twist lemon peel over drink", /No amount|instruction/],
    ["Top with 8 oz hot water and stir gently", /"and stir gently" is not part/],
  ])("%s", (text, message) => {
    expect(only(text).error).toMatch(message);
  });
});

describe("a whole spec", () => {
  it("counts lines, and passes over blank lines and headings", () => {
    const text = "Ingredients:\r\n\r\n2 oz gin\n  \nGarnish\nlime wheel\n---\nFor the syrup:\n100 g sugar";
    expect(readSpecText(text).map(({ line, item }) => [line, item])).toEqual([
      [3, "gin"],
      [6, "lime wheel"],
      [9, "sugar"],
    ]);
  });

  it("is empty for empty text", () => {
    expect(readSpecText("")).toEqual([]);
    expect(readSpecText("\n\n")).toEqual([]);
  });
});

describe("among the items of a venue", () => {
  const items = [
    "Lime juice",
    "Dry gin",
    "Old Tom gin",
    "Gin",
    "Mint leaves",
    "Cucumber slice",
    "Lemon",
    "Lemon juice",
    "Crème de mûre",
    "Rye",
    "Bourbon",
    "Bitters, aromatic",
  ];

  it.each([
    ["3/4 oz lime juice", "Lime juice"],
    ["3/4 oz fresh lime juice", "Lime juice"],
    ["3/4 oz freshly squeezed lime juice", "Lime juice"],
    ["3/4 oz LIME  JUICE, fresh", "Lime juice"],
    ["2 oz dry gin", "Dry gin"],
    ["2 oz gin (Old Tom)", "Old Tom gin"],
    ["2 oz gin, chilled", "Gin"],
    ["8 mint leaves", "Mint leaves"],
    ["3 slices cucumber", "Cucumber slice"],
    ["Juice of 2 lemons", "Lemon"],
    // Half a lime is a fruit in hand, and no half of a juice.
    ["Juice of 1/2 lemon", "Lemon"],
    ["1/2 oz creme de mure", "Crème de mûre"],
  ])("%s is the item as it is spelled there: %s", (text, item) => {
    expect(only(text, items)).toMatchObject({ item, error: null });
  });

  it("both of an either-or are looked up", () => {
    expect(only("2 oz rye or bourbon", items)).toMatchObject({
      item: "Rye",
      orItems: ["Bourbon"],
      error: null,
    });
    expect(only("2 oz rye or brandy", items).error).toMatch(/No item "brandy"/);
  });

  it("a name nearly on the list is suggested and never taken", () => {
    expect(only("1 oz lime juce", items).error).toMatch(/No item "lime juce"\. Did you mean "Lime juice"/);
    expect(only("2 dashes aromatic bitters", items).error).toMatch(/Did you mean "Bitters, aromatic"/);
    expect(only("1 oz sloe gin", items).error).toMatch(/No item "sloe gin"/);
    expect(only("1 oz zebra milk", ["Gin"]).error).toMatch(/Add it to the items/);
  });
});
