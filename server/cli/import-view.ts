import { type Section, section } from "#server/cli/output.ts";
import type { ImportReport } from "#server/sales-import.ts";

// How sales files that were read in are shown, by `ullage sales` and by `ullage load`.

type FileRow = Pick<
  ImportReport,
  "file" | "lines" | "new" | "known" | "changed" | "daysTouched" | "coverage"
> & { refused: readonly unknown[] };

/** One row a file, with columns before them as the command has it. */
export function filesSection<Row extends FileRow>(
  rows: readonly Row[],
  first: Section<Row>["columns"],
  notes: readonly string[],
): Section<Row> {
  return section<Row>({
    columns: [
      ...first,
      { head: "file", cell: (row) => row.file },
      { head: "lines", cell: (row) => row.lines, digits: 0 },
      { head: "new", cell: (row) => row.new, digits: 0 },
      { head: "known", cell: (row) => row.known, digits: 0 },
      { head: "changed", cell: (row) => row.changed, digits: 0 },
      { head: "refused", cell: (row) => row.refused.length, digits: 0 },
      { head: "days", cell: (row) => row.daysTouched.length, digits: 0 },
      { head: "mapped", cell: (row) => percent(row.coverage.quantity) },
      { head: "of money", cell: (row) => percent(row.coverage.money) },
    ],
    rows,
    notes,
  });
}

/** 0.9934 → "99.3 %" */
export function percent(share: number): string {
  return `${(share * 100).toFixed(1)} %`;
}

const DATES_SHOWN = 12;

/** Some dates, and how many more there are: "2026-03-02, 2026-03-05 and 7 more". */
export function datesShown(dates: readonly string[]): string {
  const shown = dates.slice(0, DATES_SHOWN).join(", ");
  return dates.length > DATES_SHOWN ? `${shown} and ${dates.length - DATES_SHOWN} more` : shown;
}

const ITEMS_SHOWN = 10;

export function unmappedSection(title: string, unmapped: ImportReport["unmapped"]) {
  if (unmapped.length === 0) return [];
  return [
    section({
      title,
      columns: [
        { head: "ring name", cell: (row) => row.ringName },
        { head: "quantity", cell: (row) => row.quantity, digits: 0 },
        { head: "net", cell: (row) => row.net, digits: 2 },
      ],
      rows: unmapped.slice(0, ITEMS_SHOWN),
      notes: moreThan(unmapped.length, ""),
    }),
  ];
}

export function unlikeSection(title: string, daysUnlike: ImportReport["daysUnlike"]) {
  if (daysUnlike.length === 0) return [];
  return [
    section({
      title,
      columns: [
        { head: "day", cell: (row) => row.date },
        { head: "sold", cell: (row) => row.quantity, digits: 0 },
        { head: "usual of the weekday", cell: (row) => row.usual, digits: 0 },
      ],
      rows: daysUnlike.slice(0, ITEMS_SHOWN),
      notes: moreThan(daysUnlike.length, " days"),
    }),
  ];
}

export function movedSection(title: string, moved: ImportReport["moved"]) {
  if (moved.length === 0) return [];
  return [
    section({
      title,
      columns: [
        { head: "item", cell: (row) => row.item },
        { head: "before", cell: (row) => row.before, digits: 1 },
        { head: "now", cell: (row) => row.after, digits: 1 },
        { head: "unit", cell: (row) => row.base },
      ],
      rows: moved.slice(0, ITEMS_SHOWN),
      notes: moreThan(moved.length, " items"),
    }),
  ];
}

function moreThan(count: number, what: string): string[] {
  return count > ITEMS_SHOWN ? [`and ${count - ITEMS_SHOWN} more${what}.`] : [];
}
