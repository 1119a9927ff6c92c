import { describe, expect, it } from "vitest";
import { ACTS } from "#server/words/german/acts.ts";
import { GERMAN } from "#server/words/german/german.ts";
import { WORDS } from "#server/words/german/words.ts";
import { placesOf } from "../support/message-places.ts";
import { serverSentences } from "../support/server-sentences.ts";

const said = serverSentences();

describe("what the server says", () => {
  it("is found in the sources", () => {
    expect(said.length).toBeGreaterThan(500);
  });

  it("has German for every sentence", () => {
    const missing = said.filter(({ sentence }) => !(sentence in GERMAN));
    expect(missing.map(({ file, line, sentence }) => `${file}:${line} ${sentence}`)).toEqual([]);
  });

  it("has no German for what nothing says any more", () => {
    const living = new Set(said.map(({ sentence }) => sentence));
    expect(
      Object.keys(GERMAN).filter(
        (sentence) => !living.has(sentence) && !(sentence in WORDS) && !(sentence in ACTS),
      ),
    ).toEqual([]);
  });

  it("fills the same places in German", () => {
    for (const [english, german] of Object.entries(GERMAN)) {
      expect(german.trim(), english).not.toBe("");
      expect([english, placesOf(german)]).toEqual([
        english,
        [...new Set(english.match(/\{\d+\}/g))].map((p) => p.slice(1, -1)).sort(),
      ]);
    }
  });
});
