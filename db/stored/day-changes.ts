import type { Db } from "#db/open.ts";
import { BlockKeeper, LiveBlocks } from "#db/stored/sale-blocks.ts";
import { TallyKeeper } from "#db/stored/tally-keeper.ts";
import { unpackBlock } from "#engine/sales/packed/block.ts";
import { DayColumns } from "#engine/sales/packed/day-columns.ts";
import { fileOfDay, type PackedDay, unionOfBlocks } from "#engine/sales/packed/packed-sales.ts";
import { type DayTally, NO_TALLY, tallyOf, unpackTally } from "#engine/sales/packed/tally.ts";
import { joinFile } from "#engine/sales/packed/union.ts";
import type { BusinessDate } from "#engine/time.ts";

/** What an import does to one business day. */
export type DayChange = {
  businessDate: BusinessDate;
  /** Lines the file has of the day; how many were not known before, and how many take the place of a line that was. */
  lines: number;
  new: number;
  changed: number;
  /** Earlier sums that the file's took the place of; `dropped` are those of them that it has no sum for. */
  sumsReplaced: number;
  dropped: number;
  /** Lines of the day before the import and after it, from all files together. */
  linesBefore: number;
  linesAfter: number;
  before: DayTally;
  after: DayTally;
  /** The day's lines before and after, where they were asked for. */
  columns: { before: DayColumns; after: DayColumns } | null;
};

/** What a day that is known already does. */
export const NO_CHANGE = { changed: 0, sumsReplaced: 0, dropped: 0 } as const;

/** Whether an import changes what a day sold. */
export function isMoved({ new: fresh, changed, dropped }: DayChange): boolean {
  return fresh + changed + dropped > 0;
}

/** Works out what a day of a file changes, by the day as a whole: only a day that other files have too is looked into. */
export class DayChanges {
  readonly #blocks: BlockKeeper;
  readonly #live: LiveBlocks;
  readonly #tallies: TallyKeeper;
  readonly #splitDates: ReadonlySet<BusinessDate>;

  constructor(db: Db, splitDates: ReadonlySet<BusinessDate>) {
    this.#blocks = new BlockKeeper(db);
    this.#live = new LiveBlocks(db);
    this.#tallies = new TallyKeeper(db);
    this.#splitDates = splitDates;
  }

  by(day: PackedDay, replacesSums: boolean): DayChange {
    const { businessDate, lines } = day;
    const held = this.#tallies.of(businessDate);
    const live = held === undefined ? [] : this.#live.of(businessDate);
    const isSplit = this.#splitDates.has(businessDate);
    const known = live.length === 0 ? undefined : this.#blocks.find(day);
    const isKnown = known !== undefined && live.some(({ id }) => id === known);
    const before = held === undefined ? NO_TALLY : unpackTally(held.packed);
    const linesBefore = held?.lines ?? 0;
    const of = { businessDate, lines, linesBefore, before };
    if (isKnown) {
      const columns = isSplit ? unionOfBlocks(live) : null;
      const whole = columns && { before: columns, after: columns };
      return {
        ...of,
        new: 0,
        ...NO_CHANGE,
        linesAfter: linesBefore,
        after: before,
        columns: whole,
      };
    }
    if (live.length === 0) {
      const columns = isSplit ? { before: new DayColumns(), after: unpackBlock(day.block) } : null;
      return { ...of, new: lines, ...NO_CHANGE, linesAfter: lines, after: day.tally, columns };
    }
    const heldLines = unionOfBlocks(live);
    const {
      columns: after,
      known: _,
      ...counts
    } = joinFile(heldLines, fileOfDay({ packed: day.block, replacesSums }));
    return {
      ...of,
      ...counts,
      linesAfter: after.count,
      after: tallyOf(after),
      columns: isSplit ? { before: heldLines, after } : null,
    };
  }
}
