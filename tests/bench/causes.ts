import { parseArgs } from "node:util";
import { varianceReport } from "#engine/variance/report.ts";
import { trendReport } from "#engine/variance/trend.ts";
import { BARS, type BarName } from "#tests/variance/bars.ts";
import { type Hit, hitsOf, hitTable, rateWithin, reliabilityTable } from "#tests/variance/hit-rates.ts";
import { largeBar } from "#tests/variance/large-bar.ts";
import { readSimulated, weekReports } from "#tests/variance/simulated.ts";
import { countNamed } from "#tests/variance/small-bar.ts";

const print = (text: string) => process.stdout.write(`${text}\n`);

/**
 * Measures the causes on bars of all kinds: `npm run bench -- causes [BAR…] [--seeds 1-6]`. How often the right cause comes
 * first and among the first three, how often what was said came true, how often a clean week is accused, how far what
 * is unexplained spreads, and how long a large week takes. Exit 1 where the week takes more than a second of processor.
 */
export function benchCauses(args: string[]): void {
  const { values, positionals } = parseArgs({
    args,
    allowPositionals: true,
    options: { seeds: { type: "string", default: "1-6" } },
  });
  const names = (positionals.length === 0 ? Object.keys(BARS) : positionals) as BarName[];
  const [from = 1, to = from] = values.seeds.split("-").map(Number);
  const seeds = Array.from({ length: to - from + 1 }, (_, index) => from + index);
  const hits = new Map(names.map((name) => [name, seeds.flatMap((seed) => hitsIn(name, seed))]));
  const all = [...hits.values()].flat();
  for (const [name, own] of [...hits, ["all", all] as const]) print(rateLine(name, own));
  print(`\n${hitTable(all)}\n\n${reliabilityTable(all)}\n`);
  for (const name of names) print(cleanLine(name, seeds));
  process.exitCode = isFastEnough() ? 0 : 1;
}

function hitsIn(name: BarName, seed: number): Hit[] {
  const { simulation, week } = BARS[name](seed);
  return hitsOf(simulation, week);
}

const percent = (share: number) => `${(100 * share).toFixed(1)} %`;

function rateLine(name: string, hits: readonly Hit[]): string {
  const [first, three] = [rateWithin(hits, 1), rateWithin(hits, 3)];
  return `${name}: ${hits.length} runs, first ${percent(first)}, among three ${percent(three)}`;
}

function cleanLine(name: BarName, seeds: readonly number[]): string {
  const reports = seeds.flatMap((seed) => {
    const { simulation } = BARS[name](seed);
    const bar = readSimulated({ ...simulation, faults: [] });
    return Array.from({ length: simulation.weeks }, (_, index) => weekReports(bar, index + 1)).flat();
  });
  const alarms = reports.filter(({ causes }) => causes.some(({ probability }) => probability >= 0.5));
  // What was sealed at both counts and never opened has no uncertainty and no ratio.
  const ratios = reports.flatMap(({ items }) => items.filter(({ sd }) => sd > 0).map(({ ratio }) => ratio));
  const spread = Math.sqrt(ratios.reduce((sum, ratio) => sum + ratio ** 2, 0) / ratios.length);
  const beyond = ratios.filter((ratio) => Math.abs(ratio) > 2).length / ratios.length;
  return `${name}, clean: ${alarms.length} of ${reports.length} periods accused; spread ${spread.toFixed(2)}, ${percent(beyond)} of ${ratios.length} beyond 2`;
}

const MOST_MS = 1000;
const ROUNDS = 3;

/** A week of 150 items with its causes after a year of counts, and the year's trend: the middle of three. */
function isFastEnough(): boolean {
  const { facts, sales } = largeBar();
  const [opening, closing] = [countNamed(facts, "Week 51"), countNamed(facts, "Week 52")];
  const costPerBase = new Map<string, number>();
  const week = middleMs(() => varianceReport({ facts, sales, opening, closing, costPerBase }));
  const trend = middleMs(() => trendReport({ facts, sales, costPerBase }));
  print(`\n150 items, 52 weeks: the latest week with its causes ${week.toFixed(0)} ms of processor, `);
  print(`the year's trend ${trend.toFixed(0)} ms.`);
  return week < MOST_MS;
}

/** Of the processor and not by the clock: a machine may be busy with other things. */
function middleMs(run: () => unknown): number {
  const times = Array.from({ length: ROUNDS }, () => {
    const before = process.cpuUsage();
    run();
    const { user, system } = process.cpuUsage(before);
    return (user + system) / 1000;
  });
  return times.sort((a, b) => a - b)[Math.floor(ROUNDS / 2)] ?? 0;
}
