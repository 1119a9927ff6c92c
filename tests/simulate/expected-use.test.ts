import { describe, expect, it } from "vitest";
import { readBook } from "#db/book/read-book.ts";
import { type Facts, factsOf } from "#engine/facts.ts";
import { readSales } from "#engine/sales/read/read-sales.ts";
import type { SaleGroup } from "#engine/sales/tally.ts";
import { useReport } from "#engine/sales/use-report.ts";
import { type SimulatedBar, simulateBar } from "./bar.ts";
import { HARBOUR_LANTERN } from "./lantern/bar.ts";
import { sampleBar } from "./sample.ts";
import { smallBar } from "./small-bar.ts";
import type { SalesFile } from "./till-files.ts";
import { variedCatalogue } from "./vary.ts";

/** Both come to the same by other ways; only rounding may differ. */
const ROUNDING = 1e-9;
/** A top-up without an amount is an estimate here and there. */
const TOP_UP_TOLERANCE = 0.08;

/** Every sale of the files once: what stands in two files as often as in the file that has it most. */
function saleGroups(facts: Facts, files: readonly SalesFile[]): SaleGroup[] {
  const { venue } = facts.catalogue;
  const most = new Map<string, SaleGroup[]>();
  for (const { file, text } of files) {
    const options = { fileName: file, clock: venue, currencyDigits: 2 };
    const { lines, refused, question } = readSales(new TextEncoder().encode(text), options);
    expect({ file, refused, question }).toEqual({ file, refused: [], question: null });
    const inFile = new Map<string, SaleGroup[]>();
    for (const line of lines) {
      const { businessDate, at, ringName, modifiers, quantity } = line;
      const netMinor = line.netMinor ?? line.grossMinor ?? 0;
      const group = { businessDate, at, timed: at !== null, ringName, modifiers, quantity, netMinor };
      const key = JSON.stringify(line);
      inFile.set(key, [...(inFile.get(key) ?? []), group]);
    }
    for (const [key, same] of inFile) {
      if (same.length > (most.get(key)?.length ?? 0)) most.set(key, same);
    }
  }
  return [...most.values()].flat();
}

/** Where the product's expected use and the simulation's own arithmetic part, as "week item: here, there". */
function disagreements(bar: SimulatedBar): string[] {
  const facts = factsOf(readBook(new Map(Object.entries(bar.book))).book);
  const sales = saleGroups(facts, bar.sales);
  return bar.truth.weeks.flatMap(({ week, from, to, expected }) => {
    const here = new Map(
      useReport(facts, sales, { from, to }).items.map((item) => [item.item, item.expected]),
    );
    return [...new Set([...here.keys(), ...Object.keys(expected)])].flatMap((item) => {
      const [ours, theirs] = [here.get(item) ?? 0, expected[item] ?? 0];
      const tolerance = bar.truth.toppedUp.includes(item) ? TOP_UP_TOLERANCE : ROUNDING;
      const isSame = Math.abs(ours - theirs) <= tolerance * Math.max(1, Math.abs(theirs));
      return isSame ? [] : [`week ${week} ${item}: ${ours}, ${theirs}`];
    });
  });
}

describe("expected use, against a simulation that reckons it by its own arithmetic", () => {
  it.each<[string, () => SimulatedBar]>([
    ["the demo bar with its trouble, thirteen weeks", sampleBar],
    ["the small bar", () => smallBar({ seed: 21 })],
    [
      "a bar with a barspoon written as an ounce on a spec",
      () =>
        simulateBar({
          seed: 4,
          weeks: 2,
          faults: [{ kind: "unit-slip", drink: "Gangway Sour", item: "Ashbarrow Peated Whisky", unit: "oz" }],
        }),
    ],
    [
      "another bar of the kind",
      () =>
        simulateBar({
          seed: 5,
          weeks: 3,
          faults: [],
          catalogue: variedCatalogue({ catalogue: HARBOUR_LANTERN, seed: 5 }),
        }),
    ],
  ])(
    "is the same for every item and week of %s",
    (_, run) => {
      expect(disagreements(run())).toEqual([]);
    },
    120_000,
  );

  it("would see one lime wheel more in a spec", () => {
    const bar = smallBar({ seed: 21 });
    const specs = bar.book["specs.csv"] ?? "";
    const changed = specs.replace(/^(Daiquiri,.*),1,each,Lime wheel/m, "$1,2,each,Lime wheel");
    expect(changed).not.toBe(specs);
    const found = disagreements({ ...bar, book: { ...bar.book, "specs.csv": changed } });
    expect(found.every((line) => line.includes("Lime"))).toBe(true);
    expect(found.length).toBe(4);
  });
});
