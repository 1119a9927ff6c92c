import { describe, expect, it } from "vitest";
import type { SpecTextLine } from "#engine/specs/text/entry.ts";
import { isGerman } from "#engine/specs/text/german/marks.ts";
import { readSpecText } from "#engine/specs/text/read.ts";
import { only } from "#tests/support/only-line.ts";

// How German bars write their recipes, and what each line means: common practice. Names are invented or of no brand.

type Row = [text: string, amount: number | null, unit: SpecTextLine["unit"], item: string, note?: string];

describe("a German line", () => {
  it.each<Row>([
    ["4 cl Gin", 4, "cl", "Gin"],
    ["1,5 cl Zitronensaft", 1.5, "cl", "Zitronensaft"],
    ["1 1/2 cl Zuckersirup", 1.5, "cl", "Zuckersirup"],
    ["2 Spritzer Bitter", 2, "dash", "Bitter"],
    ["Ein Spritzer Orangenbitter", 1, "dash", "Orangenbitter"],
    ["2 bis 3 Spritzer Bitter", 2.5, "dash", "Bitter", "2 bis 3"],
    ["2 Dashes Orangenbitter", 2, "dash", "Orangenbitter"],
    ["1 BL Zuckersirup", 1, "barspoon", "Zuckersirup"],
    ["1 Barlöffel Zuckersirup (2:1)", 1, "barspoon", "Zuckersirup", "2:1"],
    ["1 EL Honig", 1, "tbsp", "Honig"],
    ["1 gehäufter TL brauner Zucker", 1, "tsp", "brauner Zucker", "gehäufter"],
    ["20 Tropfen Salzlösung", 20, "drop", "Salzlösung"],
    ["1 Schuss Sahne", 1, "splash", "Sahne"],
    ["250 Gramm Zucker", 250, "g", "Zucker"],
    ["ca. 3 cl Rum nach Geschmack", 3, "cl", "Rum", "etwa, nach Geschmack"],
    ["2 cl Limettensaft frisch gepresst", 2, "cl", "Limettensaft", "frisch gepresst"],
    ["anderthalb cl Gin, trocken und kalt", 1.5, "cl", "Gin", "trocken und kalt"],
    ["3 Scheiben Gurke", 3, "each", "Gurkenscheibe"],
    ["3 dünne Scheiben Gurke (optional)", 3, "each", "Gurkenscheibe", "dünne, optional"],
    ["3 Gurkenscheiben", 3, "each", "Gurkenscheibe"],
    ["8 Blätter Minze", 8, "each", "Minzblatt"],
    ["8-10 Minzblätter", 9, "each", "Minzblatt", "8 bis 10"],
    ["1 Zweig Minze", 1, "each", "Minzzweig"],
    ["1 Würfel Zucker", 1, "each", "Zuckerwürfel"],
    ["1 Zitronenzeste", 1, "each", "Zitronenzeste"],
    ["Garnitur: Minzzweig", 1, "each", "Minzzweig", "Garnitur"],
    ["1 Orangenzeste zum Garnieren", 1, "each", "Orangenzeste", "zum Garnieren"],
    ["1/2 Limette", 0.5, "each", "Limette"],
    ["eine halbe Limette, in Spalten", 0.5, "each", "Limette", "in Spalten"],
    ["6 frische Himbeeren", 6, "each", "Himbeeren", "frische"],
    ["1 Eiweiß", 1, "each", "Eiweiß"],
    ["2 Stück Limetten", 2, "each", "Limetten"],
    ["Saft einer halben Zitrone", 0.5, "each", "Zitrone", "Saft von"],
    ["Saft von 2 Limetten", 2, "each", "Limetten", "Saft von"],
    ["mit Soda auffüllen", null, "top", "Soda"],
    ["Auffüllen mit Ginger Ale", null, "top", "Ginger Ale"],
    ["Soda (zum Auffüllen)", null, "top", "Soda"],
    ["mit Tonic Water auffüllen (ca. 10 cl)", null, "top", "Tonic Water", "ca. 10 cl"],
    ["mit 6 cl Soda auffüllen", 6, "cl", "Soda", "auffüllen"],
  ])("%s", (text, amount, unit, item, note) => {
    expect(only(text)).toEqual({ line: 1, amount, unit, item, orItems: [], note: note ?? null, error: null });
  });

  it.each<[string, string, string[]]>([
    ["4 cl Gin oder Wodka", "Gin", ["Wodka"]],
    ["4 cl Gin (oder Wodka)", "Gin", ["Wodka"]],
    ["4 cl weißer oder brauner Rum", "weißer Rum", ["brauner Rum"]],
    ["mit Soda oder Tonic auffüllen", "Soda", ["Tonic"]],
  ])("may name either of several items: %s", (text, item, orItems) => {
    expect(only(text)).toMatchObject({ item, orItems, note: null, error: null });
  });

  it.each<[string, RegExp]>([
    ["1 Prise Salz", /"Prise" is not a measure/],
    ["etwas Salz", /"etwas" is not a measure.*how many/],
    ["1 Tasse Kaffee", /"Tasse" is not a measure/],
    ["1 Handvoll Minze", /"Handvoll" is not a measure/],
    ["Minzzweige", /No amount is written/],
    ["1 El Nine Rum", /No unit/],
    ["1,500 ml Wasser und mehr", /can be read two ways/],
    ["4 cl Gin und 2 cl Wermut", /second measure/],
    ["2 cl Sirup und Saft", /"und" joins two items/],
    ["4 cl Gin mit Gurke", /"mit" joins two items/],
    ["Garnitur: 1 Limettenscheibe und 1 Kirsche", /"und" joins two items/],
    ["Saft und Schale einer Zitrone", /No amount/],
    ["mit Eis auffüllen", /does not fill a glass up/],
    ["Alles mit Eis shaken und abseihen", /reads like an instruction/],
    ["4 cl Gin in das Glas geben", /not understood/],
  ])("that cannot be read for certain is refused: %s", (text, message) => {
    expect(only(text).error).toMatch(message);
  });

  it("may be a heading, which gives no entry", () => {
    expect(readSpecText("Zutaten\n4 cl Gin\n\nGarnitur\nZitronenzeste").map(({ line }) => line)).toEqual([
      2, 5,
    ]);
  });
});

describe("among the items of a German bar", () => {
  const items = [
    "Gurkenscheibe",
    "Limette",
    "Limettensaft",
    "Minzblatt",
    "Weißer Rum",
    "Sodawasser",
    "Zitronensaft",
    "Gin mit Gurke",
    "Äpfel",
  ];

  it.each([
    ["3 Scheiben Gurke", "Gurkenscheibe"],
    ["10 Minzblätter", "Minzblatt"],
    ["2 Limetten", "Limette"],
    ["1/2 Apfel", "Äpfel"],
    ["2 cl frisch gepresster Zitronensaft", "Zitronensaft"],
    ["mit kaltem Sodawasser auffüllen", "Sodawasser"],
    ["mit weißem Rum auffüllen", "Weißer Rum"],
    ["4 cl Gin mit Gurke", "Gin mit Gurke"],
    // A fruit that is poured is its juice, as in English.
    ["2 cl Limette", "Limettensaft"],
    ["Saft von 1 Limette", "Limette"],
  ])("%s is %s", (text, item) => {
    expect(only(text, items)).toMatchObject({ item, error: null });
  });

  it("what is not on the list is suggested at most", () => {
    expect(only("2 cl Zitronensirup mit", items).error).not.toBeNull();
    expect(only("3 Scheiben Ingwer", items).error).toMatch(/No item "Ingwerscheibe"/);
    expect(only("2 cl Zitrone", ["Zitrone"]).error).toMatch(/No item "Zitronensaft"|"Zitrone" is a fruit/);
  });
});

describe("an English line is never taken for a German one", () => {
  it.each([
    "1 oz lime juice",
    "1 liter gin",
    "2 cl gin",
    "1 orange",
    "1 oz orange",
    "1 kilo sugar",
    "2 dashes bitters",
    "1 dose syrup",
    "Top with 4 oz wine spritzer",
    "2 oz El Nine rum",
    "1 ring pineapple",
    "1 oz crème de mandarine",
    "ca. 30 ml gin",
    "3 olives",
    "Nine Oaks Orange",
  ])("%s", (text) => {
    expect(isGerman(text)).toBe(false);
  });
});
