import "../support/english.ts";
import { describe, expect, it } from "vitest";
import type { CountRow } from "#engine/stock/movement.ts";
import { choiceRows } from "../../web/count/choice-rows.ts";
import { namesIn, onlyChosen } from "../../web/count/chosen.ts";
import { differencesIn } from "../../web/count/differences.ts";
import { asBarcode, placesOf } from "../../web/count/find-item.ts";
import { leftAtPace, secondsPerItem } from "../../web/count/pace.ts";
import { paperFound, paperLines } from "../../web/count/paper.ts";
import type { Sheet, SheetItem } from "../../web/count/sheet.ts";
import { moved } from "../../web/count/shelf.ts";

function anItem(item: string, gtin = ""): SheetItem {
  return {
    item,
    base: "ml",
    category: "spirit",
    packs: [{ pack: "700 ml", size: 700, emptyG: null, fullG: null, gtin }],
    densityGPerMl: null,
    pieceG: null,
    areas: 1,
    lastCount: null,
    expectedQty: null,
    expectedSd: null,
  };
}

// GS1's own example of a GTIN-13 with its check digit: 6291041500213.
const sheet: Sheet = {
  at: null,
  areas: [
    { area: "Bar", items: [anItem("Gin", "6291041500213"), anItem("Bitters, orange")] },
    { area: "Cellar", items: [anItem("Gin", "6291041500213"), anItem("Rum")] },
  ],
};

function aRow(facts: Partial<CountRow>): CountRow {
  return {
    count: "Week",
    at: "2026-03-09T10:00:00Z",
    area: "Bar",
    item: "Gin",
    pack: "700 ml",
    full: 1,
    parts: [],
    grossG: [],
    amount: null,
    unit: null,
    by: "AB",
    ...facts,
  };
}

describe("a short list", () => {
  it.each([
    ["Gin,Rum", ["Gin", "Rum"]],
    ["Bitters, orange,Gin", ["Bitters, orange", "Gin"]],
    ["Ghost,Gin", ["Ghost", "Gin"]],
  ])("reads %s with the names of the sheet", (text, names) => {
    expect(namesIn(text, new Set(["Gin", "Rum", "Bitters, orange"]))).toEqual(names);
  });

  it("shows a chosen item in every area where it stands, and no area without one", () => {
    expect(onlyChosen(sheet, "Rum").areas.map(({ area }) => area)).toEqual(["Cellar"]);
    expect(onlyChosen(sheet, "Gin").areas.map(({ area }) => area)).toEqual(["Bar", "Cellar"]);
  });
});

describe("finding", () => {
  it.each([
    ["6291041500213", "06291041500213"],
    ["629 1041-500213", "06291041500213"],
    ["6291041500214", "wrong"],
    ["gin", undefined],
    ["700", undefined],
  ])("takes %s as barcode %s", (typed, read) => {
    expect(asBarcode(typed)).toBe(read);
  });

  it("finds by barcode and by part of a name, this area first", () => {
    const places = (typed: string) => placesOf(sheet, typed, "Cellar").map(({ area }) => area);
    expect(places("6291041500213")).toEqual(["Cellar", "Bar"]);
    expect(places("gi")).toEqual(["Cellar", "Bar"]);
    expect(places("nothing")).toEqual([]);
  });
});

describe("the pace", () => {
  const at = (second: number) => ({ at: new Date(second * 1000).toISOString(), by: "AB" });
  it("is the mean of the last entries of one person, without pauses", () => {
    expect(secondsPerItem([at(0), at(5), at(10), at(900), at(905)], "AB")).toBe(5);
    expect(secondsPerItem([at(0), at(5)], "AB")).toBeNull();
    expect(secondsPerItem([at(0), at(5), at(10)], "CD")).toBeNull();
  });
  it("tells what is left in minutes", () => {
    expect(leftAtPace(60, 5)).toBe("about 5\u00a0min left");
    expect(leftAtPace(2, 5)).toBe("less than a minute left");
    expect(leftAtPace(0, 5)).toBe("");
  });
});

describe("two people on one shelf", () => {
  it("shows both findings, and a choice enters the chosen one again", () => {
    const mine = aRow({ full: 3 });
    const [difference] = differencesIn([{ ...aRow({ full: 2, by: "CD" }), id: 2, apart: [mine] }]);
    expect(difference?.findings.map(({ full }) => full)).toEqual([2, 3]);
    if (difference === undefined) throw new Error("No difference was found.");
    expect(choiceRows(difference, mine, { at: "later", by: "EF" })).toEqual([mine]);
  });

  it("sees containers beside an amount, which would count twice, and empties what is not chosen", () => {
    const amount = aRow({ pack: null, full: null, amount: 900, unit: "ml", by: "CD" });
    const [difference] = differencesIn([aRow({ full: 1 }), amount]);
    if (difference === undefined) throw new Error("No difference was found.");
    expect(difference.kind).toBe("two-ways");
    expect(choiceRows(difference, amount, { at: "later", by: "EF" })).toEqual([
      aRow({ full: 0, at: "later", by: "EF" }),
    ]);
  });

  it("finds nothing odd in two packs of one item", () => {
    expect(differencesIn([aRow({}), aRow({ pack: "1 L" })])).toEqual([]);
  });
});

describe("paper", () => {
  it("numbers the lines through in shelf order", () => {
    expect(paperLines(sheet, "ml").map(({ number, item }) => `${number} ${item.item}`)).toEqual([
      "1 Gin",
      "2 Bitters, orange",
      "3 Gin",
      "4 Rum",
    ]);
  });

  it("reads a line as it is written", () => {
    const [line] = paperLines(sheet, "ml");
    if (line === undefined) throw new Error("The sheet has no line.");
    expect(paperFound(line, "3.7.5")).toMatchObject({ pack: "700 ml", full: 3, parts: [0.7, 0.5] });
    expect(paperFound(line, "0")).toMatchObject({ full: 0, parts: [] });
    expect(paperFound(line, "3.75")).toHaveProperty("problem");
  });
});

it.each([
  [0, 2, ["b", "c", "a"]],
  [2, 0, ["c", "a", "b"]],
  [1, 1, ["a", "b", "c"]],
  [0, 3, ["a", "b", "c"]],
])("moves an item on its shelf from %i to %i", (from, to, order) => {
  expect(moved(["a", "b", "c"], from, to)).toEqual(order);
});
