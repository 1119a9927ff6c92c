import { describe, expect, it } from "vitest";
import { catalogueOf } from "#engine/catalogue.ts";
import { readModifiers } from "#engine/sales/modifiers.ts";
import type { Modifier } from "#engine/sales/ring.ts";
import { modifyLines } from "#engine/specs/serve.ts";
import { handBook } from "#tests/support/hand-bar.ts";

function aModifier(modifier: string, effect: Modifier["effect"], facts: Partial<Modifier> = {}): Modifier {
  return { modifier, effect, item: null, with: null, amount: null, unit: null, factor: null, ...facts };
}

const book = handBook();
book.modifiers.push(
  aModifier("Extra gin", "add", { item: "Gin", amount: 15, unit: "ml" }),
  aModifier("No syrup", "remove", { item: "Ginger syrup" }),
  aModifier("Strong", "times", { item: "Gin", factor: 1.5 }),
  aModifier("Rum float", "swap", { item: "Gin", with: "Rum", amount: 20, unit: "ml" }),
  aModifier("Party", "add", { item: "Soda", amount: 50, unit: "ml" }),
  aModifier("Party", "remove", { item: "Lime wheel" }),
  aModifier("Half / half", "none"),
);
const catalogue = catalogueOf(book);

const sour = [
  { item: "Gin", amount: 60, unit: "ml" as const },
  { item: "Lime juice", amount: 25, unit: "ml" as const },
  { item: "Ginger syrup", amount: 20, unit: "ml" as const },
  { item: "Lime wheel", amount: 1, unit: "each" as const },
];

function poured(cell: string) {
  const { effects } = readModifiers(catalogue, cell);
  const sums: Record<string, number> = {};
  for (const { line, factor } of modifyLines(sour, effects)) {
    sums[line.item] = (sums[line.item] ?? 0) + (line.amount ?? 0) * factor;
  }
  return sums;
}

describe("modifiers", () => {
  it.each([
    { cell: "", gives: { Gin: 60, "Lime juice": 25, "Ginger syrup": 20, "Lime wheel": 1 } },
    { cell: "double", gives: { Gin: 120, "Lime juice": 50, "Ginger syrup": 40, "Lime wheel": 2 } },
    { cell: "Strong", gives: { Gin: 90, "Lime juice": 25, "Ginger syrup": 20, "Lime wheel": 1 } },
    { cell: "With rum", gives: { Rum: 60, "Lime juice": 25, "Ginger syrup": 20, "Lime wheel": 1 } },
    { cell: "Rum float", gives: { Rum: 20, "Lime juice": 25, "Ginger syrup": 20, "Lime wheel": 1 } },
    { cell: "No syrup", gives: { Gin: 60, "Lime juice": 25, "Lime wheel": 1 } },
    { cell: "Party", gives: { Gin: 60, "Lime juice": 25, "Ginger syrup": 20, Soda: 50 } },
    // Times comes last, over added lines too, wherever it was rung.
    { cell: "Double; Extra gin", gives: { Gin: 150, "Lime juice": 50, "Ginger syrup": 40, "Lime wheel": 2 } },
    {
      cell: "With rum, Extra gin",
      gives: { Rum: 60, Gin: 15, "Lime juice": 25, "Ginger syrup": 20, "Lime wheel": 1 },
    },
    // Added first, swapped with the rest.
    {
      cell: "Extra gin | With rum",
      gives: { Rum: 75, "Lime juice": 25, "Ginger syrup": 20, "Lime wheel": 1 },
    },
    {
      cell: "Extra gin/Extra gin",
      gives: { Gin: 90, "Lime juice": 25, "Ginger syrup": 20, "Lime wheel": 1 },
    },
  ])("$cell pours $gives", ({ cell, gives }) => {
    expect(poured(cell)).toEqual(gives);
  });

  it.each([
    { cell: "No ice; DOUBLE\nExtra  Gin", known: 3, unknown: [] },
    { cell: "No ice, double", known: 2, unknown: [] },
    { cell: "No ice, sparkle", known: 0, unknown: ["No ice, sparkle"] },
    { cell: "No ice; sparkle", known: 1, unknown: ["sparkle"] },
    { cell: "half / half", known: 1, unknown: [] },
    { cell: " ; | ", known: 0, unknown: [] },
    { cell: "Party", known: 2, unknown: [] },
  ])("reads “$cell” as $known effects, unknown: $unknown", ({ cell, known, unknown }) => {
    const read = readModifiers(catalogue, cell);
    expect(read.effects).toHaveLength(known);
    expect(read.unknown).toEqual(unknown);
  });
});
