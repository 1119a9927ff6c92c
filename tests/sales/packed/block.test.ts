import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { packBlock, unpackBlock } from "#engine/sales/packed/block.ts";
import { DayColumns } from "#engine/sales/packed/day-columns.ts";
import { linesOf, SalesPacker } from "#engine/sales/packed/packed-sales.ts";
import { packTally, tallyOf, unpackTally } from "#engine/sales/packed/tally.ts";
import { TextTable } from "#engine/sales/packed/texts.ts";
import { unionOf } from "#engine/sales/packed/union.ts";
import type { SaleLine } from "#engine/sales/read/line.ts";

const code = fc.oneof(
  fc.constantFrom(null, "17", "0", "007", "A-1", "999999999999999", "9007199254740993", "", "-5"),
  fc.string({ maxLength: 4 }),
);
const money = fc.oneof(fc.constantFrom(null, 0), fc.integer({ min: -9e12, max: 9e12 }));
const line: fc.Arbitrary<SaleLine> = fc.record({
  businessDate: fc.constantFrom("2026-03-02", "2026-03-03", "1999-12-31"),
  at: fc.constantFrom(
    null,
    "2026-03-02T20:00:00Z",
    "2026-03-02T20:00:01Z",
    "1969-12-31T23:59:59Z",
    "9999-01-01T00:00:00Z",
  ),
  ringName: fc.constantFrom("Gimlet", "Rum Sour", "Früh"),
  modifiers: fc.constantFrom("", "no ice", "Double; no ice"),
  quantity: fc.oneof(
    fc.constantFrom(1, -1, 2, 0.5),
    fc.double({ min: -1e6, max: 1e6, noNaN: true }).map((value) => value + 0),
  ),
  grossMinor: money,
  netMinor: money,
  check: code,
  lineNo: code,
});

const text = (each: SaleLine): string => JSON.stringify(each);

function columnsOf(lines: SaleLine[], texts: TextTable): DayColumns {
  const packer = new SalesPacker(texts);
  for (const each of lines) packer.addLine({ ...each, businessDate: "2026-03-02" });
  const [day] = packer.finish();
  return day === undefined ? new DayColumns() : unpackBlock(day.block);
}

describe("a packed day", () => {
  it("gives back the lines it was made of, by day", () => {
    fc.assert(
      fc.property(fc.array(line, { maxLength: 40 }), (lines) => {
        const texts = new TextTable();
        const packer = new SalesPacker(texts);
        for (const each of lines) packer.addLine(each);
        const back = [...packer.finish()].flatMap(({ businessDate, block }) =>
          linesOf(businessDate, unpackBlock(block), texts),
        );
        expect(back.map(text).sort()).toEqual(lines.map(text).sort());
      }),
    );
  });

  it("has the same bytes in whatever order the lines came", () => {
    fc.assert(
      fc.property(
        fc
          .array(line, { maxLength: 30 })
          .chain((lines) =>
            fc.tuple(fc.constant(lines), fc.shuffledSubarray(lines, { minLength: lines.length })),
          ),
        ([lines, shuffled]) => {
          const texts = new TextTable([
            [1, "Gimlet"],
            [2, "Rum Sour"],
            [3, "Früh"],
            [4, ""],
            [5, "no ice"],
            [6, "Double; no ice"],
          ]);
          const bytes = (list: SaleLine[]) => Buffer.from(packBlock(columnsOf(list, texts))).toString("hex");
          expect(bytes(shuffled)).toBe(bytes(lines));
        },
      ),
    );
  });

  it("has each line as often as in the file that has it most, when several files are joined", () => {
    fc.assert(
      fc.property(fc.array(fc.array(line, { maxLength: 8 }), { minLength: 1, maxLength: 4 }), (files) => {
        const texts = new TextTable();
        // With a check and a line number both, a later line may be a correction (corrections.test.ts).
        const day = files.map((file) =>
          file.map((each) => ({ ...each, businessDate: "2026-03-02", lineNo: null })),
        );
        const times = (file: SaleLine[], wanted: string) =>
          file.filter((each) => text(each) === wanted).length;
        const wanted = [...new Set(day.flat().map(text))].flatMap((each) =>
          Array<string>(Math.max(...day.map((file) => times(file, each)))).fill(each),
        );
        const union = unionOf(day.map((file) => ({ columns: columnsOf(file, texts), replacesSums: false })));
        expect(linesOf("2026-03-02", union, texts).map(text).sort()).toEqual(wanted.sort());
      }),
    );
  });

  it("is tallied by ring name, modifiers and whether it has a time, and the tally survives packing", () => {
    fc.assert(
      fc.property(fc.array(line, { maxLength: 40 }), (lines) => {
        const texts = new TextTable();
        const tally = tallyOf(columnsOf(lines, texts));
        expect(unpackTally(packTally(tally))).toEqual(tally);
        const sums = new Map<string, number>();
        for (const { ringName, modifiers, at, netMinor, grossMinor } of lines) {
          const key = JSON.stringify([ringName, modifiers, at !== null]);
          sums.set(key, (sums.get(key) ?? 0) + (netMinor ?? grossMinor ?? 0));
        }
        const found = Array.from({ length: tally.count }, (_, place) => [
          JSON.stringify([
            texts.textOf(tally.ringName[place] ?? 0),
            texts.textOf(tally.modifiers[place] ?? 0),
            tally.isTimed[place] === 1,
          ]),
          tally.netMinor[place],
        ]);
        expect(new Map(found as [string, number][])).toEqual(sums);
      }),
    );
  });

  it("is refused when its bytes end too early or are of another layout", () => {
    const texts = new TextTable();
    const block = packBlock(columnsOf([{ ...SOME, check: "A" }, SOME], texts));
    for (let length = 0; length < block.length; length += 1)
      expect(() => unpackBlock(block.slice(0, length))).toThrow();
    expect(() => unpackBlock(Uint8Array.of(9, ...block.slice(1)))).toThrow("layout 9");
  });

  it("is joined from its parts when a long file comes back to it", () => {
    const texts = new TextTable();
    const packer = new SalesPacker(texts);
    // Ten days in turn, often enough that days are packed while the file is still being read.
    for (let at = 0; at < 100_000; at += 1)
      packer.addLine({
        ...SOME,
        businessDate: `2026-03-0${at % 10 === 0 ? 1 : at % 10}`,
        lineNo: String(at),
      });
    const days = [...packer.finish()];
    expect(days.map(({ lines }) => lines)).toEqual([20_000, ...Array<number>(8).fill(10_000)]);
    const numbers = days.flatMap(({ businessDate, block }) =>
      linesOf(businessDate, unpackBlock(block), texts).map(({ lineNo }) => Number(lineNo)),
    );
    expect(new Set(numbers).size).toBe(100_000);
  });
});

const SOME: SaleLine = {
  businessDate: "2026-03-02",
  at: "2026-03-02T20:00:00Z",
  ringName: "Gimlet",
  modifiers: "",
  quantity: 1,
  grossMinor: 1200,
  netMinor: null,
  check: "17",
  lineNo: null,
};
