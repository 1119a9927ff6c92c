import { fileURLToPath } from "node:url";
import fc from "fast-check";
import { expect, it } from "vitest";
import { readBookFolder } from "#db/book/folder.ts";
import { groupBy } from "#engine/catalogue.ts";
import { UNITS } from "#engine/measure/units.ts";
import type { PrintableLine } from "#engine/specs/text/printed-line.ts";
import { readSpecText } from "#engine/specs/text/read.ts";
import { writeSpecText } from "#engine/specs/text/write.ts";

function readBack(lines: readonly PrintableLine[], language?: string) {
  return readSpecText(writeSpecText(lines, language)).map(({ amount, unit, item, orItems, note, error }) => {
    expect(error).toBeNull();
    return { amount, unit, item, orItems, note };
  });
}

const gin: PrintableLine = { amount: 2, unit: "oz", item: "dry gin", orItems: [], note: null };

it("prints as people write", () => {
  const spec: PrintableLine[] = [
    gin,
    { amount: 0.75, unit: "oz", item: "lime juice", orItems: [], note: "fresh" },
    { amount: 8, unit: "each", item: "mint leaf", orItems: [], note: null },
    { amount: null, unit: "top", item: "soda water", orItems: [], note: null },
    { amount: 2, unit: "oz", item: "rye", orItems: ["bourbon"], note: null },
  ];
  expect(writeSpecText(spec)).toBe(
    "2 oz dry gin\n0.75 oz lime juice, fresh\n8 each mint leaf\ntop soda water\n2 oz rye or bourbon",
  );
});

it("prints as German cards have it", () => {
  const spec: PrintableLine[] = [
    { ...gin, amount: 0.75, item: "trockener Gin" },
    { amount: 1.5, unit: "barspoon", item: "Zuckersirup", orItems: [], note: "kalt" },
    { amount: 2, unit: "dash", item: "Orangenbitter", orItems: ["Kakaobitter"], note: null },
    { amount: 1, unit: "each", item: "Limettenscheibe", orItems: [], note: null },
    { amount: 1, unit: "each", item: "Papierhalm", orItems: [], note: null },
    { amount: null, unit: "top", item: "Sodawasser", orItems: [], note: "eiskalt" },
    { amount: 1.125, unit: "ml", item: "Saline", orItems: [], note: null },
  ];
  expect(writeSpecText(spec, "de").split("\n")).toEqual([
    "0,75 oz trockener Gin",
    "1,5 Barlöffel Zuckersirup, kalt",
    "2 Spritzer Orangenbitter oder Kakaobitter",
    "1 Limettenscheibe",
    "1 Stück Papierhalm",
    "mit Sodawasser auffüllen (eiskalt)",
    "1,1250 ml Saline",
  ]);
});

it("quotes a name that would be read otherwise", () => {
  expect(writeSpecText([{ ...gin, item: "Gin, London dry" }])).toBe('2 oz "Gin, London dry"');
  expect(writeSpecText([{ ...gin, note: "or vodka" }])).toBe('2 oz "dry gin" # or vodka');
  expect(writeSpecText([{ ...gin, amount: 1.125, unit: "ml" }])).toBe("1.1250 ml dry gin");
});

it("refuses to print what is no line", () => {
  expect(() => writeSpecText([{ ...gin, item: null }])).toThrow(/needs a unit and an item/);
  expect(() => writeSpecText([{ ...gin, amount: null }])).toThrow(/needs an amount/);
  expect(() => writeSpecText([{ ...gin, item: "dry\ngin" }])).toThrow(/line break/);
});

const word = fc.stringMatching(/^[A-Za-zéñü'&%0-9-]{1,9}$/);
const trap = fc.constantFrom(
  "or",
  "and",
  "top",
  "fresh",
  "each",
  "2 oz",
  "1/2",
  "dash",
  "garnish",
  "to top",
  "by weight",
  "(dry)",
  "a",
  "of",
  "juice",
  "slice",
  "slices",
  "oder",
  "mit",
  "auffüllen",
  "Spritzer",
  "Scheiben",
  "Limette",
  "Saft",
  "half",
  "pinch",
  "30 ml",
  "plus 1",
  "Gin, dry",
  "#",
  '"',
  "“x”",
  "½",
  "rinse",
  "for",
);
const name = fc
  .array(fc.oneof({ weight: 3, arbitrary: word }, { weight: 1, arbitrary: trap }), {
    minLength: 1,
    maxLength: 5,
  })
  .map((words) => words.join(" ").trim())
  .filter((text) => /[A-Za-z]/.test(text));

const amount = fc.oneof(
  fc.integer({ min: 1, max: 2000 }),
  fc.integer({ min: 1, max: 8000 }).map((n) => n / 1000),
  fc.double({ min: 1e-6, max: 1e6, noNaN: true }),
);

const measured = fc.record({
  amount,
  unit: fc.constantFrom(...UNITS),
  item: name,
  orItems: fc.array(name, { maxLength: 2 }),
  note: fc.option(name),
});
const topped = fc.record({
  amount: fc.constant(null),
  unit: fc.constant("top" as const),
  item: name,
  orItems: fc.array(name, { maxLength: 1 }),
  note: fc.option(name),
});

it.each(["en", "de"])("printed and read again is the same spec, whatever its names say: %s", (language) => {
  fc.assert(
    fc.property(fc.array(fc.oneof(measured, topped), { maxLength: 5 }), (lines) => {
      expect(readBack(lines, language)).toEqual(lines);
    }),
    { numRuns: 1000 },
  );
});

it("reads any text at all without falling over, and says what it refuses", () => {
  const text = fc.oneof(
    fc.string({ unit: "binary" }),
    fc.array(fc.oneof(word, trap)).map((words) => words.join(" ")),
  );
  fc.assert(
    fc.property(text, (pasted) => {
      for (const read of readSpecText(pasted)) {
        if (read.error !== null) expect(read.error.length).toBeGreaterThan(10);
        else expect(read.item).toMatch(/\p{L}/u);
        if (read.error === null && read.unit !== "top") expect(read.amount).toBeGreaterThan(0);
      }
    }),
    { numRuns: 2000 },
  );
});

it("what was read from people's lines prints and reads back alike", () => {
  const pasted = [
    "1½ oz rested or aged agave spirit",
    "2-3 dashes orange bitters",
    "3 slices cucumber",
    "Juice of 1/2 lemon",
    "1 bar spoon (5 ml) cherry liqueur",
    "garnish: lime wheel",
    "Soda water, to top",
    "1/3 oz violet liqueur",
    "9 cl/3 oz (6 parts) tomato juice",
    "1 can (12 oz) cola",
  ].join("\n");
  const lines = readSpecText(pasted).map(({ line: _, error, ...line }) => {
    expect(error).toBeNull();
    return line;
  });
  expect(readBack(lines)).toEqual(lines);
});

it("prints every spec of the demo bar in German without a code, and reads it back with the book's items", () => {
  const { book } = readBookFolder(fileURLToPath(new URL("../../../sample-sales", import.meta.url)));
  const items = book.items.map(({ name: known }) => known);
  const specs = groupBy(book.specs, ({ makes, from }) => `${makes} ${from}`);
  expect(specs.size).toBeGreaterThan(40);
  for (const spec of specs.values()) {
    const lines = spec.map(({ amount: much, unit, item, orItems, note }) => {
      return { amount: much, unit, item, orItems, note: note === "" ? null : note };
    });
    const text = writeSpecText(lines, "de");
    expect(text).not.toMatch(/"|\b(each|dash|barspoon|drop|splash|top|or)\b/);
    const read = readSpecText(text, { items }).map(({ line: _, ...one }) => one);
    expect(read).toEqual(lines.map((line) => ({ ...line, error: null })));
  }
});
