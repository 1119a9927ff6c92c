/**
 * What the measurements are held to. Ratios are to papaparse alone on the same file in the same run (1.0), by the time that a
 * process takes from its start to its end.
 */
export const BUDGETS = {
  /** From the file to lines, tallies and expected use that are committed. */
  importRatioMost: 1.8,
  importRatioAim: 1.0,
  /** The same file a second time. */
  againRatioMost: 0.75,
  /** The whole of `ullage sales` is ahead of DuckDB in the same run. */
  isAheadOfDuckDb: true,
  /** Peak memory of the process by lines of the file. */
  memoryMostMb: new Map([
    [100_000, 250],
    [1_000_000, 250],
    [5_000_000, 500],
  ]),
  /** Ratios are held at this size; smaller files are mostly the start of a process. */
  heldAtLines: 1_000_000,
  /** Expected use of 52 weeks from tallies after a spec was edited. */
  useOfYearMostMs: 50,
  /** Script, gzipped, that the count needs before it can be used: a phone in a cellar doorway loads it. */
  countFirstLoadMostBytes: 130_000,
  /** The same for every other screen. */
  screenFirstLoadMostBytes: 250_000,
  /** One frame at 60 Hz: all work for a key of the count, the browser's own included, on a processor slowed four times. */
  keyMostMs: 1000 / 60,
  /** What our screen adds to the key over a bare field in the same run: the part that a slow machine cannot excuse. */
  keyAddsMostMs: 1000 / 60,
  /** The variance screen of 150 items, from its data to all rows. */
  varianceShownMostMs: 200,
  /** Recipe text of 10 000 lines, read. */
  specTextMostMs: 2000,
  /** Demand of 150 drinks from two years of sales, tallies in hand. */
  fitTwoYearsMostMs: 2000,
} as const;
