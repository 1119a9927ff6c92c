import { describe, expect, it } from "vitest";
import { GERMAN } from "#engine/known-words/german.ts";
import { bookWord, type KnownKind, knownWord } from "#engine/known-words/known-words.ts";
import { USUAL_CATEGORIES } from "#engine/stock/category.ts";

const KINDS = Object.keys(GERMAN) as KnownKind[];

describe("a word of the book", () => {
  it("is said in the language, however it is written, and left in any other", () => {
    expect(knownWord("de", "allergen", " Egg")).toBe("Ei");
    expect(knownWord("de", "part", "flesh")).toBe("Fruchtfleisch");
    expect(knownWord("en", "allergen", "egg")).toBe("egg");
    expect(knownWord("de", "allergen", "constructor")).toBe("constructor");
    expect(knownWord("de", "allergen", "Oma's Mix")).toBe("Oma's Mix");
  });

  // Annex II of Regulation (EU) No 1169/2011, both language versions, by its numbers.
  it.each([
    ["cereals containing gluten", "glutenhaltiges Getreide"],
    ["crustaceans", "Krebstiere"],
    ["eggs", "Eier"],
    ["fish", "Fisch"],
    ["peanuts", "Erdnüsse"],
    ["soybeans", "Sojabohnen"],
    ["milk", "Milch"],
    ["nuts", "Schalenfrüchte"],
    ["celery", "Sellerie"],
    ["mustard", "Senf"],
    ["sesame seeds", "Sesamsamen"],
    ["sulphur dioxide and sulphites", "Schwefeldioxid und Sulfite"],
    ["lupin", "Lupinen"],
    ["molluscs", "Weichtiere"],
  ])("names the allergen %s", (english, german) => {
    expect(knownWord("de", "allergen", english)).toBe(german);
  });

  it("names every usual category", () => {
    expect(USUAL_CATEGORIES.filter((category) => knownWord("de", "category", category) === category)).toEqual(
      [],
    );
  });
});

describe("a typed word", () => {
  it("comes back to the book as it stood there, for every known word", () => {
    for (const kind of KINDS)
      for (const word of Object.keys(GERMAN[kind])) {
        expect(bookWord("de", kind, knownWord("de", kind, word), [word])).toBe(word);
        const meant = bookWord("de", kind, knownWord("de", kind, word));
        expect(knownWord("de", kind, meant)).toBe(knownWord("de", kind, word));
      }
  });

  it("is the English one where the book has none yet, and else as it was typed", () => {
    expect(bookWord("de", "allergen", " ei ")).toBe("egg");
    expect(bookWord("de", "allergen", "sulfite", ["sulfites"])).toBe("sulfites");
    expect(bookWord("de", "part", "Schale", ["peel"])).toBe("peel");
    expect(bookWord("de", "allergen", "milk")).toBe("milk");
    expect(bookWord("de", "allergen", " Oma's Mix ")).toBe("Oma's Mix");
    expect(bookWord("en", "allergen", "Ei")).toBe("Ei");
  });

  it("is the word that cautions look for, however it is usually said", () => {
    expect(bookWord("de", "allergen", "Nüsse")).toBe("nuts");
    expect(bookWord("de", "allergen", "Eigelb")).toBe("egg");
    expect(bookWord("de", "allergen", "Nüsse", ["tree nuts"])).toBe("nuts");
  });
});
