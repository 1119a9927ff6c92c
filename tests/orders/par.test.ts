import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { catalogueOf } from "#engine/catalogue.ts";
import { parOf } from "#engine/orders/par.ts";
import { buyingUnit, chooseUnit, unitsFor } from "#engine/orders/purchase.ts";
import type { Pack } from "#engine/stock/item.ts";
import { anEmptyBook, anItem } from "../support/hand-bar.ts";

const mean = fc.double({ min: 0.05, max: 4000, noNaN: true });
const cv = fc.double({ min: 0.01, max: 4, noNaN: true });
const level = fc.double({ min: 0.55, max: 0.995, noNaN: true });
const more = fc.double({ min: 1, max: 3, noNaN: true });

describe.each([
  ["an amount", false],
  ["a count", true],
])("the par of %s never falls", (_, isCount) => {
  it("when demand spreads more", () => {
    fc.assert(
      fc.property(mean, cv, more, level, (mean, cv, factor, serviceLevel) => {
        const variance = (mean * cv) ** 2;
        const par = (spread: number) => parOf({ demand: { mean, variance: spread }, serviceLevel, isCount });
        expect(par(variance * factor)).toBeGreaterThanOrEqual(par(variance) * (1 - 1e-6));
      }),
    );
  });

  it("when the service level rises", () => {
    fc.assert(
      fc.property(mean, cv, level, level, (mean, cv, a, b) => {
        const demand = { mean, variance: (mean * cv) ** 2 };
        const par = (serviceLevel: number) => parOf({ demand, serviceLevel, isCount });
        expect(par(Math.max(a, b))).toBeGreaterThanOrEqual(par(Math.min(a, b)) * (1 - 1e-6));
      }),
    );
  });

  it("when the days to cover grow", () => {
    fc.assert(
      fc.property(mean, fc.double({ min: 0.05, max: 1.5, noNaN: true }), level, (mean, cv, serviceLevel) => {
        const over = (days: number) => ({ mean: mean * days, variance: days * (mean * cv) ** 2 });
        const pars = [1, 2, 4, 7, 11].map((days) => parOf({ demand: over(days), serviceLevel, isCount }));
        expect(pars).toEqual([...pars].sort((a, b) => a - b));
      }),
    );
  });
});

describe("what can be bought", () => {
  const pack = (facts: Partial<Pack>): Pack => ({
    item: "Gin",
    pack: "700 ml",
    amount: 700,
    unit: "ml",
    from: null,
    perCase: 6,
    supplier: "Quay Spirits",
    code: "",
    gtin: "",
    price: 20,
    pricePer: "container",
    split: false,
    emptyG: null,
    fullG: null,
    depositMinor: null,
    ...facts,
  });
  const catalogue = catalogueOf({ ...anEmptyBook(), items: [anItem({ name: "Gin", base: "ml" })] });
  const unit = (facts: Partial<Pack>) => buyingUnit(catalogue, pack(facts));

  it.each([
    [{}, "case", 4200, 120],
    [{ split: true }, "container", 700, 20],
    [{ perCase: 1 }, "container", 700, 20],
    [{ price: 108, pricePer: "case" as const }, "case", 4200, 108],
    [{ price: 108, pricePer: "case" as const, split: true }, "container", 700, 18],
    [{ price: null }, "case", 4200, null],
  ])("a pack %o is bought by the %s of %i ml at %s", (facts, of, size, price) => {
    expect(unit(facts)).toMatchObject({ of, size, price });
  });

  it.each([
    [0, 0],
    [1, 1],
    [700, 1],
    [700.1, 2],
    [1400.0000000001, 2],
  ])("%f ml short are %i bottles", (short, bottles) => {
    expect(unitsFor({ short, size: 700 })).toBe(bottles);
  });

  it("takes the cheaper litre where it will be drunk, the single bottle where it would stand for months", () => {
    const [case12, bottle] = [unit({ perCase: 12, price: 18 }), unit({ split: true, price: 20 })];
    const choose = (perDay: number) =>
      chooseUnit([bottle, case12], { short: 500, perDay, shelfLifeDays: null })?.of;
    expect(choose(400)).toBe("case");
    expect(choose(10)).toBe("container");
  });

  it("does not buy more than keeps", () => {
    const [case12, bottle] = [unit({ perCase: 12, price: 18 }), unit({ split: true, price: 20 })];
    const bought = chooseUnit([case12, bottle], { short: 500, perDay: 200, shelfLifeDays: 5 });
    expect(bought?.of).toBe("container");
  });
});
