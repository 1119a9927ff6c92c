import { describe, expect, it } from "vitest";
import { catalogueOf } from "#engine/catalogue.ts";
import { likelyMeanings } from "#engine/sales/likely-meaning.ts";
import { ringWords } from "#engine/sales/ring-words.ts";

import { handBook } from "#tests/support/hand-bar.ts";

const book = handBook();
const drink = book.drinks[0];
if (drink === undefined) throw new Error("The hand bar has a drink.");
const drinks = ["Lantern Daiquiri", "Lantern Dusk", "Negroni", "Elder Spritz", "Old Fashioned", "Élan Sour"];
const catalogue = catalogueOf({
  ...book,
  drinks: [...book.drinks, ...drinks.map((name) => ({ ...drink, name }))],
});

function best(ringName: string) {
  const [first] = likelyMeanings(catalogue, ringName);
  return first === undefined ? undefined : [first.name, first.score, first.serves, first.reason];
}

describe("a ring name nobody explained", () => {
  it.each([
    // ring name, most likely, score, serves, why
    ["ELAN  SOUR", "Élan Sour", 100, 1, "the same name, written otherwise"],
    ["OLD-FASHIONED", "Old Fashioned", 100, 1, "the same name, written otherwise"],
    ["Fashioned, Old", "Old Fashioned", 100, 1, "the same name, written otherwise"],
    ["HH Negroni", "Negroni", 98, 1, "the same name at another price"],
    ["12 Negroni Dbl", "Negroni", 96, 2, "the same name, 2 serves of it"],
    ["Negroni x3", "Negroni", 96, 3, "the same name, 3 serves of it"],
    ["Negronis", "Negroni", 96, 1, "one is the plural of the other"],
    ["Lantern Daiq", "Lantern Daiquiri", 92, 1, "its words are shortened"],
    ["Elder Sprits", "Elder Spritz", 90, 1, "a letter or two differ"],
    ["Elder Spritz Lg", "Elder Spritz", 79, null, "a size of it: say how many serves"],
  ])("%s is most likely %s, with a score and a reason", (rung, name, score, serves, reason) => {
    expect(best(rung)).toEqual([name, score, serves, reason]);
  });

  it("that could be two drinks is sure of neither", () => {
    const found = likelyMeanings(catalogue, "Lantern D");
    expect(
      found
        .map(({ name }) => name)
        .slice(0, 2)
        .sort(),
    ).toEqual(["Lantern Daiquiri", "Lantern Dusk"]);
    expect(found.every(({ score }) => score < 80)).toBe(true);
  });

  it("that is like nothing is left to the person", () => {
    expect(likelyMeanings(catalogue, "Kitchen: chips")).toEqual([]);
  });
});

it("takes off what a till adds to a name, but not a name that is nothing else", () => {
  expect(ringWords("12 HH Dbl. Élan-Sour")).toEqual({ words: ["elan", "sour"], isPriced: true, serves: 2 });
  expect(ringWords("Happy Hour")).toEqual({ words: ["happy", "hour"], isPriced: false, serves: 1 });
});
