import "../support/english.ts";
import fc from "fast-check";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import type { Label } from "#engine/prep/label.ts";
import { type Fits, labelPages, SMALLEST_PT } from "../../web/prep/label-pages.ts";
import { textsOf } from "../../web/texts/compile.ts";
import { takeTexts } from "../../web/texts/say.ts";

/** A label on a typewriter: so many characters to a line and lines to a label, more of both the smaller the type. */
const typewriter =
  ({ across, down }: { across: number; down: number }): Fits =>
  (lines, sizePt) => {
    const width = Math.floor((across * 10) / sizePt);
    const height = Math.floor((down * 10) / sizePt);
    return lines.reduce((sum, line) => sum + Math.max(1, Math.ceil(line.length / width)), 0) <= height;
  };

function labelWith(allergens: string): Label {
  const lines = [
    "Almond syrup",
    "Made Mon 2026-03-02",
    "Use by Fri 2026-03-06",
    "Batch 260302-1",
    "Initials ____",
  ];
  return {
    name: "Almond syrup",
    madeOn: "2026-03-02",
    useBy: "2026-03-06",
    batch: "260302-1",
    abvPct: null,
    allergens,
    initials: "",
    lines: [...lines, allergens],
  };
}

const LONG = `Contains: ${"almonds, hazelnuts, milk, ".repeat(6)}eggs. May contain: celery, mustard. Check before serving.`;
const pagesOf = (allergens: string, fits: Fits) =>
  labelPages(labelWith(allergens), { dayLine: "Day of preparation is day 1", largestPt: 10, fits });

describe("a label on paper of one size", () => {
  it("is printed as large as it may be where all of it fits", () => {
    const pages = pagesOf("Contains: almonds.", typewriter({ across: 40, down: 10 }));
    expect(pages.map(({ sizePt }) => sizePt)).toEqual([10]);
  });

  it("shrinks to the smallest legible type and no further", () => {
    const pages = pagesOf(LONG, typewriter({ across: 40, down: 9 }));
    expect(pages).toHaveLength(1);
    expect(pages[0]?.sizePt).toBeLessThan(10);
    expect(pages[0]?.sizePt).toBeGreaterThanOrEqual(SMALLEST_PT);
  });

  it("goes on to a second label, which says of which batch it is, as the first says that there is more", () => {
    const [first, second] = pagesOf(LONG, typewriter({ across: 30, down: 6 }));
    expect(first?.lines.at(-1)).toBe("… more on label 2");
    expect(second?.lines[0]).toBe("Almond syrup, batch 260302-1, label 2");
  });

  it("leaves no word of the allergens out, fits every label, and never parts “May contain”", () => {
    fc.assert(
      fc.property(
        fc.record({ across: fc.integer({ min: 24, max: 60 }), down: fc.integer({ min: 5, max: 12 }) }),
        fc.array(fc.constantFrom("milk", "eggs", "sulphites", "Brazil nuts", "celery"), { maxLength: 60 }),
        (size, found) => {
          const fits = typewriter(size);
          const allergens = `Contains: ${found.join(", ")}. May contain: ${found.join(", ")}. Check before serving.`;
          const pages = pagesOf(allergens, fits);
          for (const { lines, sizePt } of pages) expect(fits(lines, sizePt)).toBe(true);
          const printed = pages.flatMap(({ lines }) => lines).filter((line) => !/label \d+$/.test(line));
          const words = printed.join(" ").replaceAll("… ", "").replaceAll("\u00a0", " ");
          expect(words).toContain(allergens);
          for (const { lines } of pages) expect(lines.join("\n")).not.toMatch(/May$/m);
        },
      ),
    );
  });
});

/** Regulation (EU) No 1169/2011, Annex II, in its German wording, shortened. */
const GERMAN =
  "glutenhaltiges Getreide, Krebstiere, Eier, Fische, Erdnüsse, Sojabohnen, Milch, Schalenfrüchte (Mandeln, Haselnüsse, Walnüsse), " +
  "Sellerie, Senf, Sesamsamen, Schwefeldioxid und Sulphite, Lupinen, Weichtiere";

describe("a label in German", () => {
  beforeAll(() => takeTexts(textsOf("de")));
  afterAll(() => takeTexts(textsOf("en")));

  it("says the same, and is whole on as many labels as it takes", () => {
    const allergens = `Enthält: ${GERMAN}. Kann enthalten: ${GERMAN}. Vor dem Ausschank prüfen.`;
    const fits = typewriter({ across: 30, down: 7 });
    const dayLine = "Tag der Herstellung ist Tag 1";
    const pages = labelPages(labelWith(allergens), { dayLine, largestPt: 10, fits });
    for (const { lines, sizePt } of pages) {
      expect(fits(lines, sizePt)).toBe(true);
      expect(lines.join("\n")).not.toMatch(/Kann$/m);
    }
    expect(pages[0]?.lines.slice(0, 6)).toEqual([
      "Almond syrup",
      expect.stringMatching(/^Gemacht \w+\s02\.03\.2026$/),
      expect.stringMatching(/^Zu verbrauchen bis \w+\s06\.03\.2026$/),
      "Charge 260302-1",
      "Kürzel ____",
      dayLine,
    ]);
    expect(pages[0]?.lines.at(-1)).toBe("… weiter auf Etikett 2");
    expect(pages[1]?.lines[0]).toBe("Almond syrup, Charge 260302-1, Etikett 2");
    const printed = pages.flatMap(({ lines }) => lines).filter((line) => !/Etikett \d+$/.test(line));
    expect(printed.join(" ").replaceAll("… ", "").replaceAll("\u00a0", " ")).toContain(allergens);
  });
});
