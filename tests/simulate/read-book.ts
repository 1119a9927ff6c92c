import Papa from "papaparse";
import type { SimulatedBar } from "./bar.ts";
import type { Catalogue, SimItem } from "./catalogue.ts";
import { packSize } from "./state.ts";

export type SheetRow = Record<string, string>;

/** The rows of a sheet, by heading. */
export function rowsOf(book: SimulatedBar["book"], sheet: string): SheetRow[] {
  const parsed = Papa.parse<SheetRow>(book[sheet] ?? "", {
    header: true,
    skipEmptyLines: true,
    delimiter: ",",
  });
  if (parsed.errors[0] !== undefined) throw new Error(`${sheet}: ${parsed.errors[0].message}`);
  return parsed.data;
}

/** What a count says of an item, in base units, and the variance of that. */
export type Counted = { amount: number; variance: number };

/** One count of a simulated bar, read as its rows say. */
export function readCount(bar: SimulatedBar, catalogue: Catalogue, count: string): Map<string, Counted> {
  const counted = new Map<string, Counted>();
  for (const row of rowsOf(bar.book, "counts.csv").filter((one) => one.count === count)) {
    const item = catalogue.items.find(({ name }) => name === row.item);
    if (item === undefined) throw new Error(`counts.csv names ${row.item}, which no item is`);
    const found = readRow(bar, item, row);
    const before = counted.get(item.name) ?? { amount: 0, variance: 0 };
    counted.set(item.name, {
      amount: before.amount + found.amount,
      variance: before.variance + found.variance,
    });
  }
  return counted;
}

function readRow({ truth: { noise } }: SimulatedBar, item: SimItem, row: SheetRow): Counted {
  if (row.amount !== "" && row.amount !== undefined) {
    const sd = row.unit === "each" ? noise.each : row.unit === "g" ? noise.scaleG : noise.ml;
    return { amount: Number(row.amount), variance: row.amount === "0" ? 0 : sd ** 2 };
  }
  const pack = item.packs.find((one) => one.pack === row.pack);
  if (pack === undefined) throw new Error(`${item.name} has no pack ${row.pack}`);
  const size = packSize(pack);
  const density = item.trueDensityGPerMl ?? 1;
  const parts = numbers(row.part);
  const weighed = numbers(row.gross_g).map((grossG) => (grossG - (pack.emptyG ?? 0)) / density);
  const open = parts.reduce((sum, part) => sum + part * size, 0) + weighed.reduce((sum, ml) => sum + ml, 0);
  return {
    amount: Number(row.full) * size + open,
    variance: parts.length * (noise.reading * size) ** 2 + weighed.length * (noise.scaleG / density) ** 2,
  };
}

function numbers(cell: string | undefined): number[] {
  return (cell ?? "") === "" ? [] : (cell ?? "").split(";").map(Number);
}

/**
 * Unexplained use by the book over its standard deviation, week by week.
 *
 * Counts and deliveries as written; expected use and losses from the truth. In a clean bar each ratio is one
 * draw of noise, so over many weeks their spread is near 1.
 */
export function noiseRatios(
  bar: SimulatedBar,
  catalogue: Catalogue,
): { item: string; week: number; ratio: number }[] {
  return bar.truth.weeks.flatMap(({ week, openingCount, closingCount, items, expected, useSd }) => {
    const opening = readCount(bar, catalogue, openingCount);
    const closing = readCount(bar, catalogue, closingCount);
    return Object.entries(items).flatMap(([item, flows]) => {
      const first = opening.get(item);
      const last = closing.get(item);
      if (first === undefined || last === undefined) return [];
      const came = flows.received + flows.made + flows.transferredIn - flows.transferredOut;
      const used = first.amount + came - last.amount;
      const unexplained = used - (expected[item] ?? 0) - flows.losses;
      const sd = Math.sqrt((useSd[item] ?? 0) ** 2 + first.variance + last.variance);
      return sd === 0 ? [] : [{ item, week, ratio: unexplained / sd }];
    });
  });
}
