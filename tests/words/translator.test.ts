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
    expect(say("Contains: egg, milk, Oma's Mix. Weigh it again.")).toBe(
      "Enthält: Ei, Milch, Oma's Mix. Wiege es noch einmal.",
    );
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
      "lasts until {0} without it": "reicht ohne sie bis {0}",
      "{0} chance to run out": "{0} Risiko auszugehen",
      "up to the par set by hand": "bis zum Sollbestand",
      "{0} to {1}": "{0} bis {1}",
    });
    expect(why("lasts until Fri without it; 3 % chance to run out; up to the par set by hand")).toBe(
      "reicht ohne sie bis Fri; 3\u00a0% Risiko auszugehen; bis zum Sollbestand",
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

  describe("writes numbers and days as the language does", () => {
    const figures = translatorOf("de", {
      "Sales are in up to {0}.": "Verkäufe sind bis {0} da.",
      "The past is closed up to {0}, with the count {1}": "Bis {0} abgeschlossen, mit der Zählung {1}",
      "Use {0} of {1} by {2}.": "Verbrauche {0} {1} bis {2}.",
      "Takes {0} × {1} of {2} off {3}.": "Abzug von {0} × {1} {2} ({3}).",
      "invoice {0} from {1}": "Rechnung {0} von {1}",
      '"{0}" can be read two ways: write {1}, or more.':
        "„{0}“ lässt sich auf zwei Arten lesen: {1}, oder mehr.",
      '"{0} to {1}" is no range.': "„{0} bis {1}“ ist kein Bereich.",
      "{0} days are missing after {1}.": "Nach dem {1} {0, plural, one {fehlt # Tag} other {fehlen # Tage}}.",
      "It lies between {0} and {1}.": "Es liegt zwischen {0} und {1}.",
    });
    // The German forms are those of CLDR, as Intl has them: decimal comma, day before month.
    it.each([
      ["Sales are in up to 2026-11-25.", "Verkäufe sind bis 25.11.2026 da."],
      ["Use 1.5 l of Lime Juice by Fri 2026-12-04.", "Verbrauche 1,5\u00a0l Lime Juice bis Fr., 4.12.2026."],
      ["Use 40 % of Batch 7.5 by 2026-12-04 18:00.", "Verbrauche 40\u00a0% Batch 7.5 bis 4.12.2026, 18:00."],
      ["It lies between 1081.80 ml and 12000.", "Es liegt zwischen 1.081,80\u00a0ml und 12000."],
      ["It lies between 0.25 and -1.5 °C.", "Es liegt zwischen 0,25 und −1,5\u00a0°C."],
      [
        "1200 days are missing after 2026-11-20, 2026-11-22.",
        "Nach dem 20.11.2026, 22.11.2026 fehlen 1.200 Tage.",
      ],
    ])("%s", (english, german) => {
      expect(figures(english)).toBe(german);
    });

    it.each([
      [
        "the name of a count",
        "The past is closed up to 2026-11-22, with the count 2026-11-23",
        "Bis 22.11.2026 abgeschlossen, mit der Zählung 2026-11-23",
      ],
      [
        "the size of a pack and the number of an invoice",
        "Takes 2 × 1.75 l of Old Harbour Gin off invoice 12.5 from Harbour Wines.",
        "Abzug von 2 × 1.75 l Old Harbour Gin (Rechnung 12.5 von Harbour Wines).",
      ],
      [
        "what is quoted",
        '"1.500" can be read two ways: write 1500, or more.',
        "„1.500“ lässt sich auf zwei Arten lesen: 1500, oder mehr.",
      ],
      ["both of what is quoted", '"1.5 to 0.5" is no range.', "„1.5 bis 0.5“ ist kein Bereich."],
      ["a day that is none", "Sales are in up to 2026-13-45.", "Verkäufe sind bis 2026-13-45 da."],
    ])("but leaves %s", (_, english, german) => {
      expect(figures(english)).toBe(german);
    });
  });

  it("tells what a count found", () => {
    const found = translatorOf("de", {
      "{0}, dated {1}": "{0}, am {1}",
      "{0} in {1}: {2}": "{0} in {1}: {2}",
      "{0} and {1}": "{0} und {1}",
      "{0} full": "{0} volle",
      "open {0}": "offen {0}",
    });
    expect(
      found("Week 10: Dry Gin in Back bar: 3 full and open 0.7 (1 L), dated 2026-11-23 10:30", true),
    ).toBe("Week 10: Dry Gin in Back bar: 3 volle und offen 0,7 (1 L), am 23.11.2026, 10:30");
  });

  it("writes an amount before a name, and leaves the name", () => {
    const history = translatorOf(
      "de",
      { "spill, {0}": "verschüttet, {0}", "comp, {0}": "Freigetränk, {0}", "{0}, on {1}": "{0}, am {1}" },
      { serve: "{0, plural, one {# Portion} other {# Portionen}}", dash: "{0} Spritzer" },
    );
    expect(history("spill, 0.5 oz Old Harbour Gin, on 2026-11-23 10:30", true)).toBe(
      "verschüttet, 0,5\u00a0oz Old Harbour Gin, am 23.11.2026, 10:30",
    );
    expect(history("comp, 2 serve Gimlet, on 2026-11-23 10:30", true)).toBe(
      "Freigetränk, 2 Portionen Gimlet, am 23.11.2026, 10:30",
    );
    expect(history("spill, 1.5 dash Bitters No. 4.5, on 2026-11-23 10:30", true)).toBe(
      "verschüttet, 1,5 Spritzer Bitters No. 4.5, am 23.11.2026, 10:30",
    );
  });

  it("leaves the name of a pack whole, though it is of a number", () => {
    const packs = translatorOf("de", {
      "{0} of {1}": "{0} {1}",
      "{0} {1} from {2}": "{0} {1} von {2}",
      "Takes {0} × {1} of {2} off {3}.": "Abzug von {0} × {1} {2} ({3}).",
      "no pack {0} of {1}; it has {2}": "kein Gebinde {0} von {1}; es hat {2}",
      '"{0}"': "„{0}“",
      "of {0}": "von {0}",
      delivery: "Lieferung",
    });
    expect(packs("2 × box of 50 Lime from Harbour Wines (Q-130)", true)).toBe(
      "2 × box of 50 Lime von Harbour Wines (Q-130)",
    );
    expect(packs("delivery of 2 × box of 50 Lime from Harbour Wines", true)).toBe(
      "Lieferung von 2 × box of 50 Lime von Harbour Wines",
    );
    expect(packs("Takes 2 × box of 50 of Lime off Q-130.")).toBe("Abzug von 2 × box of 50 Lime (Q-130).");
    expect(packs('no pack "box of 5" of "Lime"; it has "box of 50"')).toBe(
      "kein Gebinde „box of 5“ von „Lime“; es hat „box of 50“",
    );
  });

  it("says what a spec names that the book does not have, with what it may have meant", () => {
    const missing = translatorOf("de", {
      'No item "{0}". {1}': "Kein Artikel „{0}“. {1}",
      "Did you mean {0}?": "Meinst du {0}?",
      "{0} or {1}": "{0} oder {1}",
      '"{0}"': "„{0}“",
    });
    expect(missing('No item "Limejuice". Did you mean "Lime Juice" or "Lime"?')).toBe(
      "Kein Artikel „Limejuice“. Meinst du „Lime Juice“ oder „Lime“?",
    );
  });

  it("tells the pieces of a thing and what was there before, of an act that was corrected", () => {
    const told = translatorOf("de", {
      "waste, {0}": "Abfall, {0}",
      "{0} (before: {1})": "{0} (vorher: {1})",
      "{0}, dated {1}": "{0}, am {1}",
    });
    expect(told("waste, 1.5 Lime (before: waste, 2 Lime), dated 2026-11-23 10:30", true)).toBe(
      "Abfall, 1,5 Lime (vorher: Abfall, 2 Lime), am 23.11.2026, 10:30",
    );
  });

  it("names a unit in quotation marks by its word, and a sheet's cell before what is wrong in it", () => {
    const units = translatorOf(
      "de",
      {
        "{0} is kept in {1}, which {2} does not lead to": "{0} wird in {1} geführt, wohin {2} nicht führt",
        '"{0}"': "„{0}“",
        each: "Stück",
      },
      { each: "{0} Stück" },
    );
    expect(units('losses, unit: "Lime" is kept in each, which "ml" does not lead to')).toBe(
      "losses, unit: „Lime“ wird in Stück geführt, wohin „ml“ nicht führt",
    );
    expect(units('"Dry Gin" is kept in ml, which "each" does not lead to')).toBe(
      "„Dry Gin“ wird in ml geführt, wohin „Stück“ nicht führt",
    );
  });

  it("knows a sentence whose last place is empty", () => {
    const ending = translatorOf("de", {
      'There is no {0} "{1}"{2}': "Das gibt es nicht: {0} „{1}“{2}",
      "; did you mean {0}?": "; meinst du {0}?",
      '"{0}"': "„{0}“",
      item: "Artikel",
    });
    expect(ending('There is no item "Limme"')).toBe("Das gibt es nicht: Artikel „Limme“");
    expect(ending('There is no item "Limme"; did you mean "Lime"?')).toBe(
      "Das gibt es nicht: Artikel „Limme“; meinst du „Lime“?",
    );
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
