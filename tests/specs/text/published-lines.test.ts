import { describe, expect, it } from "vitest";
import type { SpecTextLine } from "#engine/specs/text/entry.ts";
import { readSpecText } from "#engine/specs/text/read.ts";

// The ways of writing are those of published recipe collections (books, magazines, bar blogs, data files); labels are
// invented. What each line means is common practice.

type Row = [
  text: string,
  amount: number | null,
  unit: SpecTextLine["unit"],
  item: string,
  note?: string | null,
];

function read(text: string): Omit<SpecTextLine, "line" | "orItems"> {
  const [line, ...more] = readSpecText(text);
  expect(more).toEqual([]);
  if (line === undefined) throw new Error(`"${text}" gave no entry.`);
  const { amount, unit, item, note, error } = line;
  return { amount, unit, item, note, error };
}

function table(rows: Row[]): void {
  it.each<Row>(rows)("%s", (text, amount, unit, item, note) => {
    const found = read(text);
    expect(found).toEqual({ amount, unit, item, note: note ?? null, error: null });
  });
}

describe("the item before its amount", () => {
  table([
    ["Gin = 50 ml", 50, "ml", "Gin"],
    ["Gin:- 60ml", 60, "ml", "Gin"],
    ["gin | 60 ml", 60, "ml", "gin"],
    ["| 60 ml | gin |", 60, "ml", "gin"],
    ["Gin … 2 oz", 2, "oz", "Gin"],
    ["2 | oz | gin | |", 2, "oz", "gin"],
    ["Honey (two teaspoons)", 2, "tsp", "Honey"],
    ["gin [45 ml]", 45, "ml", "gin"],
    ["Gin 60 ml (2 oz)", 60, "ml", "Gin", "2 oz"],
    ["Gin, 60 ml / 2 oz", 60, "ml", "Gin", "2 oz"],
    ["Gin: 45 ml to 60 ml", 52.5, "ml", "Gin", "45 to 60"],
    ["Gin 22,5 ml", 22.5, "ml", "Gin"],
    ["Nine Oaks Rum 43 20 ml", 20, "ml", "Nine Oaks Rum 43"],
    ["Fresh lime juice – 20ml (2/3 oz)", 20, "ml", "Fresh lime juice", "2/3 oz"],
    ["Lime juice, fresh, 20 ml", 20, "ml", "Lime juice", "fresh"],
    ["Lemon juice: 1/2 ounce per serve", 0.5, "oz", "Lemon juice", "per serve"],
    ["Sparkling wine (about 3 oz)", 3, "oz", "Sparkling wine", "about"],
    ["Soda water - 60ml, to top", 60, "ml", "Soda water", "top"],
    ["Aromatic bitters 2-3 dashes", 2.5, "dash", "Aromatic bitters", "2 to 3"],
    ["Aromatic bitters: dash", 1, "dash", "Aromatic bitters"],
    ["Soda water (splash)", 1, "splash", "Soda water"],
    ["Egg white: 1", 1, "each", "Egg white"],
    ["Egg white x 1", 1, "each", "Egg white"],
    ["Mint leaves (8)", 8, "each", "Mint leaf"],
    ["Mint leaves: 8-10", 9, "each", "Mint leaf", "8 to 10"],
    ["Mint: 8 leaves", 8, "each", "Mint leaf"],
    ["Lime - 1 wedge", 1, "each", "Lime wedge"],
    ["lemon wedges 2 (to squeeze)", 2, "each", "lemon wedge", "to squeeze"],
    ["Lemon, half", 0.5, "each", "Lemon"],
    ["Lime, juice of 1/2", 0.5, "each", "Lime", "juice of"],
    ["Spirit X 2 oz", 2, "oz", "Spirit X"],
  ]);
});

describe("amounts in figures and words", () => {
  table([
    ["one (1) ounce gin", 1, "oz", "gin"],
    ["One and one-half ounces gin", 1.5, "oz", "gin"],
    ["one and three quarters ounces gin", 1.75, "oz", "gin"],
    ["two-thirds ounce lime juice", 2 / 3, "oz", "lime juice"],
    ["one third of an ounce lime juice", 1 / 3, "oz", "lime juice"],
    ["45 ml - 60 ml gin", 52.5, "ml", "gin", "45 to 60"],
    ["20ml-30ml lime juice", 25, "ml", "lime juice", "20 to 30"],
    ["1/2 oz to 3/4 oz syrup", 0.625, "oz", "syrup", "0.5 to 0.75"],
    ["couple dashes bitters", 2, "dash", "bitters"],
    ["2 x dashes bitters", 2, "dash", "bitters"],
    ["8× mint leaves", 8, "each", "mint leaf"],
    ["1x egg white", 1, "each", "egg white"],
    ["10ish mint leaves", 10, "each", "mint leaf"],
    ["exactly 1 tablespoonful dry sherry", 1, "tbsp", "dry sherry"],
    ["just under 1 oz gin", 1, "oz", "gin", "just under"],
    ["2 tsp or so lime juice", 2, "tsp", "lime juice", "or so"],
    ["4 teaspoonsful sugar", 4, "tsp", "sugar"],
    ["1 bar sp. syrup", 1, "barspoon", "syrup"],
    ["3 dashs orange bitters", 3, "dash", "orange bitters"],
    ["2 tspn sugar", 2, "tsp", "sugar"],
    ["1 qt water", 4, "cup", "water", "1 qt"],
    ["2 tbsp/30ml/1fl oz lime juice", 2, "tbsp", "lime juice", "30ml, 1fl oz"],
    ["4 cl de vodka", 4, "cl", "vodka"],
  ]);
});

describe("a container whose size is written", () => {
  table([
    ["1 shot/30ml gin", 30, "ml", "gin", "1 shot"],
    ["1 x 340 g jar of runny honey", 340, "g", "runny honey", "1 jar"],
    ["330 ml can ginger beer", 330, "ml", "ginger beer", "can"],
    ["750-milliliter bottle dark rum", 750, "ml", "dark rum", "bottle"],
    ["1 (1.5 fluid ounce) jigger gin", 1.5, "oz", "gin", "1 jigger"],
    ["2 46-ounce cans tomato juice", 92, "oz", "tomato juice", "2 cans"],
  ]);
});

describe("pieces", () => {
  table([
    ["1 spg Mint", 1, "each", "Mint sprig"],
    ["8 lf Mint", 8, "each", "Mint leaf"],
    ["1 twst Orange peel", 1, "each", "Orange peel twist"],
    ["Three pieces of fresh pineapple", 3, "piece", "fresh pineapple"],
    ["White of an egg", 1, "each", "egg white"],
    ["The yolks of 2 eggs", 2, "each", "egg yolk"],
    ["juice ½ lime", 0.5, "each", "lime", "juice of"],
    ["zest and juice of 1 lime", 1, "each", "lime", "zest and juice of"],
    ["flesh of 1 mango", 1, "each", "mango", "flesh of"],
    ["1/2 lime squeezed", 0.5, "each", "lime", "squeezed"],
    ["1 sugar cube soaked in bitters", 1, "each", "sugar cube", "soaked in bitters"],
    ['3 (2"-long) strips lemon zest', 3, "each", "lemon zest strip", '2"-long'],
    ["2-3 thin jalapeño slices, seeds removed", 2.5, "each", "jalapeño slice", "2 to 3, thin, seeds removed"],
    ["Optional jalapeño slice", 1, "each", "jalapeño slice", "optional"],
    ["Lemon wedge: For garnish", 1, "each", "Lemon wedge", "For garnish"],
    ["1 cinnamon stick, snapped in half", 1, "each", "cinnamon stick", "snapped in half"],
    ["8 thinly sliced circles of cucumber", 8, "each", "cucumber circle", "thinly sliced"],
    ["1 vanilla pod, seeds scraped", 1, "each", "vanilla pod", "seeds scraped"],
    [
      "Juice of 1 lime, plus a lime wedge for serving",
      1,
      "each",
      "lime",
      "juice of, plus a lime wedge for serving",
    ],
    ["1 tea bag", 1, "each", "tea bag"],
  ]);

  it("the second of two cuts is of the same fruit", () => {
    const [line] = readSpecText("1 lemon twist or wedge, for garnish");
    expect(line).toMatchObject({ amount: 1, item: "lemon twist", orItems: ["lemon wedge"], error: null });
  });
});

describe("remarks behind the name", () => {
  table([
    ["45ml rum. Any light one will do", 45, "ml", "rum", "Any light one will do"],
    ["1 oz St. Alban pear liqueur", 1, "oz", "St. Alban pear liqueur"],
    ["2 ounces vodka: use a good one", 2, "oz", "vodka", "use a good one"],
    ["1 cup lemon juice strained", 1, "cup", "lemon juice", "strained"],
    ["15 ml sugar syrup- recipe below", 15, "ml", "sugar syrup", "recipe below"],
    ["1 oz bourbon of your choosing", 1, "oz", "bourbon", "of your choosing"],
    ["Lemon peel to twist", 1, "each", "Lemon peel", "to twist"],
    ["6 oz good tequila: rested or silver, or both", 6, "oz", "good tequila", "rested or silver, or both"],
    ["1 cup water for the syrup", 1, "cup", "water", "for the syrup"],
    ["1.5oz Pear/Ginger infused vodka", 1.5, "oz", "Pear/Ginger infused vodka"],
    ["30 ml ginger and lime syrup", 30, "ml", "ginger and lime syrup"],
    ["2 oz Oak & Ash Jamaican rum", 2, "oz", "Oak & Ash Jamaican rum"],
  ]);

  it("either of two, however the or is written", () => {
    const orItems = (text: string) =>
      readSpecText(text).map(({ item, orItems: others }) => [item, ...others]);
    expect(orItems("1.5 oz Dark -or- Light Rum")).toEqual([["Dark Rum", "Light Rum"]]);
    expect(orItems("120ml Ginger Beer/ Ale")).toEqual([["Ginger Beer", "Ginger Ale"]]);
    expect(orItems("1 oz gin, bourbon or vodka")).toEqual([["gin", "bourbon", "vodka"]]);
    expect(orItems("1 cup crushed or pebble ice")).toEqual([["crushed ice", "pebble ice"]]);
    expect(orItems("0.5 oz cream or half-and-half")).toEqual([["cream", "half-and-half"]]);
  });
});

describe("what fills the glass up", () => {
  table([
    ["Fill to the top with cola", null, "top", "cola"],
    ["Top it up with soda", null, "top", "soda"],
    ["Complete with soda water", null, "top", "soda water"],
    ["top w/club soda", null, "top", "club soda"],
    ["Enough soda water to fill the glass", null, "top", "soda water"],
  ]);
});

describe("marks around a line", () => {
  table([
    ["☐ 60 ml gin", 60, "ml", "gin"],
    ["🍸 60 ml gin", 60, "ml", "gin"],
    ['"60 ml gin",', 60, "ml", "gin"],
    ["'60 ml gin'", 60, "ml", "gin"],
    ["[1/8 oz demerara syrup]", 0.125, "oz", "demerara syrup"],
    ["2\u00a0–\u00a03 dashes bitters", 2.5, "dash", "bitters", "2 to 3"],
    ["1\u202f¾ oz gin", 1.75, "oz", "gin"],
  ]);
});

describe("refused rather than guessed", () => {
  it.each<[string, RegExp]>([
    ["1 dash salt and pepper", /"and" joins two items/],
    ["2 dashes aromatic and orange bitters", /"and" joins two items/],
    ["1 oz lemon juice and syrup", /"and" joins two items/],
    ["2 punnets strawberries", /"punnets" is not a measure/],
    ["2 hods strawberries", /"hods" .* is not understood/],
    ["1/2 yolk of 1 egg", /is not understood/],
    [".75 lemon", /No unit is written/],
    ["1.25in cubes", /"in" is not a measure/],
    ["lime wheel, 1 sprig mint", /second measure/],
    ["orange twist, sugar rim", /second item/],
    ["2 tsp sugar•mint leaves", /more than one entry/],
    ["1 (12 ounce) can or bottle beer", /does not begin with an item's name/],
    ["1.5 oz gin and .75 oz vermouth", /second measure/],
    ["2 oz gin .5 oz lemon juice", /second measure/],
    ["2 oz gin 3 mint leaves", /second item/],
    ["Gin 1 oz, vermouth 1 oz", /second/],
    ["Soda - 2 oz, lime - 1 oz", /second/],
    ["Glass: 12 oz", /about the drink/],
    ["Prep time: 5 minutes", /about the drink/],
    ["1 litre pitcher", /vessel or a tool/],
    ["a few drops of saline", /"a few" .* how many/],
    ["a tot of rum", /"tot" is not a measure/],
  ])("%s", (text, message) => {
    expect(read(text).error).toMatch(message);
  });
});

describe("two measures of one thing", () => {
  table([
    // Of one system they add up; an ounce and a teaspoon are not of one everywhere.
    ["1/2 cup plus 1 Tbsp. lemon juice", 0.5625, "cup", "lemon juice", "0.5 cup plus 1 Tbsp"],
    [
      "1 tablespoon plus 1 1/2 teaspoons maple syrup",
      1.5,
      "tbsp",
      "maple syrup",
      "1 tbsp plus 1 1/2 teaspoons",
    ],
    ["4 cl + 5 ml gin", 4.5, "cl", "gin", "4 cl plus 5 ml"],
    // What stands behind "or" with a measure of its own is a remark.
    ["15 whole cloves or 1/2 teaspoon ground", 15, "each", "whole clove", "or 1/2 teaspoon ground"],
    ["10 liters ginger ale or 10 liters lemonade", 10, "l", "ginger ale", "or 10 liters lemonade"],
    ["1 1/4 cups or 10 ounces of brandy", 1.25, "cup", "brandy", "10 ounces"],
  ]);
});

describe("spellings that are rare", () => {
  table([
    ["1 barspn cherry liqueur", 1, "barspoon", "cherry liqueur"],
    ["1 tea-spoon sugar", 1, "tsp", "sugar"],
    ["1 table-spoon powdered sugar", 1, "tbsp", "powdered sugar"],
    ["60 m.l. gin", 60, "ml", "gin"],
    ["12 ounces tomato juice ((or use another))", 12, "oz", "tomato juice", "or use another"],
    ["1 egg whites", 1, "each", "egg whites"],
    ["1 (1-inch) piece ginger, peeled", 1, "piece", "ginger", "1-inch, peeled"],
    ["3 slices jalapeño slices", 3, "each", "jalapeño slice"],
    ["Garnish: cocktail umbrella", 1, "each", "cocktail umbrella", "garnish"],
    ["lemon peel from 1 lemon", 1, "each", "lemon", "lemon peel of"],
    [
      "Syrup (1:1 sugar/water): 45 ml (3 tbsp) - adjust to taste",
      45,
      "ml",
      "Syrup",
      "3 tbsp, 1:1 sugar/water, adjust to taste",
    ],
  ]);
});

describe("what a person adds behind the name", () => {
  table([
    ["¾ ounce basil syrup recipe follows", 0.75, "oz", "basil syrup", "recipe follows"],
    ["6 oz light beer like a lager or a pilsner", 6, "oz", "light beer", "like a lager or a pilsner"],
    ["1.5 oz cordial instead of juice and syrup", 1.5, "oz", "cordial", "instead of juice and syrup"],
    ["¼ lemon cut into 3 or 4 pieces", 0.25, "each", "lemon", "cut into 3 or 4 pieces"],
    ["20 cloves crushed in half", 20, "each", "cloves", "crushed in half"],
    ["2-3 cups of strawberries fresh or frozen", 2.5, "cup", "strawberries", "2 to 3, fresh or frozen"],
    ["120ml vodka + extra, to float", 120, "ml", "vodka", "plus extra, to float"],
    ["750ml of your favourite rosé", 750, "ml", "rosé"],
    ["1 3/4 ounces gin, Nine Oaks or Paper Boat", 1.75, "oz", "gin", "Nine Oaks or Paper Boat"],
    ["Sparkling wine, to top – any dry one", null, "top", "Sparkling wine", "any dry one"],
    ["10 cl tonic water (or to fill)", 10, "cl", "tonic water", "or to fill"],
    ["1 oz float of dark rum", 1, "oz", "dark rum", "float"],
    ["3 strawberries, sliced, or more to taste", 3, "each", "strawberries", "sliced, or more to taste"],
    ["4 eggs separated", 4, "each", "eggs", "separated"],
    ["Lemon juice: 1 oz (30 ml) freshly squeezed", 1, "oz", "Lemon juice", "30 ml, freshly squeezed"],
    ["Sugar about 2 tsp", 2, "tsp", "Sugar", "about"],
    ["One peeled and sliced orange", 1, "each", "peeled and sliced orange"],
    ["2 oz soda water/tonic or other light soda", 2, "oz", "soda water", "or other light soda"],
  ]);
});

describe("a description lends itself the name that it stands before", () => {
  it.each([
    ["2 brandied or candied cherries", ["brandied cherries", "candied cherries"]],
    ["3/4 cup blanched or slivered almonds", ["blanched almonds", "slivered almonds"]],
    ["1 cup fresh or frozen cranberries", ["fresh cranberries", "frozen cranberries"]],
    // A fruit is a thing of its own: there is no cherry water.
    ["1 oz lemon or soda water", ["lemon", "soda water"]],
    ["1 oz gin (or vodka if you prefer!)", ["gin", "vodka"]],
    // A single letter on either side of a stroke is part of a name.
    ["1 oz Paper Boat V/X rum", ["Paper Boat V/X rum"]],
    ["1 cup whipped topping or cream", ["whipped topping", "cream"]],
    ["One cucumber, cut into strips (or sliced)", ["cucumber"]],
  ])("%s", (text, names) => {
    const [line] = readSpecText(text);
    expect(line?.error).toBeNull();
    expect([line?.item, ...(line?.orItems ?? [])]).toEqual(names);
  });
});

describe("a word that nothing explains is refused, not taken into the name", () => {
  it.each<[string, RegExp]>([
    // A lost point would be ten times too much.
    ["—. 5 oz. tequila", /measure/],
    // "Gr" is grams, or the first of a name.
    [".25 Gr Herb liqueur", /can be read two ways/],
    [".75 oz5 ripe cherries", /is not understood/],
    ["1 piecesugar cube", /is not understood/],
    ["3 tall shots of espresso", /is not understood/],
    ["Top with a dollop of whipped cream", /"dollop" is not a measure/],
    ["4 oz glass wine", /"glass" is not a measure/],
    ["2 - 6 oz cans pineapple juice", /"cans" is not a measure/],
    ["2 oz gin that you have at home", /"that" in .* is not understood/],
    ["Celery stalk, olives, pickles, and other garnishes", /names more items/],
    ["Cola, Lemonade or soda, chilled, to top", /lists several items/],
    ["Soda water to fill up to 400 ml", /./],
    ["Spiced black tea 1 clove", /./],
    ["ice ring", /No amount/],
    ["Sufficient sugar to taste – start with about ½ cup", /No amount/],
    ["1 oz (30 ml) freshly", /"freshly" .* is not understood/],
  ])("%s", (text, message) => {
    expect(read(text).error).toMatch(message);
  });
});

describe("several of one measure, and measures written behind the name", () => {
  table([
    ["2 x 25 ml gin", 50, "ml", "gin", "2 x 25 ml"],
    ["1 bottle sparkling wine (750 ml)", 750, "ml", "sparkling wine", "1 bottle"],
    ["2 bottles (each 750 ml) red wine", 1500, "ml", "red wine", "2 bottles"],
    ["5 parts (5cl) gin", 5, "cl", "gin", "5 parts"],
    // A cup of berries in ounces is a weight: the two are not compared.
    ["1 cup (5 ounces) strawberries", 1, "cup", "strawberries", "5 ounces"],
    ["1 ts sugar", 1, "tsp", "sugar"],
    ["1 kilogram sugar", 1, "kg", "sugar"],
    ["An optional teaspoon of sugar", 1, "tsp", "sugar", "optional"],
    ["1 cup white, granulated sugar", 1, "cup", "white granulated sugar"],
    ["1 oz coffee - I like a dark roast", 1, "oz", "coffee", "I like a dark roast"],
  ]);
});

describe("pieces, with what is cut and where they come from", () => {
  table([
    ["zest of a whole lemon", 1, "each", "lemon", "zest of"],
    ["2 sprigs of mint leaves", 2, "each", "mint sprig"],
    ["7. Sprig of mint", 1, "each", "mint sprig"],
    ["1) Egg white", 1, "each", "Egg white"],
    ["2 limes sliced thinly", 2, "each", "limes", "sliced thinly"],
    ["2 oz gin from the freezer", 2, "oz", "gin", "from the freezer"],
    ["1 cup of olives in brine", 1, "cup", "olives", "in brine"],
  ]);
});

describe("alternatives that share a word", () => {
  it.each([
    ["30 ml lemon juice (or lime)", ["lemon juice", "lime juice"]],
    ["2 oz bourbon (or rye or whiskey)", ["bourbon", "rye", "whiskey"]],
    ["1 oz nectarine or peach juice", ["nectarine juice", "peach juice"]],
    ["1 sprig of mint or basil", ["mint sprig", "basil sprig"]],
    ["2 oz pot still or blended whiskey", ["pot still whiskey", "blended whiskey"]],
    ["15 ml saline solution or salt water", ["saline solution", "salt water"]],
    ["3 cups oat or soy milk", ["oat milk", "soy milk"]],
    ["4 cups boiling or hot water", ["boiling water", "hot water"]],
    ["1 oz honey, warmed, or maple syrup", ["honey", "maple syrup"]],
  ])("%s", (text, names) => {
    const [line] = readSpecText(text);
    expect(line?.error).toBeNull();
    expect([line?.item, ...(line?.orItems ?? [])]).toEqual(names);
  });
});

describe("what would be read by guess is refused", () => {
  it.each<[string, RegExp]>([
    ["3 kpl limes", /"kpl" .* is not understood/],
    ["45 ml Tequila Silver / Gold", /how a thing is/],
    ["60 ml gin | 20 ml vermouth", /second measure/],
    ["1 oz lemon juice, plus juice of 1 lime", /second item/],
    ["1 cup dark sauce (plus 1 tsp syrup)", /second measure/],
    ["1 oz use your best gin", /"use" .* is not understood/],
    ["1 oz the gin", /"the" .* is not understood/],
    ["1 jar", /"jar" is not a measure/],
  ])("%s", (text, message) => {
    expect(read(text).error).toMatch(message);
  });

  it("a heading that names the number of guests is no line", () => {
    expect(readSpecText("For the punch (serves 8):")).toEqual([]);
  });
});
