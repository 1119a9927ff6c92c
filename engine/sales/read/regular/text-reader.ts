import type { SalesPacker } from "#engine/sales/packed/packed-sales.ts";
import type { Reading } from "#engine/sales/read/flat-layout.ts";
import { nothingRead } from "#engine/sales/read/flat-layout.ts";
import type { RegularPlan } from "#engine/sales/read/regular/plan.ts";
import { RowCells } from "#engine/sales/read/regular/rows.ts";
import { cellText } from "#engine/sales/read/regular/text-cells.ts";
import { watchKind } from "#engine/sales/read/regular/watch-kind.ts";
import { remembering } from "#engine/sales/read/remember.ts";

/** Takes a file piece by piece; what it read is in `reading`, its lines in the packer it was given. */
export interface PieceReader {
  readonly reading: Reading;
  /** Reads all rows that end before `length`, and gives where the first one starts that does not. bytes[length] is a line feed. */
  take: (bytes: Uint8Array, from: number, length: number) => number;
  /** To be called after the last row. Throws HandOver where all rows together say something else than the first ones. */
  finish: () => void;
}

/** Reads rows as texts, one after the other, so that a file of any length needs the room of a few rows. */
export abstract class TextReader implements PieceReader {
  readonly reading: Reading = nothingRead();
  protected readonly packer: SalesPacker;
  readonly #cells: RowCells;
  readonly #firstRow: number;
  readonly #watched: { column: number; watch: (cell: string) => number }[];
  #row = 0;

  constructor(plan: RegularPlan, packer: SalesPacker) {
    const { firstRow, headings } = plan.understood;
    this.packer = packer;
    this.#cells = new RowCells(plan.delimiter);
    this.#firstRow = firstRow;
    this.#watched = plan.watched.map((column) => ({
      column,
      watch: remembering((cell: string) => watchKind(cell, headings[column] ?? "")),
    }));
  }

  take(bytes: Uint8Array, from: number, length: number): number {
    let at = from;
    while (at < length) {
      const next = this.#cells.find(bytes, at, length);
      if (next < 0) return at;
      if (this.#row >= this.#firstRow) this.#read(bytes);
      this.#row += 1;
      at = next;
    }
    return at;
  }

  /** Takes the row with the index, which counts from 0 at the top of the file. */
  protected abstract row(row: readonly string[], index: number): void;

  abstract finish(): void;

  #read(bytes: Uint8Array): void {
    const { starts, ends, doubled, count } = this.#cells;
    const row: string[] = [];
    for (let cell = 0; cell < count; cell += 1)
      row.push(cellText(bytes, starts[cell] as number, ends[cell] as number, doubled[cell] === 1));
    for (const { column, watch } of this.#watched) watch(row[column] ?? "");
    this.row(row, this.#row);
  }
}
