import type { SalesPacker } from "#engine/sales/packed/packed-sales.ts";
import { ChildStyleWitness } from "#engine/sales/read/child-marks.ts";
import { Checks } from "#engine/sales/read/child-rows.ts";
import { dayEndsSeconds } from "#engine/sales/read/clock.ts";
import type { FlatLayout } from "#engine/sales/read/flat-layout.ts";
import type { SaleLine } from "#engine/sales/read/line.ts";
import { readRow } from "#engine/sales/read/read-flat.ts";
import { RunningEvidence } from "#engine/sales/read/regular/evidence.ts";
import { RowsBelong } from "#engine/sales/read/regular/hand-over.ts";
import type { RowsPlan } from "#engine/sales/read/regular/plan.ts";
import { TextReader } from "#engine/sales/read/regular/text-reader.ts";

/**
 * Reads a file in which rows belong to rows above them, by the rules of the general reader.
 *
 * A line is held back until no row can belong to it any more, and packed then.
 */
export class ChildReader extends TextReader {
  readonly evidence: RunningEvidence;
  readonly #layout: FlatLayout;
  readonly #checks: HeldChecks;
  readonly #witness = new ChildStyleWitness();

  constructor(plan: RowsPlan, packer: SalesPacker) {
    super(plan, packer);
    const { map, clock } = plan.layout;
    this.#layout = plan.layout;
    this.#checks = new HeldChecks(map.parent !== undefined, packer);
    this.evidence = new RunningEvidence(map, dayEndsSeconds(clock.dayEnds));
  }

  protected row(row: readonly string[], index: number): void {
    const { reading } = this;
    this.evidence.row(row);
    this.#witness.add(row[this.#layout.map.item ?? 0] ?? "");
    const outcome = readRow(row, this.#layout, this.#checks, reading);
    if (outcome === "skip") reading.rowsSkipped += 1;
    else if (outcome === "child") reading.linesRead += 1;
    else if (typeof outcome === "string") reading.refused.push({ row: index + 1, reason: outcome });
    else {
      reading.linesRead += 1;
      this.#checks.add(outcome);
    }
  }

  finish(): void {
    this.#checks.end();
    const { isMinusRemoval, isIndentMeant } = this.#witness.style;
    if (isMinusRemoval !== this.#layout.isMinusRemoval || isIndentMeant !== this.#layout.isIndentMeant)
      throw new RowsBelong("Child rows are marked otherwise than in the first rows.", this.#witness.style);
  }
}

/** Packs lines once they cannot be found any more. */
class HeldChecks extends Checks {
  readonly #packer: SalesPacker;
  #held: SaleLine[] = [];

  constructor(hasParents: boolean, packer: SalesPacker) {
    super(hasParents);
    this.#packer = packer;
  }

  override add(line: SaleLine): void {
    super.add(line);
    this.#held.push(line);
  }

  protected override forgotten(): void {
    this.end();
  }

  end(): void {
    for (const line of this.#held) this.#packer.addLine(line);
    this.#held = [];
  }
}
