import { type SimulatedBar, simulateBar } from "./bar.ts";
import type { Fault } from "./faults.ts";

/** The honest trouble of the demo bar. Week 1 begins on 2026-08-24, week 13 ends with the count of 2026-11-23. */
export const SAMPLE_FAULTS: Fault[] = [
  { kind: "area-skipped", week: 5, area: "Dry store" },
  { kind: "breakage", week: 8, item: "Brasketto Bitter Aperitif", containers: 1 },
  { kind: "over-pour", week: 9, untilWeek: 13, item: "Quillmere Vodka", share: 0.15 },
  { kind: "container-miscounted", week: 12, item: "Thornquay Bourbon", sign: 1, containers: 1 },
  { kind: "unmapped-sale", week: 12, drink: "Elder Spritz", ringName: "Chef Special Spritz", serves: 7 },
  { kind: "delivery-not-entered", week: 13, item: "Orrindel Orange Liqueur" },
  { kind: "batch-not-logged", week: 13, prep: "Ginger Syrup" },
];

const SAMPLE_SEED = 1;
const SAMPLE_WEEKS = 13;

/** The demo bar: thirteen weeks of the Harbour Lantern with its planted trouble. */
export function sampleBar(): SimulatedBar {
  return simulateBar({ seed: SAMPLE_SEED, weeks: SAMPLE_WEEKS, faults: SAMPLE_FAULTS });
}

/** The files of sample-sales by path within the folder. */
export function sampleFiles(): Map<string, string> {
  const sample = sampleBar();
  return new Map([
    ...Object.entries(sample.book),
    ...sample.sales.map(({ file, text }): [string, string] => [`sales/${file}`, text]),
    ["README.md", readme(sample)],
  ]);
}

function readme({ truth }: SimulatedBar): string {
  const rows = truth.planted.map(
    ({ week, date, kind, what, size, unit, count }) =>
      `| ${week} | ${date} | ${kind} | ${[what].flat().join(" / ")} | ${shown(size, unit)} | ${count ?? ""} |`,
  );
  return `# The demo bar

This folder is a complete book, in plain sheets, of The Harbour Lantern, with thirteen weeks of sales files from
its till. The bar, its suppliers and every label are invented. Nothing here was measured in a real bar.

\`npm run sample\` writes it anew from a seeded simulation (\`tests/simulate/\`), to the byte. \`ullage demo\` loads it.

- Opening count on Monday 2026-08-24, then a count each Monday at about 10:00; the last is on 2026-11-23.
- Clocks go back on 2026-11-01. Some sales are rung after midnight; the trading day ends at 04:00.
- The till was replaced twice: \`sales/\` holds three kinds of export. The files of weeks 3 and 9 begin a day
  early, so those days stand in two files; they were sold once.
- Two specs change (Tideline Margarita on 2026-10-01, Mooring Old Fashioned on 2026-10-26), Frost Fair joins the
  menu on 2026-10-12, Bramble Sheet left it the day before, and limes press drier from 2026-10-12.
- The till knows a modifier ("Table Favorite") that the book does not.
- \`uncertainty\` in venue.json holds the very figures that the simulation errs by.

## The trouble planted in it

What a week shows apart from this is the noise of pouring, cutting and counting. The week is that of the count
which closes it. Sizes are the simulation's truth; a report can only estimate them.

| week | date | kind | what | size | count |
|---|---|---|---|---|---|
${rows.join("\n")}

- \`area-skipped\`: the dry store was written down as empty at that count, although the stock stood there.
- \`container-miscounted\`: one full bottle too many; it comes back with the opposite sign a week later.
- \`over-pour\`: a free-poured spirit runs 15 % over, from week 9 to the end.
- \`delivery-not-entered\`: the bottles came and were shelved, the invoice was not entered; its order looks open still.
- \`batch-not-logged\`: made and used, not written down, so its inputs look lost and the syrup looks found.
- \`breakage\`: broken on a Friday, not written down.
- \`unmapped-sale\`: rung under a name that the book does not know; the drink made was the Elder Spritz.

The drinks hold raw egg white, almonds and other allergens as any bar's do. Follow the local food code; nothing in
this folder says that something is safe.
`;
}

function shown(size: number, unit: string): string {
  return `${unit === "ml" || unit === "g" ? Math.round(size) : Number(size.toFixed(1))} ${unit}`;
}
