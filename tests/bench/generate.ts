import { existsSync, mkdirSync, renameSync } from "node:fs";
import { join } from "node:path";
import { writeBigBar } from "#tests/bench/big-bar.ts";
import { writeBigTill } from "#tests/bench/big-till.ts";

const SEED = 20_261_125;

export type BenchFiles = { book: string; sales: string };

/** The book and the sales file of so many lines in a folder; written once, as they are the same every time. */
export function benchFiles(folder: string, lines: number): BenchFiles {
  mkdirSync(folder, { recursive: true });
  const book = join(folder, "book");
  const bar = writeBigBar(book, SEED);
  const sales = join(folder, `till-${lines}.csv`);
  if (!existsSync(sales)) {
    // Under another name until it is whole, so that a generator that was stopped leaves no half of a file.
    writeBigTill(`${sales}.part`, bar, lines, SEED);
    renameSync(`${sales}.part`, sales);
  }
  return { book, sales };
}

if (process.argv[1]?.endsWith("generate.ts")) {
  const [folder = "", lines = ""] = process.argv.slice(2);
  process.stdout.write(`${JSON.stringify(benchFiles(folder, Number(lines)))}\n`);
}
