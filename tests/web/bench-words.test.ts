import "../support/english.ts";
import { expect, it } from "vitest";
import { DEFAULT_HOUSE_ML } from "#engine/measure/units.ts";
import type { Pack } from "#engine/stock/item.ts";
import { factsOf, usualPrice } from "../../web/movements/delivery-lines.ts";
import { benchAmount, benchBase } from "../../web/prep/amounts.ts";
import { dayToPlan } from "../../web/prep/prep-date.ts";
import { fractionWords, measureWords } from "../../web/specs/line-words.ts";
import { versionOn, versionsOf } from "../../web/specs/versions.ts";
import { plainSpaces } from "../support/plain-spaces.ts";

const MEASURES = { oz: "us", houseMl: DEFAULT_HOUSE_ML } as const;

it.each([
  [1500, "ml", "1.5 l"],
  [1000, "g", "1 kg"],
  [945, "g", "945 g"],
  [2.5, "ml", "2.5 ml"],
  [3.2, "each", "4 pieces"],
  [1, "each", "1 piece"],
  [2, "l", "2 l"],
] as const)("says %d %s at the bench as “%s”", (amount, unit, words) => {
  expect(plainSpaces(benchAmount(amount, unit, MEASURES))).toBe(words);
});

it("does not fetch one lime more for the dust of floating point", () => {
  expect(benchBase(0.1 * 3 * 10, "each")).toBe("3 pieces");
});

it.each([
  ["2026-11-25", "2026-11-23", "2026-11-25"],
  ["2026-11-23", "2026-11-23", "2026-11-23"],
  ["2027-03-01", "2026-11-23", "2026-11-23"],
  ["2026-11-01", "2026-11-23", "2026-11-23"],
])("today %s, with a book up to %s, prep is planned for %s", (today, bookDate, day) => {
  expect(dayToPlan({ today, bookDate })).toBe(day);
});

it.each([
  [0.75, "3/4"],
  [1.5, "1 1/2"],
  [0.3333, "1/3"],
  [22.5, "22.5"],
  [2, "2"],
])("writes %d on a spec as %s", (amount, words) => {
  expect(fractionWords(amount)).toBe(words);
});

it("writes a top-up as top, pieces bare, and measures that are words in the plural", () => {
  expect(measureWords({ amount: null, unit: "top" })).toBe("top");
  expect(measureWords({ amount: 1, unit: "each" })).toBe("1");
  expect(measureWords({ amount: 2, unit: "dash" })).toBe("2\u00a0dashes");
  expect(measureWords({ amount: 2, unit: "oz" })).toBe("2\u00a0oz");
  expect(measureWords({ amount: 0.5, unit: "barspoon" })).toBe("1/2\u00a0barspoon");
});

it("takes the newest version that has begun", () => {
  const line = { makes: "Sour", line: 1, amount: 2, unit: "oz", item: "Gin", orItems: [], note: "" } as const;
  const specs = ["2026-05-01", "2026-10-01", "2027-01-01"].map((from) => ({ ...line, from, orItems: [] }));
  expect(versionOn(versionsOf(specs, "Sour"), "2026-11-25")?.from).toBe("2026-10-01");
  expect(versionOn(versionsOf(specs, "Sour"), "2026-01-01")).toBeUndefined();
});

const PACK: Pack = {
  item: "Gin",
  pack: "1 L",
  amount: 1,
  unit: "l",
  from: null,
  perCase: 12,
  supplier: "Longmole",
  code: "",
  gtin: "",
  price: 17.5,
  pricePer: "container",
  split: true,
  emptyG: null,
  fullG: null,
  depositMinor: null,
};
const LINE = {
  key: 0,
  item: "Gin",
  pack: "1 L",
  quantity: "2",
  of: "case",
  price: "",
  deposit: "",
  empties: "",
} as const;

it("says what a line of a delivery usually costs, by the price in force on its day", () => {
  const dearer = { ...PACK, from: "2026-11-01", price: 20 };
  const on = (date: string) => usualPrice([PACK, dearer], LINE, { supplier: "Longmole", date });
  expect(on("2026-10-31")).toBe(420);
  expect(on("2026-11-01")).toBe(480);
});

it("makes facts of a delivery only when every line is whole, with the price in whole cents", () => {
  const head = { at: "2026-11-25T10:00:00Z", supplier: "Longmole", invoice: "L-1", by: "" };
  expect(factsOf([{ ...LINE, price: "419,90" }], head, "EUR")).toEqual([
    {
      ...head,
      item: "Gin",
      pack: "1 L",
      quantity: 2,
      of: "case",
      priceTotalMinor: 41_990,
      depositMinor: null,
      empties: null,
    },
  ]);
  const withDeposit = { ...LINE, price: "419.90", deposit: "3,60", empties: "11" };
  expect(factsOf([withDeposit], head, "EUR")).toMatchObject([{ depositMinor: 360, empties: 11 }]);
  expect(factsOf([{ ...LINE, empties: "-1" }], head, "EUR")).toBeUndefined();
  expect(factsOf([LINE, { ...LINE, item: null }], head, "EUR")).toBeUndefined();
  expect(factsOf([{ ...LINE, quantity: "two" }], head, "EUR")).toBeUndefined();
});
