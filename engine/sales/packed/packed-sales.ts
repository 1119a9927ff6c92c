import { packBlock, unpackBlock } from "#engine/sales/packed/block.ts";
import { DayColumns, NOTHING } from "#engine/sales/packed/day-columns.ts";
import { type DayTally, tallyOf } from "#engine/sales/packed/tally.ts";
import type { TextTable } from "#engine/sales/packed/texts.ts";
import { type FileOfDay, unionOf } from "#engine/sales/packed/union.ts";
import { dateText } from "#engine/sales/read/clock.ts";
import type { SaleLine } from "#engine/sales/read/line.ts";

/** All lines that one file has of one business day, packed, with their tally. */
export type PackedDay = { businessDate: string; lines: number; block: Uint8Array; tally: DayTally };

const DAY_MS = 86_400_000;
/** Lines held in columns before the days that are not being read are packed. */
const LOOSE_LINES_MOST = 1 << 15;
/** Columns kept to be filled anew, so that not every day has to make room for itself. */
const SPARE_MOST = 16;

/**
 * Gathers the lines of a file by business day and packs them on the way, so that a long file needs little room.
 *
 * Days may come in any order and be returned to.
 */
export class SalesPacker {
  readonly texts: TextTable;
  readonly #open = new Map<number, DayColumns>();
  readonly #spare: DayColumns[] = [];
  readonly #packed = new Map<number, PackedDay[]>();
  #lines = 0;
  #looseAtSpill = 0;
  #lastDay = Number.NaN;
  #last = new DayColumns();

  constructor(texts: TextTable) {
    this.texts = texts;
  }

  get lines(): number {
    return this.#lines;
  }

  /** The columns of a business day (days since 1970) to add one line to. */
  day(day: number): DayColumns {
    this.#lines += 1;
    if (day === this.#lastDay) return this.#last;
    if (this.#lines - this.#looseAtSpill > LOOSE_LINES_MOST) this.#spill();
    let columns = this.#open.get(day);
    if (columns === undefined) {
      columns = this.#spare.pop() ?? new DayColumns();
      this.#open.set(day, columns);
    }
    this.#lastDay = day;
    this.#last = columns;
    return columns;
  }

  /** Adds a line that was read as such. */
  addLine(line: SaleLine): void {
    const columns = this.day(Date.parse(line.businessDate) / DAY_MS);
    columns.add(
      line.at === null ? NOTHING : Date.parse(line.at) / 1000,
      columns.codeOf(line.check),
      columns.codeOf(line.lineNo),
      this.texts.numberOf(line.ringName),
      this.texts.numberOf(line.modifiers),
      line.quantity + 0,
      line.grossMinor ?? NOTHING,
      line.netMinor ?? NOTHING,
    );
  }

  /** All days, oldest first. Nothing may be added afterwards. */
  *finish(): Generator<PackedDay> {
    const days = new Set([...this.#packed.keys(), ...this.#open.keys()]);
    for (const day of [...days].sort((one, other) => one - other)) {
      const parts = this.#packed.get(day) ?? [];
      const open = this.#open.get(day);
      const [only] = parts;
      if (only !== undefined && parts.length === 1 && open === undefined) yield only;
      else
        yield packDay(
          day,
          joined([...parts.map(({ block }) => unpackBlock(block)), ...(open ? [open] : [])]),
        );
    }
  }

  #spill(): void {
    for (const [day, columns] of this.#open) {
      const parts = this.#packed.get(day);
      if (parts === undefined) this.#packed.set(day, [packDay(day, columns)]);
      else parts.push(packDay(day, columns));
      columns.clear();
      if (this.#spare.length < SPARE_MOST) this.#spare.push(columns);
    }
    this.#open.clear();
    this.#lastDay = Number.NaN;
    this.#looseAtSpill = this.#lines;
  }
}

function packDay(day: number, columns: DayColumns): PackedDay {
  const block = packBlock(columns);
  return { businessDate: dateText(day), lines: columns.count, block, tally: tallyOf(columns) };
}

/** All lines of several parts of one day. */
function joined([first = new DayColumns(), ...others]: readonly DayColumns[]): DayColumns {
  for (const part of others) for (let row = 0; row < part.count; row += 1) first.addFrom(part, row);
  return first;
}

/** The lines of a day's columns as they were read. */
export function linesOf(businessDate: string, day: DayColumns, texts: TextTable): SaleLine[] {
  return Array.from({ length: day.count }, (_, row) => {
    const orNull = (value = NOTHING): number | null => (value === NOTHING ? null : value);
    const at = orNull(day.at[row]);
    return {
      businessDate,
      at: at === null ? null : `${new Date(at * 1000).toISOString().slice(0, 19)}Z`,
      ringName: texts.textOf(day.ringName[row] as number),
      modifiers: texts.textOf(day.modifiers[row] as number),
      quantity: day.quantity[row] as number,
      grossMinor: orNull(day.grossMinor[row]),
      netMinor: orNull(day.netMinor[row]),
      check: day.codeText(day.check[row] as number),
      lineNo: day.codeText(day.lineNo[row] as number),
    };
  });
}

/** One file's lines of a day, packed, and whether its sums take the place of earlier ones. */
export type HeldBlock = { packed: Uint8Array; replacesSums: boolean };

/** What packed blocks of one day show together, oldest first. */
export function unionOfBlocks(blocks: readonly HeldBlock[]): DayColumns {
  return unionOf(blocks.map(fileOfDay));
}

export function fileOfDay({ packed, replacesSums }: HeldBlock): FileOfDay {
  return { columns: unpackBlock(packed), replacesSums };
}
