import { NOTHING } from "#engine/sales/packed/day-columns.ts";
import type { DecimalMark } from "#engine/sales/read/number.ts";
import { ByteDictionary } from "#engine/sales/read/regular/byte-dictionary.ts";
import type { RunningEvidence } from "#engine/sales/read/regular/evidence.ts";
import { hadMark, plainNumber } from "#engine/sales/read/regular/plain-cells.ts";

const CELLS_KEPT = 20_000;
const decoder = new TextDecoder("utf-8", { ignoreBOM: true });

/** The numbers of one column: plain ones read from their bytes, the others by the general reader, each once. */
export class NumberCells {
  readonly column: number;
  readonly #mark: number;
  readonly #scale: number;
  readonly #divisor: number;
  readonly #read: (cell: string) => number | null | undefined;
  readonly #evidence: RunningEvidence;
  readonly #dictionary = new ByteDictionary();
  readonly #values: number[] = [];
  #isMarkKnown = false;

  /** `digits` are the decimals that the value is counted in: minor units of money, or none for a quantity. */
  constructor(
    column: number,
    { mark, digits }: { mark: DecimalMark; digits: number | null },
    read: (cell: string) => number | null | undefined,
    evidence: RunningEvidence,
  ) {
    this.column = column;
    this.#mark = mark.charCodeAt(0);
    this.#scale = digits ?? 2;
    this.#divisor = digits === null ? 100 : 1;
    this.#read = read;
    this.#evidence = evidence;
  }

  /** The value of a cell; NOTHING where nothing is written, NaN where the row has to be read as texts. */
  valueOf(bytes: Uint8Array, start: number, end: number): number {
    if (start === end) return NOTHING;
    const value = plainNumber(bytes, start, end, this.#mark, this.#scale);
    if (Number.isNaN(value)) return this.#general(bytes, start, end);
    if (hadMark && !this.#isMarkKnown) {
      this.#isMarkKnown = true;
      this.#evidence.numberCell(this.column, decoder.decode(bytes.subarray(start, end)));
    }
    return this.#divisor === 1 ? value : value / this.#divisor;
  }

  #general(bytes: Uint8Array, start: number, end: number): number {
    if (this.#dictionary.size >= CELLS_KEPT) return Number.NaN;
    const size = this.#dictionary.size;
    const place = this.#dictionary.placeOf(bytes, start, end);
    if (place === size) {
      const cell = decoder.decode(bytes.subarray(start, end));
      const value = this.#read(cell);
      // A cell that cannot be read is weighed when its row is read as texts.
      if (value !== undefined) this.#evidence.numberCell(this.column, cell);
      this.#values.push(value === undefined ? Number.NaN : (value ?? NOTHING));
    }
    return this.#values[place] ?? Number.NaN;
  }
}
