import { readdirSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, it } from "vitest";
import { type Messages, readMessages } from "../../web/texts/compile.ts";
import { LANGUAGES } from "../../web/texts/language.ts";
import { placesOf } from "../support/message-places.ts";
import { readScreen, screenFiles } from "../support/screen-words.ts";

const english = readMessages("en");
const others = Object.keys(LANGUAGES).filter((language) => language !== "en");

/** Every message of a catalogue by its name. */
function byId(messages: Messages): Map<string, string> {
  const all = Object.entries(messages).map(([file, texts]) =>
    Object.entries(texts).map(([key, text]) => [`${file}.${key}`, text] as const),
  );
  return new Map(all.flat());
}

const ids = byId(english);
const screens = screenFiles().map((file) => ({ file, ...readScreen(file) }));

/** What stands in the sources of the screens and is the same in every language, or read by programs alone. */
const NO_TEXTS = [
  /^Ullage$|^CSV$|^(order|report) …$/,
  /^npm run|^--|\.(csv|json)$/,
  /^input, /,
  // Drawn parts by their export, keys of a keyboard, kinds of the server.
  /^(Find|Refused|Differences|Scan|Review|Enter|Undone|Minor|batched drink|weekend holiday)$/,
  /^(as the card says|in proportion)$/,
  // The card's and the syrup's text as the server writes and reads it.
  /^Allergens\.$|^… g … … ml …$/,
  /^(°Brix|% vol|ml)$/,
  // What the server writes, known by its beginning.
  /^Undone:$|^and read the file in again, adding its sums$/,
  // The invented bottles of the page of examples.
  /^(Dry gin|Strong gin|White rum|Aged rum|Rye|Bourbon)$/,
];

function isNoText(words: string): boolean {
  return NO_TEXTS.some((pattern) => pattern.test(words));
}

describe("the catalogue", () => {
  it("is a folder for each language that can be chosen", () => {
    const folders = readdirSync(join(import.meta.dirname, "../../web/texts"), { withFileTypes: true });
    const names = folders.filter((entry) => entry.isDirectory()).map(({ name }) => name);
    expect(names.sort()).toEqual(Object.keys(LANGUAGES).sort());
  });

  it.each(others)("has in %s the same texts with the same places", (language) => {
    const translated = byId(readMessages(language));
    expect([...translated.keys()].sort()).toEqual([...ids.keys()].sort());
    for (const [id, message] of translated) {
      expect(message.trim(), id).not.toBe("");
      expect([id, placesOf(message)]).toEqual([id, placesOf(ids.get(id) ?? "")]);
    }
  });
});

describe("the screens", () => {
  it("say only what the catalogue has, with all that its places need", () => {
    for (const { file, line, id, values } of screens.flatMap(({ said }) => said)) {
      const named = typeof id === "string" ? [id] : [...ids.keys()].filter((one) => id.test(one));
      expect(named.length, `${file}:${line} ${id}`).toBeGreaterThan(0);
      for (const one of named) {
        const message = ids.get(one);
        expect(message, `${file}:${line} ${one}`).toBeDefined();
        const places = placesOf(message ?? "");
        // Values put together elsewhere cannot be seen here.
        if (values !== null && typeof id === "string") {
          expect([file, line, one, [...values].sort()]).toEqual([file, line, one, places]);
        }
      }
    }
  });

  it("say nothing while their modules are read: the texts may not be there yet", () => {
    expect(screens.flatMap(({ said }) => said).filter(({ isAtTop }) => isAtTop)).toEqual([]);
  });

  it("say nothing that is not from the catalogue", () => {
    const loose = screens.flatMap((screen) => screen.loose).filter(({ words }) => !isNoText(words));
    expect(loose.map(({ file, line, words }) => `${file}:${line} ${words}`)).toEqual([]);
  });

  it("use every text of the catalogue", () => {
    const literals = new Set(screens.flatMap((screen) => [...screen.literals]));
    const patterns = screens
      .flatMap(({ said }) => said.map(({ id }) => id))
      .filter((id) => id instanceof RegExp);
    const unused = [...ids.keys()].filter((id) => !literals.has(id) && !patterns.some((one) => one.test(id)));
    expect(unused).toEqual([]);
  });
});
