import { mkdirSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import Papa from "papaparse";
import { addDays } from "#engine/time.ts";
import { type Random, randomStream } from "#tests/simulate/random.ts";

/** The invented bar of the measurements: 120 drinks, 25 preps nested in each other, specs that change. */
export type BigBar = {
  firstDate: string;
  timeZone: string;
  dayEnds: string;
  drinks: { name: string; price: number }[];
  modifiers: string[];
};

const DRINKS = 120;
const PREPS = 25;
const SPIRITS = 60;
export const FIRST_DATE = "2024-12-30";
/** Spec changes fall in the first year, whatever the number of lines. */
const VERSIONS_APART_DAYS = 91;

type Row = (string | number)[];

/** Writes the bar's book into a folder and says what its till needs to know. */
export function writeBigBar(folder: string, seed: number): BigBar {
  const random = randomStream(seed, "book");
  mkdirSync(folder, { recursive: true });
  const preps = Array.from({ length: PREPS }, (_, at) => `Prep ${at + 1}`);
  const spirits = Array.from({ length: SPIRITS }, (_, at) => `Spirit ${at + 1}`);
  // Names with the marks that a CSV has to quote, and letters beyond ASCII.
  const drinks = Array.from({ length: DRINKS }, (_, at) => ({
    name:
      at % 5 === 0
        ? `Smoke, Salt & Rye No. ${at + 1}`
        : at % 7 === 0
          ? `Señora Früh ${at + 1}`
          : at % 31 === 0
            ? `The "Long" Watch ${at + 1}`
            : `House Drink ${at + 1}`,
    price: 8 + random.whole(0, 16) / 2,
  }));
  const modifiers = modifierRows(spirits);
  const sheets: Record<string, Row[]> = {
    "items.csv": itemRows(preps, spirits),
    "packs.csv": [["item", "pack", "amount", "unit", "price"], ...packRows(spirits)],
    "preps.csv": [["prep", "from", "yield", "unit"], ...preps.map((prep) => [prep, FIRST_DATE, 1000, "ml"])],
    "specs.csv": [
      ["makes", "from", "line", "amount", "unit", "item"],
      ...preps.flatMap((prep, at) => prepSpec(prep, at, preps, spirits, random)),
      ...drinks.flatMap(({ name }) => drinkSpecs(name, preps, spirits, random)),
    ],
    "cuts.csv": [
      ["source", "gives", "per_piece", "unit", "parts"],
      ["Lime", "Lime juice", 28, "ml", "flesh"],
      ["Lime", "Lime wheel", 8, "each", "skin+flesh"],
    ],
    "drinks.csv": [["drink", "price"], ...drinks.map(({ name, price }) => [name, price.toFixed(2)])],
    "modifiers.csv": [["modifier", "effect", "item", "with", "amount", "unit", "factor"], ...modifiers],
  };
  for (const [file, rows] of Object.entries(sheets)) writeFileSync(join(folder, file), Papa.unparse(rows));
  const venue = {
    name: "The Long Measure",
    currency: "EUR",
    timeZone: "Europe/Berlin",
    dayEnds: "04:00",
    oz: "us",
  };
  writeFileSync(join(folder, "venue.json"), JSON.stringify(venue));
  const names = [...new Set(modifiers.map(([modifier]) => String(modifier)))];
  return {
    firstDate: FIRST_DATE,
    timeZone: venue.timeZone,
    dayEnds: venue.dayEnds,
    drinks,
    modifiers: names,
  };
}

function itemRows(preps: string[], spirits: string[]): Row[] {
  return [
    ["item", "category", "base", "abv", "in_house", "stocked"],
    ...spirits.map((spirit) => [spirit, "spirit", "ml", 40, "", ""]),
    // Two preps of five are stocked; the others are made to order and opened up.
    ...preps.map((prep, at) => [prep, "prep", "ml", "", "yes", at % 5 < 2 ? "yes" : "no"]),
    ["Lime", "fruit", "each", "", "", ""],
    ["Lime juice", "juice", "ml", "", "yes", "no"],
    ["Lime wheel", "garnish", "each", "", "yes", "no"],
  ];
}

function packRows(spirits: string[]): Row[] {
  return [
    ...spirits.map((spirit): Row => [spirit, "700 ml", 700, "ml", 21]),
    ["Lime", "piece", 1, "each", 0.3],
  ];
}

/** A prep takes spirits and preps of lower numbers only, so that none is made of itself. */
function prepSpec(prep: string, at: number, preps: string[], spirits: string[], random: Random): Row[] {
  const inner = at > 0 && at % 4 !== 0 ? [preps[random.whole(Math.max(0, at - 6), at - 1)]] : [];
  const inputs = [...inner, random.pick(spirits), "Lime juice"];
  return inputs.map((item, line) => [prep, FIRST_DATE, line + 1, 250, "ml", item ?? ""]);
}

function drinkSpecs(name: string, preps: string[], spirits: string[], random: Random): Row[] {
  const versions = random.whole(2, 4);
  return Array.from({ length: versions }, (_, version) => {
    const from =
      version === 0 ? FIRST_DATE : addDays(FIRST_DATE, VERSIONS_APART_DAYS * version - random.whole(0, 30));
    const first = random.whole(0, spirits.length - 3);
    const lines: [number, string, string | undefined][] = [
      [random.whole(3, 6) * 10, "ml", spirits[first]],
      [15, "ml", spirits[first + 1]],
      [20, "ml", random.pick(preps)],
      [22.5, "ml", "Lime juice"],
      [1, "each", "Lime wheel"],
    ];
    return lines.map(([amount, unit, item], line): Row => [name, from, line + 1, amount, unit, item ?? ""]);
  }).flat();
}

function modifierRows(spirits: string[]): Row[] {
  return [
    ["No ice", "none", "", "", "", "", ""],
    ["Double", "times", "", "", "", "", 2],
    ["No wheel", "remove", "Lime wheel", "", "", "", ""],
    ["Extra lime", "add", "Lime juice", "", 10, "ml", ""],
    ["Extra wheel", "add", "Lime wheel", "", 1, "each", ""],
    ...spirits
      .slice(0, 5)
      .map((spirit, at): Row => [`With ${spirit}`, "swap", spirits[at + 1] ?? "", spirit, "", "", ""]),
  ];
}
