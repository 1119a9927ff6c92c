import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { newSyrup, readRatio, sweetenerNamed } from "#engine/prep/new-syrup.ts";

describe("a syrup from one form", () => {
  it("of 1 : 1 by weight is a kilo of each for 1626 ml", () => {
    // Density of 50 °Bx at 20 °C, 1.2296 g/ml: ICUMSA SPS-4 (from memory).
    const syrup = newSyrup({
      wish: { way: "weight", sweetenerParts: 1, waterParts: 1 },
      volumeMl: 2000 / 1.2297,
    });
    expect(Math.abs(syrup.sweetenerG - 1000)).toBeLessThanOrEqual(1);
    expect(Math.abs(syrup.waterG - 1000)).toBeLessThanOrEqual(1);
    expect(syrup.caution).toBeNull();
  });

  it("of equal cups is thinner than of equal weights", () => {
    // A US cup of sugar is 200 g (USDA SR26), of water 236 g: 200 ÷ 436 = 45.9 %.
    const syrup = newSyrup({ wish: { way: "volume", sweetenerParts: 1, waterParts: 1 }, volumeMl: 1000 });
    expect(syrup.brix).toBeCloseTo(45.9, 0);
  });

  it("of 2 : 1 may crystallise in the fridge", () => {
    const syrup = newSyrup({ wish: { way: "weight", sweetenerParts: 2, waterParts: 1 }, volumeMl: 1000 });
    expect(syrup.brix).toBeCloseTo(66.7, 1);
    expect(syrup.caution).toContain("crystallise");
  });

  it("yields the volume asked for within 0.5 %, and reads what was asked", () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 10, max: 70 }),
        fc.integer({ min: 300, max: 20_000 }),
        (brix, volumeMl) => {
          const syrup = newSyrup({ wish: { way: "brix", brix }, volumeMl });
          expect(Math.abs(syrup.volumeMl / volumeMl - 1)).toBeLessThan(0.005);
          expect(Math.abs(syrup.brix - brix)).toBeLessThan(0.3);
        },
      ),
    );
  });

  /**
   * Volumes from density at 20 °C by ICUMSA SPS-4 (from memory): 50 °Bx 1.22957, 66.67 °Bx 1.3299, 60 °Bx 1.28646, 45.9 °Bx
   * 1.2075, 39.6 °Bx 1.1746 g/ml. Solids by USDA SR26: honey 82.9 %, agave 77.1 %; brown and demerara sugar are reckoned as sugar.
   * A US cup of sugar is 200 g, of honey 339 g, of water 236.2 g.
   */
  it.each([
    ["White Sugar", { way: "weight", sweetenerParts: 1, waterParts: 1 }, 50.0, 1.22957],
    ["Demerara Sugar", { way: "weight", sweetenerParts: 2, waterParts: 1 }, 66.67, 1.3299],
    ["White Sugar", { way: "weight", sweetenerParts: 1.5, waterParts: 1 }, 60.0, 1.28646],
    ["White Sugar", { way: "volume", sweetenerParts: 1, waterParts: 1 }, 45.9, 1.2075],
    ["Heather Honey", { way: "weight", sweetenerParts: 1, waterParts: 1 }, 41.45, 1.1842],
    ["Heather Honey", { way: "volume", sweetenerParts: 2, waterParts: 1 }, 61.5, 1.2954],
    ["Agave Syrup", { way: "weight", sweetenerParts: 2, waterParts: 1 }, 51.4, 1.2373],
  ] as const)(
    "of %s, %o, reads %d °Bx and yields by the published density within 0.5 %",
    (item, wish, brix, gPerMl) => {
      const sweetener = sweetenerNamed(item);
      if (sweetener === undefined) throw new Error(`${item} sweetens`);
      const syrup = newSyrup({ wish, volumeMl: 2000, sweetener });
      expect(syrup.brix).toBeCloseTo(brix, 0);
      const byTableMl = (syrup.sweetenerG + syrup.waterG) / gPerMl;
      expect(Math.abs(syrup.volumeMl / byTableMl - 1)).toBeLessThan(0.005);
      expect(Math.abs(syrup.volumeMl / 2000 - 1)).toBeLessThan(0.005);
    },
  );

  it("cannot be stronger than what sweetens it", () => {
    const sweetener = sweetenerNamed("Heather Honey");
    if (sweetener === undefined) throw new Error("honey sweetens");
    expect(() => newSyrup({ wish: { way: "brix", brix: 84 }, volumeMl: 1000, sweetener })).toThrow(/°Brix/);
  });

  it("reads a ratio as people write it", () => {
    expect(readRatio("2:1")).toEqual({ sweetenerParts: 2, waterParts: 1 });
    expect(readRatio(" 1,5 to 1 ")).toEqual({ sweetenerParts: 1.5, waterParts: 1 });
    expect(readRatio("3")).toEqual({ sweetenerParts: 3, waterParts: 1 });
    for (const text of ["", "0:1", "2:0", "sweet"]) expect(readRatio(text)).toBeUndefined();
    expect(sweetenerNamed("Sugar Syrup")).toBeUndefined();
  });
});
