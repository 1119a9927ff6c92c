import { describe, expect, it } from "vitest";
import { only } from "#tests/support/only-line.ts";

// The ways of writing are those of published recipe collections; labels are invented. What is meant is common practice.

describe("a second word for the form of one flavour", () => {
  it.each([
    ["½ oz allspice dram/liqueur", ["allspice dram/liqueur"]],
    ["1 oz apricot brandy/liqueur", ["apricot brandy/liqueur"]],
    ["1 oz agave nectar/syrup", ["agave nectar/syrup"]],
    ["1 oz passion fruit syrup/purée", ["passion fruit syrup/purée"]],
    ["1 oz pear brandy or liqueur", ["pear brandy", "pear liqueur"]],
    ["4 oz pineapple juice or nectar", ["pineapple juice", "pineapple nectar"]],
    ["4 oz ginger beer/ale", ["ginger beer", "ginger ale"]],
    ["1 oz coconut cream / milk", ["coconut cream", "coconut milk"]],
    ["30 ml dry cider or white wine vinegar", ["dry cider vinegar", "white wine vinegar"]],
    ["1 oz smoked or aged rum", ["smoked rum", "aged rum"]],
    ["Powdered / Granulated Sugar - 4 tbsp", ["Powdered Sugar", "Granulated Sugar"]],
  ])("%s", (text, names) => {
    const { item, orItems, error } = only(text);
    expect([item, ...orItems, error]).toEqual([...names, null]);
  });

  it.each([
    ["1 oz white rum/vodka", ["white rum", "vodka"]],
    ["1 oz vodka/rum", ["vodka", "rum"]],
    ["1 oz simple syrup or cordial", ["simple syrup", "cordial"]],
    ["1 oz heavy cream/milk", ["heavy cream", "milk"]],
    ["1 oz almond milk or cream", ["almond milk", "cream"]],
    ["1 oz cherry brandy or rum", ["cherry brandy", "rum"]],
    ["12-14 cl champagne, crémant or cava", ["champagne", "crémant", "cava"]],
  ])("is none where the second is a thing by itself: %s", (text, names) => {
    const { item, orItems, error } = only(text);
    expect([item, ...orItems, error]).toEqual([...names, null]);
  });

  it("is found on the list under either word", () => {
    const items = ["Allspice dram", "Peach liqueur"];
    expect(only("½ oz allspice dram/liqueur", items)).toMatchObject({ item: "Allspice dram", error: null });
    expect(only("½ oz allspice liqueur/dram", items)).toMatchObject({ item: "Allspice dram", error: null });
    expect(only("½ oz plum dram/liqueur", items).error).toMatch(/No item "plum dram\/liqueur"/);
  });
});

describe("a fruit measured by volume is its juice", () => {
  const items = ["Lime", "Lime juice", "Lemon", "Peach", "Raspberry", "Nine Oaks Orange"];

  it.each([
    ["0.75 oz fresh lime", "Lime juice"],
    ["22.5 ml Lime", "Lime juice"],
    ["Splash of lime", "Lime juice"],
    ["0.75 oz lime, fresh juice", "Lime juice"],
    ["1 lime", "Lime"],
    ["1 lime, juiced", "Lime"],
    ["60 g lime", "Lime"],
    ["1 oz Nine Oaks Orange", "Nine Oaks Orange"],
  ])("%s → %s", (text, item) => {
    expect(only(text, items)).toMatchObject({ item, error: null });
  });

  it("is asked for where the list has the fruit alone", () => {
    expect(only("1 oz lemon", items).error).toMatch(/"lemon" is a fruit.*"lemon juice"/);
    expect(only("0.75 oz lime or lemon", items).error).toMatch(/"lemon juice"/);
    expect(only("1 oz peach", items).error).toMatch(/its juice, a purée or a syrup/);
    expect(only("2 oz grapefruit", items).error).toMatch(/No item "grapefruit juice"/);
  });

  it("keeps its name where there is no list", () => {
    expect(only("0.75 oz fresh lime")).toMatchObject({ amount: 0.75, unit: "oz", item: "fresh lime" });
  });
});

describe("figures and stops that belong to a name, and that do not", () => {
  it.each([
    ["1 dash Ash Bros. Whiskey Barrel Bitters", 1, "dash", "Ash Bros. Whiskey Barrel Bitters"],
    ["2 oz Nine Oaks 5 Stars", 2, "oz", "Nine Oaks 5 Stars"],
    ["SODA WATER 800 – 1000 ML", 900, "ml", "SODA WATER"],
    ["Nine Oaks Rum 43 - 20 ml", 20, "ml", "Nine Oaks Rum 43"],
    ["Soda water to top (60ml)", 60, "ml", "Soda water"],
    ["1 quart ofJamaica rum", 4, "cup", "Jamaica rum"],
    ["1 lump of sugar", 1, "each", "sugar lump"],
    ["1 pine-apple, pared, and cut up", 1, "each", "pine-apple"],
    ["1 whole nutmeg, for grating", 1, "each", "whole nutmeg"],
    ["1 (0.13 oz) envelope cherry drink mix", 0.13, "oz", "cherry drink mix"],
    ["1 pkg. (3 oz) cherry gelatin", 3, "oz", "cherry gelatin"],
    ["Lemon – 4 nos", 4, "each", "Lemon"],
    ["Jaggery, powdered, 10-12 tbsp, or as per taste", 11, "tbsp", "Jaggery"],
  ] as const)("%s", (text, amount, unit, item) => {
    expect(only(text)).toMatchObject({ amount, unit, item, error: null });
  });

  it("a figure that could be of the label or of the range is refused", () => {
    expect(only("Nine Oaks 15 - 45 ml").error).toMatch(/can be read two ways/);
  });
});
