import { expect, it } from "vitest";
import { readSpecText } from "#engine/specs/text/read.ts";
import { markedWord } from "../../web/specs/marked-word.ts";

const ITEMS = ["Lemon Juice", "Apple Brandy", "Soda Water"];

function marked(typed: string): string {
  const [line] = readSpecText(typed, { items: ITEMS });
  if (line === undefined) throw new Error(`"${typed}" gave no entry.`);
  return typed.slice(...markedWord(typed, line));
}

it.each([
  ["rinse absinthe", "rinse"],
  ["¾ oz lemmon juice", "lemmon juice"],
  ["2 oz apple brandy or bramble gin", "bramble gin"],
  ["1 oz apple brandy and soda water", "and"],
  ["a few drops of saline", "a few"],
  ["2 hods strawberries", "hods"],
  ["Soda Water", "Soda Water"],
])("in %s the word not understood is marked: %s", (typed, word) => {
  expect(marked(typed)).toBe(word);
});

it("is found in a German message, too", () => {
  const error = "Kein Artikel „lemmon juice“. Meintest du „Lemon Juice“?";
  expect("1/2 oz lemmon juice".slice(...markedWord("1/2 oz lemmon juice", { item: null, error }))).toBe(
    "lemmon juice",
  );
});

it("a line whose message quotes nothing of it is marked as a whole", () => {
  expect("  ½ foo ".slice(...markedWord("  ½ foo ", { item: null, error: "Begin with a number." }))).toBe(
    "½ foo",
  );
});
