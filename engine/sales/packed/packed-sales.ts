import { packBlock, unpackBlock } from "#engine/sales/packed/block.ts";
import { DayColumns, NOTHING } from "#engine/sales/packed/day-columns.ts";
import { packStaff, unpackStaff } from "#engine/sales/packed/staff.ts";
import { type DayTally, tallyOf } from "#engine/sales/packed/tally.ts";
import { TextTable } from "#engine/sales/packed/texts.ts";
import { type FileOfDay, unionOf } from "#engine/sales/packed/union.ts";
import { dateText } from "#engine/sales/read/clock.ts";
import type { SaleLine } from "#engine/sales/read/line.ts";

/** All lines that one file has of one business day, packed, with their tally; and who rang them, where that is kept. */
export type PackedDay = {
  businessDate: string;
  lines: number;
  block: Uint8Array;
  tally: DayTally;
  /** Numbers in the packer's own table of names. */
  staff: Uint8Array | null;
};

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
  /** Who rang the lines; its numbers hold for this file only. */
  readonly staff = new TextTable();
  readonly #open = new Map<number, DayColumns>();
  readonly #spare: DayColumns[] = [];
  readonly #packed = new Map<number, PackedPart[]>();
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
    if (line.staff !== undefined) columns.rungBy(this.staff.numberOf(line.staff));
  }

  /** All days, oldest first. Nothing may be added afterwards. */
  *finish(): Generator<PackedDay> {
    const days = new Set([...this.#packed.keys(), ...this.#open.keys()]);
    for (const day of [...days].sort((one, other) => one - other)) {
      const parts = this.#packed.get(day) ?? [];
      const open = this.#open.get(day);
      const [only] = parts;
      if (only !== undefined && parts.length === 1 && open === undefined) yield asDay(day, only);
      else yield packDay(day, joined([...parts.map(unpackDay), ...(open ? [open] : [])]));
    }
  }

  #spill(): void {
    for (const [day, columns] of this.#open) {
      const parts = this.#packed.get(day);
      if (parts === undefined) this.#packed.set(day, [{ ...packPart(columns), tally: tallyOf(columns) }]);
      else parts.push({ ...packPart(columns), tally: null });
      columns.clear();
      if (this.#spare.length < SPARE_MOST) this.#spare.push(columns);
    }
    this.#open.clear();
    this.#lastDay = Number.NaN;
    this.#looseAtSpill = this.#lines;
  }
}

/** What was packed of a day so far; a second part has no tally, as the whole day is tallied anew then. */
type PackedPart = Omit<PackedDay, "businessDate" | "tally"> & { tally: DayTally | null };

function packPart(columns: DayColumns): Omit<PackedPart, "tally"> {
  const block = packBlock(columns);
  return { lines: columns.count, block, staff: packStaff(columns) };
}

function packDay(day: number, columns: DayColumns): PackedDay {
  return { businessDate: dateText(day), ...packPart(columns), tally: tallyOf(columns) };
}

function asDay(day: number, part: PackedPart): PackedDay {
  return { businessDate: dateText(day), ...part, tally: part.tally ?? tallyOf(unpackBlock(part.block)) };
}

/** The lines of a packed day, with who rang them where that is kept. */
export function unpackDay({ block, staff }: Pick<PackedDay, "block" | "staff">): DayColumns {
  const day = unpackBlock(block);
  if (staff !== null) unpackStaff(staff, day);
  return day;
}

/** All lines of several parts of one day. */
function joined([first = new DayColumns(), ...others]: readonly DayColumns[]): DayColumns {
  for (const part of others) for (let row = 0; row < part.count; row += 1) first.addFrom(part, row);
  return first;
}

/** The lines of a day's columns as they were read; with who rang them where the names are given. */
export function linesOf(
  businessDate: string,
  day: DayColumns,
  texts: TextTable,
  names?: TextTable,
): SaleLine[] {
  return Array.from({ length: day.count }, (_, row) => {
    const orNull = (value = NOTHING): number | null => (value === NOTHING ? null : value);
    const at = orNull(day.at[row]);
    const staff = day.staff?.[row] ?? 0;
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
      ...(names === undefined || staff === 0 ? {} : { staff: names.textOf(staff) }),
    };
  });
}

/** One file's lines of a day, packed, and whether its sums take the place of earlier ones; who rang them, where asked for. */
export type HeldBlock = { packed: Uint8Array; replacesSums: boolean; staff?: Uint8Array | null };

/** What packed blocks of one day show together, oldest first. */
export function unionOfBlocks(blocks: readonly HeldBlock[]): DayColumns {
  return unionOf(blocks.map(fileOfDay));
}

export function fileOfDay({ packed, replacesSums, staff = null }: HeldBlock): FileOfDay {
  return { columns: unpackDay({ block: packed, staff }), replacesSums };
}
