import { beforeAll, describe, expect, it } from "vitest";
import { uncertaintyBudget } from "#engine/variance/budget.ts";
import { CAUSE_KINDS } from "#engine/variance/causes/cause.ts";
import type { VarianceReport } from "#engine/variance/report.ts";
import { trendReport } from "#engine/variance/trend.ts";
import type { FaultKind } from "#tests/simulate/faults.ts";
import { drawFault, isSame } from "./planted.ts";
import { type ReadBar, readSimulated, weekReport } from "./simulated.ts";

// The simulated bar knows its truth; the product sees only the book and the till's files.

describe("thirteen clean weeks", () => {
  let bar: ReadBar;
  let reports: VarianceReport[] = [];
  beforeAll(() => {
    bar = readSimulated({ seed: 11, weeks: 13, faults: [] });
    reports = Array.from({ length: 13 }, (_, index) => weekReport(bar, index + 1));
  });

  it("have unexplained amounts as large as their stated uncertainty says", () => {
    const ratios = reports.flatMap(({ items }) => items.map(({ ratio }) => ratio));
    const sd = Math.sqrt(ratios.reduce((sum, ratio) => sum + ratio ** 2, 0) / ratios.length);
    expect(ratios.length).toBeGreaterThan(800);
    expect(sd).toBeGreaterThan(0.9);
    expect(sd).toBeLessThan(1.1);
    // One in twenty to be expected; of so many the share itself is known to seven in a thousand.
    const beyond = ratios.filter((ratio) => Math.abs(ratio) > 2).length / ratios.length;
    expect(beyond).toBeGreaterThan(0.03);
    expect(beyond).toBeLessThan(0.07);
  });

  it("give hardly a cause and no chase", () => {
    const groups = reports.flatMap(({ causes }) => [...new Set(causes.map(({ group }) => group))]);
    expect(groups.length).toBeLessThanOrEqual(2);
    const items = reports.flatMap((report) => report.items);
    expect(items.filter(({ verdict }) => verdict === "chase").length).toBeLessThanOrEqual(4);
    expect(items.filter(({ verdict }) => verdict === "quiet").length).toBeGreaterThan(0.97 * items.length);
  });

  it("show no drift", () => {
    const { items } = trendReport({ facts: bar.facts, sales: bar.sales, costPerBase: new Map() });
    expect(items.filter(({ drift }) => drift !== null).length).toBeLessThanOrEqual(2);
  });

  it("have an uncertainty budget for every item, in shares of one", () => {
    const [opening, closing, report] = [bar.facts.counts[12], bar.facts.counts[13], reports[12]];
    if (opening === undefined || closing === undefined || report === undefined)
      throw new Error("There are thirteen weeks.");
    for (const { item, sd } of report.items.slice(0, 12)) {
      const budget = uncertaintyBudget(bar.facts, bar.sales, item, opening, closing);
      const sum = Object.values(budget?.shares ?? {}).reduce((total, share) => total + share, 0);
      expect(sum).toBeCloseTo(sd > 0 ? 1 : 0, 9);
      expect(budget?.sd).toBeCloseTo(sd, 9);
    }
  });
});

/** Kinds that one week's numbers cannot tell apart: the planted one has to be among the group's first five. */
const ALIKE: FaultKind[] = ["delivery-short", "breakage", "over-pour", "container-miscounted"];

describe("one trouble planted in the last of four weeks", () => {
  const WEEK = 4;
  let clean: ReadBar;
  beforeAll(() => {
    clean = readSimulated({ seed: 3, weeks: WEEK, faults: [] });
  });

  it.each(CAUSE_KINDS.filter((kind) => kind !== "area-skipped" && kind !== "older-spec"))(
    "finds %s",
    (kind) => {
      const fault = drawFault(kind, clean, WEEK, 7);
      if (fault === undefined) throw new Error(`The bar has no room for ${kind}.`);
      const bar = readSimulated({ seed: 3, weeks: WEEK, faults: [fault] });
      const planted = bar.truth.planted.find((truth) => truth.week === WEEK);
      if (planted === undefined) throw new Error(`${kind} did not come about.`);
      const { causes } = weekReport(bar, WEEK);
      const found = causes.findIndex((cause) => cause.kind === kind && isSame(cause.what, planted.what));
      expect(found).toBeGreaterThanOrEqual(0);
      if (!ALIKE.includes(kind)) expect(found).toBe(0);
      expect(causes[found]?.group).toBe(causes[0]?.group);
      expect(Math.abs((causes[found]?.size ?? 0) / planted.size - 1)).toBeLessThan(0.3);
    },
  );
});

it("finds a steady over-pour in the trend, and the week it began", () => {
  const bar = readSimulated({
    seed: 2,
    weeks: 10,
    faults: [{ kind: "over-pour", week: 6, untilWeek: 10, item: "Quillmere Vodka", share: 0.06 }],
  });
  const { items } = trendReport({ facts: bar.facts, sales: bar.sales, costPerBase: new Map() });
  const vodka = items.find(({ item }) => item === "Quillmere Vodka");
  expect(vodka?.drift?.direction).toBe("missing");
  const began = bar.facts.counts.findIndex(({ name }) => name === vodka?.drift?.since) + 1;
  expect(began).toBeGreaterThanOrEqual(5);
  expect(began).toBeLessThanOrEqual(7);
});
