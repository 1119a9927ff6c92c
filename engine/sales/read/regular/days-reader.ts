import { NOTHING } from "#engine/sales/packed/day-columns.ts";
import type { SalesPacker } from "#engine/sales/packed/packed-sales.ts";
import { noEvidence, weighDecimal } from "#engine/sales/read/number.ts";
import { HandOver } from "#engine/sales/read/regular/hand-over.ts";
import type { DaysPlan } from "#engine/sales/read/regular/plan.ts";
import { TextReader } from "#engine/sales/read/regular/text-reader.ts";
import { type DaysLayout, decideDecimal, readDaysRow } from "#engine/sales/read/summed.ts";

/** Reads a file with items in rows and days in columns, row by row, by the rules of the general reader. */
export class DaysReader extends TextReader {
  readonly #layout: DaysLayout;
  readonly #plan: DaysPlan;
  readonly #evidence = noEvidence();
  readonly #noModifiers: number;

  constructor(plan: DaysPlan, packer: SalesPacker) {
    super(plan, packer);
    this.#plan = plan;
    this.#layout = plan.days;
    this.#noModifiers = packer.texts.numberOf("");
  }

  protected row(row: readonly string[], index: number): void {
    const { packer } = this;
    for (const { column } of this.#layout.days) {
      const cell = row[column] ?? "";
      if (cell.length > 1) weighDecimal(cell, this.#evidence);
    }
    for (const { ringName, day, quantity } of readDaysRow(row, index, this.#layout, this.reading)) {
      const name = packer.texts.numberOf(ringName);
      packer.day(day).add(NOTHING, NOTHING, NOTHING, name, this.#noModifiers, quantity, NOTHING, NOTHING);
    }
  }

  finish(): void {
    const { decimal, question } = decideDecimal(this.#evidence, this.#plan.statedShape);
    if (question !== null || decimal !== this.#layout.decimal)
      throw new HandOver("All cells under the days together leave a question.");
  }
}
