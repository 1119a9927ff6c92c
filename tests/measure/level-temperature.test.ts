import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { readBook } from "#db/book/read-book.ts";
import { factsOf } from "#engine/facts.ts";
import { volumeByLevel } from "#engine/measure/container.ts";
import { levelAt20 } from "#engine/measure/level-temperature.ts";
import { OutOfRangeError } from "#engine/measure/range.ts";
import { spiritDensity, spiritVolumeAt } from "#engine/measure/spirit-density.ts";
import { countsOf } from "#engine/stock/counts.ts";
import { countSheetFor } from "#server/reports/count-sheet.ts";
import { smallBook } from "#tests/support/small-book.ts";
import { quantityOf } from "../../web/count/reckon.ts";

/** Of a bottle of 700 ml. */
function level(share: number, atCold: number): number {
  return volumeByLevel({ share, volumeMl: 700, readingSd: 0.04, atCold }).volumeMl;
}

const GIN = { category: "spirit", abv: 40, brix: null };

describe("a level read in the cold", () => {
  // OIML R 22: 970.78, 958.22 and 948.05 kg/m³ at −18, 4 and 20 °C, of 40 % vol.
  it.each([
    [-18, 970.78 / 948.05, 358.4],
    [4, 958.22 / 948.05, 353.8],
    [30, 941.19 / 948.05, 347.5],
    [20, 1, 350],
  ])("at %d °C half a bottle of 700 ml is more or less than 350 ml", (temperatureC, ratio, volumeMl) => {
    const atCold = levelAt20(GIN, temperatureC);
    expect(atCold).toBeCloseTo(ratio, 4);
    expect(level(0.5, atCold)).toBeCloseTo(volumeMl, 1);
  });

  // ICUMSA SPS-4: 1236.16 and 1229.65 kg/m³ at 4 and 20 °C, of 50 °Bx.
  it("of syrup in the fridge is half a percent short", () => {
    const syrup = { category: "prep", abv: null, brix: 50 };
    expect(levelAt20(syrup, 4)).toBeCloseTo(1236.16 / 1229.65, 4);
  });

  it("of a liqueur, a wine or juice is left as it is: no formula tells how they shrink", () => {
    expect(levelAt20({ category: "liqueur", abv: 25, brix: 30 }, 4)).toBe(1);
    expect(levelAt20({ category: "wine", abv: 12, brix: null }, 4)).toBe(1);
    expect(levelAt20({ category: "juice", abv: null, brix: null }, 4)).toBe(1);
    expect(levelAt20(GIN, undefined)).toBe(1);
  });

  it("of a weak spirit in the freezer is ice, which is named; a syrup below zero is out of the tables", () => {
    expect(() => levelAt20({ ...GIN, abv: 20 }, -18)).toThrow(
      /At -18 °C a mixture of 20 % vol is ice or slush/,
    );
    expect(() => levelAt20({ category: "prep", abv: null, brix: 50 }, -18)).toThrow(OutOfRangeError);
    expect(() => levelAt20(GIN, -30)).toThrow(/temperature of a spirit/);
  });

  it("is never more than the bottle holds, and full is full", () => {
    expect(level(1, 1.024)).toBe(700);
    expect(level(0.99, 1.024)).toBe(700);
  });

  it("gives back what was in the bottle before it was put away", () => {
    const bottle = fc.record({
      volumeMl: fc.double({ min: 10, max: 690, noNaN: true }),
      abvPct: fc.double({ min: 35, max: 70, noNaN: true }),
      temperatureC: fc.double({ min: -18, max: 4, noNaN: true }),
    });
    fc.assert(
      fc.property(bottle, ({ volumeMl, abvPct, temperatureC }) => {
        const seenMl = spiritVolumeAt({ volumeMl, abvPct, temperatureC });
        const atCold = levelAt20({ category: "Spirit", abv: abvPct, brix: null }, temperatureC);
        expect(level(seenMl / 700, atCold)).toBeCloseTo(volumeMl, 6);
      }),
    );
  });
});

const COLD = `{
  "name": "The Copper Heron", "currency": "EUR", "timeZone": "Europe/Lisbon", "dayEnds": "04:00", "oz": "us",
  "areaTemperatureC": {"freezer": -18, "Ice well": -2}
}`;
const COUNTS = `count,at,area,item,pack,full,part,gross_g,amount,unit
Monday,2026-03-02 10:00,Freezer,Dry gin,1 L,1,0.5,,,
Monday,2026-03-02 10:00,Back bar,Dry gin,1 L,,0.5,,,
Tuesday,2026-03-03 10:00,Freezer,Dry gin,1 L,,,994.025,,`;

describe("a bar with a freezer", () => {
  const { book, notices } = readBook(smallBook({ "venue.json": COLD, "counts.csv": COUNTS }));
  const [monday, tuesday] = countsOf(factsOf(book).catalogue, book);

  it("counts the open bottle there fuller than it looks, and the one on the back bar as it looks", () => {
    expect(monday?.holdings.get("Dry gin")?.quantity).toBeCloseTo(1000 + 500 * (970.78 / 948.05) + 500, 1);
  });

  it("finds the same bottle by its weight, which the cold leaves alone", () => {
    // 520 g empty + 500 ml of 0.94805 g/ml.
    expect(520 + 500 * spiritDensity({ abvPct: 40 })).toBeCloseTo(994.025, 2);
    // The sheet weighs this bottle full as well: (1468 − 520) g in 1 l.
    expect(tuesday?.holdings.get("Dry gin")?.quantity).toBeCloseTo(474.025 / 0.948, 3);
  });

  it("is told of a temperature that no area uses", () => {
    expect(notices.join("\n")).toContain('no area is called "Ice well"');
  });

  it("reads the same on the phone that counts it", async () => {
    const { areas } = await countSheetFor({
      facts: factsOf(book),
      lastMoment: null,
      salesBetween: async () => [],
    });
    const item = areas.flatMap(({ items }) => items).find(({ item }) => item === "Dry gin");
    if (item === undefined) throw new Error("The sheet does not list the gin.");
    expect(item.atCold).toEqual({ Freezer: expect.closeTo(970.78 / 948.05, 4) });
    const onPhone = quantityOf(
      book.counts.filter(({ count }) => count === "Monday"),
      item,
      book.venue,
    );
    expect(onPhone?.quantity).toBeCloseTo(monday?.holdings.get("Dry gin")?.quantity ?? 0, 9);
  });

  it("cannot count a weak spirit's level in the freezer, and says what to do", () => {
    const items = "item,category,base,abv\nDry gin,spirit,ml,40\nWeak bitter,spirit,ml,20";
    const packs = "item,pack,amount,unit\nDry gin,1 L,1,l\nWeak bitter,1 L,1,l";
    const counts = "count,at,area,item,pack,full,part\nMonday,2026-03-02 10:00,Freezer,Weak bitter,1 L,,0.5";
    const files = { "venue.json": COLD, "items.csv": items, "packs.csv": packs, "counts.csv": counts };
    expect(() => readBook(new Map(Object.entries(files)))).toThrow(
      /counts\.csv row 2, part: in "Freezer", kept at -18 °C .* ice or slush.* Weigh it/,
    );
  });
});
