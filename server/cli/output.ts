import { csvTable } from "#server/cli/csv.ts";
import { type Column, hasColour, textTable } from "#server/cli/table.ts";

export type Format = "table" | "json" | "csv";

/** One table of a report as people read it. */
export type Section<Row> = {
  title?: string;
  columns: readonly Column<Row>[];
  rows: readonly Row[];
  /** Said when there are no rows. */
  empty?: string;
  /** Lines under the table. */
  notes?: readonly string[];
};

export type Report = {
  /** What `--json` prints. */
  json: unknown;
  /** Lines above the first table. */
  head?: readonly string[];
  // biome-ignore lint/suspicious/noExplicitAny: a report holds tables of different rows
  sections: readonly Section<any>[];
  /** What `--csv` prints where that is not the first table: all its rows in one. */
  // biome-ignore lint/suspicious/noExplicitAny: as above
  csv?: Section<any>;
};

/** Keeps the row type of a section where it is written. */
export function section<Row>(part: Section<Row>): Section<Row> {
  return part;
}

/** Prints a report in the wanted form; `--csv` prints one table: its first, or the one meant for it. */
export function printReport(report: Report, format: Format): void {
  process.stdout.write(`${reportText(report, format, hasColour(process.stdout))}\n`);
}

export function reportText(report: Report, format: Format, colour: boolean): string {
  if (format === "json") return JSON.stringify(report.json, null, 2);
  if (format === "csv") {
    const first = report.csv ?? report.sections[0];
    return first === undefined ? "" : csvTable(first.columns, first.rows);
  }
  const parts = report.sections.map((part) => sectionText(part, colour));
  return [...(report.head ?? []), ...(report.head?.length ? [""] : []), parts.join("\n\n")].join("\n");
}

// biome-ignore lint/suspicious/noExplicitAny: as above
function sectionText({ title, columns, rows, empty, notes = [] }: Section<any>, colour: boolean): string {
  const body = rows.length === 0 ? (empty ?? "Nothing to show.") : textTable(columns, rows, colour);
  return [...(title === undefined ? [] : [title, ""]), body, ...notes].join("\n");
}
