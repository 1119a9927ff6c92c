import { expect, it } from "vitest";
import { densityGPerMl, type LiquidFacts } from "#engine/measure/density.ts";
import { spiritDensity } from "#engine/measure/spirit-density.ts";
import { sucroseDensity } from "#engine/measure/sucrose.ts";

const unknown: LiquidFacts = {
  name: "Test bottle",
  category: "liqueur",
  abv: null,
  brix: null,
  densityGPerMl: null,
};
const weighed = { emptyG: 500, fullG: 1235, volumeMl: 700 };

it("takes the stated density before any other", () => {
  const item = { ...unknown, category: "spirit", abv: 40, brix: 10, densityGPerMl: 0.9 };
  expect(densityGPerMl(item, weighed)).toEqual({ densityGPerMl: 0.9, source: "stated" });
});

it("takes a bottle weighed full and empty before °Brix and strength", () => {
  const item = { ...unknown, category: "spirit", abv: 40, brix: 10 };
  expect(densityGPerMl(item, weighed)).toEqual({ densityGPerMl: 1.05, source: "weighed full and empty" });
});

it("needs both weights of the bottle", () => {
  expect(densityGPerMl(unknown, { ...weighed, emptyG: null })).toBeUndefined();
  expect(densityGPerMl(unknown, { ...weighed, fullG: null })).toBeUndefined();
});

it("takes °Brix where there is no strength, a stated strength of 0 included", () => {
  const known = { densityGPerMl: sucroseDensity({ brix: 50 }), source: "°Brix" };
  expect(densityGPerMl({ ...unknown, brix: 50 })).toEqual(known);
  expect(densityGPerMl({ ...unknown, brix: 50, abv: 0 })).toEqual(known);
});

it("takes strength for spirits alone, in whatever case the category is written", () => {
  const known = { densityGPerMl: spiritDensity({ abvPct: 40 }), source: "strength" };
  for (const category of ["spirit", "Spirit", " SPIRIT "]) {
    expect(densityGPerMl({ ...unknown, category, abv: 40 })).toEqual(known);
    expect(densityGPerMl({ ...unknown, category, abv: 40, brix: 5 })).toEqual(known);
  }
});

it("does not guess at a liqueur: strength and sugar together are in no table", () => {
  expect(densityGPerMl({ ...unknown, abv: 24, brix: 30 })).toBeUndefined();
  expect(densityGPerMl({ ...unknown, abv: 24 })).toBeUndefined();
  expect(densityGPerMl({ ...unknown, brix: 100 })).toBeUndefined();
});

it("refuses a full bottle that weighs no more than an empty one", () => {
  expect(() => densityGPerMl(unknown, { emptyG: 500, fullG: 400, volumeMl: 700 })).toThrow(
    /weigh both again/,
  );
});
