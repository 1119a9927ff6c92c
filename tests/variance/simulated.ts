import { readBook } from "#db/book/read-book.ts";
import { unitCosts } from "#engine/costing/unit-cost.ts";
import { type Facts, factsOf } from "#engine/facts.ts";
import type { VenueClock } from "#engine/sales/read/clock.ts";
import { readSales } from "#engine/sales/read/read-sales.ts";
import type { SaleGroup } from "#engine/sales/tally.ts";
import { dividedDates } from "#engine/stock/counts.ts";
import { type VarianceReport, varianceReport } from "#engine/variance/report.ts";
import { type SimulatedBar, type Simulation, simulateBar } from "#tests/simulate/bar.ts";

/** A simulated bar read by the product itself: its book, and its till's files as sales. */
export type ReadBar = { facts: Facts; sales: SaleGroup[]; truth: SimulatedBar["truth"] };

export function readSimulated(simulation: Simulation): ReadBar {
  const bar = simulateBar(simulation);
  const { book } = readBook(new Map(Object.entries(bar.book)));
  const facts = factsOf(book);
  return { facts, sales: tallied(facts, salesOf(bar, facts)), truth: bar.truth };
}

/** Equal lines of two files are the same sales. */
function salesOf(bar: SimulatedBar, { catalogue: { venue } }: Facts): SaleGroup[] {
  const most = new Map<string, SaleGroup[]>();
  for (const file of bar.sales) {
    for (const [key, sales] of linesOf(file, { timeZone: venue.timeZone, dayEnds: venue.dayEnds })) {
      if (sales.length > (most.get(key)?.length ?? 0)) most.set(key, sales);
    }
  }
  return [...most.values()].flat();
}

type Lines = ReadonlyMap<string, SaleGroup[]>;
const READ_MOST = 24;
const readBefore = new Map<string, Lines>();

/**
 * The sales of a file, equal lines together. Trouble in one week leaves the till's files of the others as they were to the
 * byte, and a file that was read is not read again.
 */
function linesOf({ file, text }: SimulatedBar["sales"][number], clock: VenueClock): Lines {
  const name = JSON.stringify([file, clock, text]);
  const known = readBefore.get(name);
  if (known !== undefined) return known;
  const { lines } = readSales(new TextEncoder().encode(text), { fileName: file, clock, currencyDigits: 2 });
  const own = new Map<string, SaleGroup[]>();
  for (const line of lines) {
    const { businessDate, at, ringName, modifiers, quantity, netMinor } = line;
    const timed = at !== null;
    const sale = { businessDate, at, timed, ringName, modifiers, quantity, netMinor: netMinor ?? 0 };
    const key = JSON.stringify(line);
    const equal = own.get(key);
    if (equal === undefined) own.set(key, [sale]);
    else equal.push(sale);
  }
  if (readBefore.size >= READ_MOST) readBefore.clear();
  readBefore.set(name, own);
  return own;
}

/** Sums the days that no count divides, as a database does. */
function tallied(facts: Facts, sales: readonly SaleGroup[]): SaleGroup[] {
  const divided = dividedDates(facts.counts, facts.catalogue);
  const groups = new Map<string, SaleGroup>();
  const single: SaleGroup[] = [];
  for (const sale of sales) {
    if (divided.has(sale.businessDate)) {
      single.push(sale);
      continue;
    }
    const { businessDate, timed, ringName, modifiers } = sale;
    const key = JSON.stringify([businessDate, timed, ringName, modifiers]);
    const held = groups.get(key);
    if (held === undefined) groups.set(key, { ...sale, at: null });
    else {
      held.quantity += sale.quantity;
      held.netMinor += sale.netMinor;
    }
  }
  return [...groups.values(), ...single];
}

/** The variance of week n, between counts n − 1 and n of a bar that counts once a week. */
export function weekReport(bar: ReadBar, week: number): VarianceReport {
  const reports = weekReports(bar, week);
  const [report] = reports;
  if (report === undefined || reports.length > 1) throw new Error(`Week ${week} is not one period.`);
  return report;
}

/** The variances of a week's periods: one where the bar counts once a week, else as many as it counts. */
export function weekReports({ facts, sales, truth }: ReadBar, week: number): VarianceReport[] {
  const place = (count: string | undefined) => facts.counts.findIndex(({ name }) => name === count);
  const [first, last] = [
    place(truth.weeks[week - 1]?.openingCount),
    place(truth.weeks[week - 1]?.closingCount),
  ];
  if (first < 0 || last < 0) throw new Error(`There is no week ${week}.`);
  return facts.counts.slice(first + 1, last + 1).flatMap((closing, index) => {
    const opening = facts.counts[first + index];
    const costPerBase = unitCosts(facts, closing.at);
    return opening === undefined ? [] : [varianceReport({ facts, sales, opening, closing, costPerBase })];
  });
}
