import type { Db } from "#db/open.ts";
import { daySales, salesTexts, talliesBetween } from "#db/sales-repository.ts";
import type { DayChange } from "#db/stored/day-changes.ts";
import type { Book } from "#engine/book.ts";
import { factsOf } from "#engine/facts.ts";
import { type ChangedDay, type Explained, explainImport } from "#engine/sales/explain.ts";
import { type DayTally, NO_TALLY } from "#engine/sales/packed/tally.ts";
import type { RefusedRow } from "#engine/sales/read/line.ts";
import type { BusinessDate } from "#engine/time.ts";
import type { SalesImport } from "#server/sales-files.ts";
import { dayNotices } from "#server/sales-notices.ts";

/** One sales file of a book that was loaded; coverage is of the days it touches, as they were after it. */
export type LoadedFile = {
  file: string;
  lines: number;
  new: number;
  known: number;
  changed: number;
  refused: readonly RefusedRow[];
  notices: string[];
  daysTouched: BusinessDate[];
  coverage: Explained["coverage"];
};

/** The sales of a book that was loaded: file by file, and what all of them say together. */
export type LoadedSales = { files: LoadedFile[] } & Pick<
  Explained,
  "coverage" | "unmapped" | "daysMissing" | "daysUnlike"
>;

const ALWAYS = { from: "0001-01-01", to: "9999-12-31" };

/** Explains the sales files of a book right after it was loaded; `changes` are what each of them did to its days, in their order. */
export async function explainLoad(
  db: Db,
  book: Book,
  imports: readonly SalesImport[],
  changes: readonly (readonly DayChange[])[],
): Promise<LoadedSales> {
  const facts = factsOf(book);
  const texts = await salesTexts(db);
  const totals = await daySales(db, ALWAYS);
  const explained = (days: readonly { businessDate: BusinessDate; after: DayTally }[]): Explained =>
    explainImport(facts, days.map(asFound), texts, totals);
  const files = imports.map((read, at): LoadedFile => {
    const days = changes[at] ?? [];
    const fresh = days.reduce((sum, day) => sum + day.new, 0);
    const changed = days.reduce((sum, day) => sum + day.changed, 0);
    return {
      file: read.file,
      lines: read.count,
      new: fresh,
      known: read.count - fresh - changed,
      changed,
      refused: read.refused,
      notices: dayNotices(days),
      daysTouched: days.map(({ businessDate }) => businessDate),
      coverage: explained(days).coverage,
    };
  });
  const days = (await talliesBetween(db, ALWAYS)).map(({ businessDate, tally }) => ({
    businessDate,
    after: tally,
  }));
  const { coverage, unmapped, daysMissing, daysUnlike } = explained(days);
  return { files, coverage, unmapped, daysMissing, daysUnlike };
}

/** A day as it is: in a book that was just loaded, all of expected use is new, and nothing of it moved. */
function asFound({ businessDate, after }: { businessDate: BusinessDate; after: DayTally }): ChangedDay {
  return { businessDate, isMoved: false, before: NO_TALLY, after, divided: null };
}
