import fc from "fast-check";
import { expect, it } from "vitest";
import { topUpMl } from "#engine/measure/top-up.ts";

const highball = { glassMl: 350, ice: "cubed", technique: "built", liquidMl: 50 } as const;

it("fills what glass, ice and spirit leave", () => {
  const top = topUpMl(highball);
  // 350 × (0.9 − 0.4) − 50 × 1.1
  expect(top?.volumeMl).toBeCloseTo(120, 9);
  expect(top?.sd).toBeGreaterThan(20);
  expect(top?.fits).toBe(true);
});

it("does not guess when the glass is not known", () => {
  expect(topUpMl({ ...highball, glassMl: null })).toBeUndefined();
});

it("says when the drink already fills the glass", () => {
  const top = topUpMl({ ...highball, liquidMl: 300 });
  expect(top).toMatchObject({ volumeMl: 0, fits: false });
});

it("is less sure when ice or technique are not known", () => {
  const known = topUpMl({ ...highball, liquidMl: 100 });
  const noIce = topUpMl({ ...highball, liquidMl: 100, ice: null });
  const noTechnique = topUpMl({ ...highball, liquidMl: 100, technique: null });
  expect(noIce?.sd).toBeGreaterThan(known?.sd ?? 0);
  expect(noTechnique?.sd).toBeGreaterThan(known?.sd ?? 0);
});

it("leaves less room after shaking than after stirring, and after stirring than after building", () => {
  const room = (technique: "built" | "stirred" | "shaken") =>
    topUpMl({ ...highball, liquidMl: 75, technique })?.volumeMl ?? 0;
  expect(room("built")).toBeGreaterThan(room("stirred"));
  expect(room("stirred")).toBeGreaterThan(room("shaken"));
});

it("never pours less than nothing nor more than the glass", () => {
  const drink = fc.record({
    glassMl: fc.double({ min: 30, max: 1000, noNaN: true }),
    ice: fc.constantFrom("none", "cubed", "crushed", "large", null),
    technique: fc.constantFrom("built", "shaken", "stirred", "blended", "thrown", null),
    liquidMl: fc.double({ min: 0, max: 500, noNaN: true }),
    abv: fc.option(fc.double({ min: 0, max: 100, noNaN: true })),
  });
  fc.assert(
    fc.property(drink, (each) => {
      const top = topUpMl(each);
      expect(top?.volumeMl).toBeGreaterThanOrEqual(0);
      expect(top?.volumeMl).toBeLessThanOrEqual(each.glassMl);
      expect(top?.sd).toBeGreaterThan(0);
    }),
  );
});
