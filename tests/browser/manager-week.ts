import type { CountRow } from "#engine/stock/movement.ts";
import { type Found, foundBefore } from "./shelf-walk.ts";

// What happened in the manager's week: what stands on the shelves at its end, and what was rung meanwhile.

const LAST_COUNT = "2026-11-23";

/** Most stands as it stood a week ago; what was poured meanwhile is typed by hand, so that each figure can be followed. */
export const FRONT_WELL = new Map<string, Found>([
  ...foundBefore(LAST_COUNT, "Front well"),
  ["Quillmere Vodka", { typed: "1.4" }],
  ["Wickerlamp Dry Gin", { typed: "1.2" }],
  ["Thornquay Bourbon", { typed: "1.3" }],
  ["Tarwick Aromatic Bitters", { typed: "1.4" }],
  ["Tarwick Orange Bitters", { typed: "1.5" }],
  ["Nutfieldry Almond Syrup", "skip"],
  ["Fizzardy Ginger Beer", "none"],
]);
export const BACK_BAR = foundBefore(LAST_COUNT, "Back bar");
export const CELLAR = new Map<string, Found>([
  ...foundBefore(LAST_COUNT, "Cellar"),
  ["Quillmere Vodka", { typed: "3" }],
  ["Wickerlamp Dry Gin", { typed: "6" }],
  ["Oarlock White Rum", { typed: "5" }],
  ["Thornquay Bourbon", { typed: "5" }],
]);

/** An entry in one line: "Front well, Quillmere Vodka: 1.3 by Mara". */
export function entryLine({ area, item, full, parts, grossG, amount, by }: CountRow): string {
  const tenths = parts.map((part) => Math.round(part * 10));
  const figures = grossG.length > 0 ? `${grossG.join("+")} g` : (amount ?? [full, ...tenths].join("."));
  return `${area}, ${item}: ${figures} by ${by}`;
}

/** The same of what was typed on a phone; what was left out is no entry. */
export function typedIn(area: string, shelf: ReadonlyMap<string, Found>, by: string): string[] {
  const entered = [...shelf].filter(([, found]) => found !== "skip");
  return entered.map(([item, found]) => `${area}, ${item}: ${figuresOf(found)} by ${by}`);
}

function figuresOf(found: Found): string {
  if (found === "none" || found === "skip") return "0";
  return "grams" in found ? `${found.grams} g` : found.typed;
}

/** What was rung on each of the seven days, in the form of the till's last export. */
const A_DAY = [
  ["Mule", 6, 13],
  ["Vodka Soda", 4, 10],
  ["G&T", 5, 11],
  ["Mooring OF", 3, 15],
] as const;

export function journal(): string {
  const days = ["23", "24", "25", "26", "27", "28", "29"];
  const lines = days.flatMap((day, ofWeek) =>
    A_DAY.map(([product, units, price], place) => {
      const date = `2026-11-${day}`;
      const line = ofWeek * A_DAY.length + place + 1;
      const till = `${date}T18:0${place}:00;R${16_000 + line};${line}`;
      return `${date};${till};${product};;${units};${(units * price).toFixed(2)};Bar 1`;
    }),
  );
  return ["Business Date;Sold At;Receipt;Line;Product;Options;Units;Total;Register", ...lines].join("\n");
}
