import { describe, expect, it } from "vitest";
import { placesIn, sentenceOf } from "#server/words/sentence.ts";
import { translatorOf } from "#server/words/translator.ts";

describe("placesIn", () => {
  it("finds what stands in the places of a sentence", () => {
    expect(
      placesIn(sentenceOf("Count {0} again in {1}."), "Count Old Harbour Gin again in the cellar."),
    ).toEqual(["Old Harbour Gin", "the cellar"]);
    expect(placesIn(sentenceOf("Nothing to make."), "Nothing to make.")).toEqual([]);
  });

  it.each([
    ["another sentence", "Count Old Harbour Gin once."],
    ["an empty place", "Count  again in the cellar."],
    ["one that does not end as it does", "Count Old Harbour Gin again in the cellar"],
  ])("takes %s for none", (_, text) => {
    expect(placesIn(sentenceOf("Count {0} again in {1}."), text)).toBeNull();
  });
});

describe("translatorOf", () => {
  const say = translatorOf("de", {
    "Compare {0} with its delivery note: {1} of {2} may be missing.":
      "Vergleiche {0} mit dem Lieferschein: {1} {2} fehlen vielleicht.",
    "invoice {0} from {1}": "Rechnung {0} von {1}",
    "{0} days are missing after {1}.": "Nach dem {1} {0, plural, one {fehlt # Tag} other {fehlen # Tage}}.",
    "the cell is empty": "die Zelle ist leer",
    "row {0}": "Zeile {0}",
    "Weigh it again.": "Wiege es noch einmal.",
    "still wine": "Stillwein",
    "Contains: {0}.": "Enthält: {0}.",
  });

  it("says what a thing contains, whatever follows", () => {
    expect(say("Contains: egg, milk. Weigh it again.")).toBe("Enthält: egg, milk. Wiege es noch einmal.");
  });

  it("says a sentence in the other language's own order and number", () => {
    expect(say("3 days are missing after 20 Nov.")).toBe("Nach dem 20 Nov fehlen 3 Tage.");
    expect(say("1 days are missing after 20 Nov.")).toBe("Nach dem 20 Nov fehlt 1 Tag.");
  });

  it("translates what stands in a place, but no name", () => {
    expect(
      say(
        "Compare invoice 4711 from Harbour Wines with its delivery note: 2 of Old Harbour Gin may be missing.",
      ),
    ).toBe(
      "Vergleiche Rechnung 4711 von Harbour Wines mit dem Lieferschein: 2 Old Harbour Gin fehlen vielleicht.",
    );
  });

  it("translates sentence by sentence, and what is said of something", () => {
    expect(say("Weigh it again. 2 days are missing after 20 Nov.")).toBe(
      "Wiege es noch einmal. Nach dem 20 Nov fehlen 2 Tage.",
    );
    expect(say("counts.csv: row 3: the cell is empty")).toBe("counts.csv: Zeile 3: die Zelle ist leer");
  });

  it("translates clause by clause, wherever clauses are joined", () => {
    const why = translatorOf("de", {
      "lasts until {0} without it; {1}": "reicht ohne sie bis {0}; {1}",
      "{0} chance to run out": "{0} Risiko auszugehen",
      "up to the par set by hand": "bis zum Sollbestand",
      "{0} to {1}": "{0} bis {1}",
    });
    expect(why("lasts until Fri without it; 3 % chance to run out; up to the par set by hand")).toBe(
      "reicht ohne sie bis Fri; 3 % Risiko auszugehen; bis zum Sollbestand",
    );
  });

  it("leaves a name whole that looks like words joined", () => {
    const joining = translatorOf("de", {
      "Enters {0} as broken.": "Trägt {0} als zerbrochen ein.",
      "{0} of {1}": "{0} {1}",
    });
    expect(joining("Enters Cream of Coconut as broken.")).toBe("Trägt Cream of Coconut als zerbrochen ein.");
    expect(joining("Enters 2 of Old Harbour Gin as broken.")).toBe(
      "Trägt 2 Old Harbour Gin als zerbrochen ein.",
    );
  });

  it("leaves what stands in quotation marks as somebody wrote it", () => {
    const quoting = translatorOf("de", {
      'No item "{0}" of {1}.': "Kein Artikel „{0}“ von {1}.",
      yesterday: "gestern",
    });
    expect(quoting('No item "yesterday" of yesterday.')).toBe("Kein Artikel „yesterday“ von gestern.");
  });

  it("takes a full stop in a name for no end of a sentence", () => {
    expect(say("2 days are missing after St. Nobody.")).toBe("Nach dem St. Nobody fehlen 2 Tage.");
  });

  it("leaves names, notes and kinds as they are", () => {
    for (const text of ["Old Harbour Gin", "shake with ice: strain", "still wine", "2026-11-20 10:30", ""]) {
      expect(say(text)).toBe(text);
    }
  });
});
